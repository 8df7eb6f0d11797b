package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Plans against the values of plan_chances.py, which wrote them with SciPy from the textbook formulas. */
class FittingPlanTest {
    private static final FittingPlan PLAN = FittingPlan.withDefaults();

    private record Row(String kind, int pairs, double margin, double sd, int pilot, double chance, double error) {
        static Row of(String line) {
            String[] cells = line.split(",", -1);
            return new Row(
                    cells[0],
                    Integer.parseInt(cells[1]),
                    Double.parseDouble(cells[2]),
                    Double.parseDouble(cells[3]),
                    Integer.parseInt(cells[4]),
                    Double.parseDouble(cells[5]),
                    Double.parseDouble(cells[6]));
        }

        FittingPlan.Result plan() {
            return PLAN.withMostSwings(2 * pairs + 12)
                    .forMargin(margin, pilot == 0 ? SpreadGuess.known(sd) : SpreadGuess.ofPilot(sd, pilot));
        }
    }

    private static List<Row> rows() throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                FittingPlanTest.class.getResourceAsStream("plan_chances.csv"), StandardCharsets.UTF_8))) {
            return in.lines().skip(1).map(Row::of).toList();
        }
    }

    /** The exact chances of looking once, and those of looking after every pair to five standard errors of both simulations. */
    @Test
    void chancesAreThoseOfSciPy() throws IOException {
        List<Row> rows = rows();
        assertTrue(rows.size() >= 40);
        Map<List<Number>, FittingPlan.Result> plans = new HashMap<>();
        for (Row row : rows) {
            List<Number> same = List.of(row.pairs(), row.margin(), row.sd(), row.pilot());
            FittingPlan.Result r = plans.computeIfAbsent(same, key -> row.plan());
            assertEquals(row.pairs(), r.mostPairs());
            boolean different = row.kind().equals("seq-different")
                    || row.kind().startsWith("t-")
                    || row.kind().equals("t");
            FittingPlan.Design design = row.kind().startsWith("seq") ? r.afterEveryPair() : r.atTheEnd();
            double own = Math.sqrt(row.chance() * (1.0 - row.chance()) / 4_000.0);
            double tolerance =
                    row.kind().startsWith("seq") ? 5.0 * Math.hypot(own, row.error()) : row.pilot() == 0 ? 1e-7 : 1e-5;
            assertEquals(
                    row.chance(), different ? design.findsDifference() : design.showsSame(), tolerance, row.toString());
        }
    }

    @Test
    void numbersReachTheChanceAndMarginsTheCap() {
        FittingPlan.Result r = PLAN.forMargin(5.0, SpreadGuess.ofPilot(6.0, 10));
        int pairs = r.atTheEnd().pairs().orElseThrow();
        FittingPlan.Design there = PLAN.withMostSwings(2 * pairs + 12)
                .forMargin(5.0, SpreadGuess.ofPilot(6.0, 10))
                .atTheEnd();
        assertTrue(Math.min(there.findsDifference(), there.showsSame()) >= 0.8);
        FittingPlan.Design before = PLAN.withMostSwings(2 * pairs + 10)
                .forMargin(5.0, SpreadGuess.ofPilot(6.0, 10))
                .atTheEnd();
        assertTrue(Math.min(before.findsDifference(), before.showsSame()) < 0.8);
        for (boolean end : new boolean[] {true, false}) {
            FittingPlan.Design design = end ? r.atTheEnd() : r.afterEveryPair();
            double reach = design.reachableMargin().orElseThrow();
            FittingPlan.Result wider = PLAN.forMargin(1.01 * reach, SpreadGuess.ofPilot(6.0, 10));
            FittingPlan.Result narrower = PLAN.forMargin(0.98 * reach, SpreadGuess.ofPilot(6.0, 10));
            assertTrue(wider.withinCap(end ? wider.atTheEnd() : wider.afterEveryPair()));
            assertFalse(narrower.withinCap(end ? narrower.atTheEnd() : narrower.afterEveryPair()));
        }
        assertTrue(r.afterEveryPair().pairs().orElseThrow() > pairs, "looking after every pair is not free");
    }

    /** What is not known of the spread makes a plan longer, and the same shots in another unit the same plan. */
    @Test
    void aPilotIsLessThanKnowing() {
        FittingPlan.Result known = PLAN.forMargin(5.0, SpreadGuess.known(6.0));
        FittingPlan.Result pilot = PLAN.forMargin(5.0, SpreadGuess.ofPilot(6.0, 8));
        assertTrue(pilot.atTheEnd().pairs().orElseThrow()
                > known.atTheEnd().pairs().orElseThrow());
        FittingPlan.Result meters = PLAN.forMargin(5.0 * 0.9144, SpreadGuess.known(6.0 * 0.9144));
        assertEquals(known.atTheEnd().pairs(), meters.atTheEnd().pairs());
        assertEquals(known.afterEveryPair().pairs(), meters.afterEveryPair().pairs());
    }

    @Test
    void theCapCountsEverySwing() {
        assertEquals(24, PLAN.mostPairs());
        assertEquals(14, PLAN.withMostSwings(40).mostPairs());
        assertEquals(20, PLAN.withMostSwings(40).withWarmUp(0).withReserve(0).mostPairs());
        FittingPlan.Result hopeless = PLAN.withMostSwings(30).forMargin(2.0, SpreadGuess.known(8.0));
        assertFalse(hopeless.withinCap(hopeless.atTheEnd()));
        assertTrue(hopeless.atTheEnd().reachableMargin().orElseThrow() > 2.0);
        assertTrue(
                PLAN.forMargin(0.01, SpreadGuess.known(8.0)).atTheEnd().pairs().isEmpty());
    }

    @Test
    void refusesWhatCannotBePlanned() {
        assertThrows(IllegalArgumentException.class, () -> PLAN.withMostSwings(15));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withMostSwings(401));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withWarmUp(-1));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withReserve(-1));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withChance(80.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.withLevel(95.0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.forMargin(0.0, SpreadGuess.known(1.0)));
        assertThrows(IllegalArgumentException.class, () -> SpreadGuess.known(0.0));
        assertThrows(IllegalArgumentException.class, () -> SpreadGuess.ofPilot(1.0, 1));
        assertThrows(IllegalArgumentException.class, () -> SpreadGuess.ofDifferences(1.0, 1.0));
    }

    /** By hand: differences 1, 2, 3, 4 have variance 5/3. */
    @Test
    void theSpreadOfDifferences() {
        SpreadGuess guess = SpreadGuess.ofDifferences(1.0, 2.0, 3.0, 4.0);
        assertEquals(Math.sqrt(5.0 / 3.0), guess.value(), 1e-14);
        assertEquals(4, guess.pairs().orElseThrow());
    }
}
