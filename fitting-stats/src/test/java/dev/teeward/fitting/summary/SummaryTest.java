package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.SubsetEnumeration;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import dev.teeward.fitting.summary.ShotShape.Side;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SummaryTest {
    /** Invented carries and sides [m]. */
    private static final double[] CARRY = {141.2, 143.0, 139.8, 142.1, 140.5, 143.7, 138.4, 141.9, 140.9, 142.6};

    private static final double[] SIDE = {-3.1, 1.4, 0.2, -1.8, 2.9, -0.6, 4.8, 0.9, -2.2, 1.1};

    @Test
    void packageExample() {
        SampleSummary.Result carries =
                SampleSummary.withDefaults().withUnit(LengthUnit.METER).summarize(CARRY);
        LandingPattern.Result pattern =
                LandingPattern.withDefaults().withTarget(150.0, 0.0).describe(CARRY, SIDE);
        Estimate half = pattern.radiusAboutCenter(0.5);
        Ellipse next = pattern.ellipse(EllipseKind.PREDICTION, 0.9);
        assertEquals(141.41, carries.mean().value(), 1e-9);
        assertEquals(LengthUnit.METER, carries.mean().unit());
        assertTrue(half.value() < pattern.radiusAboutTarget(0.5).orElseThrow().value());
        assertTrue(next.contains(141.41, 0.36));
        assertEquals(-8.59, pattern.biasCarry().orElseThrow().value(), 1e-9);
        assertEquals(0.36, pattern.biasSide().orElseThrow().value(), 1e-9);
        assertTrue(pattern.warnings().isEmpty());
    }

    /** Mean, t quantile 4.302653 and chi-square quantiles 7.377759, 0.050636 with 2 df (handbook tables, six digits). */
    @Test
    void documentedExampleOfThreeValues() {
        SampleSummary.Result r =
                SampleSummary.withDefaults().withUnit(LengthUnit.METER).summarize(137.1, 140.2, 135.9);
        assertEquals(137.733333, r.mean().value(), 1e-6);
        assertEquals(4.302653 * 2.218859 / Math.sqrt(3.0), r.mean().interval().halfWidth(), 1e-5);
        Estimate sd = r.standardDeviation().orElseThrow();
        assertEquals(2.218859 * Math.sqrt(2.0 / 7.377759), sd.interval().lower(), 1e-5);
        assertEquals(2.218859 * Math.sqrt(2.0 / 0.050636), sd.interval().upper(), 1e-3);
        assertEquals(2, r.degreesOfFreedom());
        assertEquals(135.9, r.minimum());
        assertEquals(140.2, r.maximum());
        // Three values hold the median with probability 1 - 2 / 8.
        assertEquals(Interval.of(135.9, 140.2, 0.75), r.median().interval());
        assertEquals("median-level-not-reached", r.warnings().get(0).code());
        assertTrue(r.method().contains("exact binomial"));
    }

    /** n = 10: order statistics 2 and 9 with 1 - 2 (1 + 10) / 1024 = 0.978516 (binomial by hand). */
    @Test
    void medianIntervalOfTenValues() {
        SampleSummary.Result r = SampleSummary.withDefaults().summarize(10, 20, 30, 40, 50, 60, 70, 80, 90, 100);
        assertEquals(55.0, r.median().value());
        assertEquals(20.0, r.median().interval().lower());
        assertEquals(90.0, r.median().interval().upper());
        assertEquals(1.0 - 22.0 / 1024.0, r.median().interval().level(), 1e-12);
        assertEquals(
                0.90,
                SampleSummary.withDefaults()
                        .withLevel(0.9)
                        .summarize(1, 2)
                        .mean()
                        .interval()
                        .level());
    }

    @Test
    void singleAndEqualValuesGiveAnAnswerAndAWarning() {
        SampleSummary.Result one = SampleSummary.withDefaults().summarize(140.0);
        assertFalse(one.mean().interval().bounded());
        assertTrue(one.standardDeviation().isEmpty());
        assertEquals("single-value", one.warnings().get(0).code());
        SampleSummary.Result same = SampleSummary.withDefaults().summarize(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1);
        assertEquals(0.0, same.standardDeviation().orElseThrow().value());
        assertEquals("zero-spread", same.warnings().get(0).code());
        double[] fixed = new double[8];
        Arrays.fill(fixed, 100.0);
        LandingPattern.Result p =
                LandingPattern.withDefaults().withTarget(97.0, 4.0).describe(fixed, new double[8]);
        assertEquals("exact-fit", p.warnings().get(0).code());
        assertEquals(0.0, p.radiusAboutCenter(0.9).value());
        assertEquals(5.0, p.radiusAboutTarget(0.9).orElseThrow().value(), 1e-12);
        assertEquals(0.0, p.ellipse().area());
        assertTrue(p.ellipse().contains(100.0, 0.0) && !p.ellipse().contains(100.0, 0.1));
        LandingPattern.Result onTarget =
                LandingPattern.withDefaults().withTarget(100.0, 0.0).describe(fixed, new double[8]);
        assertEquals(0.0, onTarget.radiusAboutTarget(0.5).orElseThrow().value());
        LandingPattern.Result line = LandingPattern.withDefaults().describe(CARRY, new double[10]);
        // On a line the radius is the half-normal quantile, 0.6744898 standard deviations (table).
        assertEquals(
                0.6744898 * Math.sqrt(line.varianceCarry()),
                line.radiusAboutCenter(0.5).value(),
                1e-6);
        assertEquals(9.0, line.degreesOfFreedom(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e60})
    void refusesWhatIsNotAMeasurement(double bad) {
        double[] values = CARRY.clone();
        values[2] = bad;
        assertThrows(
                IllegalArgumentException.class,
                () -> SampleSummary.withDefaults().summarize(values));
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults().describe(CARRY, values));
        assertThrows(
                IllegalArgumentException.class,
                () -> StrikePattern.withDefaults().describe(values, SIDE));
        assertThrows(
                IllegalArgumentException.class,
                () -> StrikePattern.withDefaults().describe(SIDE, SIDE, values));
        assertThrows(
                IllegalArgumentException.class, () -> ShotShapes.withDefaults().describe(SIDE, SIDE, SIDE, values));
        assertThrows(
                IllegalArgumentException.class, () -> ShotShapes.withDefaults().describe(SIDE, SIDE, values, CARRY));
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults().withTarget(bad, 0.0));
    }

    @Test
    void refusesTooFewShotsAndBadOptions() {
        double[] two = {1.0, 2.0};
        assertThrows(
                IllegalArgumentException.class,
                () -> SampleSummary.withDefaults().summarize());
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults().describe(two, two));
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults().describe(CARRY, two));
        assertThrows(
                IllegalArgumentException.class,
                () -> StrikePattern.withDefaults().describe(two, two));
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults().withResamples(98));
        assertThrows(
                IllegalArgumentException.class,
                () -> SampleSummary.withDefaults().withLevel(95.0));
        assertThrows(IllegalArgumentException.class, () -> EllipseKind.PREDICTION.scale(0.9, 2));
        assertThrows(
                IllegalArgumentException.class, () -> ShotShapes.withDefaults().withThresholds(1.0, 1.0, 90.0));
        assertThrows(
                IllegalArgumentException.class, () -> ShotShapes.withDefaults().shapeOf(0.0, 0.0, 0.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> LandingPattern.withDefaults()
                        .describe(CARRY, SIDE)
                        .ellipse()
                        .points(2));
        assertThrows(
                IllegalArgumentException.class,
                () -> DiscProbability.of(new SymmetricMatrix2(1.0, 0.0, 1.0), 0.0, 0.0)
                        .radius(1.0));
    }

    @Test
    void ellipseOutlineLiesOnTheEllipse() {
        LandingPattern.Result p = LandingPattern.withDefaults().describe(CARRY, SIDE);
        Ellipse e = p.ellipse();
        SymmetricMatrix2 s = new SymmetricMatrix2(p.varianceCarry(), p.covariance(), p.varianceSide());
        double[][] outline = e.points(16);
        for (int i = 0; i < 16; i++) {
            double k2 = s.inverseQuadraticForm(outline[0][i] - e.centerX(), outline[1][i] - e.centerY());
            assertEquals(EllipseKind.PREDICTION.scale(0.9, 10), k2, 1e-9);
        }
        assertEquals(EllipseKind.PREDICTION, e.kind());
        assertEquals(0.9, e.level());
        assertEquals(10, e.n());
        assertTrue(e.toString().startsWith("PREDICTION ellipse at 0.9 from 10 shots"));
        assertEquals(
                p.varianceCarry() * p.varianceSide() - p.covariance() * p.covariance(), p.generalizedVariance(), 1e-9);
        assertEquals(p.varianceCarry() + p.varianceSide(), p.totalVariance(), 1e-12);
        assertTrue(p.method().contains("Satterthwaite"));
        assertEquals(18, p.circular().degreesOfFreedom());
    }

    /** A bias far larger than the spread makes the accuracy radius the bias itself; the interval is then the mean's. */
    @Test
    void radiusAboutTheTargetContainsTheBias() {
        LandingPattern procedure = LandingPattern.withDefaults()
                .withTarget(1_141.41, 0.36)
                .withSeed(5L)
                .withResamples(499);
        LandingPattern.Result p = procedure.describe(CARRY, SIDE);
        Estimate r = p.radiusAboutTarget(0.5).orElseThrow();
        assertEquals(1_000.0, r.value(), 0.1);
        assertTrue(r.interval().contains(1_000.0));
        double half = p.centerCarry().interval().halfWidth();
        assertEquals(1.0, r.interval().halfWidth() / half, 0.25);
        assertEquals(r, procedure.describe(CARRY, SIDE).radiusAboutTarget(0.5).orElseThrow());
        assertTrue(LandingPattern.withDefaults()
                .describe(CARRY, SIDE)
                .radiusAboutTarget(0.5)
                .isEmpty());
        assertTrue(
                LandingPattern.withDefaults().describe(CARRY, SIDE).biasSide().isEmpty());
        assertTrue(
                LandingPattern.withDefaults().describe(CARRY, SIDE).biasCarry().isEmpty());
    }

    /** Needle-shaped patterns: against the line in closed form, and the probability against its own inverse. */
    @Test
    void discsOfNeedles() {
        for (double s2 : new double[] {1e-2, 1e-4, 1e-6}) {
            DiscProbability d = DiscProbability.of(new SymmetricMatrix2(1.0, 0.0, s2 * s2), 0.3, 0.0);
            DiscProbability line = DiscProbability.of(new SymmetricMatrix2(1.0, 0.0, 0.0), 0.3, 0.0);
            assertEquals(line.probability(0.8), d.probability(0.8), s2 * s2);
            assertEquals(0.9, d.probability(d.radius(0.9)), 1e-13);
            assertEquals(d.radius(0.5), d.coarse().radius(0.5), 1e-5);
        }
        DiscProbability offset = DiscProbability.of(new SymmetricMatrix2(1.0, 0.0, 0.0), 0.0, 2.0);
        assertEquals(0.0, offset.probability(1.9));
        assertEquals(0.5, offset.probability(offset.radius(0.5)), 1e-12);
        assertEquals(0.0, offset.probability(-1.0));
    }

    @Test
    void subsetsAreAllThere() {
        SubsetEnumeration subsets = SubsetEnumeration.of(6, 3);
        Set<String> seen = new HashSet<>();
        int changed = 0;
        while (changed >= 0) {
            seen.add(Arrays.toString(subsets.current()));
            changed = subsets.advance();
        }
        assertEquals(20, seen.size());
        assertEquals(20L, SubsetEnumeration.count(6, 3));
        assertEquals(184_756L, SubsetEnumeration.count(20, 10));
        assertEquals(Long.MAX_VALUE, SubsetEnumeration.count(10_000, 5_000));
        assertThrows(IllegalArgumentException.class, () -> SubsetEnumeration.of(3, 4));
    }

    @Test
    void shapesHaveTheTradesWordsForBothHands() {
        assertEquals("push draw", ShotShape.of(Side.RIGHT, Side.LEFT).words(Handedness.RIGHT));
        assertEquals("pull fade", ShotShape.of(Side.RIGHT, Side.LEFT).words(Handedness.LEFT));
        assertEquals("fade", ShotShape.of(Side.STRAIGHT, Side.LEFT).words(Handedness.LEFT));
        assertEquals("pull", ShotShape.of(Side.LEFT, Side.STRAIGHT).words(Handedness.RIGHT));
        assertEquals("straight", ShotShape.of(Side.STRAIGHT, Side.STRAIGHT).words(Handedness.RIGHT));
        assertEquals(
                "start LEFT, curve RIGHT", ShotShape.of(Side.LEFT, Side.RIGHT).toString());
        assertEquals(
                ShotShape.of(Side.LEFT, Side.RIGHT).hashCode(),
                ShotShape.of(Side.LEFT, Side.RIGHT).hashCode());
        assertFalse(ShotShape.of(Side.LEFT, Side.RIGHT).equals(ShotShape.of(Side.RIGHT, Side.RIGHT)));
    }

    /** Wilson's interval of 7 of 10 is 0.397 to 0.892 (hipparchus BinomialProportion). */
    @Test
    void shapesOfTenShots() {
        double[] start = new double[10];
        double[] curve = new double[10];
        double[] side = new double[10];
        double[] carry = new double[10];
        Arrays.fill(carry, 140.0);
        for (int i = 0; i < 10; i++) {
            start[i] = Math.toRadians(2.0);
            curve[i] = -10.0;
            side[i] = i < 7 ? -5.2 : 5.2;
        }
        ShotShapes.Result r = ShotShapes.withDefaults().describe(start, curve, side, carry);
        ShotShape shape = ShotShape.of(Side.RIGHT, Side.LEFT);
        assertEquals(10, r.count(shape));
        assertEquals(9, r.table().size());
        assertEquals(1.0, r.share(shape).interval().upper());
        assertEquals(0.7, r.crossingShare().value());
        assertEquals(0.397, r.crossingShare().interval().lower(), 5e-4);
        assertEquals(0.892, r.crossingShare().interval().upper(), 5e-4);
        assertEquals(ShotShapes.Miss.TWO_SIDED, r.miss());
        assertEquals(7, r.missesLeft());
        assertEquals(3, r.missesRight());
        assertEquals(10, r.n());
        assertTrue(r.method().contains("Wilson") && r.warnings().isEmpty());
        ShotShapes wide = ShotShapes.withDefaults().withLevel(0.9).withThresholds(3.0, 5.0, 3.0);
        ShotShapes.Result none = wide.describe(start, curve, side, carry);
        assertEquals(ShotShapes.Miss.NONE, none.miss());
        assertEquals(10, none.count(ShotShape.of(Side.STRAIGHT, Side.STRAIGHT)));
        Arrays.fill(side, -20.0);
        assertEquals(
                ShotShapes.Miss.ONE_SIDED_LEFT,
                wide.describe(start, curve, side, carry).miss());
        double[] one = {20.0};
        ShotShapes.Result single = wide.describe(new double[1], one, one, new double[] {140.0});
        assertEquals(ShotShapes.Miss.ONE_SIDED_RIGHT, single.miss());
        assertEquals("few-misses", single.warnings().get(0).code());
        assertEquals(0.0, single.crossingShare().interval().lower());
    }

    /** Ball speed falls by 0.02 m/s for each squared millimetre here; the line is checked against Commons Math 3. */
    @Test
    void strikesOffCenterCostBallSpeed() {
        Random random = new Random(8L);
        double[] toe = new double[12];
        double[] up = new double[12];
        double[] speed = new double[12];
        SimpleRegression oracle = new SimpleRegression();
        for (int i = 0; i < 12; i++) {
            toe[i] = 0.004 + 0.008 * random.nextGaussian();
            up[i] = 0.006 * random.nextGaussian();
            double square = toe[i] * toe[i] + up[i] * up[i];
            speed[i] = 52.0 - 20_000.0 * square + 0.3 * random.nextGaussian();
            oracle.addData(square, speed[i]);
        }
        StrikePattern.Result r = StrikePattern.withDefaults().describe(toe, up, speed);
        StrikePattern.Cost cost = r.cost().orElseThrow();
        assertEquals(oracle.getSlope() * 1e-4, cost.at(0.010).value(), 1e-9);
        assertEquals(oracle.getIntercept(), cost.centered().value(), 1e-9);
        assertEquals(
                oracle.getSlopeConfidenceInterval(0.05) * 1e-4,
                cost.at(0.010).interval().halfWidth(),
                1e-8);
        assertEquals(oracle.getSignificance(), cost.pValue(), 1e-9);
        assertEquals(oracle.getRSquare(), cost.determination(), 1e-12);
        assertEquals(
                r.rmsOffset().value() * r.rmsOffset().value() * oracle.getSlope(),
                cost.mean().value(),
                1e-9);
        assertEquals(10, cost.degreesOfFreedom());
        assertTrue(cost.statistic() < 0.0 && cost.method().contains("least-squares"));
        assertTrue(r.warnings().isEmpty());
        assertTrue(r.ellipse(EllipseKind.CONTENT, 0.5)
                .contains(r.centerToe().value(), r.centerUp().value()));
        assertTrue(r.deviationToe().value() > 0.0 && r.deviationUp().value() > 0.0 && r.n() == 12);
        assertThrows(IllegalArgumentException.class, () -> cost.at(10.0));
        assertTrue(r.method().contains("Satterthwaite"));
        // 0.025 and 0.975 quantiles of chi-square with 11 degrees of freedom, NIST e-Handbook 1.3.6.7.4: 3.816 and
        // 21.920.
        double sd = r.deviationToe().value();
        assertEquals(sd * Math.sqrt(11.0 / 21.920), r.deviationToe().interval().lower(), 1e-4 * sd);
        assertEquals(sd * Math.sqrt(11.0 / 3.816), r.deviationToe().interval().upper(), 2e-4 * sd);
    }

    /**
     * Four strikes around the centre at the distance a: S = 2/3 a^2 I and b = 0, so nu = 2 n = 8; with b^2 = 2/3 a^2, E = 2 a^2 and V = 32/9 a^4,
     * so nu = 9. Quantiles of chi-square, NIST e-Handbook 1.3.6.7.4: 2.180 and 17.535 for 8, 2.700 and 19.023 for 9.
     */
    @Test
    void offsetHasAnIntervalOfMatchedChiSquare() {
        StrikePattern pattern = StrikePattern.withDefaults();
        double[] up = {0.0, 0.0, 0.01, -0.01};
        Estimate round =
                pattern.describe(new double[] {0.01, -0.01, 0.0, 0.0}, up).rmsOffset();
        assertEquals(0.01, round.value(), 1e-15);
        assertEquals(0.01 * Math.sqrt(8.0 / 17.535), round.interval().lower(), 1e-6);
        assertEquals(0.01 * Math.sqrt(8.0 / 2.180), round.interval().upper(), 5e-6);
        double b = 0.01 * Math.sqrt(2.0 / 3.0);
        Estimate beside =
                pattern.describe(new double[] {b + 0.01, b - 0.01, b, b}, up).rmsOffset();
        double rms = 0.01 * Math.sqrt(5.0 / 3.0);
        assertEquals(rms, beside.value(), 1e-15);
        assertEquals(rms * Math.sqrt(9.0 / 19.023), beside.interval().lower(), 1e-6);
        assertEquals(rms * Math.sqrt(9.0 / 2.700), beside.interval().upper(), 5e-6);
        double[] same = {b, b, b};
        Estimate none = pattern.describe(same, same).rmsOffset();
        assertEquals(b * Math.sqrt(2.0), none.value(), 1e-15);
        assertFalse(none.interval().bounded());
    }

    @Test
    void costWarnsWhereItRestsOnLittle() {
        double[] toe = {0.001, 0.002, 0.003};
        double[] none = new double[3];
        StrikePattern smash = StrikePattern.withDefaults().withLevel(0.9).withOutcomeUnit(RatioUnit.ONE);
        StrikePattern.Result gain = smash.describe(toe, none, new double[] {1.38, 1.39, 1.42});
        assertEquals(
                List.of("zero-spread", "few-shots", "gain-off-center"),
                gain.warnings().stream().map(w -> w.code()).toList());
        assertFalse(gain.deviationUp().interval().bounded());
        assertEquals(RatioUnit.ONE, gain.cost().orElseThrow().mean().unit());
        StrikePattern.Result flat = smash.describe(none, none, new double[] {1.38, 1.39, 1.42});
        assertTrue(flat.cost().isEmpty());
        assertEquals("zero-spread", flat.warnings().get(0).code());
        StrikePattern.Result level = smash.describe(toe, none, new double[] {1.4, 1.4, 1.4});
        assertEquals(0.0, level.cost().orElseThrow().statistic());
        assertEquals(1.0, level.cost().orElseThrow().pValue(), 1e-12);
        assertEquals(0.0, level.cost().orElseThrow().determination());
        assertTrue(smash.describe(toe, none).cost().isEmpty());
    }

    @Test
    void tenThousandShotsAreDescribed() {
        Random random = new Random(9L);
        double[] x = random.doubles(10_000).map(u -> 130.0 + 20.0 * u).toArray();
        double[] y = random.doubles(10_000).map(u -> -10.0 + 20.0 * u).toArray();
        // The mean and SD of the uniform distribution on [130, 150] are 140 and 20/sqrt(12); 5 standard errors.
        SampleSummary.Result carry = SampleSummary.withDefaults().summarize(x);
        assertEquals(140.0, carry.mean().value(), 5.0 * 20.0 / Math.sqrt(12.0) / 100.0);
        double radius = LandingPattern.withDefaults()
                .withTarget(140.0, 0.0)
                .describe(x, y)
                .radiusAboutTarget(0.5)
                .orElseThrow()
                .value();
        // A circular normal of the same SD: 1.17741 sigma.
        assertEquals(1.17741 * 20.0 / Math.sqrt(12.0), radius, 0.05 * radius);
        assertEquals(10_000, ShotShapes.withDefaults().describe(y, y, y, x).n());
        assertEquals(10_000, StrikePattern.withDefaults().describe(y, y, x).n());
    }
}
