package dev.teeward.fitting.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

/** Identities of linear models, the example of the package, and data that cannot answer. */
class LinearModelTest {
    private static final String[] CLUB = {"Alder", "Rowan", "Rowan", "Alder", "Alder", "Rowan", "Rowan", "Alder"};
    private static final double[] SPEED = {86.1, 85.4, 86.0, 87.2, 85.9, 86.3, 85.1, 86.8};
    private static final double[] CARRY = {168.2, 169.9, 171.0, 170.4, 167.9, 171.9, 169.0, 169.7};
    private static final String[] PAIR = {"1", "1", "2", "2", "3", "3", "4", "4"};

    private static boolean warns(List<Warning> warnings, String code) {
        return warnings.stream().anyMatch(w -> w.code().equals(code));
    }

    @Test
    void packageExample() {
        Design design = Design.of(8).withFactor("club", "Alder", CLUB).withCentered("speed", SPEED);
        LinearFit fit = LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(design, CARRY);
        Estimate direct = fit.coefficient("club=Rowan").estimate();
        MeanDecomposition.Result parts =
                MeanDecomposition.withDefaults().decompose("Alder", CLUB, Map.of("speed", SPEED), CARRY);
        assertEquals(direct.value(), parts.direct().estimate().value(), 1e-12);
        assertTrue(fit.method().contains("HC3") && fit.method().contains("5 degrees"));
        assertTrue(fit.coefficient("speed").toString().startsWith("speed: "));
    }

    /** An identity of least squares (Gelbach 2016), and of the threefold split. */
    @Test
    void partsAddUpToTheDifference() {
        Random random = new Random(3L);
        Map<String, double[]> x = new LinkedHashMap<>();
        x.put("speed", random.doubles(8).toArray());
        x.put("path", random.doubles(8).toArray());
        MeanDecomposition split = MeanDecomposition.withDefaults()
                .withLevel(0.9)
                .withUnit(LengthUnit.YARD)
                .withErrors(ErrorModel.HC1);
        MeanDecomposition.Result r = split.decompose("Alder", CLUB, x, CARRY);
        double difference = IntStream.range(0, 8)
                .mapToDouble(i -> CLUB[i].equals("Rowan") ? CARRY[i] / 4.0 : -CARRY[i] / 4.0)
                .sum();
        double explained = r.explained().values().stream()
                .mapToDouble(c -> c.estimate().value())
                .sum();
        assertEquals(difference, r.difference().estimate().value(), 1e-10);
        assertEquals(difference, r.direct().estimate().value() + explained, 1e-10);
        MeanDecomposition.Threefold three = r.threefold().orElseThrow();
        double endowments =
                three.endowments().values().stream().mapToDouble(v -> v).sum();
        assertEquals(difference, endowments + three.coefficients() + three.interaction(), 1e-9);
        assertEquals(
                explained, r.shapley().values().stream().mapToDouble(v -> v).sum(), 1e-9);
        assertEquals(LengthUnit.YARD, r.direct().estimate().unit());
        assertEquals(0.9, r.explained().get("path").estimate().interval().level());
        x.put("face", random.doubles(8).toArray());
        x.put("loft", random.doubles(8).toArray());
        MeanDecomposition.Result four = split.decompose("Alder", CLUB, x, CARRY);
        assertTrue(four.threefold().isEmpty() && warns(four.warnings(), "no-threefold-split"));
    }

