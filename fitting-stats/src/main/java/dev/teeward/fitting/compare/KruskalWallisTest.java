package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Ranks;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The Kruskal-Wallis test (1952): whether several clubs hit without blocks differ, by the ranks of all shots.
 *
 * <p>H = 12 / (N (N + 1)) sum R_j^2 / n_j - 3 (N + 1), over 1 - sum (t^3 - t) / (N^3 - N) for ties; chi-square with k - 1
 * degrees of freedom, good from about five shots a club. For shots in rounds use {@link FriedmanTest}. Warning
 * {@code no-spread} if all values are equal.
 *
 * <pre>{@code
 * OmnibusResult r = KruskalWallisTest.withDefaults().test(alder, rowan, hazel);
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class KruskalWallisTest {
    private static final String METHOD = "Kruskal-Wallis test with tie correction, chi-square";
    private static final KruskalWallisTest DEFAULTS = new KruskalWallisTest();

    private KruskalWallisTest() {}

    /**
     * The test; there is nothing to set.
     *
     * @return the default test
     */
    public static KruskalWallisTest withDefaults() {
        return DEFAULTS;
    }

    /**
     * Tests.
     *
     * @param groups at least two clubs, each of at least one number, all finite
     * @return H and p
     * @throws IllegalArgumentException if there are fewer than two clubs, one is empty or a number is not finite
     */
    public OmnibusResult test(double[]... groups) {
        List<Sample> samples = Groups.of(groups);
        List<Integer> sizes = Groups.sizes(samples);
        int[] ranks = Groups.doubledMidranks(samples);
        double n = ranks.length;
        double sum = 0.0;
        int from = 0;
        for (int size : sizes) {
            double own = 0.0;
            for (int i = from; i < from + size; i++) {
                own += 0.5 * ranks[i] - 0.5 * (n + 1.0);
            }
            sum += own * own / size;
            from += size;
        }
        double free = n * n * n - n - Ranks.tieTerm(ranks);
        if (!(free > 0.0)) {
            return OmnibusResult.unanswered(METHOD, "H", sizes, Warning.of("no-spread", "all shots are equal"));
        }
        double h = 12.0 * sum * (n - 1.0) / free;
        double df = sizes.size() - 1.0;
        return new OmnibusResult(
                METHOD,
                "H",
                OptionalDouble.of(h),
                List.of(df),
                Distributions.chiSquareUpperTail(h, df),
                sizes,
                List.of());
    }
}
