package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.internal.StudentizedRange;
import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import java.util.Arrays;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Several metrics, several clubs, trimmed means and permuted spreads, against R, SciPy, mpmath and NIST. */
public class SeveralClubsReferenceTest {
    private static final double[][] PLANTS = Stream.of("ctrl", "trt1", "trt2")
            .map(g -> ReferenceTable.column("r_plantgrowth", "weight", "group", g))
            .toArray(double[][]::new);

    private static final Evaluators ROWS = rows();

    /** The rows checked here. */
    public static Set<String> coveredKeys() {
        return ROWS.keys();
    }

    @TestFactory
    Stream<DynamicTest> rowsAreMet() {
        return ROWS.tests();
    }

    @Test
    void coversTheStatedRows() {
        assertEquals(165, coveredKeys().size());
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        hotelling(map);
        spreads(map);
        families(map);
        ranges(map);
        return map;
    }

    private static double[][] iris(int from, int to) {
        return new double[][] {
            Arrays.copyOfRange(ReferenceTable.column("r_iris", "Sepal.Length"), from, to),
            Arrays.copyOfRange(ReferenceTable.column("r_iris", "Sepal.Width"), from, to)
        };
    }

    private static double[] synth(String treatment, String metric) {
        return ReferenceTable.column("synth_blocks", metric, "treatment", treatment);
    }

    private static double[] byBlock(String treatment, String metric) {
        double[] block = synth(treatment, "block");
        double[] values = synth(treatment, metric);
        double[] sorted = new double[values.length];
        for (int i = 0; i < sorted.length; i++) {
            sorted[(int) block[i] - 1] = values[i];
        }
        return sorted;
    }

    private static ToDoubleFunction<Row> t2(HotellingTest.Result r, HotellingTest.Result ninety) {
        return row -> switch (row.quantity()) {
            case "T2" -> r.t2().orElseThrow();
            case "F" -> r.f().orElseThrow();
            case "df1" -> r.degreesOfFreedom().get(0);
            case "df2" -> r.degreesOfFreedom().get(1);
            // Two metrics: df2 = nu - p + 1.
            case "nu" -> r.degreesOfFreedom().get(1) + 1.0;
            case "p" -> r.pValue();
            case "T2crit_0.95", "crit_0.95" -> r.criticalT2().orElseThrow();
            case "T2crit_0.90" -> ninety.criticalT2().orElseThrow();
            default -> Evaluators.unknown(row);
        };
    }

    private static void hotelling(Evaluators map) {
        HotellingTest test = HotellingTest.withDefaults();
        HotellingTest pooled = test.withPooledCovariance(true);
        double[][] sweat = Stream.of("x1", "x2", "x3")
                .map(c -> ReferenceTable.column("sweat", c))
                .toArray(double[][]::new);
        HotellingTest.Result women = test.testMeans(sweat, 4.0, 50.0, 10.0);
        HotellingTest.Result ninety = test.withLevel(0.9).testMeans(sweat, 4.0, 50.0, 10.0);
        map.put("HT2-sweat/1", t2(women, ninety));
        map.put("HT2-sweat/2", t2(women, ninety));
        HotellingTest.Result first = pooled.test(iris(0, 10), iris(50, 60));
        HotellingTest.Result second = pooled.test(iris(50, 60), iris(100, 110));
        HotellingTest.Result third = test.test(iris(50, 60), iris(100, 110));
        map.put("HT2-iris/1", t2(first, first));
        map.put("HT2-iris/2", t2(second, second));
        map.put("HT2-iris/3", t2(third, third));
        HotellingTest.Result soap =
                pooled.test(ring(8.3, 4.1, new double[][] {{2.0, 1.0}, {1.0, 6.0}}), ring(10.2, 3.9, new double[][] {
                    {2.0, 1.0}, {1.0, 4.0}
                }));
        map.put("HT2-soap/1", t2(soap, soap));
        double[][] b = {byBlock("B", "u"), byBlock("B", "v")};
        double[][] a = {byBlock("A", "u"), byBlock("A", "v")};
        HotellingTest.Result pairs = test.testPairs(b, a);
        HotellingTest.Result flipped = test.withSignFlips(true).testPairs(b, a);
        map.put("HT2-synth/1", t2(pairs, pairs));
        map.put("HT2-synth/2", t2(flipped, flipped));
        MaxTTest.Result max = MaxTTest.withDefaults().testPairs(b, a);
        map.put(
                "MAXT-synth/1",
                Math.abs(max.metrics().get(0).t().orElseThrow()),
                Math.abs(max.metrics().get(1).t().orElseThrow()),
                max.metrics().get(0).pValue(),
                max.metrics().get(1).pValue(),
                max.metrics().get(0).adjustedP(),
                max.metrics().get(1).adjustedP());
    }

    /** Fifty points of a given mean and covariance: cosines and sines around a ring have both exactly. */
    private static double[][] ring(double meanX, double meanY, double[][] covariance) {
        double scale = Math.sqrt(49.0 / 25.0);
        double l11 = Math.sqrt(covariance[0][0]);
        double l21 = covariance[1][0] / l11;
        double l22 = Math.sqrt(covariance[1][1] - l21 * l21);
        double[][] points = new double[2][50];
        for (int i = 0; i < 50; i++) {
            double c = scale * Math.cos(2.0 * Math.PI * i / 50.0);
            double s = scale * Math.sin(2.0 * Math.PI * i / 50.0);
            points[0][i] = meanX + l11 * c;
            points[1][i] = meanY + l21 * c + l22 * s;
        }
        return points;
    }

