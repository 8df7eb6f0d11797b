package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Median;

/**
 * Spreads and a centre of one metric that a few mishits hardly move: median absolute deviation (Hampel 1974), Qn and Sn
 * (Rousseeuw and Croux 1993), Huber's M-estimate of the centre (1964).
 *
 * <p>MAD = 1.4826 med |x - med x|. Qn = 2.21914 d_n times the k-th smallest |x_i - x_j|, k = h (h - 1) / 2 with h = n/2 + 1; Sn =
 * 1.1926 c_n lomed_i himed_j |x_i - x_j|. The small-sample factors c_n, d_n are those of Croux and Rousseeuw (1992; from
 * memory, the table to twelve shots checked at ten against R, the formulas beyond by simulation). Qn and Sn need no centre and waste less than the MAD (82 and 58 % efficiency against 37 %); all
 * bear up to half of the shots gone wild. A share of at least half equal shots gives 0.
 *
 * <pre>{@code
 * RobustSpread s = RobustSpread.of(carry);
 * s.qn();           // a standard deviation for normal shots
 * s.hampelScores(); // above 3.5 a shot is suspicious
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class RobustSpread {
    private static final double MAD_FACTOR = 1.4826;
    private static final double QN_FACTOR = 2.21914;
    private static final double SN_FACTOR = 1.1926;
    private static final int MOST_SHOTS = 5_000;

    /** For 2 to 12 values. */
    private static final double[] QN_SMALL = {
        0.399356, 0.99365, 0.51321, 0.84401, 0.61220, 0.85877, 0.66993, 0.87344, 0.72014, 0.88906, 0.75743
    };

    /** For 2 to 9 values. */
    private static final double[] SN_SMALL = {0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131};

    private final double[] values;
    private final double median;
    private final double rawMad;

    private RobustSpread(double[] values) {
        this.values = values;
        median = median(values);
        rawMad = median(Arrays.stream(values).map(v -> Math.abs(v - median)).toArray());
    }

    /**
     * The spreads of a sample.
     *
     * @param values 2 to 5,000 finite numbers
     * @return the spreads
     * @throws IllegalArgumentException if there are fewer or more, or one is not finite
     */
    public static RobustSpread of(double... values) {
        Data.check("values", values, 2);
        if (values.length > MOST_SHOTS) {
            throw new IllegalArgumentException("values must be at most " + MOST_SHOTS + ", but were " + values.length);
        }
        return new RobustSpread(values.clone());
    }

    private static double median(double[] x) {
        return Median.withDefaults().withCopy(true).evaluate(x);
    }

    /**
     * The median absolute deviation as it is.
     *
     * @return the median distance from the median, in the unit of the values
     */
    public double rawMad() {
        return rawMad;
    }

    /**
     * The median absolute deviation, scaled to the standard deviation of normal values.
     *
     * @return 1.4826 times the raw one
     */
    public double mad() {
        return MAD_FACTOR * rawMad;
    }

    /**
     * Qn, scaled to the standard deviation of normal values.
     *
     * @return Qn, in the unit of the values
     */
    public double qn() {
        int n = values.length;
        double[] distances = new double[n * (n - 1) / 2];
        int filled = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                distances[filled++] = Math.abs(values[i] - values[j]);
            }
        }
        Arrays.sort(distances);
        int h = n / 2 + 1;
        double kth = distances[h * (h - 1) / 2 - 1];
        double small = n <= 12
                ? QN_SMALL[n - 2]
                : n % 2 == 1
                        ? 1.0 / (1.0 + (1.60188 + (-2.1284 - 5.172 / n) / n) / n)
                        : 1.0 / (1.0 + (3.67561 + (1.9654 + (6.987 - 77.0 / n) / n) / n) / n);
        return QN_FACTOR * small * kth;
    }

    /**
     * Sn, scaled to the standard deviation of normal values.
     *
     * @return Sn, in the unit of the values
     */
    public double sn() {
        int n = values.length;
        double[] high = new double[n];
        double[] distances = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                distances[j] = Math.abs(values[i] - values[j]);
            }
            Arrays.sort(distances);
            high[i] = distances[n / 2];
        }
        Arrays.sort(high);
        double small = n <= 9 ? SN_SMALL[n - 2] : n % 2 == 1 ? n / (n - 0.9) : 1.0;
        return SN_FACTOR * small * high[(n + 1) / 2 - 1];
    }

    /**
     * How far each value lies from the median, in units of the MAD.
     *
     * @return |x - median| / MAD for each value; 0 for all if the MAD is 0
     */
    public double[] hampelScores() {
        return Arrays.stream(values)
                .map(v -> rawMad > 0.0 ? Math.abs(v - median) / mad() : 0.0)
                .toArray();
    }

    /**
     * Huber's M-estimate of the centre with the MAD as the spread: the mean of the values after those farther than k MAD are
     * moved there.
     *
     * @param k from how many MAD on a value counts less, above 0; 1.5 as a rule
     * @return the centre, in the unit of the values; the median if the MAD is 0
     * @throws IllegalArgumentException if k is not above 0
     */
    public double huberCenter(double k) {
        if (!(k > 0.0) || Double.isInfinite(k)) {
            throw new IllegalArgumentException("k must be finite and above 0, but was " + k + "; 1.5 is usual");
        }
        double reach = k * mad();
        double center = median;
        for (int step = 0; step < 1_000 && reach > 0.0; step++) {
            double at = center;
            double next = Arrays.stream(values)
                    .map(v -> Math.max(at - reach, Math.min(at + reach, v)))
                    .average()
                    .orElseThrow();
            center = next;
            if (Math.abs(next - at) <= 1e-15 * Math.max(reach, Math.abs(next))) {
                break;
            }
        }
        return center;
    }
}
