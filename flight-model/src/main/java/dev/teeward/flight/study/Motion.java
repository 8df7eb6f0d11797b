package dev.teeward.flight.study;

import dev.teeward.flight.Ball;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.internal.FlightEquations;
import java.util.Arrays;
import org.hipparchus.ode.OrdinaryDifferentialEquation;

/** The library's own force sum as a differential equation of Hipparchus, with the launch as its initial state. */
final class Motion implements OrdinaryDifferentialEquation {
    private final FlightEquations equations;
    private final double[] axis;
    private final double[] launch;
    private final double[] rates = new double[FlightEquations.RATES];

    Motion(FlightModel model, LaunchConditions start) {
        Ball ball = model.ball();
        equations = new FlightEquations(
                ball.aerodynamics(),
                ball.mass().kilograms(),
                ball.diameter().meters(),
                ball.momentOfInertia(),
                model.air().density(),
                model.air().dynamicViscosity(),
                model.wind(),
                model.gravity());
        double speed = start.ballSpeed().metersPerSecond();
        double cosUp = StrictMath.cos(start.launchAngle().radians());
        double sinUp = StrictMath.sin(start.launchAngle().radians());
        double cosRight = StrictMath.cos(start.startDirection().radians());
        double sinRight = StrictMath.sin(start.startDirection().radians());
        double cosTilt = StrictMath.cos(start.axisTilt().radians());
        double sinTilt = StrictMath.sin(start.axisTilt().radians());
        launch = new double[FlightEquations.STATE];
        launch[FlightEquations.VX] = speed * cosUp * cosRight;
        launch[FlightEquations.VY] = speed * sinUp;
        launch[FlightEquations.VZ] = speed * cosUp * sinRight;
        launch[FlightEquations.SPIN] = start.spinRate().radiansPerSecond();
        // cos(tilt) h - sin(tilt) n, with h the horizontal unit vector to the right of the launch and n = h x
        // direction.
        axis = new double[] {
            sinTilt * sinUp * cosRight - cosTilt * sinRight,
            -sinTilt * cosUp,
            cosTilt * cosRight + sinTilt * sinUp * sinRight
        };
    }

    /** The state at launch; not a copy. */
    double[] launch() {
        return launch;
    }

    @Override
    public int getDimension() {
        return FlightEquations.STATE;
    }

    @Override
    public double[] computeDerivatives(double time, double[] state) {
        equations.rates(state, axis, rates, 0);
        return Arrays.copyOf(rates, FlightEquations.STATE);
    }
}
