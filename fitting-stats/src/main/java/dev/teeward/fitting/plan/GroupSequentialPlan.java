package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.GaussLegendre;
import dev.teeward.fitting.internal.NoncentralT;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * Two to ten looks at a session while it runs, planned beforehand, with one false-alarm rate for all of them.
 *
 * <p>{@link Shape#POCOCK}: the same z at every look (Pocock 1977). {@link Shape#OBRIEN_FLEMING}: z = C sqrt(1 / t) with t the
 * share of the shots so far, so that early stops need much (O'Brien and Fleming 1979). {@link Shape#SPENDING}: the error spent
 * until t is 4 - 4 Phi(z_(1 - alpha/4) / sqrt t), which allows looks at other times than planned (Lan and DeMets 1983).
 * Crossing probabilities by recursive quadrature (Armitage, McPherson and Rowe 1969), to about 1e-11.
 *
 * <p>The bounds are for a normal statistic; for t compare the t test's p with {@link Look#nominalP()} (Jennison and Turnbull
 * 2000, from memory), which is slightly lively below ten pairs. Stopping early overstates the difference. To look after
 * every pair use an always-valid test instead.
 *
 * <pre>{@code
 * GroupSequentialPlan plan = GroupSequentialPlan.withDefaults();
 * List<GroupSequentialPlan.Look> looks = plan.afterShots(8, 12, 16);
 * looks.get(0).nominalP(); // stop after 8 pairs if the paired t test's p is not above this
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GroupSequentialPlan {
    private static final int MOST_LOOKS = 10;
    private static final GaussLegendre RULE = new GaussLegendre(20);
    private static final int PANELS = 10;

    /** The upper tail of a normal here is the smallest that a double can tell from 0. */
    private static final double LARGEST = 38.0;

    private static final GroupSequentialPlan DEFAULTS = new GroupSequentialPlan(0.05, Shape.SPENDING);

    private final double alpha;
    private final Shape shape;

    private GroupSequentialPlan(double alpha, Shape shape) {
        this.alpha = alpha;
        this.shape = shape;
    }

    /** How the error is shared among the looks. */
    public enum Shape {
        /** The same bound at every look. */
        POCOCK,

        /** High bounds early, nearly the usual one at the end. */
        OBRIEN_FLEMING,

        /** As O'Brien and Fleming by a spending function; looks may move. */
        SPENDING
    }

    /**
     * One look.
     *
     * @param share the share of the shots so far, in (0, 1]
     * @param bound stop if the size of the normal statistic reaches this
     * @param nominalP the two-sided p that belongs to the bound
     * @param spent the false-alarm rate up to and with this look
     */
    public record Look(double share, double bound, double nominalP, double spent) {}

    /**
     * Two-sided false-alarm rate 5 %, spending.
     *
     * @return the default plan
     */
    public static GroupSequentialPlan withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another two-sided false-alarm rate.
     *
     * @param alpha the rate, in [0.0001, 0.5]
     * @return a changed copy
     * @throws IllegalArgumentException if the rate lies outside
     */
    public GroupSequentialPlan withAlpha(double alpha) {
        if (!(alpha >= 1e-4 && alpha <= 0.5)) {
            throw new IllegalArgumentException("alpha must be in [0.0001, 0.5], but was " + alpha + "; 5 % is 0.05");
        }
        return new GroupSequentialPlan(alpha, shape);
    }

    /**
     * With another shape.
     *
     * @param shape the shape
     * @return a changed copy
     */
    public GroupSequentialPlan withShape(Shape shape) {
        return new GroupSequentialPlan(alpha, Objects.requireNonNull(shape, "shape"));
    }

    /**
     * Equally spaced looks.
     *
     * @param looks how many, in [1, 10]
     * @return the looks
     * @throws IllegalArgumentException if the number lies outside
     */
    public List<Look> equallySpaced(int looks) {
        if (looks < 1 || looks > MOST_LOOKS) {
            throw new IllegalArgumentException("looks must be in [1, " + MOST_LOOKS + "], but were " + looks);
        }
        int[] after = new int[looks];
        Arrays.setAll(after, k -> k + 1);
        return afterShots(after);
    }

    /**
     * Looks after given numbers of shots or pairs; the last one is the end.
     *
     * @param shots one to ten numbers, the first at least 1, rising
     * @return the looks
     * @throws IllegalArgumentException if they are not one to ten, not above 0 or not rising
     */
    public List<Look> afterShots(int... shots) {
        int k = shots.length;
        boolean rising = k > 0 && shots[0] > 0;
        for (int i = 1; i < k; i++) {
            rising &= shots[i] > shots[i - 1];
        }
        if (!rising || k > MOST_LOOKS) {
            throw new IllegalArgumentException("looks must be 1 to " + MOST_LOOKS
                    + " rising numbers of shots above 0, but were " + Arrays.toString(shots));
        }
        double[] share =
                Arrays.stream(shots).mapToDouble(s -> s / (double) shots[k - 1]).toArray();
        double[] bounds = new double[k];
        if (shape == Shape.SPENDING) {
            for (int i = 0; i < k; i++) {
                double target = spending(share[i]) - (i > 0 ? spending(share[i - 1]) : 0.0);
                int look = i;
                DoubleUnaryOperator excess = c -> {
                    double[] tried = Arrays.copyOf(bounds, look + 1);
                    tried[look] = c;
                    return crossing(tried, share)[look] - target;
                };
                bounds[i] = excess.applyAsDouble(LARGEST) >= 0.0 ? LARGEST : NoncentralT.root(excess, 0.1, LARGEST);
            }
        } else {
            double c = NoncentralT.root(
                    v -> Arrays.stream(crossing(shaped(v, share), share)).sum() - alpha, 0.5, 10.0);
            System.arraycopy(shaped(c, share), 0, bounds, 0, k);
        }
        double[] crossed = crossing(bounds, share);
        List<Look> looks = new ArrayList<>();
        double spent = 0.0;
        for (int i = 0; i < k; i++) {
            spent += crossed[i];
            looks.add(new Look(share[i], bounds[i], 2.0 * Distributions.normalUpperTail(bounds[i]), spent));
        }
        return looks;
    }

    private double[] shaped(double c, double[] share) {
        return Arrays.stream(share)
                .map(t -> shape == Shape.POCOCK ? c : c / Math.sqrt(t))
                .toArray();
    }

    private double spending(double t) {
        return 4.0 * Distributions.normalUpperTail(Distributions.normalQuantile(1.0 - 0.25 * alpha) / Math.sqrt(t));
    }

    /** The chance to cross at each look for the first time, without a difference. */
    private static double[] crossing(double[] bounds, double[] share) {
        double[] found = new double[bounds.length];
        found[0] = 2.0 * Distributions.normalUpperTail(bounds[0]);
        Inside inside = Inside.first(bounds[0], share[0]);
        for (int k = 1; k < bounds.length; k++) {
            double step = Math.sqrt(share[k] - share[k - 1]);
            double reach = bounds[k] * Math.sqrt(share[k]);
            Inside before = inside;
            found[k] = before.expectation(s -> Distributions.normalUpperTail((reach - s) / step)
                    + Distributions.normalUpperTail((reach + s) / step));
            if (k + 1 < bounds.length) {
                inside = Inside.next(before, reach, step);
            }
        }
        return found;
    }

    /** The sums that have not crossed, with their weights. */
    private static final class Inside {
        private final double[] sums;
        private final double[] weights;

        private Inside(double[] sums, double[] weights) {
            this.sums = sums;
            this.weights = weights;
        }

        static Inside first(double bound, double share) {
            double root = Math.sqrt(share);
            return over(bound * root, s -> density(s / root) / root);
        }

        static Inside next(Inside before, double reach, double step) {
            return over(reach, s -> before.expectation(u -> density((s - u) / step) / step));
        }

        private static Inside over(double reach, DoubleUnaryOperator density) {
            List<double[]> nodes = new ArrayList<>();
            // Beyond 9 standard deviations of a sum that is at most 1 wide there is nothing.
            double end = Math.min(reach, 9.0);
            RULE.visit(-end, end, PANELS, (x, w) -> nodes.add(new double[] {x, w * density.applyAsDouble(x)}));
            return new Inside(
                    nodes.stream().mapToDouble(n -> n[0]).toArray(),
                    nodes.stream().mapToDouble(n -> n[1]).toArray());
        }

        double expectation(DoubleUnaryOperator f) {
            double sum = 0.0;
            for (int i = 0; i < sums.length; i++) {
                sum += weights[i] * f.applyAsDouble(sums[i]);
            }
            return sum;
        }

        private static double density(double z) {
            return Math.exp(-0.5 * z * z) / Math.sqrt(2.0 * Math.PI);
        }
    }
}
