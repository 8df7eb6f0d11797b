package dev.teeward.fitting.compare;

import java.util.Arrays;
import java.util.Comparator;

/**
 * p values adjusted for having looked at several metrics. Use {@link #HOLM} for the metrics beside the primary one, which
 * is declared beforehand and stays out of the adjustment.
 *
 * <pre>{@code
 * double[] adjusted = PValueAdjustment.HOLM.adjust(0.012, 0.20, 0.041); // 0.036, 0.20, 0.082
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum PValueAdjustment {
    /** Family-wise error, any dependence, step-down (Holm 1979). */
    HOLM,

    /** Family-wise error, independent or positively dependent p, step-up (Hochberg 1988). */
    HOCHBERG,

    /** Family-wise error, as Hochberg and never weaker (Hommel 1988). */
    HOMMEL,

    /** Family-wise error, any dependence, never stronger than Holm. */
    BONFERRONI,

    /** False discovery rate, independent or positively dependent p (Benjamini and Hochberg 1995). */
    BENJAMINI_HOCHBERG,

    /** False discovery rate, any dependence (Benjamini and Yekutieli 2001). */
    BENJAMINI_YEKUTIELI;

    /**
     * Adjusts.
     *
     * @param p the p values, each in [0, 1]; possibly none
     * @return the adjusted p values in the same order, each in [0, 1]
     * @throws IllegalArgumentException if a p value is not in [0, 1]
     */
    public double[] adjust(double... p) {
        int n = p.length;
        Integer[] order = new Integer[n];
        for (int i = 0; i < n; i++) {
            if (!(p[i] >= 0.0 && p[i] <= 1.0)) {
                throw new IllegalArgumentException("p[" + i + "] must be in [0, 1], but was " + p[i]);
            }
            order[i] = i;
        }
        Arrays.sort(order, Comparator.comparingDouble(i -> p[i]));
        double[] sorted = new double[n];
        Arrays.setAll(sorted, i -> p[order[i]]);
        double[] stepped = this == HOMMEL ? hommel(sorted) : step(sorted);
        double[] adjusted = new double[n];
        for (int i = 0; i < n; i++) {
            adjusted[order[i]] = Math.min(1.0, stepped[i]);
        }
        return adjusted;
    }

    private double[] step(double[] sorted) {
        int n = sorted.length;
        double[] q = new double[n];
        double harmonic = 0.0;
        for (int i = 1; i <= n; i++) {
            harmonic += 1.0 / i;
        }
        for (int i = 0; i < n; i++) {
            double factor = this == BONFERRONI
                    ? n
                    : this == HOLM || this == HOCHBERG
                            ? n - i
                            : this == BENJAMINI_HOCHBERG ? n / (i + 1.0) : harmonic * n / (i + 1.0);
            q[i] = factor * sorted[i];
        }
        if (this == HOLM) {
            for (int i = 1; i < n; i++) {
                q[i] = Math.max(q[i], q[i - 1]);
            }
        } else if (this != BONFERRONI) {
            for (int i = n - 2; i >= 0; i--) {
                q[i] = Math.min(q[i], q[i + 1]);
            }
        }
        return q;
    }

    /**
     * The smallest level at which the closed test by Simes rejects each hypothesis: a sweep over the sizes of subsets
     * (Wright 1992), O(n^2).
     */
    private static double[] hommel(double[] sorted) {
        int n = sorted.length;
        double[] adjusted = sorted.clone();
        for (int size = n; size > 1; size--) {
            double tail = leastOfTail(sorted, size);
            double least = Math.min(tail, size * sorted[n - size]);
            for (int i = 0; i < n; i++) {
                // The smallest p of the subset is sorted[i], the others are the largest ones.
                double candidate = i >= n - size ? least : Math.min(tail, size * sorted[i]);
                adjusted[i] = Math.max(adjusted[i], candidate);
            }
        }
        return adjusted;
    }

    /** Simes over a subset of a given size without its smallest member: the largest size - 1 values, from rank 2 on. */
    private static double leastOfTail(double[] sorted, int size) {
        int n = sorted.length;
        double least = Double.POSITIVE_INFINITY;
        for (int j = 2; j <= size; j++) {
            least = Math.min(least, size * sorted[n - size + j - 1] / j);
        }
        return least;
    }
}
