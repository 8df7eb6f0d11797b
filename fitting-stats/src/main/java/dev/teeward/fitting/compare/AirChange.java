package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.List;

/**
 * What another air changes of one metric of a session, in the mean of its shots; {@link AirShare#changes} says how.
 *
 * <p>Immutable and thread-safe.
 *
 * @param metric which
 * @param shots how many shots count
 * @param before the mean in the air of the session [SI unit of the metric]
 * @param change the mean in the other air minus that, with its interval [SI unit of the metric]
 * @param exclusions what was not used, and why
 * @param warnings what to know
 */
public record AirChange(
        Metric metric, int shots, double before, Estimate change, List<Exclusion> exclusions, List<Warning> warnings) {
    /**
     * Copies the lists.
     *
     * @param metric which
     * @param shots how many shots count
     * @param before the mean in the air of the session [SI unit of the metric]
     * @param change the mean in the other air minus that, with its interval [SI unit of the metric]
     * @param exclusions what was not used, and why
     * @param warnings what to know
     */
    public AirChange {
        exclusions = List.copyOf(exclusions);
        warnings = List.copyOf(warnings);
    }
}
