package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What every procedure says of no shots, one, two, no spread, ties only, numbers that are none, and ten thousand. */
class DegenerateInputTest {

    private interface Procedure {
        TestResult test(double[] x, double[] y);
    }

    private static final Map<String, Procedure> PROCEDURES = procedures();

    private static Map<String, Procedure> procedures() {
        Map<String, Procedure> map = new LinkedHashMap<>();
        map.put("Welch", WelchTTest.withDefaults()::test);
        map.put("pooled", StudentTTest.withDefaults()::test);
        map.put("paired", PairedTTest.withDefaults()::test);
        map.put("sign flip", SignFlipTest.withDefaults()::test);
        map.put("permutation", PermutationTest.withDefaults()::test);
        map.put("plain permutation", PermutationTest.withDefaults().withStudentization(false)::test);
        map.put("shift", HodgesLehmannEstimator.withDefaults()::test);
        map.put("pseudomedian", HodgesLehmannEstimator.withDefaults()::testPairs);
        map.put("g", HedgesG.withDefaults()::test);
        map.put("g_z", HedgesG.withDefaults()::testPairs);
        map.put("g_av", HedgesG.withDefaults().withStandardizer(HedgesG.Standardizer.AVERAGE_SPREAD)::testPairs);
        map.put("superiority", ProbabilityOfSuperiority.withDefaults()::test);
        map.put("pairs won", ProbabilityOfSuperiority.withDefaults()::testPairs);
        map.put("Brown-Forsythe", BrownForsytheTest.withDefaults()::test);
        map.put("F", SpreadRatio.withDefaults()::test);
        map.put("jackknife", SpreadRatio.withDefaults().withMethod(SpreadRatio.Method.JACKKNIFE)::test);
        map.put("Pitman-Morgan", SpreadRatio.withDefaults()::testPairs);
        map.put("TOST", (x, y) -> TostTest.withinMargin(1.0).test(x, y).combined());
        map.put(
                "paired TOST",
                (x, y) -> TostTest.withinMargin(1.0).testPairs(x, y).combined());
        map.put("drift", (x, y) -> {
            double[] both = Arrays.copyOf(x, x.length + y.length);
            System.arraycopy(y, 0, both, x.length, y.length);
            int[] clubs = new int[both.length];
            Arrays.fill(clubs, x.length, both.length, 1);
            return Drift.withDefaults().test(both, ShotOrder.of(clubs));
        });
        return map;
    }

