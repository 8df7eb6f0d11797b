package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;

/**
 * A difference of means and the part of it that is the air; {@link AirShare} says how. Found = air + rest, up to rounding.
 *
 * <pre>{@code
 * AirShareResult r = AirShare.of(SameAir.standardAt(feet(0.0))).betweenDays(monday, tuesday, Metric.CARRY);
 * r.found();   // Monday minus Tuesday, metres
 * r.share();   // of which this share is the air, if the difference is settled
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param metric what was compared
 * @param found the difference as found, first minus second [SI unit of the metric]
 * @param air the part that goes when all shots are brought to one air [SI unit of the metric]
 * @param rest the difference in one air [SI unit of the metric]
 * @param share air over found, a pure number; empty if the interval of found holds 0
 * @param firstShots how many shots count on the first side
 * @param secondShots how many on the second
 * @param paired whether the intervals are those of pairs
 * @param exclusions what was not used, and why
 * @param warnings what to know
 */
public record AirShareResult(
        Metric metric,
        Estimate found,
        Estimate air,
        Estimate rest,
        Optional<Estimate> share,
        int firstShots,
        int secondShots,
        boolean paired,
        List<Exclusion> exclusions,
        List<Warning> warnings) {
    /**
     * Copies the lists.
     *
     * @param metric what was compared
     * @param found the difference as found, first minus second [SI unit of the metric]
     * @param air the part that goes when all shots are brought to one air [SI unit of the metric]
     * @param rest the difference in one air [SI unit of the metric]
     * @param share air over found, a pure number; empty if the interval of found holds 0
     * @param firstShots how many shots count on the first side
     * @param secondShots how many on the second
     * @param paired whether the intervals are those of pairs
     * @param exclusions what was not used, and why
     * @param warnings what to know
     */
    public AirShareResult {
        exclusions = List.copyOf(exclusions);
        warnings = List.copyOf(warnings);
    }

    /**
     * How it was found.
     *
     * @return one phrase
     */
    public String method() {
        return (paired ? "Student t of pair differences" : "Welch t of two groups")
                + ", with the ball's drag and lift by the delta method; the share by Fieller's theorem";
    }
}
