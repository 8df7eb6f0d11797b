package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScreenTest {
    /** Invented carries and sides [m]; the seventh shot is a mishit. */
    private static final double[] CARRY = {141.2, 143.0, 139.8, 142.1, 140.5, 143.7, 121.4, 141.9, 140.9, 142.6};

    private static final double[] SIDE = {-3.1, 1.4, 0.2, -1.8, 2.9, -0.6, 14.8, 0.9, -2.2, 1.1};

    @Test
    void packageExample() {
        GrubbsTest.Result one = GrubbsTest.withDefaults().screen(CARRY);
        MinimumCovarianceDeterminant.Result two =
                MinimumCovarianceDeterminant.withDefaults().screen(CARRY, SIDE);
        assertEquals(1, one.flags().size());
        assertEquals(6, one.flags().get(0).index());
        assertEquals(8, one.degreesOfFreedom());
        assertEquals(10, one.n());
        assertEquals(1, two.flags().size());
        Flag flag = two.flags().get(0);
        assertEquals(6, flag.index());
        assertTrue(flag.toString().startsWith("shot 7 lies farther from the other shots"), flag.toString());
        assertTrue(flag.reason().contains("5 % of good sets"), flag.reason());
        assertEquals(0.05, flag.falseAlarmRate());
        assertTrue(flag.statistic() > flag.cutOff());
        assertEquals("minimum covariance determinant", flag.method());
        assertEquals("exact, all 45 subsets of 8 of 10 shots", two.method());
        assertEquals(8, two.subsetSize());
        assertEquals(10, two.n());
        assertTrue(two.statistic().orElseThrow() > two.cutOff().orElseThrow());
        assertEquals(141.7, two.center().orElseThrow()[0], 1.0);
    }

    /** e-Handbook 1.3.5.17.1: the possible maximum of G is (n - 1) / sqrt(n). */
    @Test
    void grubbsReachesItsMaximumForOneValueFarFromEqualOthers() {
        double[] values = new double[10];
        values[3] = 7.0;
        GrubbsTest.Result r = GrubbsTest.withDefaults().screen(values);
        assertEquals(9.0 / Math.sqrt(10.0), r.statistic(), 1e-14);
        assertTrue(r.pValue() < 1e-9);
        assertEquals(3, r.flags().get(0).index());
    }

    @Test
    void grubbsLooksOnlyAtTheEndThatIsSuspected() {
        GrubbsTest test = GrubbsTest.withDefaults();
        assertEquals(
                1, test.with(GrubbsTest.Suspect.SMALLEST).screen(CARRY).flags().size());
        assertTrue(test.with(GrubbsTest.Suspect.LARGEST).screen(CARRY).flags().isEmpty());
        assertTrue(test.withFalseAlarmRate(1e-12).screen(CARRY).flags().isEmpty());
    }

    /** Two equal mishits hide from Grubbs's test; the generalized test must find both, also where R_1 alone fails. */
    @Test
    void generalizedEsdFindsOutliersThatHideEachOther() {
        double[] values = CARRY.clone();
        values[1] = 121.0;
        assertTrue(GrubbsTest.withDefaults().screen(values).flags().isEmpty());
        GeneralizedEsdTest.Result r = GeneralizedEsdTest.withDefaults().screen(values);
        assertEquals(2, r.outliers());
        assertEquals(10, r.n());
        assertEquals(
                java.util.Set.of(1, 6),
                java.util.Set.of(r.flags().get(0).index(), r.flags().get(1).index()));
        assertTrue(
                r.flags().get(0).reason().contains("hides behind"),
                r.flags().get(0).reason());
        assertEquals("approximate-critical-values", r.warnings().get(0).code());
    }

    @Test
    void minimumCovarianceDeterminantFindsWhatClassicalDistancesMiss() {
        double[] carry = CARRY.clone();
        double[] side = SIDE.clone();
        carry[0] = 120.8;
        side[0] = 15.9;
        assertTrue(MahalanobisTest.withDefaults().screen(carry, side).flags().isEmpty());
        assertEquals(
                java.util.List.of(0, 6),
                MinimumCovarianceDeterminant.withDefaults().screen(carry, side).flags().stream()
                        .map(Flag::index)
                        .toList());
        MahalanobisTest.Result single = MahalanobisTest.withDefaults().screen(CARRY, SIDE);
        assertEquals(6, single.flags().get(0).index());
        assertTrue(
                single.pValue() < 0.05 && single.n() == 10 && single.warnings().isEmpty());
    }

    /** Affine equivariance: units and a rotation must not change a distance (closed form). */
    @Test
    void distancesDoNotDependOnUnitsOrDirections() {
        double[] a = MinimumCovarianceDeterminant.withDefaults()
                .screen(CARRY, SIDE)
                .rawSquaredDistances()
                .orElseThrow();
        double[] x = new double[10];
        double[] y = new double[10];
        for (int i = 0; i < 10; i++) {
            x[i] = 1.0936 * (0.6 * CARRY[i] - 0.8 * SIDE[i]) - 40.0;
            y[i] = 3.2808 * (0.8 * CARRY[i] + 0.6 * SIDE[i]);
        }
        double[] b = MinimumCovarianceDeterminant.withDefaults()
                .screen(x, y)
                .rawSquaredDistances()
                .orElseThrow();
        for (int i = 0; i < 10; i++) {
            assertEquals(a[i], b[i], 1e-9 * a[i]);
        }
    }

    /** One metric: the windows must find what trying all subsets finds. */
    @Test
    void windowsAreExactForOneMetric() {
        Random random = new Random(3L);
        for (int round = 0; round < 50; round++) {
            double[] values = random.doubles(11, -5.0, 5.0).toArray();
            int h = McdFactors.subsetSize(11, 1, 0.5);
            assertEquals(
                    Arrays.toString(McdSearch.enumerate(new double[][] {values}, h)),
                    Arrays.toString(McdSearch.window(values, h)));
        }
    }

    /** Where both are possible the concentration must find the exact answer on well-behaved data. */
    @Test
    void concentrationFindsTheExactSubset() {
        Random random = new Random(4L);
        for (int round = 0; round < 10; round++) {
            double[][] points = {new double[16], new double[16]};
            for (int i = 0; i < 16; i++) {
                points[0][i] = random.nextGaussian() + (i < 3 ? 30.0 : 0.0);
                points[1][i] = random.nextGaussian();
            }
            int h = McdFactors.subsetSize(16, 2, 0.75);
            assertEquals(
                    Arrays.toString(McdSearch.enumerate(points, h)),
                    Arrays.toString(McdSearch.concentrate(points, h, 1L)));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e60})
    void refusesWhatIsNotAMeasurement(double bad) {
        double[] values = CARRY.clone();
        values[4] = bad;
        for (Runnable call : new Runnable[] {
            () -> GrubbsTest.withDefaults().screen(values),
            () -> GeneralizedEsdTest.withDefaults().screen(values),
            () -> MahalanobisTest.withDefaults().screen(values, SIDE),
            () -> MinimumCovarianceDeterminant.withDefaults().screen(values, SIDE)
        }) {
            IllegalArgumentException e = assertThrows(IllegalArgumentException.class, call::run);
            assertTrue(e.toString().contains("number 5 was"), e.toString());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void refusesTooFewShots(int n) {
        double[] few = Arrays.copyOf(CARRY, n);
        assertThrows(
                IllegalArgumentException.class, () -> GrubbsTest.withDefaults().screen(few));
        assertThrows(
                IllegalArgumentException.class, () -> GrubbsTest.withDefaults().cutOff(n));
        assertThrows(
                IllegalArgumentException.class,
                () -> GeneralizedEsdTest.withDefaults().screen(few));
        assertThrows(
                IllegalArgumentException.class,
                () -> MahalanobisTest.withDefaults().screen(few, few));
        assertThrows(
                IllegalArgumentException.class,
                () -> MahalanobisTest.withDefaults().cutOff(n));
        assertThrows(
                IllegalArgumentException.class,
                () -> MinimumCovarianceDeterminant.withDefaults().screen(few, few));
    }

    @Test
    void refusesBadOptionsAndColumns() {
        assertThrows(
                IllegalArgumentException.class, () -> GrubbsTest.withDefaults().withFalseAlarmRate(5.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> GeneralizedEsdTest.withDefaults().withMaxOutliers(0));
        assertThrows(
                IllegalArgumentException.class,
                () -> GeneralizedEsdTest.withDefaults().withMaxOutliers(9).screen(CARRY));
        MinimumCovarianceDeterminant mcd = MinimumCovarianceDeterminant.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> mcd.withSubsetShare(0.4));
        assertThrows(IllegalArgumentException.class, mcd::screen);
        assertThrows(IllegalArgumentException.class, () -> mcd.screen(CARRY, SIDE, CARRY, SIDE));
        assertThrows(IllegalArgumentException.class, () -> mcd.screen(CARRY, Arrays.copyOf(SIDE, 9)));
        assertThrows(
                IllegalArgumentException.class,
                () -> MahalanobisTest.withDefaults().screen(CARRY, Arrays.copyOf(SIDE, 9)));
        assertThrows(IllegalArgumentException.class, () -> Flag.falseAlarmRateOver(0.05, 0));
        assertThrows(IllegalArgumentException.class, () -> Flag.falseAlarmRateOver(Double.NaN, 2));
    }

    /** 1 - 0.95^6 by hand. */
    @Test
    void severalSetsAddUp() {
        assertEquals(0.264908109375, Flag.falseAlarmRateOver(0.05, 6), 1e-12);
    }

    @Test
    void equalValuesGiveAnAnswerAndAWarning() {
        double[] same = new double[10];
        Arrays.fill(same, 141.0);
        GrubbsTest.Result g = GrubbsTest.withDefaults().screen(same);
        assertEquals(1.0, g.pValue());
        assertEquals("zero-spread", g.warnings().get(0).code());
        GeneralizedEsdTest.Result e = GeneralizedEsdTest.withDefaults().screen(same);
        assertEquals(0, e.outliers());
        assertEquals("zero-spread", e.warnings().get(0).code());
        MinimumCovarianceDeterminant.Result m =
                MinimumCovarianceDeterminant.withDefaults().screen(same, SIDE);
        assertTrue(m.exactFit() && m.flags().isEmpty() && m.squaredDistances().isEmpty());
        assertEquals(0.0, m.determinant());
        assertEquals(0, m.reweightedCount());
        assertTrue(m.statistic().isEmpty());
        assertEquals("exact-fit", m.warnings().get(0).code());
        MahalanobisTest.Result d = MahalanobisTest.withDefaults().screen(same, SIDE);
        assertEquals(0, d.squaredDistances().length);
        assertEquals("exact-fit", d.warnings().get(0).code());
        double[] manySame = new double[60];
        MinimumCovarianceDeterminant.Result many =
                MinimumCovarianceDeterminant.withDefaults().screen(manySame, manySame);
        assertTrue(many.exactFit());
    }

    @Test
    void noFlagsWhereNoCutOffWasSimulated() {
        MinimumCovarianceDeterminant.Result three = MinimumCovarianceDeterminant.withDefaults()
                .screen(
                        CARRY,
                        SIDE,
                        IntStream.range(0, 10).mapToDouble(i -> (i * 7) % 10).toArray());
        assertTrue(three.flags().isEmpty() && three.cutOff().isEmpty());
        assertEquals("no-simulated-cut-off", three.warnings().get(0).code());
        assertFalse(three.squaredDistances().isEmpty());
        assertTrue(MinimumCovarianceDeterminant.withDefaults()
                .screen(CARRY)
                .method()
                .startsWith("exact, all windows"));
    }

    @Test
    void tenThousandShotsAreScreenedAndTheResultSaysThatTheSearchIsNotExhaustive() {
        Random random = new Random(5L);
        double[] x = random.doubles(10_000).map(u -> 140.0 + 5.0 * (u - 0.5)).toArray();
        double[] y = random.doubles(10_000).map(u -> 20.0 * (u - 0.5)).toArray();
        x[17] = 60.0;
        MinimumCovarianceDeterminant mcd = MinimumCovarianceDeterminant.withDefaults();
        MinimumCovarianceDeterminant.Result r = mcd.screen(x, y);
        assertTrue(r.method().startsWith("approximate, concentration from 500 random starts"), r.method());
        assertEquals("search-not-exhaustive", r.warnings().get(0).code());
        assertEquals(17, r.flags().get(0).index());
        assertEquals(
                Arrays.toString(r.subset()), Arrays.toString(mcd.screen(x, y).subset()));
        assertEquals(17, mcd.withSeed(9L).screen(x, y).flags().get(0).index());
        assertEquals(17, GrubbsTest.withDefaults().screen(x).flags().get(0).index());
        assertEquals(
                17, GeneralizedEsdTest.withDefaults().screen(x).flags().get(0).index());
        assertEquals(
                17, MahalanobisTest.withDefaults().screen(x, y).flags().get(0).index());
    }
}
