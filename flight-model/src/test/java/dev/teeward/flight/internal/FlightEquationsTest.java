package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.FlightEquations.Lanes;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FlightEquationsTest {
    private static final double MASS = 0.04593;
    private static final double DIAMETER = 0.04267;
    private static final double INERTIA = 0.4 * MASS * DIAMETER * DIAMETER / 4.0;

    private static FlightEquations equations(AerodynamicModel model, double density, Wind wind) {
        return new FlightEquations(model, MASS, DIAMETER, INERTIA, density, 1.79e-5, wind, 9.80665);
    }

    /** A wind that depends on the height and whose lane form is the inherited loop. */
    private static Wind sheared() {
        return new Wind() {
            @Override
            public double alongTarget(double height) {
                return -3.0 - 0.1 * height / (1.0 + 0.05 * Math.abs(height));
            }

            @Override
            public double towardsRight(double height) {
                return 2.0 + 0.01 * height;
            }
        };
    }

    @Test
    void lanesAndScalarAgreeBitForBitOverAMillionStatesWithCorners() {
        SplittableRandom random = new SplittableRandom(20_240_501L);
        FlightEquations[] all = {
            equations(new RationalAerodynamics(), 1.225, sheared()),
            equations(new RationalAerodynamics(), 1.225, Wind.calm()),
            equations(new RationalAerodynamics(), 0.0, sheared()),
            equations(new SineAerodynamics(), 0.9, sheared()),
        };
        Lanes lanes = new Lanes();
        double[] block = lanes.block();
        double[] state = new double[FlightEquations.STATE];
        double[] axis = new double[3];
        double[] rates = new double[FlightEquations.RATES];
        int blocks = 1_000_000 / Lanes.WIDTH + 1;
        long differing = 0;
        for (int n = 0; n < blocks; n++) {
            FlightEquations equations = all[n % all.length];
            for (int i = 0; i < Lanes.WIDTH; i++) {
                equations.air(lanes, i);
                for (int c = 0; c < 5; c++) {
                    block[Lanes.STATE_AT + c * Lanes.STRIDE + i] = component(random, c);
                }
                for (int c = 0; c < 3; c++) {
                    block[Lanes.AXIS_AT + c * Lanes.STRIDE + i] =
                            random.nextInt(8) == 0 ? random.nextInt(-1, 2) : random.nextDouble(-1.0, 1.0);
                }
            }
            equations.rates(lanes);
            for (int i = 0; i < Lanes.WIDTH; i++) {
                for (int c = 0; c < 5; c++) {
                    state[c] = block[Lanes.STATE_AT + c * Lanes.STRIDE + i];
                }
                for (int c = 0; c < 3; c++) {
                    axis[c] = block[Lanes.AXIS_AT + c * Lanes.STRIDE + i];
                }
                equations.rates(state, axis, rates, 0);
                for (int c = 0; c < 4; c++) {
                    differing += bitsDiffer(rates[c], block[Lanes.RATES_AT + c * Lanes.STRIDE + i]);
                }
                differing += bitsDiffer(rates[FlightEquations.AIR_SPEED], block[Lanes.SPEED_AT + i]);
                assertTrue(Double.isFinite(rates[0] + rates[1] + rates[2] + rates[3]), "rates are finite");
            }
        }
        assertEquals(0, differing, "numbers that differ in any bit");
    }

    private static double component(SplittableRandom random, int c) {
        int kind = random.nextInt(16);
        if (kind == 0) {
            return 0.0;
        }
        if (kind == 1 && c != FlightEquations.SPIN) {
            return -0.0;
        }
        double limit = c == FlightEquations.SPIN ? 2100.0 : 110.0;
        double low = c == FlightEquations.SPIN ? 0.0 : -limit;
        double value = random.nextDouble(low, limit);
        return kind == 2 ? value * 1e-9 : value;
    }

    private static int bitsDiffer(double a, double b) {
        return Double.doubleToRawLongBits(a) == Double.doubleToRawLongBits(b) ? 0 : 1;
    }

    /** By hand: at 50 m/s without wind, Cd = 0.3 and Cl = 0.2, backspin. */
    @Test
    void dragActsBackwardsAndBackspinLifts() {
        FlightEquations equations = equations(constant(0.3, 0.2, 0.01), 1.2, Wind.calm());
        double[] rates = new double[FlightEquations.RATES];
        equations.rates(new double[] {50.0, 0.0, 0.0, 300.0, 0.0, 0.0, 0.0}, new double[] {0.0, 0.0, 1.0}, rates, 0);
        double area = Math.PI * DIAMETER * DIAMETER / 4.0;
        double pressure = 0.5 * 1.2 * 2500.0 * area / MASS;
        assertEquals(-0.3 * pressure, rates[FlightEquations.VX], 1e-12 * pressure);
        assertEquals(0.2 * pressure - 9.80665, rates[FlightEquations.VY], 1e-12 * pressure);
        assertEquals(0.0, rates[FlightEquations.VZ]);
        double moment = 0.5 * 1.2 * 2500.0 * area * DIAMETER * 0.01 * (DIAMETER / 2.0 * 300.0 / 50.0);
        assertEquals(-moment / INERTIA, rates[FlightEquations.SPIN], 1e-12 * moment / INERTIA);
    }

    /**
     * Smits and Smith (1994), from memory: {@code d omega/dt = -2e-5 omega V/r} for a uniform ball. The moment slope 0.010 is
     * that law at 1.2 kg/m3, rounded to two digits, hence 1 percent.
     */
    @Test
    void theDefaultMomentSlopeIsTheDecayOfSmitsAndSmith() {
        FlightEquations equations = equations(new RationalAerodynamics(), 1.2, Wind.calm());
        double[] rates = new double[FlightEquations.RATES];
        equations.rates(new double[] {70.0, 0.0, 0.0, 300.0, 0.0, 0.0, 0.0}, new double[] {0.0, 0.0, 1.0}, rates, 0);
        double law = -2e-5 * 300.0 * 70.0 / (DIAMETER / 2.0);
        assertEquals(law, rates[FlightEquations.SPIN], 0.01 * Math.abs(law));
    }

    @Test
    void spinDecaysWithTheDensityAndAgainstTheInertia() {
        double[] state = {70.0, 0.0, 0.0, 300.0, 0.0, 0.0, 0.0};
        double[] axis = {0.0, 0.0, 1.0};
        double[] thick = new double[FlightEquations.RATES];
        double[] thin = new double[FlightEquations.RATES];
        double[] heavyRim = new double[FlightEquations.RATES];
        equations(constant(0.3, 0.2, 0.01), 1.2, Wind.calm()).rates(state, axis, thick, 0);
        equations(constant(0.3, 0.2, 0.01), 0.6, Wind.calm()).rates(state, axis, thin, 0);
        new FlightEquations(
                        constant(0.3, 0.2, 0.01), MASS, DIAMETER, 1.25 * INERTIA, 1.2, 1.79e-5, Wind.calm(), 9.80665)
                .rates(state, axis, heavyRim, 0);
        double rate = thick[FlightEquations.SPIN];
        assertEquals(0.5 * rate, thin[FlightEquations.SPIN], 1e-14 * Math.abs(rate));
        assertEquals(rate / 1.25, heavyRim[FlightEquations.SPIN], 1e-14 * Math.abs(rate));
    }

    static AerodynamicModel constant(double drag, double lift, double slope) {
        return new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return drag;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return lift;
            }

            @Override
            public double momentSlope() {
                return slope;
            }
        };
    }
}
