package dev.teeward.examples;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.LaunchTolerance;
import dev.teeward.flight.study.Calibration;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** How well the launches of observed flights were measured, on the command line; what is not given is known exactly. */
final class LaunchErrorOptions {
    @Spec(Target.MIXEE)
    private @Nullable CommandSpec spec;

    @Option(
            names = "--speed-error-pct",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description =
                    "Standard deviation of the measured ball speed, 0 to 15 percent of it. This and the next three are"
                            + " stated where launches were measured with errors: left out, the intervals come out too short.")
    private @Nullable Double speedPercent;

    @Option(
            names = "--direction-error-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Standard deviation of the measured launch angle and start direction, 0 to 20 deg.")
    private @Nullable Double directionDegrees;

    @Option(
            names = "--spin-error-pct",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Standard deviation of the measured spin rate, 0 to 25 percent of it.")
    private @Nullable Double spinPercent;

    @Option(
            names = "--tilt-error-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Standard deviation of the measured tilt of the spin axis, 0 to 45 deg.")
    private @Nullable Double tiltDegrees;

    /** The calibration with what was given; as it is if nothing was. */
    Calibration with(Calibration calibration) {
        checked("--speed-error-pct", speedPercent, 15.0, "percent");
        checked("--direction-error-deg", directionDegrees, 20.0, "deg (0 to 0.35 rad)");
        checked("--spin-error-pct", spinPercent, 25.0, "percent");
        checked("--tilt-error-deg", tiltDegrees, 45.0, "deg (0 to 0.79 rad)");
        boolean exact = speedPercent == null && directionDegrees == null && spinPercent == null && tiltDegrees == null;
        return exact ? calibration : calibration.withLaunchTolerance(this::of);
    }

    private LaunchTolerance of(LaunchConditions launch) {
        Angle direction = Angle.ofDegrees(given(directionDegrees));
        double speed = given(speedPercent) / 100.0 * launch.ballSpeed().metersPerSecond();
        return LaunchTolerance.typical()
                .withBallSpeed(Speed.ofMetersPerSecond(speed))
                .withLaunchAngle(direction)
                .withStartDirection(direction)
                .withSpinRate(SpinRate.ofRpm(
                        given(spinPercent) / 100.0 * launch.spinRate().rpm()))
                .withAxisTilt(Angle.ofDegrees(given(tiltDegrees)));
    }

    private void checked(String option, @Nullable Double value, double most, String unit) {
        if (value != null && spec != null && !(value >= 0.0 && value <= most)) {
            throw new ParameterException(
                    spec.commandLine(),
                    option + " must be in [0, " + (int) most + "] " + unit + ", but was " + value
                            + "; it is a standard deviation");
        }
    }

    private static double given(@Nullable Double value) {
        return value == null ? 0.0 : value;
    }
}
