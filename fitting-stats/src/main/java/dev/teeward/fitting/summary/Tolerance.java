package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.GaussLegendre;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Factors for regions that hold at least a given share of all future shots with a given confidence (Wilks 1941, Wald and
 * Wolfowitz 1946; Hahn and Meeker 1991), for normal shots.
 *
 * <p>One metric: mean - k s is a bound that at least the share lies above (one-sided, from the noncentral t with n - 1
 * degrees of freedom: k = t_confidence(z_share sqrt n) / sqrt n), and mean +- k s holds at least the share (two-sided, by
 * the exact integral over the mean; Howe's 1969 closed form is given for comparison). Landing patterns: the ellipse (x -
 * mean)' S^-1 (x - mean) at most k^2, by seeded simulation, since there is no closed form. A prediction ellipse for the next
 * shot is smaller: {@link EllipseKind#PREDICTION}.
 *
 * <pre>{@code
 * Tolerance nine = Tolerance.of(0.9, 0.95);
 * nine.twoSided(10); // 2.8563: mean +- 2.8563 s holds nine tenths of all shots, with 95 % confidence
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Tolerance {
    private static final GaussLegendre RULE = new GaussLegendre(24);
    private static final double REACH = 9.0;

    private final double share;
    private final double confidence;

    private Tolerance(double share, double confidence) {
        this.share = share;
        this.confidence = confidence;
    }

    /**
     * A demand.
     *
     * @param share the share of all future shots to hold, in (0, 1)
     * @param confidence with what confidence, in (0, 1)
     * @return the factors for it
     * @throws IllegalArgumentException if one is not in (0, 1)
     */
    public static Tolerance of(double share, double confidence) {
        return new Tolerance(Data.checkLevel(share), Data.checkLevel(confidence));
    }

    private static void checkSize(int n, int least) {
        if (n < least) {
            throw new IllegalArgumentException("n must be at least " + least + ", but was " + n);
        }
    }

    /**
     * The factor of a bound on one side.
     *
     * @param n the number of shots, at least 2
     * @return k
     * @throws IllegalArgumentException if n is below 2
     */
    public double oneSided(int n) {
        checkSize(n, 2);
        double root = Math.sqrt(n);
        return NoncentralT.quantile(confidence, n - 1.0, Distributions.normalQuantile(share) * root) / root;
    }

    /**
     * The factor of bounds on both sides.
     *
     * @param n the number of shots, at least 2
     * @return k
     * @throws IllegalArgumentException if n is below 2
     */
    public double twoSided(int n) {
        checkSize(n, 2);
        double start = twoSidedByHowe(n);
        double low = 0.5 * start;
        double high = 2.0 * start;
        while (held(high, n) < confidence) {
            high *= 2.0;
        }
        while (held(low, n) > confidence) {
            low *= 0.5;
        }
        return NoncentralT.root(k -> held(k, n) - confidence, low, high);
    }

    /** The confidence of k: over the mean's error z / sqrt n, the chance that s is large enough. */
    private double held(double k, int n) {
        double df = n - 1.0;
        return 2.0
                * RULE.integrate(
                        z -> {
                            double r = halfWidth(z / Math.sqrt(n));
                            double density = Math.exp(-0.5 * z * z) / Math.sqrt(2.0 * Math.PI);
                            return density * Distributions.chiSquareUpperTail(df * r * r / (k * k), df);
                        },
                        0.0,
                        REACH,
                        6);
    }

    /** The r at which the interval c +- r holds the share of a standard normal. */
    private double halfWidth(double c) {
        double start = Distributions.normalQuantile(0.5 + 0.5 * share);
        return NoncentralT.root(
                r -> Distributions.normalCdf(c + r) - Distributions.normalCdf(c - r) - share, 0.0, start + c + 1.0);
    }

    /**
     * Howe's closed form of the two-sided factor (1969): sqrt((n - 1) (1 + 1/n) z^2 / chi-square), z of half the share from the
     * middle and chi-square of 1 - confidence with n - 1 degrees of freedom.
     *
     * @param n the number of shots, at least 2
     * @return k, to about 1 %
     * @throws IllegalArgumentException if n is below 2
     */
    public double twoSidedByHowe(int n) {
        checkSize(n, 2);
        double z = Distributions.normalQuantile(0.5 + 0.5 * share);
        return Math.sqrt(
                (n - 1.0) * (1.0 + 1.0 / n) * z * z / Distributions.chiSquareQuantile(1.0 - confidence, n - 1.0));
    }

    /**
     * Natrella's closed form of the one-sided factor (1963, as in the NIST/SEMATECH e-Handbook 7.2.6.3): (z_p + sqrt(z_p^2 - a
     * b)) / a with a = 1 - z_c^2 / (2 (n - 1)) and b = z_p^2 - z_c^2 / n.
     *
     * @param n the number of shots, at least 2
     * @return k, to about 0.1 % from 40 shots
     * @throws IllegalArgumentException if n is below 2 or too small for the formula, whose a must be above 0
     */
    public double oneSidedByNatrella(int n) {
        checkSize(n, 2);
        double zp = Distributions.normalQuantile(share);
        double zc = Distributions.normalQuantile(confidence);
        double a = 1.0 - zc * zc / (2.0 * (n - 1.0));
        double b = zp * zp - zc * zc / n;
        if (!(a > 0.0)) {
            throw new IllegalArgumentException(
                    "n must be above " + (1.0 + 0.5 * zc * zc) + " for this formula, but was " + n + "; use oneSided");
        }
        return (zp + Math.sqrt(zp * zp - a * b)) / a;
    }

    /**
     * The squared factor of a tolerance ellipse, by simulation of samples from a circular normal, which the answer does not
     * depend on.
     *
     * @param n the number of shots, at least 4
     * @param samples how many samples to simulate, at least 999; 9,999 give about two digits
     * @param seed the seed; the same seed gives the same factor
     * @return k^2, as of {@link EllipseKind#scale}
     * @throws IllegalArgumentException if n is below 4 or samples below 999
     */
    public double ellipse(int n, int samples, long seed) {
        checkSize(n, 4);
        if (samples < 999) {
            throw new IllegalArgumentException("samples must be at least 999, but was " + samples);
        }
        SplittableRandom random = new SplittableRandom(seed);
        double[] squared = new double[samples];
        double[] x = new double[n];
        double[] y = new double[n];
        for (int r = 0; r < samples; r++) {
            for (int i = 0; i < n; i++) {
                x[i] = random.nextGaussian();
                y[i] = random.nextGaussian();
            }
            SymmetricMatrix2 s = SymmetricMatrix2.covarianceOf(x, y);
            double mx = Arrays.stream(x).average().orElseThrow();
            double my = Arrays.stream(y).average().orElseThrow();
            // (Z - m)' S^-1 (Z - m) is the squared length of L^-1 (Z - m), normal with covariance (L'L)^-1.
            double l11 = Math.sqrt(s.xx());
            double l21 = s.xy() / l11;
            double l22 = Math.sqrt(s.determinant() / s.xx());
            double a = 1.0 / l11;
            double c = 1.0 / l22;
            double b = -l21 / (l11 * l22);
            SymmetricMatrix2 covariance = new SymmetricMatrix2(a * a, a * b, b * b + c * c);
            double radius = DiscProbability.of(covariance, -a * mx, -b * mx - c * my)
                    .coarse()
                    .radius(share);
            squared[r] = radius * radius;
        }
        Arrays.sort(squared);
        return squared[(int) Math.min(samples - 1.0, Math.ceil(confidence * (samples + 1.0)) - 1.0)];
    }
}
