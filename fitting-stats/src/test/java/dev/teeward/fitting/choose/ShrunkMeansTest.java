package dev.teeward.fitting.choose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.quantity.Estimate;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The shrunk means against the closed form for equal variances and against mpmath for unequal ones. */
class ShrunkMeansTest {
    private static final ShrunkMeans SHRINK = ShrunkMeans.withDefaults();

    private static double[] filled(int n, double value) {
        double[] all = new double[n];
        Arrays.fill(all, value);
        return all;
    }

    /** E B is that of a gamma distribution of shape (k - 1) / 2 and rate Q / 2 v cut at 1; integrating by hand gives this. */
    @Test
    void equalVariancesHaveAClosedForm() {
        for (int k : new int[] {2, 3, 5, 8}) {
            for (double spread : new double[] {0.1, 1.0, 3.0, 30.0, 3_000.0}) {
                double[] y = new double[k];
                for (int i = 0; i < k; i++) {
                    y[i] = 100.0 + spread * i;
                }
                double middle = Arrays.stream(y).average().orElseThrow();
                double q =
                        Arrays.stream(y).map(x -> (x - middle) * (x - middle)).sum() / 2.0;
                double b = (k - 1)
                        / q
                        * (1.0 - Distributions.chiSquareUpperTail(q, k + 1.0))
                        / (1.0 - Distributions.chiSquareUpperTail(q, k - 1.0));
                List<Estimate> shrunk = SHRINK.of(y, filled(k, 2.0));
                for (int i = 0; i < k; i++) {
                    assertEquals(
                            middle + (1.0 - b) * (y[i] - middle), shrunk.get(i).value(), 1e-9 * (1.0 + spread));
                    assertTrue(shrunk.get(i).interval().contains(shrunk.get(i).value()));
                }
            }
        }
    }

    @Test
    void unequalVariancesAreThoseOfMpmath() throws Exception {
        List<String[]> rows;
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                ShrunkMeansTest.class.getResourceAsStream("shrunk_means.csv"), StandardCharsets.UTF_8))) {
            rows = in.lines().skip(1).map(line -> line.split(",", -1)).toList();
        }
        assertEquals(11, rows.size());
        Map<String, List<String[]>> cases =
                rows.stream().collect(Collectors.groupingBy(row -> row[0], LinkedHashMap::new, Collectors.toList()));
        cases.forEach((name, clubs) -> {
            List<Estimate> shrunk = SHRINK.of(column(clubs, 2), column(clubs, 3));
            double[][] expected = {column(clubs, 4), column(clubs, 5), column(clubs, 6)};
            for (int i = 0; i < shrunk.size(); i++) {
                assertEquals(expected[0][i], shrunk.get(i).value(), 1e-6, name);
                assertEquals(expected[1][i], shrunk.get(i).interval().lower(), 1e-6, name);
                assertEquals(expected[2][i], shrunk.get(i).interval().upper(), 1e-6, name);
            }
        });
    }

    private static double[] column(List<String[]> rows, int index) {
        return rows.stream().mapToDouble(row -> Double.parseDouble(row[index])).toArray();
    }

    @Test
    void equalMeansStayAndUnitsDoNotMatter() {
        SHRINK.of(filled(4, 7.0), filled(4, 1.0)).forEach(e -> assertEquals(7.0, e.value(), 1e-12));
        double[] y = {3.0, 5.0, 4.5};
        double[] v = {1.0, 2.0, 0.5};
        double[] y2 = Arrays.stream(y).map(x -> 10.0 * x - 4.0).toArray();
        double[] v2 = Arrays.stream(v).map(x -> 100.0 * x).toArray();
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    10.0 * SHRINK.of(y, v).get(i).interval().upper() - 4.0,
                    SHRINK.of(y2, v2).get(i).interval().upper(),
                    1e-8);
        }
    }

    /** Means far apart are not shrunk, so the interval is that of t: tables give 2.776445 at 4 and 2.228139 at 10 df. */
    @Test
    void farApartTheIntervalIsThatOfT() {
        double[][] table = {{4.0, 2.776445}, {10.0, 2.228139}, {Double.POSITIVE_INFINITY, 1.959964}};
        for (double[] row : table) {
            List<Estimate> shrunk =
                    SHRINK.of(new double[] {0.0, 1e6, 3e6}, filled(3, 4.0), new double[] {row[0], 7.0, row[0]});
            for (Estimate e : List.of(shrunk.get(0), shrunk.get(2))) {
                assertEquals(2.0 * row[1], e.interval().upper() - e.value(), 1e-4);
                assertEquals(2.0 * row[1], e.value() - e.interval().lower(), 1e-4);
            }
        }
        for (double wrong : new double[] {0.0, Double.NaN}) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> SHRINK.of(filled(2, 1.0), filled(2, 1.0), new double[] {3.0, wrong}));
        }
    }

    /** True means that spread by two standard errors, variances from few shots: the normal limits cover too little. */
    @Test
    void fewShotsStillCover() {
        SplittableRandom random = new SplittableRandom(31);
        for (int[] plan : new int[][] {{2, 3}, {3, 3}, {3, 5}, {5, 3}}) {
            int clubs = plan[0];
            int shots = plan[1];
            int sets = 1_500;
            int held = 0;
            for (int i = 0; i < sets; i++) {
                double[] truth = new double[clubs];
                double[] means = new double[clubs];
                double[] variances = new double[clubs];
                for (int k = 0; k < clubs; k++) {
                    truth[k] = 2.0 / Math.sqrt(shots) * random.nextGaussian();
                    double[] all = new double[shots];
                    for (int j = 0; j < shots; j++) {
                        all[j] = truth[k] + random.nextGaussian();
                        means[k] += all[j] / shots;
                    }
                    for (double x : all) {
                        variances[k] += (x - means[k]) * (x - means[k]) / (shots - 1.0) / shots;
                    }
                }
                List<Estimate> shrunk = SHRINK.of(means, variances, filled(clubs, shots - 1.0));
                for (int k = 0; k < clubs; k++) {
                    held += shrunk.get(k).interval().contains(truth[k]) ? 1 : 0;
                }
            }
            double share = held / (double) (sets * clubs);
            assertTrue(share > 0.935, clubs + " clubs, " + shots + " shots: " + share);
        }
    }

    @Test
    void refusesWhatHasNoError() {
        assertThrows(IllegalArgumentException.class, () -> SHRINK.of(new double[] {1.0}, new double[] {1.0}));
        assertThrows(IllegalArgumentException.class, () -> SHRINK.of(new double[] {1.0, 2.0}, new double[] {1.0, 0.0}));
        assertThrows(IllegalArgumentException.class, () -> SHRINK.of(new double[] {1.0, 2.0}, new double[] {1.0}));
        assertThrows(IllegalArgumentException.class, () -> SHRINK.withLevel(1.0));
    }
}