    /** With complete pairs as blocks both models are the paired t test; Commons Math as oracle. */
    @Test
    void completePairsGiveThePairedTTest() {
        double[] a = pick("Alder");
        double[] b = pick("Rowan");
        TTest oracle = new TTest();
        Design design = Design.of(8).withFactor("club", "Alder", CLUB);
        Coefficient fixed = LinearModel.withDefaults()
                .fit(design.withFactor("pair", "1", PAIR), CARRY)
                .coefficient("club=Rowan");
        assertEquals(oracle.pairedT(b, a), fixed.t().orElseThrow(), 1e-9);
        assertEquals(oracle.pairedTTest(b, a), fixed.pValue(), 1e-12);
        double[] spread = CARRY.clone();
        for (int i = 0; i < 8; i++) {
            spread[i] += 1.5 * (i - i % 2);
        }
        RandomInterceptModel.Result mixed = RandomInterceptModel.withDefaults()
                .withLevel(0.9)
                .withUnit(LengthUnit.YARD)
                .fit(design, PAIR, spread);
        Coefficient random = mixed.coefficient("club=Rowan");
        assertTrue(mixed.groupVariance() > 0.0);
        assertFalse(mixed.method().contains("group variance 0"), mixed.method());
        assertEquals(3.0, random.degreesOfFreedom(), 1e-6);
        assertEquals(oracle.pairedT(b, a), random.t().orElseThrow(), 1e-6);
        assertTrue(warns(mixed.warnings(), "few-groups"));
        assertThrows(IllegalArgumentException.class, () -> mixed.coefficient("speed"));
    }

    private static double[] pick(String club) {
        return IntStream.range(0, 8)
                .filter(i -> CLUB[i].equals(club))
                .mapToDouble(i -> CARRY[i])
                .toArray();
    }

    /**
     * At group variance 0 the error is that of plain least squares, by R 4.2.2 t.test(var.equal = TRUE) 0.5411613 with 18 df, but
     * the degrees of freedom are the 9 of ten pairs, with t_0.975(9) = 2.262157; the paired error is 0.7569603.
     */
    @Test
    void groupVarianceOfZeroIsNotPlainLeastSquares() {
        double[] alder = {1.2, -0.4, 0.8, 2.1, -1.5, 0.3, 1.9, -0.7, 0.6, -1.1};
        double[] rowan = {-0.3, 1.6, 0.4, -0.9, 2.2, 1.5, -0.8, 1.3, 0.9, 2.4};
        String[] club = new String[20];
        String[] pair = new String[20];
        double[] y = new double[20];
        for (int i = 0; i < 20; i++) {
            club[i] = i < 10 ? "Alder" : "Rowan";
            pair[i] = String.valueOf(i % 10);
            y[i] = i < 10 ? alder[i] : rowan[i - 10];
        }
        Design design = Design.of(20).withFactor("club", "Alder", club);
        RandomInterceptModel.Result r = RandomInterceptModel.withDefaults().fit(design, pair, y);
        assertEquals(0.0, r.groupVariance());
        Coefficient c = r.coefficient("club=Rowan");
        assertEquals(0.5411613, c.standardError().orElseThrow(), 1e-7);
        assertEquals(9.0, c.degreesOfFreedom(), 1e-9);
        assertEquals(0.51 + 2.262157 * 0.5411613, c.estimate().interval().upper(), 1e-6);
        assertTrue(r.warnings().stream()
                .anyMatch(
                        w -> w.code().equals("no-group-variance") && w.message().contains("paired t test")));
        assertTrue(r.method().contains("group variance 0"), r.method());
        Coefficient plain = LinearModel.withDefaults().fit(design, y).coefficient("club=Rowan");
        assertEquals(18.0, plain.degreesOfFreedom());
        Coefficient blocks = LinearModel.withDefaults()
                .fit(design.withFactor("pair", "0", pair), y)
                .coefficient("club=Rowan");
        assertEquals(0.7569603, blocks.standardError().orElseThrow(), 1e-7);
    }

