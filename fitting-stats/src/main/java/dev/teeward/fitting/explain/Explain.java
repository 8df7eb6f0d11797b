package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Asks everything about club or swing of a head-to-head result: the balance of the swings, the differences at equal delivery,
 * the shares by flights, and whether the last two agree.
 *
 * <pre>{@code
 * Explanation why = Explain.withDefaults()
 *         .withBalance(Balance.withDefaults().withMargin(Metric.CLUB_PATH, Math.toRadians(0.8)))
 *         .explain(result);
 * why.balance().side(SwingSide.GOLFER);
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class Explain {
    private static final List<Metric> OUTCOMES =
            List.of(Metric.CURVE, Metric.CARRY, Metric.SIDE, Metric.START_DIRECTION, Metric.BALL_SPEED);
    private static final Explain DEFAULTS = new Explain(
            Balance.withDefaults(),
            TotalAndDirect.withDefaults(),
            TotalAndDirect.ofGolferSide(),
            FlightCounterfactual.withDefaults());

    private final Balance balance;
    private final TotalAndDirect effects;
    private final TotalAndDirect golferSide;
    private final FlightCounterfactual flights;

    private Explain(Balance balance, TotalAndDirect effects, TotalAndDirect golferSide, FlightCounterfactual flights) {
        this.balance = balance;
        this.effects = effects;
        this.golferSide = golferSide;
        this.flights = flights;
    }

    /**
     * The defaults of all parts.
     *
     * @return the default procedure
     */
    public static Explain withDefaults() {
        return DEFAULTS;
    }

    /**
     * With sides and margins of the swings.
     *
     * @param other how the swings are compared
     * @return a changed copy
     */
    public Explain withBalance(Balance other) {
        return new Explain(Objects.requireNonNull(other, "other"), effects, golferSide, flights);
    }

    /**
     * With covariates.
     *
     * @param other what is held equal
     * @return a changed copy
     */
    public Explain withTotalAndDirect(TotalAndDirect other) {
        return new Explain(balance, Objects.requireNonNull(other, "other"), golferSide, flights);
    }

    /**
     * With covariates on which {@link ClubOrSwing} rests; unless changed {@link TotalAndDirect#ofGolferSide()}.
     *
     * @param other what is held equal: of the approach of the club only, such as its speed and path
     * @return a changed copy
     * @throws IllegalArgumentException if a covariate is none of the approach
     */
    public Explain withGolferSide(TotalAndDirect other) {
        other.beyondTheApproach().ifPresent(m -> {
            throw new IllegalArgumentException(
                    "covariates of the golfer's side must be of the approach (club speed, attack"
                            + " angle, club path), but one was " + m.key()
                            + ", where club and golfer meet; start from TotalAndDirect.ofGolferSide()");
        });
        return new Explain(balance, effects, other, flights);
    }

    /**
     * With a flight model, a head, or other resamples.
     *
     * @param other how inputs are exchanged
     * @return a changed copy
     */
    public Explain withFlights(FlightCounterfactual other) {
        return new Explain(balance, effects, golferSide, Objects.requireNonNull(other, "other"));
    }

    /**
     * Explains.
     *
     * @param result two clubs compared
     * @return the answers; the differences at equal delivery are of curve, carry, side, start direction, ball speed and the
     *     metric that decides, as far as the shots can carry them
     * @throws IllegalArgumentException as {@link FlightCounterfactual#explain} does
     */
    public Explanation explain(HeadToHeadResult result) {
        Set<Metric> outcomes = new LinkedHashSet<>(OUTCOMES);
        outcomes.add(result.primary().metric());
        outcomes.removeIf(m -> result.find(m).filter(MetricComparison::inFamily).isEmpty());
        List<TotalAndDirect.Result> differences = outcomes.stream()
                .flatMap(m -> effects.explain(result, m).stream())
                .toList();
        List<TotalAndDirect.Result> atEqualSwing = outcomes.stream()
                .flatMap(m -> golferSide.explain(result, m).stream())
                .toList();
        Optional<FlightCounterfactual.Result> flown = flights.explain(result);
        List<Agreement> agreements = new ArrayList<>();
        flown.ifPresent(f ->
                f.outcomes().forEach(outcome -> Agreement.of(result, f, outcome).ifPresent(agreements::add)));
        return new Explanation(result, balance.compare(result), differences, atEqualSwing, flown, agreements);
    }
}
