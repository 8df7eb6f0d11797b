package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Estimate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One outcome's difference between two clubs, split by flights: the shares of the inputs add up to the modelled difference,
 * and with the unexplained rest to the measured one.
 *
 * <pre>{@code
 * OutcomeShares curve = flights.of(Metric.CURVE).orElseThrow();
 * curve.modelled().value();  // the sum of curve.shares()
 * curve.rest();              // what the flights do not explain
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param outcome what was split
 * @param modelled the difference of the flights of both mean launches, first minus second, with a bootstrap interval [SI]
 * @param measured the difference of the readings of the same shots, by the t test of the comparison [SI], or empty if one of
 *     them lacks the reading
 * @param rest measured less modelled, with a bootstrap interval [SI]: the error of model and device, and that the mean flight
 *     is not the flight of the mean
 * @param shares the shares, in the order in which a shot runs
 */
public record OutcomeShares(
        Metric outcome,
        Estimate modelled,
        Optional<Estimate> measured,
        Optional<Estimate> rest,
        List<InputShare> shares) {
    /**
     * Copies the list.
     *
     * @param outcome what was split
     * @param modelled the difference of the flights of both mean launches [SI]
     * @param measured the difference of the readings [SI], or empty
     * @param rest measured less modelled [SI], or empty
     * @param shares the shares
     */
    public OutcomeShares {
        Objects.requireNonNull(outcome, "outcome");
        Objects.requireNonNull(modelled, "modelled");
        Objects.requireNonNull(measured, "measured");
        Objects.requireNonNull(rest, "rest");
        shares = List.copyOf(shares);
    }

    /**
     * The share of one input.
     *
     * @param input which
     * @return its share, or empty if it was not exchanged
     */
    public Optional<InputShare> share(Metric input) {
        return shares.stream().filter(s -> s.input() == input).findFirst();
    }
}