    /** Without a difference between groups the estimate is that of plain least squares. */
    @Test
    void groupsThatDoNotDifferHaveNoVariance() {
        Design design = Design.of(8).withFactor("club", "Alder", CLUB);
        String[] golfer = {"a", "b", "c", "d", "d", "c", "b", "a"};
        double[] y = {1.0, 0.0, 2.0, 1.5, 2.0, 1.0, 3.0, 2.0};
        RandomInterceptModel.Result r = RandomInterceptModel.withDefaults().fit(design, golfer, y);
        assertEquals(0.0, r.groupVariance());
        assertTrue(warns(r.warnings(), "no-group-variance"));
        Coefficient plain = LinearModel.withDefaults().fit(design, y).coefficient("club=Rowan");
        assertEquals(
                plain.estimate().value(), r.coefficient("club=Rowan").estimate().value(), 1e-12);
        double[] flat = new double[8];
        Arrays.fill(flat, 7.0);
        RandomInterceptModel.Result none = RandomInterceptModel.withDefaults().fit(design, golfer, flat);
        assertTrue(warns(none.warnings(), "no-spread"));
        assertEquals(1.0, none.coefficient("club=Rowan").pValue());
        // Every golfer hits the same with either club, up to a constant: nothing is left to chance within golfers.
        double[] steady = {1.0, 6.0, 4.0, 7.0, 9.0, 2.0, 5.0, 3.0};
        String[] pairs = {"a", "b", "c", "d", "b", "a", "d", "c"};
        double[] exact = new double[8];
        for (int i = 0; i < 8; i++) {
            exact[i] = steady[pairs[i].charAt(0) - 'a'] + (CLUB[i].equals("Rowan") ? 0.5 : 0.0);
        }
        RandomInterceptModel.Result certain =
                RandomInterceptModel.withDefaults().fit(design, pairs, exact);
        assertTrue(warns(certain.warnings(), "no-spread") || certain.residualVariance() < 1e-9);
    }

    /** With slopes of their own, the marginal means at the mean covariate are those of one line for each club. */
    @Test
    void marginalMeansWithInteractionAreThoseOfSeparateLines() {
        Design design = Design.of(8)
                .withFactor("club", "Alder", CLUB)
                .withCentered("speed", SPEED)
                .withInteraction("club", "speed");
        LinearFit fit = LinearModel.withDefaults().fit(design, CARRY);
        assertEquals(List.of("intercept", "club=Rowan", "speed", "club=Rowan:speed"), design.names());
        double mean = Arrays.stream(SPEED).average().orElseThrow();
        for (int c = 0; c < 2; c++) {
            String club = design.levels("club").get(c);
            int[] rows = IntStream.range(0, 8).filter(i -> CLUB[i].equals(club)).toArray();
            Design line = Design.of(4)
                    .withCovariate(
                            "speed",
                            Arrays.stream(rows)
                                    .mapToDouble(i -> SPEED[i] - mean)
                                    .toArray());
            double own = LinearModel.withDefaults()
                    .fit(line, pick(club))
                    .coefficient("intercept")
                    .estimate()
                    .value();
            assertEquals(own, fit.marginalMeans("club").get(c).estimate().value(), 1e-9);
        }
        Design raw = Design.of(8)
                .withFactor("club", "Alder", CLUB)
                .withCovariate("speed", SPEED)
                .withInteraction("club", "speed");
        LinearFit same = LinearModel.withDefaults().fit(raw, CARRY);
        for (int c = 0; c < 2; c++) {
            assertEquals(
                    fit.marginalMeans("club").get(c).estimate().value(),
                    same.marginalMeans("club").get(c).estimate().value(),
                    1e-8);
        }
        assertTrue(warns(same.warnings(), "collinear"));
    }

    @Test
    void dataThatCannotAnswerSaySo() {
        Design club = Design.of(8).withFactor("club", "Alder", CLUB);
        double[] flat = new double[8];
        Arrays.fill(flat, 170.1);
        LinearFit level = LinearModel.withDefaults().fit(club, flat);
        assertTrue(warns(level.warnings(), "no-spread"));
        assertEquals(1.0, level.coefficient("club=Rowan").pValue());
        assertFalse(level.coefficient("club=Rowan").estimate().interval().bounded());
        assertTrue(level.fStatistic().isEmpty() && level.durbinWatson().isEmpty());
        assertEquals(0.0, level.determination());
        assertEquals(1.0, level.breuschPaganP());
        LinearFit full =
                LinearModel.withDefaults().fit(Design.of(2).withFactor("club", "Alder", "Alder", "Rowan"), 1.0, 3.0);
        assertTrue(warns(full.warnings(), "too-few-shots"));
        assertEquals(0.0, full.residualDeviation());
        assertEquals(2.0, full.coefficient("club=Rowan").estimate().value(), 1e-12);
        String[] single = {"1", "1", "2", "2", "3", "3", "3", "4"};
        Design blocked = club.withFactor("block", "1", single);
        LinearFit refused =
                LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(blocked, CARRY);
        assertTrue(warns(refused.warnings(), "leverage-of-one"));
        assertTrue(refused.coefficient("club=Rowan").standardError().isEmpty());
        LinearFit fine = LinearModel.withDefaults().fit(blocked, CARRY);
        assertTrue(fine.coefficient("club=Rowan").standardError().isPresent());
        assertTrue(warns(fine.warnings(), "many-coefficients"));
        assertTrue(Arrays.stream(fine.cooksDistances()).allMatch(Double::isFinite));
        assertTrue(Arrays.stream(fine.studentizedResiduals()).allMatch(Double::isFinite));
    }

