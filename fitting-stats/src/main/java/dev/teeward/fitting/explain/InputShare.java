package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import java.util.Objects;
import java.util.Optional;

/**
 * How much of a modelled difference the flight gives to one input.
 *
 * <pre>{@code
 * InputShare tilt = curve.share(Metric.AXIS_TILT).orElseThrow();
 * tilt.difference(); // by how much the axis tilts differ
 * tilt.share();      // so much of the curve
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param input the input that was exchanged
 * @param difference by how much it differs between the clubs, by the t test of the comparison [SI unit of the input]
 * @param share what exchanging it adds, averaged over all orders of exchange, with a bootstrap interval [SI unit of the
 *     outcome]; it holds by itself
 * @param together the interval of the share that holds together with those of the other inputs of the outcome: at the level 1
 *     - (1 - level) / k of k inputs (Bonferroni) [SI unit of the outcome]
 * @param lie for the face angle, how much of its share, not beside it, the dynamic lie accounts for [SI unit of the outcome];
 *     empty for other inputs and without the lie
 */
public record InputShare(Metric input, Estimate difference, Estimate share, Interval together, Optional<Estimate> lie) {
    /**
     * Checks that nothing is missing.
     *
     * @param input the input that was exchanged
     * @param difference by how much it differs between the clubs [SI unit of the input]
     * @param share what exchanging it adds [SI unit of the outcome]
     * @param together the interval of the share that holds together with those of the other inputs
     * @param lie how much of the share the dynamic lie accounts for [SI unit of the outcome]
     */
    public InputShare {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(difference, "difference");
        Objects.requireNonNull(share, "share");
        Objects.requireNonNull(together, "together");
        Objects.requireNonNull(lie, "lie");
    }
}