    private static void spreads(Evaluators map) {
        TestResult yuen = YuenTest.withDefaults().test(PLANTS[1], PLANTS[2]);
        map.put(
                "T-yuen/1",
                yuen.statistic().orElseThrow(),
                yuen.degreesOfFreedom().get(0),
                yuen.pValue());
        TestResult ratio = PermutationDispersionTest.withDefaults()
                .withStatistic(PermutationDispersionTest.Statistic.VARIANCE_RATIO)
                .test(PLANTS[1], PLANTS[2]);
        map.put("PERMDISP-plant/1", ratio.statistic().orElseThrow(), ratio.pValue());
        TestResult pattern = PermutationDispersionTest.withDefaults()
                .testPatterns(synth("A", "u"), synth("A", "v"), synth("B", "u"), synth("B", "v"));
        // From the difference and the ratio of the mean radii.
        double radiusB = pattern.statistic().orElseThrow() / (pattern.estimate().value() - 1.0);
        map.put("PERMDISP-synth/1", radiusB * pattern.estimate().value(), radiusB, pattern.pValue());
        double[][] gear = IntStream.rangeClosed(1, 10)
                .mapToObj(g -> ReferenceTable.column("nist_gear", "y", "group", String.valueOf(g)))
                .toArray(double[][]::new);
        OmnibusResult bartlett = BartlettTest.withDefaults().test(gear);
        map.put("BF-gear/4", omnibus(bartlett));
        map.put("BF-gear/5", bartlett.statistic().orElseThrow());
        map.put("BF-gear/6", omnibus(FlignerKilleenTest.withDefaults().test(gear)));
        map.put("ANOVA-plant/3", omnibus(KruskalWallisTest.withDefaults().test(PLANTS)));
        OmnibusResult friedman = FriedmanTest.withDefaults().test(byBlock("A", "u"), byBlock("B", "u"));
        map.put("FRIED-synth/1", friedman.statistic().orElseThrow(), friedman.pValue());
    }

    private static double[] omnibus(OmnibusResult r) {
        return new double[] {r.statistic().orElseThrow(), r.degreesOfFreedom().get(0), r.pValue()};
    }

    private static void families(Evaluators map) {
        PairwiseComparison.Result tukey = PairwiseComparison.withDefaults()
                .withMethod(PairwiseComparison.Method.TUKEY_KRAMER)
                .test(PLANTS);
        int[][] order = {{0, 1}, {0, 2}, {1, 2}};
        for (int i = 0; i < 3; i++) {
            PairwiseComparison.Pair p = tukey.pair(order[i][1], order[i][0]);
            map.put(
                    "TUKEY-plant/" + (i + 1),
                    p.difference().value(),
                    p.difference().interval().lower(),
                    p.difference().interval().upper(),
                    p.pValue());
        }
        PairwiseComparison.Result games = PairwiseComparison.withDefaults().test(PLANTS);
        map.put("GH-plant/1", pair(games.pair(2, 1)));
        map.put("GH-plant/2", pair(games.pair(2, 0)));
        PairwiseComparison dunnett = PairwiseComparison.withDefaults().withMethod(PairwiseComparison.Method.DUNNETT);
        PairwiseComparison above = dunnett.withAlternative(Alternative.GREATER);
        for (int i = 1; i <= 4; i++) {
            map.put("DUNNETT/" + i, row -> {
                int others = (int) Evaluators.number(row, "treatments=");
                double df = Evaluators.number(row, "df=");
                return row.quantity().equals("two_sided")
                        ? dunnett.dunnettCritical(others, df)
                        : above.dunnettCritical(others, df);
            });
        }
        PairwiseComparison.Result plants = dunnett.test(PLANTS);
        for (int i = 1; i <= 2; i++) {
            PairwiseComparison.Pair p = plants.pair(i, 0);
            map.put("DUNNETT/" + (4 + i), p.t().orElseThrow(), p.pValue());
        }
    }

    private static double[] pair(PairwiseComparison.Pair p) {
        return new double[] {Math.abs(p.t().orElseThrow()), p.degreesOfFreedom(), p.pValue()};
    }

    private static void ranges(Evaluators map) {
        map.correct(
                "PTUKEY/28 q_0.95",
                2.8483723285768905,
                "sqrt 2 times the t quantile by mpmath at 30 digits; SciPy 1.10.1's is good to nine digits only");
        for (int i = 1; i <= 28; i++) {
            map.put("PTUKEY/" + i, row -> {
                int k = (int) Evaluators.number(row, "k=");
                double df = Evaluators.number(row, "df=");
                return row.quantity().startsWith("P(")
                        ? 1.0 - StudentizedRange.upperTail(3.5, k, df)
                        : StudentizedRange.quantile(
                                Double.parseDouble(row.quantity().substring(2)), k, df);
            });
        }
    }
}
