package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.PairedTTest;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.compare.Verdict;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Swings whose means are known, and Holm's adjustment written out. */
class BalanceTest {
    private static final double DEG = Math.PI / 180.0;

    private static HeadToHeadResult compare(InventedSwings swings) {
        Session session = swings.session();
        return HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session);
    }

    @Test
    void swingsThatAreTheSameAreCalledTheSame() {
        Balance.Result r = Balance.withDefaults().compare(compare(InventedSwings.of(3, 40)));
        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), r.side(SwingSide.GOLFER));
        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), r.side(SwingSide.MEETING));
        assertEquals(8, r.inputs().size());
        assertEquals(List.of(), r.warnings());
    }

    @Test
    void oneInputThatDiffersMakesItsSideDifferAndNotTheOther() {
        Balance.Result r =
                Balance.withDefaults().compare(compare(InventedSwings.of(3, 40).more(Metric.FACE_ANGLE, 2.0 * DEG)));
        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), r.side(SwingSide.GOLFER));
        assertEquals(Optional.of(Verdict.DIFFERENT), r.side(SwingSide.MEETING));
        Balance.Input face = r.find(Metric.FACE_ANGLE).orElseThrow();
        assertEquals(Verdict.DIFFERENT, face.verdict().verdict());
        assertEquals(
                Verdict.PRACTICALLY_THE_SAME,
                r.find(Metric.DYNAMIC_LOFT).orElseThrow().verdict().verdict());
    }

    @Test
    void anInputMayChangeSides() {
        HeadToHeadResult result = compare(InventedSwings.of(3, 40).more(Metric.DYNAMIC_LOFT, 3.0 * DEG));
        Balance.Result usual = Balance.withDefaults().compare(result);
        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), usual.side(SwingSide.GOLFER));
        Balance.Result moved = Balance.withDefaults()
                .withInput(Metric.DYNAMIC_LOFT, SwingSide.GOLFER)
                .compare(result);
        assertEquals(Optional.of(Verdict.DIFFERENT), moved.side(SwingSide.GOLFER));
        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), moved.side(SwingSide.MEETING));
        Balance.Result gone =
                Balance.withDefaults().withoutInput(Metric.DYNAMIC_LOFT).compare(result);
        assertTrue(gone.find(Metric.DYNAMIC_LOFT).isEmpty());
        assertThrows(
                IllegalArgumentException.class,
                () -> Balance.withDefaults().withInput(Metric.BALL_SPEED, SwingSide.GOLFER));
    }

    /** Holm (1979): the smallest p times the number of questions, the next times one less, and never falling. */
    @Test
    void adjustsOverTheInputsOfASide() {
        HeadToHeadResult result =
                compare(InventedSwings.of(11, 12).more(Metric.CLUB_SPEED, 0.4).more(Metric.CLUB_PATH, 0.5 * DEG));
        Balance.Result r = Balance.withDefaults().compare(result);
        double[] p = List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH).stream()
                .mapToDouble(m -> PairedTTest.withDefaults()
                        .test(
                                result.find(m).orElseThrow().pairedFirst(),
                                result.find(m).orElseThrow().pairedSecond())
                        .pValue())
                .sorted()
                .toArray();
        double one = Math.min(1.0, 3.0 * p[0]);
        double two = Math.max(one, Math.min(1.0, 2.0 * p[1]));
        double three = Math.max(two, p[2]);
        List<Double> adjusted = r.inputs().stream()
                .filter(i -> i.side() == SwingSide.GOLFER)
                .map(Balance.Input::adjustedP)
                .sorted()
                .toList();
        assertEquals(3, adjusted.size());
        assertEquals(one, adjusted.get(0), 1e-12);
        assertEquals(two, adjusted.get(1), 1e-12);
        assertEquals(three, adjusted.get(2), 1e-12);
    }

    @Test
    void marginsMayBeSet() {
        HeadToHeadResult result = compare(InventedSwings.of(3, 40));
        Balance.Result strict =
                Balance.withDefaults().withMargin(Metric.CLUB_PATH, 0.05 * DEG).compare(result);
        Balance.Input path = strict.find(Metric.CLUB_PATH).orElseThrow();
        assertEquals(Verdict.UNDECIDED, path.verdict().verdict());
        assertEquals(Optional.of(Verdict.UNDECIDED), strict.side(SwingSide.GOLFER));
        TostTest.Result expected = TostTest.withinMargin(0.05 * DEG)
                .testPairs(
                        result.find(Metric.CLUB_PATH).orElseThrow().pairedFirst(),
                        result.find(Metric.CLUB_PATH).orElseThrow().pairedSecond());
        assertEquals(expected.pValue(), path.equivalence().orElseThrow().pValue(), 1e-12);
        // Within what they are the same is the smallest margin that the test would meet.
        double within = path.within().orElseThrow();
        assertTrue(equivalent(result, 1.001 * within));
        assertFalse(equivalent(result, 0.999 * within));
    }

    private static boolean equivalent(HeadToHeadResult result, double margin) {
        return TostTest.withinMargin(margin)
                .testPairs(
                        result.find(Metric.CLUB_PATH).orElseThrow().pairedFirst(),
                        result.find(Metric.CLUB_PATH).orElseThrow().pairedSecond())
                .equivalent();
    }

    @Test
    void aSideOfWhichSomethingWasNotMeasuredIsNotCalledTheSame() {
        Balance.Result r =
                Balance.withDefaults().compare(compare(InventedSwings.of(3, 40).without(Metric.CLUB_PATH)));
        assertEquals(Optional.of(Verdict.UNDECIDED), r.side(SwingSide.GOLFER));
        assertEquals(List.of(Metric.CLUB_PATH), r.missing());
        assertEquals("input-not-compared", r.warnings().get(0).code());
        InventedSwings launchOnly = InventedSwings.of(3, 12);
        for (Metric metric : List.of(Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH)) {
            launchOnly.without(metric);
        }
        assertTrue(Balance.withDefaults()
                .compare(compare(launchOnly))
                .side(SwingSide.GOLFER)
                .isEmpty());
    }
}
