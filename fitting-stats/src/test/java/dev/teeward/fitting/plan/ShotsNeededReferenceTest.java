package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.compare.PairedTTest;
import dev.teeward.fitting.compare.WelchTTest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Plans for two spreads, for an assured half-width and for equivalence, against SciPy ({@code shots_needed.py}). */
class ShotsNeededReferenceTest {
    private static final PairsNeeded PLAN = PairsNeeded.withDefaults();
    private static final int SESSIONS = 20_000;

    @TestFactory
    Stream<DynamicTest> values() throws IOException {
        try (InputStream in = Objects.requireNonNull(
                ShotsNeededReferenceTest.class.getResourceAsStream("/dev/teeward/fitting/plan/shots_needed.csv"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines().skip(1).toList().stream()
                            .map(line -> line.split(",", -1))
                            .map(row -> DynamicTest.dynamicTest(row[0] + " " + row[1], () -> check(row)));
        }
    }

    private static void check(String[] row) {
        double[] x = Arrays.stream(row[1].split(";"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double actual = switch (row[0]) {
            case "welch" -> PLAN.unpaired(x[2], x[3]).power(x[0], x[1]);
            case "welch one-sided" -> PLAN.oneSided().unpaired(x[2], x[3]).power(x[0], x[1]);
            case "welch shots" -> PLAN.unpaired(x[1], x[2]).forDifference(x[0]).shots();
            case "assurance" -> pairs(x[3]).assurance(x[0], x[1], x[2]);
            case "assured shots" -> pairs(x[3]).forHalfWidth(x[0], x[1], x[2]).shots();
            case "tost" -> same(x[4]).power((int) x[0], x[1], x[2], x[3]);
            case "tost shots" -> same(x[3]).forMargin(x[1], x[2], x[0]);
            case "spread" -> SpreadShotsNeeded.withDefaults().withAlpha(x[2]).power((int) x[0], x[1]);
            case "spread shots" ->
                SpreadShotsNeeded.withDefaults().withAlpha(x[1]).forRatio(x[0]);
            default -> throw new IllegalArgumentException(row[0]);
        };
        assertEquals(Double.parseDouble(row[2]), actual, 1e-9, row[0] + " " + row[1]);
    }

    private static PairsNeeded pairs(double paired) {
        return paired > 0.0 ? PLAN : PLAN.unpaired();
    }

    private static EquivalenceShotsNeeded same(double paired) {
        EquivalenceShotsNeeded plan = EquivalenceShotsNeeded.withDefaults();
        return paired > 0.0 ? plan : plan.unpaired();
    }

    @Test
    void plansMeetWhatTheyPromiseAndOneLessDoesNot() {
        WelchShotsNeeded welch = PLAN.unpaired(3.0, 1.0);
        PairsNeeded.Result r = welch.forDifference(3.2);
        assertEquals(welch.power(r.shots(), 3.2), r.achieved());
        assertTrue(r.achieved() >= 0.8 && welch.power(r.shots() - 1.0, 3.2) < 0.8);
        assertEquals(0.8, welch.power(r.exact(), 3.2), 1e-10);
        PairsNeeded.Result assured = PLAN.forHalfWidth(4.0, 6.0, 0.8);
        assertTrue(assured.achieved() <= 4.0);
        assertEquals(0.8, PLAN.assurance(assured.exact(), 4.0, 6.0), 1e-10);
        assertEquals(0.8, PLAN.assurance(assured.shots(), assured.achieved(), 6.0), 1e-10);
        // Half-widths by hand: t_0.975 with 8 degrees of freedom for five shots and equal spreads is 2.306004 (tables).
        PairsNeeded.Result width = PLAN.unpaired(1.0, 1.0).forHalfWidth(2.306005 * Math.sqrt(2.0 / 5.0));
        assertEquals(5, width.shots());
        assertEquals(2.306004 * Math.sqrt(2.0 / 5.0), width.achieved(), 1e-6);
    }

    /** Equal spreads with a large n: Welch's test is then Student's, whose plan is exact. */
    @Test
    void manyShotsOfEqualSpreadsNeedTheSameEitherWay() {
        double student = PLAN.unpaired().power(2_000.0, 0.08, 1.0);
        assertEquals(student, PLAN.unpaired(1.0, 1.0).power(2_000.0, 0.08), 1e-4);
        assertTrue(PLAN.unpaired(1.0, 1.0).forDifference(0.1).shots() >= 1_570);
    }

    /** At ten pairs the 90 % interval of a standard deviation is 0.729 to 1.645 of it, the 95 % one 0.688 to 1.826 (tables). */
    @Test
    void pilotsLeaveARange() {
        PairsNeeded.Range width = PLAN.halfWidthFromPilot(4.0, 6.0, 10);
        assertEquals(12, width.central().shots());
        assertEquals(PLAN.forHalfWidth(4.0, 6.0 * 0.68784).shots(), width.low().shots());
        assertEquals(PLAN.forHalfWidth(4.0, 6.0 * 1.82561).shots(), width.high().shots());
        assertTrue(
                width.safe().shots() > 12 && width.safe().shots() < width.high().shots());
        EquivalenceShotsNeeded plan = EquivalenceShotsNeeded.withDefaults();
        EquivalenceShotsNeeded.Range same = plan.fromPilot(1.0, 1.0, 10);
        assertEquals(11, same.central());
        assertEquals(plan.forMargin(1.0, 0.72934), same.low());
        assertEquals(plan.forMargin(1.0, 1.64539), same.high());
        assertTrue(same.safe() > same.central() && same.safe() < same.high());
        assertTrue(plan.unpaired().fromPilot(1.0, 1.0, 10).high() > same.high());
    }

    /** t_0.95 with 4 degrees of freedom is 2.131847 (tables): five pairs pass below 0.3 sqrt(5) / 2.131847 = 0.314666. */
    @Test
    void whereEquivalenceCannotBeShown() {
        EquivalenceShotsNeeded plan = EquivalenceShotsNeeded.withDefaults();
        assertEquals(0.314666, plan.largestSpread(5, 0.3), 1e-6);
        assertTrue(plan.power(5, 0.0, 0.3, 1.0) < 0.002);
        double[] wide = {-1.0, -0.5, 0.0, 0.5, 1.0};
        double sd = Math.sqrt(2.5 / 4.0);
        assertTrue(sd > plan.largestSpread(5, 0.3));
        // Observed difference 0, and still the 90 % interval reaches beyond the margin.
        assertTrue(PairedTTest.withDefaults()
                        .withLevel(0.9)
                        .test(wide, new double[5])
                        .estimate()
                        .interval()
                        .upper()
                > 0.3);
    }

    @Test
    void impossiblePlansAreRefused() {
        WelchShotsNeeded welch = PLAN.unpaired(3.0, 1.0);
        EquivalenceShotsNeeded same = EquivalenceShotsNeeded.withDefaults();
        assertThrows(IllegalArgumentException.class, () -> PLAN.unpaired(0.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.unpaired(1.0, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> welch.power(1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> welch.power(5.0, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> welch.forDifference(0.0));
        assertThrows(IllegalArgumentException.class, () -> welch.forHalfWidth(0.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forHalfWidth(1.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.assurance(1.0, 1.0, 1.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.halfWidthFromPilot(1.0, 1.0, 1));
        assertThrows(IllegalArgumentException.class, () -> same.forMargin(1.0, 1.0, -1.0));
        assertThrows(IllegalArgumentException.class, () -> same.largestSpread(1, 1.0));
        assertThrows(IllegalArgumentException.class, () -> same.fromPilot(1.0, 1.0, 1));
        assertThrows(
                IllegalArgumentException.class,
                () -> SpreadShotsNeeded.withDefaults().withAlpha(0.8));
    }

    /** 20,000 sessions; a rate of 0.7 has a standard deviation of 0.32 points. */
    @Test
    @Tag("sweep")
    void sessionsAreAsPlanned() {
        SplittableRandom random = new SplittableRandom(9L);
        int found = 0;
        int kept = 0;
        for (int s = 0; s < SESSIONS; s++) {
            double[] x = new double[8];
            Arrays.setAll(x, i -> 3.2 + 3.0 * random.nextGaussian());
            double[] y = new double[8];
            Arrays.setAll(y, i -> random.nextGaussian());
            found += WelchTTest.withDefaults().test(x, y).pValue() <= 0.05 ? 1 : 0;
            double[] d = new double[14];
            Arrays.setAll(d, i -> 6.0 * random.nextGaussian());
            double reach = PairedTTest.withDefaults()
                            .test(d, new double[14])
                            .estimate()
                            .interval()
                            .width()
                    / 2.0;
            kept += reach <= 4.0 ? 1 : 0;
        }
        System.err.printf(
                Locale.ROOT,
                "SWEEP Welch power at 3 and 1: %.4f, half-width kept with 14 pairs: %.4f%n",
                found / (double) SESSIONS,
                kept / (double) SESSIONS);
        assertEquals(PLAN.unpaired(3.0, 1.0).power(8.0, 3.2), found / (double) SESSIONS, 0.01);
        assertEquals(PLAN.assurance(14.0, 4.0, 6.0), kept / (double) SESSIONS, 0.01);
    }
}
