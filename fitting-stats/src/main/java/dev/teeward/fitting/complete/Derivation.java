package dev.teeward.fitting.complete;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Shot;
import java.util.Optional;
import java.util.OptionalDouble;

/** The metrics that follow from other readings of the same shot by definition. */
final class Derivation {
    private Derivation() {}

    /** The value of a metric by its definition; empty if it has none here or something it needs was not measured. */
    static OptionalDouble derive(Metric metric, Shot shot) {
        return switch (metric) {
            case SMASH_FACTOR ->
                has(shot, Metric.BALL_SPEED, Metric.CLUB_SPEED)
                        ? OptionalDouble.of(shot.value(Metric.BALL_SPEED) / shot.value(Metric.CLUB_SPEED))
                        : OptionalDouble.empty();
            case FACE_TO_PATH ->
                has(shot, Metric.FACE_ANGLE, Metric.CLUB_PATH)
                        ? OptionalDouble.of(shot.value(Metric.FACE_ANGLE) - shot.value(Metric.CLUB_PATH))
                        : OptionalDouble.empty();
            case SPIN_LOFT ->
                has(shot, Metric.DYNAMIC_LOFT, Metric.ATTACK_ANGLE, Metric.FACE_ANGLE, Metric.CLUB_PATH)
                        ? OptionalDouble.of(between(
                                shot.value(Metric.DYNAMIC_LOFT),
                                shot.value(Metric.ATTACK_ANGLE),
                                shot.value(Metric.FACE_ANGLE) - shot.value(Metric.CLUB_PATH)))
                        : OptionalDouble.empty();
            case CURVE ->
                has(shot, Metric.CARRY, Metric.SIDE, Metric.START_DIRECTION)
                        ? curve(shot.value(Metric.CARRY), shot.value(Metric.SIDE), shot.value(Metric.START_DIRECTION))
                        : OptionalDouble.empty();
            default -> OptionalDouble.empty();
        };
    }

    static Shot with(Shot shot, Metric... metrics) {
        Shot.Builder more = null;
        for (Metric metric : metrics) {
            OptionalDouble value = shot.has(metric) ? OptionalDouble.empty() : derive(metric, shot);
            if (value.isPresent() && metric.allows(value.getAsDouble())) {
                more = more == null ? shot.toBuilder() : more;
                more.reading(metric, Reading.of(value.getAsDouble(), Origin.DERIVED));
            }
        }
        return more == null ? shot : more.build();
    }

    /** The angle between two directions of elevations a and b whose azimuths differ, exact for small angles too. */
    private static double between(double a, double b, double azimuth) {
        double up = Math.sin(0.5 * (a - b));
        double across = Math.sin(0.5 * azimuth);
        double haversine = up * up + Math.cos(a) * Math.cos(b) * across * across;
        return 2.0 * Math.asin(Math.min(1.0, Math.sqrt(haversine)));
    }

    private static OptionalDouble curve(double carry, double side, double direction) {
        if (Math.abs(side) > carry) {
            return OptionalDouble.empty();
        }
        double downrange = Math.sqrt((carry - side) * (carry + side));
        return OptionalDouble.of(side * Math.cos(direction) - downrange * Math.sin(direction));
    }

    private static boolean has(Shot shot, Metric... metrics) {
        for (Metric metric : metrics) {
            Optional<Reading> reading = shot.reading(metric);
            if (reading.isEmpty() || reading.get().origin() == Origin.COMPUTED) {
                return false;
            }
        }
        return true;
    }
}