    @Test
    void varianceAnalysisOfDataThatCannotAnswer() {
        OneWayAnova welch = OneWayAnova.withDefaults();
        assertTrue(warns(welch.test(new double[] {1.0}, new double[] {1.0, 2.0}).warnings(), "too-few-shots"));
        assertTrue(warns(
                welch.test(new double[] {1.0, 1.0}, new double[] {1.0, 2.0}).warnings(), "no-spread"));
        assertEquals(
                1.0,
                welch.test(new double[] {1.0, 1.0}, new double[] {1.0, 2.0}).pValue());
        assertThrows(IllegalArgumentException.class, () -> welch.test(new double[] {1.0, 2.0}));
    }

    @Test
    void badDesignsAreRefused() {
        Design club = Design.of(8).withFactor("club", "Alder", CLUB);
        LinearModel model = LinearModel.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> Design.of(0));
        assertThrows(IllegalArgumentException.class, () -> club.withFactor("club", "Alder", CLUB));
        assertThrows(IllegalArgumentException.class, () -> club.withFactor("make", "Hazel", CLUB));
        assertThrows(IllegalArgumentException.class, () -> club.withFactor("make", "a", "a", "b"));
        assertThrows(IllegalArgumentException.class, () -> club.withCovariate("speed", 1.0));
        assertThrows(IllegalArgumentException.class, () -> club.withCovariate(" ", SPEED));
        double[] broken = SPEED.clone();
        broken[3] = Double.NaN;
        assertThrows(IllegalArgumentException.class, () -> club.withCovariate("speed", broken));
        assertThrows(IllegalArgumentException.class, () -> club.withInteraction("club", "club"));
        assertThrows(IllegalArgumentException.class, () -> club.withInteraction("club", "speed"));
        assertThrows(IllegalArgumentException.class, () -> club.levels("intercept"));
        Design twice = club.withCovariate("speed", SPEED).withCovariate("again", SPEED);
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> model.fit(twice, CARRY));
        assertTrue(e.getMessage().contains("again"));
        assertThrows(IllegalArgumentException.class, () -> model.fit(club, 1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> model.fit(club, broken));
        Design few = Design.of(2).withFactor("club", "a", "a", "b").withCovariate("x", 1.0, 3.0);
        assertThrows(IllegalArgumentException.class, () -> model.fit(few, 1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> model.withLevel(1.0));
        LinearFit fit = model.fit(club, CARRY);
        assertThrows(IllegalArgumentException.class, () -> fit.coefficient("speed"));
        assertThrows(IllegalArgumentException.class, () -> fit.combination("x", 1.0));
        RandomInterceptModel mixed = RandomInterceptModel.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> mixed.fit(club, new String[] {"1"}, CARRY));
        String[] same = {"1", "1", "1", "1", "1", "1", "1", "1"};
        assertThrows(IllegalArgumentException.class, () -> mixed.fit(club, same, CARRY));
        MeanDecomposition split = MeanDecomposition.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> split.decompose("Alder", CLUB, Map.of(), CARRY));
        assertThrows(IllegalArgumentException.class, () -> split.decompose("1", PAIR, Map.of("speed", SPEED), CARRY));
    }
}
