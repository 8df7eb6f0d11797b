package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What goes with a difference: an outcome, such as the curve, and a candidate, such as face to path, that differs too. Never
 * a cause: another thing may move both.
 *
 * <p>Within the clubs (each about its own mean) the outcome changes by {@link #slope()} per unit of the candidate; the
 * candidate itself differs by {@link #candidateDifference()}; the product, {@link #part()}, is how much of the outcome's
 * difference goes with it. Candidates are taken one at a time, so parts overlap and do not add up.
 *
 * <pre>{@code
 * for (Association a : result.associations()) {
 *     show(a.candidate().label() + " goes with " + a.part() + " of the " + a.outcome().label());
 * }
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Association {
    private final Metric outcome;
    private final Metric candidate;
    private final TestResult slope;
    private final TestResult outcomeDifference;
    private final TestResult candidateDifference;
    private final Estimate part;
    private final double adjustedP;
    private final List<Warning> warnings;

    Association(
            Metric outcome,
            Metric candidate,
            TestResult slope,
            TestResult outcomeDifference,
            TestResult candidateDifference,
            Estimate part,
            double adjustedP,
            List<Warning> warnings) {
        this.outcome = outcome;
        this.candidate = candidate;
        this.slope = slope;
        this.outcomeDifference = outcomeDifference;
        this.candidateDifference = candidateDifference;
        this.part = part;
        this.adjustedP = adjustedP;
        this.warnings = List.copyOf(warnings);
    }

    Association withAdjustedP(double p) {
        return new Association(outcome, candidate, slope, outcomeDifference, candidateDifference, part, p, warnings);
    }

    /**
     * What may have been moved.
     *
     * @return start direction, curve, side, carry or ball speed
     */
    public Metric outcome() {
        return outcome;
    }

    /**
     * What it goes with.
     *
     * @return the candidate
     */
    public Metric candidate() {
        return candidate;
    }

    /**
     * The change of the outcome per unit of the candidate within the clubs: least squares about the mean of each club, with
     * shots - 3 degrees of freedom; of pairs, least squares with an effect of each club and each pair, which is that of the
     * differences within pairs about their mean, with pairs - 2 degrees of freedom.
     *
     * @return the slope [SI unit of the outcome per SI unit of the candidate; the estimate carries no unit]
     */
    public TestResult slope() {
        return slope;
    }

    /**
     * The difference of the outcome, of the shots that have both readings.
     *
     * @return the difference of the means, first minus second [SI]
     */
    public TestResult outcomeDifference() {
        return outcomeDifference;
    }

    /**
     * The difference of the candidate, of the shots that have both readings.
     *
     * @return the difference of the means, first minus second [SI]
     */
    public TestResult candidateDifference() {
        return candidateDifference;
    }

    /**
     * The part of the outcome's difference that goes with the candidate: slope times difference. Its standard error is that
     * of a product of two independent estimates (Goodman 1960), its interval that of t with the smaller degrees of freedom.
     * Measured coverage at 95 % with 10 + 10 normal shots: 94.8 % (both far from 0) to 100 % (both 0).
     *
     * @return the part, first minus second [SI unit of the outcome]
     */
    public Estimate part() {
        return part;
    }

    /**
     * The degrees of freedom of the interval of {@link #part()}: the smaller of those of slope and difference.
     *
     * @return the number, or empty if the part has no interval
     */
    public OptionalDouble partDegreesOfFreedom() {
        return slope.statistic().isEmpty() || candidateDifference.statistic().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.min(
                        slope.degreesOfFreedom().get(0),
                        candidateDifference.degreesOfFreedom().get(0)));
    }

    /**
     * How {@link #part()} was found.
     *
     * @return one line of text
     */
    public String partMethod() {
        return "slope times difference of the candidate, by Goodman's variance of a product and Student's t";
    }

    /**
     * The p of the slope, by Holm over the candidates of the same outcome only: over several outcomes there is no adjustment,
     * so with five of them one false slope in up to five times as many sessions is to be expected.
     *
     * @return in [0, 1]
     */
    public double adjustedP() {
        return adjustedP;
    }

    /**
     * Whether something can be said: the slope is not zero by {@link #adjustedP()} and the interval of the part excludes 0.
     *
     * @return true if so
     */
    public boolean clear() {
        return adjustedP <= 1.0 - part.interval().level()
                && part.interval().bounded()
                && !part.interval().contains(0.0);
    }

    /**
     * How many shots were used, all of which have both readings.
     *
     * @return the number of both clubs together
     */
    public int shots() {
        return slope.sampleSizes().get(0);
    }

    /**
     * What to know.
     *
     * @return the warnings, often none
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return candidate.label() + " goes with " + part + " of " + outcome.label();
    }
}
