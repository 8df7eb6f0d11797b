package dev.teeward.benchmarks;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.LaunchState;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The launches on which speeds are compared: 30-80 m/s, 5-45 deg up, 8 deg to either side, 1,500-10,000 rpm, tilt up to 20 deg, a
 * steady wind of up to 8 m/s in both components for each; the typical ball, level ground.
 */
final class SpeedSample {
    static final FlightModel MODEL = FlightModel.standard().withAir(AirState.of(1.225, 1.7894e-5));

    final double[] speed;
    final double[] up;
    final double[] right;
    final double[] spin;
    final double[] tilt;
    final double[] along;
    final double[] across;

    SpeedSample(int rows) {
        speed = new double[rows];
        up = new double[rows];
        right = new double[rows];
        spin = new double[rows];
        tilt = new double[rows];
        along = new double[rows];
        across = new double[rows];
        SplittableRandom random = new SplittableRandom(2024L);
        for (int i = 0; i < rows; i++) {
            speed[i] = random.nextDouble(30.0, 80.0);
            up[i] = Math.toRadians(random.nextDouble(5.0, 45.0));
            right[i] = Math.toRadians(random.nextDouble(-8.0, 8.0));
            spin[i] = random.nextDouble(1500.0, 10_000.0) * Math.PI / 30.0;
            tilt[i] = Math.toRadians(random.nextDouble(-20.0, 20.0));
            along[i] = random.nextDouble(-8.0, 8.0);
            across[i] = random.nextDouble(-8.0, 8.0);
        }
    }

    /** The first launches as a table, each with its own wind. */
    LaunchTable table(int rows) {
        return LaunchTable.builder()
                .ballSpeed(Arrays.copyOf(speed, rows))
                .launchAngle(Arrays.copyOf(up, rows))
                .startDirection(Arrays.copyOf(right, rows))
                .spinRate(Arrays.copyOf(spin, rows))
                .axisTilt(Arrays.copyOf(tilt, rows))
                .windAlongTarget(Arrays.copyOf(along, rows))
                .windTowardsRight(Arrays.copyOf(across, rows))
                .build();
    }

    /** One launch, as the peers take it. */
    PeerLaunch peer(int row) {
        PeerLaunch launch = new PeerLaunch(
                new FlightEquations(
                        TypicalAerodynamics.of(),
                        MODEL.ball().mass().kilograms(),
                        MODEL.ball().diameter().meters(),
                        MODEL.ball().momentOfInertia(),
                        MODEL.air().density(),
                        MODEL.air().dynamicViscosity(),
                        wind(row),
                        MODEL.gravity()),
                new double[FlightEquations.STATE],
                new double[3]);
        LaunchState.write(speed[row], up[row], right[row], spin[row], tilt[row], launch.state, launch.axis);
        return launch;
    }

    LaunchConditions launch(int row) {
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(speed[row]))
                .launchAngle(Angle.ofRadians(up[row]))
                .startDirection(Angle.ofRadians(right[row]))
                .spinRate(SpinRate.ofRadiansPerSecond(spin[row]))
                .axisTilt(Angle.ofRadians(tilt[row]))
                .build();
    }

    FlightModel model(int row) {
        return MODEL.withWind(wind(row));
    }

    /** Speed, launch angle, start direction, spin, tilt, head wind. */
    double[] inputs(int row) {
        return new double[] {speed[row], up[row], right[row], spin[row], tilt[row], -along[row]};
    }

    private Wind wind(int row) {
        return new Steady(along[row], across[row]);
    }

    private record Steady(double alongTarget, double towardsRight) implements Wind {
        @Override
        public double alongTarget(double height) {
            return alongTarget;
        }

        @Override
        public double towardsRight(double height) {
            return towardsRight;
        }
    }

    /** The force sum with its wind, the state at launch and the spin axis. */
    @SuppressWarnings("ArrayRecordComponent")
    record PeerLaunch(FlightEquations equations, double[] state, double[] axis) {}
}