    private static Stream<DynamicTest> each(String what, BiConsumer<String, Procedure> check) {
        return PROCEDURES.entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(
                        e.getKey() + ", " + what, () -> check.accept(e.getKey(), e.getValue())));
    }

    private static TestResult sane(TestResult r) {
        assertTrue(Double.isFinite(r.estimate().value()), r.toString());
        assertTrue(r.pValue() >= 0.0 && r.pValue() <= 1.0, r.toString());
        assertTrue(r.estimate().interval().lower() <= r.estimate().interval().upper(), r.toString());
        r.statistic().ifPresent(s -> assertTrue(Double.isFinite(s), r.toString()));
        r.degreesOfFreedom().forEach(df -> assertTrue(df > 0.0 && Double.isFinite(df), r.toString()));
        assertFalse(r.sampleSizes().isEmpty());
        assertNotNull(r.method());
        return r;
    }

    @TestFactory
    Stream<DynamicTest> emptyIsRefusedByName() {
        return each("empty", (name, p) -> {
            Exception e = assertThrows(IllegalArgumentException.class, () -> p.test(new double[0], new double[0]));
            assertTrue(String.valueOf(e.getMessage()).contains("at least 1"), e.getMessage());
        });
    }

    @TestFactory
    Stream<DynamicTest> notFiniteIsRefusedByName() {
        return each("not finite", (name, p) -> {
            for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                Exception e = assertThrows(
                        IllegalArgumentException.class,
                        () -> p.test(new double[] {1.0, 2.0, 3.0, 4.0}, new double[] {2.0, bad, 1.0, 5.0}));
                assertTrue(String.valueOf(e.getMessage()).contains("must be finite"), e.getMessage());
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> oneShotSaysNothing() {
        return each("n = 1", (name, p) -> {
            TestResult r = sane(p.test(new double[] {3.0}, new double[] {1.0}));
            assertEquals(1.0, r.pValue());
            assertFalse(r.estimate().interval().bounded() && !name.equals("pairs won"), r.toString());
            assertTrue(!r.warnings().isEmpty() || name.equals("pairs won"), r.toString());
        });
    }

    @TestFactory
    Stream<DynamicTest> twoShotsAreAnswered() {
        return each("n = 2", (name, p) -> sane(p.test(new double[] {3.0, 4.5}, new double[] {1.0, 2.0})));
    }

    @TestFactory
    Stream<DynamicTest> allEqualIsAnsweredWithoutClaim() {
        double[] same = new double[8];
        Arrays.fill(same, 150.0);
        return each(
                "all equal",
                (name, p) -> assertEquals(1.0, sane(p.test(same, same)).pValue(), name));
    }

    @TestFactory
    Stream<DynamicTest> constantDifferenceIsAnswered() {
        double[] x = {0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3};
        double[] y = {0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1};
        return each("no spread, different", (name, p) -> {
            TestResult r = sane(p.test(x, y));
            boolean byCounting = Stream.of("sign flip", "permutation", "shift", "median", "superiority", "won", "drift")
                    .anyMatch(name::contains);
            assertTrue(byCounting || r.pValue() == 1.0, r.toString());
            assertTrue(r.pValue() > 0.0, r.toString());
        });
    }

    @TestFactory
    Stream<DynamicTest> roundedPairsWithOneDifferenceHaveNoSpread() {
        double[] x = {0.3, 1.4, 2.5, 3.6, 1000.1};
        double[] y = {0.2, 1.3, 2.4, 3.5, 1000.0};
        return Stream.of("paired", "g_z", "paired TOST")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    TestResult r =
                            sane(Objects.requireNonNull(PROCEDURES.get(name)).test(x, y));
                    assertEquals(1.0, r.pValue(), r.toString());
                }));
    }

    @TestFactory
    Stream<DynamicTest> oneConstantClubIsAnswered() {
        double[] x = {5.0, 5.0, 5.0, 5.0, 5.0};
        double[] y = {1.0, 2.0, 4.0, 3.0, 9.0};
        return each("one constant", (name, p) -> {
            sane(p.test(x, y));
            sane(p.test(y, x));
        });
    }

    @TestFactory
    Stream<DynamicTest> unequalSizesAreRefusedOrAnswered() {
        double[] x = {5.0, 5.5, 6.0};
        double[] y = {1.0, 2.0, 4.0, 3.0, 9.0};
        return each("3 and 5", (name, p) -> {
            try {
                sane(p.test(x, y));
            } catch (IllegalArgumentException e) {
                assertTrue(String.valueOf(e.getMessage()).contains("must be pairs"), e.getMessage());
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> tenThousandShotsAreAnswered() {
        SplittableRandom random = new SplittableRandom(7);
        double[] x = random.doubles(10_000).map(v -> 150.0 + 10.0 * v).toArray();
        double[] y = random.doubles(10_000).map(v -> 150.5 + 10.0 * v).toArray();
        return each("10,000", (name, p) -> sane(p.test(x, y)));
    }

    @TestFactory
    Stream<DynamicTest> tenThousandTiedShotsAreAnswered() {
        double[] x = new double[10_000];
        double[] y = new double[10_000];
        for (int i = 0; i < x.length; i++) {
            x[i] = i % 3;
            y[i] = (i / 3) % 3;
        }
        return each("10,000 tied", (name, p) -> sane(p.test(x, y)));
    }
}
