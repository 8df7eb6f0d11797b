package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.SplittableRandom;

/**
 * Random launches in three differently drawn samples over the same ranges: 10-100 m/s, -5 to 70 deg up, 0-12,000 rpm, tilt up to
 * 60 deg to either side, wind 0-20 m/s from anywhere, landing up to 50 m higher or lower.
 */
public final class RandomLaunches {
    /** How a sample is drawn. */
    public enum Sample {
        /** Every input evenly over its range, independent of the others. */
        EVEN,
        /** As clubs do it: the slower the ball, the steeper and the more spin. */
        ALONG_THE_BAG,
        /** A third of the inputs at an end of their ranges, speed and spin evenly in the logarithm or the square. */
        CORNERS
    }

    public final int rows;
    public final double[] speed;
    public final double[] up;
    public final double[] right;
    public final double[] spin;
    public final double[] tilt;
    public final double[] elevation;
    public final double[] density;
    public final double[] viscosity;
    public final double[] along;
    public final double[] across;

    public RandomLaunches(Sample sample, int rows, long seed) {
        this.rows = rows;
        speed = new double[rows];
        up = new double[rows];
        right = new double[rows];
        spin = new double[rows];
        tilt = new double[rows];
        elevation = new double[rows];
        density = new double[rows];
        viscosity = new double[rows];
        along = new double[rows];
        across = new double[rows];
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < rows; i++) {
            switch (sample) {
                case EVEN ->
                    draw(i, random.nextDouble(10, 100), random.nextDouble(-5, 70), random.nextDouble(0, 12_000));
                case ALONG_THE_BAG -> {
                    double v = 10.0 + 90.0 * Math.sqrt(random.nextDouble());
                    double slow = 1.0 - v / 100.0;
                    draw(
                            i,
                            v,
                            within(5.0 + 60.0 * slow + 8.0 * random.nextGaussian(), -5.0, 70.0),
                            within(2000.0 + 9000.0 * slow + 1500.0 * random.nextGaussian(), 0.0, 12_000.0));
                }
                case CORNERS ->
                    draw(
                            i,
                            corner(random, 10.0, 100.0, Math.exp(random.nextDouble(Math.log(10.0), Math.log(100.0)))),
                            corner(random, -5.0, 70.0, random.nextDouble(-5.0, 70.0)),
                            corner(random, 0.0, 12_000.0, 12_000.0 * random.nextDouble() * random.nextDouble()));
            }
            boolean corners = sample == Sample.CORNERS;
            double degrees = random.nextDouble(-60.0, 60.0);
            tilt[i] = Math.toRadians(corners ? corner(random, -60.0, 60.0, degrees) : degrees);
            right[i] = random.nextInt(8) == 0 ? 0.0 : Math.toRadians(random.nextDouble(-10.0, 10.0));
            double meters = random.nextDouble(-50.0, 50.0);
            elevation[i] = corners ? corner(random, -50.0, 50.0, meters) : meters;
            if (random.nextInt(10) == 0) {
                elevation[i] = 0.0;
            }
            double wind = corners ? corner(random, 0.0, 20.0, random.nextDouble(20.0)) : random.nextDouble(20.0);
            double from = random.nextDouble(-Math.PI, Math.PI);
            along[i] = -wind * Math.cos(from);
            across[i] = -wind * Math.sin(from);
            density[i] = random.nextDouble(0.9, 1.3);
            viscosity[i] = random.nextDouble(1.7e-5, 1.9e-5);
        }
    }

    private void draw(int i, double metersPerSecond, double degreesUp, double rpm) {
        speed[i] = metersPerSecond;
        up[i] = Math.toRadians(degreesUp);
        spin[i] = rpm * Math.PI / 30.0;
    }

    private static double corner(SplittableRandom random, double low, double high, double otherwise) {
        return random.nextInt(3) > 0 ? otherwise : random.nextBoolean() ? low : high;
    }

    private static double within(double value, double low, double high) {
        return Math.max(low, Math.min(high, value));
    }

    LaunchTable.Builder launches() {
        return LaunchTable.builder()
                .ballSpeed(speed)
                .launchAngle(up)
                .startDirection(right)
                .spinRate(spin)
                .axisTilt(tilt);
    }

    public LaunchConditions launch(int row) {
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(speed[row]))
                .launchAngle(Angle.ofRadians(up[row]))
                .startDirection(Angle.ofRadians(right[row]))
                .spinRate(SpinRate.ofRadiansPerSecond(spin[row]))
                .axisTilt(Angle.ofRadians(tilt[row]))
                .build();
    }

    FlightModel over(FlightModel model, int row) {
        return model.withLandingElevation(Length.ofMeters(elevation[row]));
    }

    FlightModel inAir(FlightModel model, int row) {
        return model.withAir(AirState.of(density[row], viscosity[row]));
    }

    FlightModel inWind(FlightModel model, int row) {
        return model.withWind(wind(row));
    }

    public Wind wind(int row) {
        double x = along[row];
        double z = across[row];
        return new Wind() {
            @Override
            public double alongTarget(double height) {
                return x;
            }

            @Override
            public double towardsRight(double height) {
                return z;
            }
        };
    }
}
