package dev.teeward.fitting.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Quantiles against the distribution functions of Commons Statistics, which they invert, and closed forms. */
class DistributionsTest {
    private static final double[] DF = {1.0, 1.5, 2.0, 2.2, 3.0, 4.5, 9.0, 18.0, 37.3, 200.0, 5_000.0};
    private static final double[] P = {
        1e-10, 1e-6, 0.001, 0.025, 0.05, 0.2, 0.4, 0.5, 0.6, 0.9, 0.975, 0.9995, 1.0 - 1e-8
    };

    private static void inverts(ContinuousDistribution distribution, double q, double p, String what) {
        double reached = p <= 0.5 ? distribution.cumulativeProbability(q) : distribution.survivalProbability(q);
        double wanted = p <= 0.5 ? p : 1.0 - p;
        assertEquals(wanted, reached, 2e-12 * wanted, what);
    }

    @Test
    void quantilesInvertTheDistributionFunctions() {
        for (double df : DF) {
            for (double p : P) {
                String what = df + " degrees of freedom at " + p;
                inverts(TDistribution.of(df), Distributions.tQuantile(p, df), p, "t, " + what);
                inverts(
                        ChiSquaredDistribution.of(df),
                        Distributions.chiSquareQuantile(p, df),
                        p,
                        "chi-square, " + what);
                for (double df2 : new double[] {1.0, 3.0, 9.0, 50.0}) {
                    inverts(
                            FDistribution.of(df, df2),
                            Distributions.fQuantile(p, df, df2),
                            p,
                            "F, " + df2 + ", " + what);
                }
            }
        }
    }

    /** t with 1, 2 and 4 degrees of freedom and chi-square with 2 have closed quantiles (any handbook). */
    @Test
    void quantilesMeetClosedForms() {
        for (double p : new double[] {0.001, 0.3, 0.5, 0.8, 0.975, 0.9999}) {
            double product = 4.0 * p * (1.0 - p);
            double two = 2.0 * (p - 0.5) * Math.sqrt(2.0 / product);
            double q = Math.cos(Math.acos(Math.sqrt(product)) / 3.0) / Math.sqrt(product);
            double four = Math.copySign(2.0 * Math.sqrt(Math.max(0.0, q - 1.0)), p - 0.5);
            // The tangent near its pole loses what p less a half does.
            double one = Math.tan(Math.PI * (p - 0.5));
            assertEquals(one, Distributions.tQuantile(p, 1.0), 2e-12 * Math.abs(one));
            assertEquals(two, Distributions.tQuantile(p, 2.0), 1e-14 * Math.abs(two));
            assertEquals(four, Distributions.tQuantile(p, 4.0), 1e-11 * Math.abs(four) + 1e-7 * (p == 0.5 ? 1.0 : 0.0));
            assertEquals(-2.0 * Math.log1p(-p), Distributions.chiSquareQuantile(p, 2.0), 1e-12 * -2.0 * Math.log1p(-p));
        }
    }

    /** 195 quantiles computed by mpmath, 40 digits (distribution_quantiles.py), to what the class states. */
    @Test
    void quantilesMeetMpmath() throws IOException {
        try (InputStream in =
                Objects.requireNonNull(DistributionsTest.class.getResourceAsStream("distribution_quantiles.csv"))) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            assertEquals(196, lines.size());
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                double p = Double.parseDouble(cells[1]);
                double first = Double.parseDouble(cells[2]);
                double second = Double.parseDouble(cells[3]);
                double wanted = Double.parseDouble(cells[4]);
                switch (cells[0]) {
                    case "t" ->
                        assertEquals(wanted, Distributions.tQuantile(p, first), 2e-14 * Math.abs(wanted) + 1e-16, line);
                    case "chi2" ->
                        assertEquals(wanted, Distributions.chiSquareQuantile(p, first), 2e-14 * wanted, line);
                    case "F" -> assertEquals(wanted, Distributions.fQuantile(p, first, second), 2e-14 * wanted, line);
                    case "nct0" ->
                        assertEquals(
                                wanted, NoncentralT.quantile(p, first, 0.0), 1e-12 * Math.abs(wanted) + 1e-15, line);
                    default -> throw new AssertionError(line);
                }
            }
        }
    }

    /** The tail at the noncentrality found is the one asked for; the tail itself is checked by mpmath rows elsewhere. */
    @Test
    void noncentralitiesInvertTheTail() {
        for (double t : new double[] {-300.0, -39.0, -8.0, -2.0, 0.0, 0.7, 4.0, 39.0, 41.0}) {
            for (double df : new double[] {2.0, 5.0, 11.0, 100.0}) {
                for (double tail : new double[] {1e-8, 0.0005, 0.025, 0.3, 0.5}) {
                    String what = t + " with " + df + " at " + tail;
                    double low = NoncentralT.noncentrality(t, df, tail);
                    assertEquals(tail, NoncentralT.upperTail(t, df, low), 1e-10 * tail, what);
                    double high = NoncentralT.noncentrality(t, df, 1.0 - tail);
                    assertEquals(tail, NoncentralT.cdf(t, df, high), 1e-10 * tail + 1e-16, what);
                    assertTrue(low <= high + 1e-12, what);
                }
            }
        }
    }
}
