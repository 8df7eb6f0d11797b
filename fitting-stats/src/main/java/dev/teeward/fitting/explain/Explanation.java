package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What can be said about club or swing.
 *
 * <pre>{@code
 * Explanation why = Explain.withDefaults().explain(result);
 * why.effect(Metric.CURVE).map(e -> e.direct().estimate());
 * why.flights().flatMap(f -> f.of(Metric.CURVE)).map(OutcomeShares::rest);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param result what was explained
 * @param balance whether the swings were the same
 * @param effects differences beside those at equal delivery, by outcome
 * @param golferSide the same with only covariates of the golfer's side held equal: what {@link ClubOrSwing} rests on
 * @param flights the shares by flights, or empty if the launches were not measured
 * @param agreements whether the shares and the shots say the same, by outcome
 */
public record Explanation(
        HeadToHeadResult result,
        Balance.Result balance,
        List<TotalAndDirect.Result> effects,
        List<TotalAndDirect.Result> golferSide,
        Optional<FlightCounterfactual.Result> flights,
        List<Agreement> agreements) {
    /**
     * Copies the lists.
     *
     * @param result what was explained
     * @param balance whether the swings were the same
     * @param effects differences beside those at equal delivery, by outcome
     * @param golferSide the same with only covariates of the golfer's side
     * @param flights the shares by flights, or empty
     * @param agreements whether the shares and the shots say the same, by outcome
     */
    public Explanation {
        Objects.requireNonNull(result, "result");
        Objects.requireNonNull(balance, "balance");
        Objects.requireNonNull(flights, "flights");
        effects = List.copyOf(effects);
        golferSide = List.copyOf(golferSide);
        agreements = List.copyOf(agreements);
    }

    /**
     * Both differences of one outcome.
     *
     * @param outcome which
     * @return the differences, or empty if the shots could not carry them
     */
    public Optional<TotalAndDirect.Result> effect(Metric outcome) {
        return effects.stream().filter(e -> e.outcome() == outcome).findFirst();
    }

    /**
     * Both differences of one outcome, with only covariates of the golfer's side held equal.
     *
     * @param outcome which
     * @return the differences, or empty if the shots could not carry them
     */
    public Optional<TotalAndDirect.Result> atEqualSwing(Metric outcome) {
        return golferSide.stream().filter(e -> e.outcome() == outcome).findFirst();
    }

    /**
     * Whether both views of one outcome agree.
     *
     * @param outcome which
     * @return the agreement, or empty if it was not asked
     */
    public Optional<Agreement> agreement(Metric outcome) {
        return agreements.stream().filter(a -> a.outcome() == outcome).findFirst();
    }
}
