package dev.teeward.flight.study;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.solvers.IllinoisSolver;
import org.hipparchus.exception.MathIllegalStateException;

/**
 * How far a number of the delivery can go before chi-square, everything else adjusted to it, has risen by the square of a
 * normal quantile.
 *
 * <p>The number is pulled outwards by one more measurement, of a place further out and with a small deviation: whatever the
 * fit then yields is the best fit for the number that it yields. To first order nothing is gained over the deviation; but the
 * ball speed falls with the square of a strike off the centre, so that a strike is seen to first order nowhere near it.
 */
final class ImpactProfile {
    /** How many times tighter than the first-order deviation the pull is. */
    private static final double TIGHT = 10.0;

    /** As straight as makes no difference: the root of the rise at the first-order end, in standard deviations. */
    private static final double STRAIGHT = 0.02;

    /** Further than this many units first order says nothing of a strike, an angle or a speed. */
    private static final double FAR = 5.0;

    private static final double EXACT = 5e-3;
    private static final int MOST_STEPS = 40;

    private final ImpactAdjustment fit;
    private final ToDoubleFunction<double[]> value;
    private final double quantile;
    private final double deviation;

    /**
     * Of a number that is determined.
     *
     * @param fit the best fit
     * @param value the number
     * @param quantile the root of the rise that is allowed
     */
    ImpactProfile(ImpactAdjustment fit, ToDoubleFunction<double[]> value, double quantile) {
        this.fit = fit;
        this.value = value;
        this.quantile = quantile;
        deviation = Math.min(FAR, fit.deviation(value));
    }

    /** The least that is not refuted (sign -1), or the greatest (sign 1), from the best answer and from the furthest. */
    double end(double sign) {
        Comparator<double[]> outwards = Comparator.comparingDouble(x -> sign * value.applyAsDouble(x));
        List<double[]> possible =
                fit.answers().stream().filter(x -> root(x) < quantile).toList();
        double[] furthest = possible.stream().max(outwards).orElse(fit.delivery());
        double end = walk(fit.delivery(), sign);
        double beyond = sign * (value.applyAsDouble(furthest) - value.applyAsDouble(fit.delivery()));
        return beyond > EXACT * deviation ? sign * Math.max(sign * end, sign * walk(furthest, sign)) : end;
    }

    private double walk(double[] from, double sign) {
        double origin = value.applyAsDouble(from);
        if (!(deviation > 0.0)) {
            return origin;
        }
        double first = quantile * deviation * (1.0 + 1.0 / (TIGHT * TIGHT));
        double inside = 0.0;
        double step = first;
        double[] near = from;
        try {
            for (int i = 0; i < MOST_STEPS; i++) {
                double[] next = pulled(origin + sign * step, near);
                double moved = sign * (value.applyAsDouble(next) - origin);
                double miss = root(next) - quantile;
                double before = root(from);
                if (i == 0 && Math.abs(miss) < STRAIGHT && before < 0.5 * quantile) {
                    return origin + sign * moved * (quantile - before) / (root(next) - before);
                }
                if (miss >= 0.0) {
                    return narrowed(origin, sign, inside, step, near, next);
                }
                if (moved < 0.5 * step) {
                    return value.applyAsDouble(next); // at the end of its range
                }
                inside = step;
                near = next;
                step = 1.4 * step;
            }
        } catch (MathIllegalStateException e) {
            // No best fit for a number that far out: as far as it was followed.
            return value.applyAsDouble(near) + sign * quantile * deviation;
        }
        return value.applyAsDouble(near);
    }

    private double narrowed(double origin, double sign, double inside, double outside, double[] near, double[] beyond) {
        if (root(pulled(origin + sign * inside, near)) >= quantile) {
            return value.applyAsDouble(beyond); // two valleys meet there
        }
        double step = new IllinoisSolver(EXACT, EXACT * deviation, EXACT)
                .solve(100, s -> root(pulled(origin + sign * s, near)) - quantile, inside, outside);
        return value.applyAsDouble(pulled(origin + sign * step, near));
    }

    private double[] pulled(double to, double[] near) {
        return fit.pulled(value, to, deviation / TIGHT, near);
    }

    private double root(double[] x) {
        return Math.sqrt(Math.max(0.0, fit.chiSquare(x) - fit.chiSquare()));
    }
}
