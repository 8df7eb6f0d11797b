package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;

/**
 * The drift of a metric over the session: warming up or tiring, by least squares on the shot order with each club at its
 * own level.
 *
 * <p>Model: value = level of the club + slope * order + error. The slope is that of the values on the order, both taken from
 * their club's mean; its t has shots - clubs - 1 degrees of freedom. The estimate is per ten shots, in the unit of the
 * values. Warm-up and fatigue together are not a straight line: look at the shots too.
 *
 * <pre>{@code
 * TestResult r = Drift.withDefaults().withUnit(LengthUnit.YARD).test(carries, ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0));
 * r.estimate(); // yards per ten shots
 * r.warnings(); // also those of the order
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Drift extends HypothesisTest<Drift> {
    private static final double PER = 10.0;
    private static final Drift DEFAULTS = new Drift(Options.DEFAULTS);

    private Drift(Options options) {
        super(options);
    }

    /**
     * Two-sided, 95 %, null value 0.
     *
     * @return the default procedure
     */
    public static Drift withDefaults() {
        return DEFAULTS;
    }

    @Override
    Drift copy(Options changed) {
        return new Drift(changed);
    }

    /**
     * Estimates the drift.
     *
     * @param values the metric of each shot in the order hit, all finite
     * @param order the clubs in the same order
     * @return the slope per ten shots with its interval, t, degrees of freedom, p, and the warnings of the order
     * @throws IllegalArgumentException if the lengths differ or a value is not finite
     */
    public TestResult test(double[] values, ShotOrder order) {
        Sample all = Sample.of("values", values);
        int n = all.size();
        double[] within = order.residuals(values).toArray();
        double[] places = places(order);
        double sxx = Moments.products(places, places);
        double slope = sxx > 0.0 ? Moments.products(places, within) / sxx : 0.0;
        double[] residuals = new double[n];
        for (int i = 0; i < n; i++) {
            residuals[i] = within[i] - slope * places[i];
        }
        double squares = Moments.products(residuals, residuals);
        double df = n - order.clubs() - 1.0;
        TestResult.Draft draft = new TestResult.Draft(
                        "least-squares slope on the shot order within clubs, per ten shots, "
                                + options.alternative().words(),
                        "t",
                        options)
                .sizes(n);
        order.warnings().forEach(w -> draft.warn(w.code(), w.message()));
        if (!(df > 0.0) || !(sxx > 0.0)) {
            return draft.warn("too-few-shots", "too few shots for a slope beside the level of each club")
                    .unanswered(PER * slope);
        }
        double rounding = 4.0 * all.tieTolerance() * Math.sqrt(n);
        if (Math.sqrt(squares) <= rounding) {
            return draft.warn("no-spread", "the values lie on the line exactly, so there is no measure of error")
                    .unanswered(PER * slope);
        }
        Sample left = Sample.of("residuals", residuals);
        if (left.lagOneAutocorrelation() > 2.0 / Math.sqrt(n)) {
            draft.warn("serial-dependence", "successive shots resemble each other, so the interval may be too short");
        }
        double error = PER * Math.sqrt(squares / df / sxx);
        return new Moments.Pivot(PER * slope, error, df).result(draft, options);
    }

    /** How many shots after the mean of its club each was hit. */
    private static double[] places(ShotOrder order) {
        double[] places = new double[order.size()];
        for (int i = 0; i < places.length; i++) {
            places[i] = i + 1 - order.meanPosition(order.club(i));
        }
        return places;
    }
}
