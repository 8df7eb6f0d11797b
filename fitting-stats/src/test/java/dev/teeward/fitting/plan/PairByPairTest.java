package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** One session, pair by pair: what is settled when, what is expected, and that re-hits keep pairs whole. */
class PairByPairTest {
    private static final PairByPair NEW = PairByPair.withinMargin(5.0).withUnit(LengthUnit.YARD);

    private static PairByPair session(double difference, double sd, int pairs, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PairByPair session = NEW;
        for (int i = 0; i < pairs; i++) {
            session = session.append(difference + sd * random.nextGaussian(), 0.0);
        }
        return session;
    }

    /** The step of the simulations is the public test, at every look. */
    @Test
    void theRunningIntervalIsThatOfTheSequentialTest() {
        SequentialTTest test = SequentialTTest.withDefaults();
        double[] critical = RunningLooks.criticals(test, 30);
        for (long seed = 0; seed < 20; seed++) {
            double[] d = session(2.0, 5.0, 30, seed).differences();
            RunningLooks run = new RunningLooks(critical, 5.0);
            for (int n = 1; n <= 30; n++) {
                run.add(d[n - 1]);
                double[] soFar = java.util.Arrays.copyOf(d, n);
                var interval = test.testPairs(soFar, new double[n]).difference().interval();
                if (interval.bounded()) {
                    assertEquals(interval.lower(), run.lower(), 1e-9);
                    assertEquals(interval.upper(), run.upper(), 1e-9);
                } else {
                    assertTrue(run.lower() == Double.NEGATIVE_INFINITY || run.lower() > run.upper());
                }
            }
        }
    }

    @Test
    void settlesEitherWay() {
        Standing same = session(0.0, 2.0, 24, 1).standing();
        assertEquals(Standing.Advice.SETTLED, same.advice());
        assertEquals(Verdict.PRACTICALLY_THE_SAME, same.verdict());
        assertTrue(same.settledAfter().orElseThrow() < 24);
        Standing different = session(12.0, 4.0, 24, 1).standing();
        assertEquals(Verdict.DIFFERENT, different.verdict());
        assertTrue(different.look().orElseThrow().difference().interval().lower() > 0.0);
        int first = different.settledAfter().orElseThrow();
        assertEquals(
                Standing.Advice.SETTLED, session(12.0, 4.0, first, 1).standing().advice());
        assertTrue(session(12.0, 4.0, first - 1, 1).standing().advice() != Standing.Advice.SETTLED);
    }

    /** 150.3 less 145.1, 151.0 less 145.8 and so on are 5.2 but for rounding: no spread, as {@link SequentialTTest} of the readings says. */
    @Test
    void differencesThatAreEqualButForRoundingSettleNothing() {
        PairByPair session = NEW;
        for (int i = 0; i < 12; i++) {
            session = session.append((1503 + 7 * i) / 10.0, (1451 + 7 * i) / 10.0);
        }
        double[] d = session.differences();
        assertTrue(java.util.Arrays.stream(d).distinct().count() > 1, "rounding differs");
        Standing flat = session.standing();
        assertEquals(Verdict.UNDECIDED, flat.verdict());
        assertTrue(flat.settledAfter().isEmpty() && flat.prediction().isEmpty());
        assertTrue(!flat.look().orElseThrow().difference().interval().bounded());
        assertTrue(flat.warnings().stream().map(Warning::code).anyMatch("no-spread"::equals));
        assertTrue(session.spread().isEmpty());
        PairByPair spread = session.append(151.0, 145.0);
        assertEquals(13, spread.spread().orElseThrow().pairs().orElseThrow());
        assertTrue(
                spread.standing().look().orElseThrow().difference().interval().bounded());
    }

    @Test
    void saysWhatMorePairsWillDo() {
        Standing early = session(6.0, 6.0, 6, 3).standing();
        assertEquals(Standing.Advice.KEEP_GOING, early.advice());
        Standing.Prediction expected = early.prediction().orElseThrow();
        assertEquals(18, expected.allowed());
        assertTrue(expected.chance() >= 0.1 && expected.chance() < 1.0);
        assertTrue(expected.low().orElseThrow() >= 1 && expected.low().orElseThrow() <= 18);
        Standing wild = session(0.0, 60.0, 10, 4).standing();
        assertEquals(Standing.Advice.WILL_NOT_SETTLE, wild.advice());
        assertTrue(wild.prediction().orElseThrow().chance() < 0.1);
        Standing over = session(0.0, 20.0, 24, 5).standing();
        assertEquals(Standing.Advice.WILL_NOT_SETTLE, over.advice());
        assertTrue(over.prediction().isEmpty());
    }

    @Test
    void nothingIsSaidFromNothing() {
        Standing none = NEW.standing();
        assertEquals(Standing.Advice.KEEP_GOING, none.advice());
        assertTrue(none.look().isEmpty());
        assertTrue(none.prediction().isEmpty());
        assertEquals(Standing.Advice.KEEP_GOING, NEW.append(1.0, 0.0).standing().advice());
        Standing flat = NEW.append(1.0, 0.0).append(1.0, 0.0).append(1.0, 0.0).standing();
        assertEquals(Verdict.UNDECIDED, flat.verdict());
        assertTrue(flat.warnings().stream().map(Warning::code).anyMatch("no-spread"::equals));
    }

    @Test
    void aReHitReplacesTheShotOfThePairInPlay() {
        PairByPair session = NEW.shot(ReHit.Side.FIRST, 90.0)
                .reHit(ReHit.Side.FIRST, "slipped")
                .shot(ReHit.Side.FIRST, 150.0)
                .reHit(ReHit.Side.SECOND, "noise")
                .shot(ReHit.Side.SECOND, 147.0)
                .shot(ReHit.Side.SECOND, 148.0)
                .shot(ReHit.Side.FIRST, 152.0);
        assertArrayEquals(new double[] {3.0, 4.0}, session.differences());
        assertEquals(6, session.swings());
        assertEquals(2, session.reHits().size());
        PairByPair after = session.reHit(ReHit.Side.SECOND, "noise");
        assertArrayEquals(session.differences(), after.differences());
        assertEquals(2, after.reHits().get(2).afterPairs());
        assertThrows(
                IllegalStateException.class,
                () -> NEW.shot(ReHit.Side.FIRST, 1.0).shot(ReHit.Side.FIRST, 2.0));
        assertThrows(
                IllegalStateException.class,
                () -> NEW.shot(ReHit.Side.FIRST, 1.0).append(1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> NEW.reHit(ReHit.Side.FIRST, " "));
    }

    /** The file of a session with one ball thrown away: pair 2 stays whole, and the ball is a re-hit of the second club. */
    @Test
    void aFileWithAReHit() {
        List<Shot> shots = List.of(
                shot("Alder", "1", 150.0).build(),
                shot("Rowan", "1", 147.0).build(),
                shot("Rowan", "2", 90.0).exclusion("slipped").build(),
                shot("Rowan", "2", 148.0).build(),
                shot("Alder", "2", 152.0).build(),
                shot("Alder", "3", 149.0).build());
        PairByPair session = NEW.appendAll(ShotSet.of(shots), "Alder", "Rowan", Metric.CARRY);
        assertArrayEquals(new double[] {3.0, 4.0}, session.differences());
        assertEquals(ReHit.Side.SECOND, session.reHits().get(0).side());
        assertEquals("slipped", session.reHits().get(0).reason());
    }

    /** 48 swings of 60 less 8 to warm up; every other pair lacks one reading, so only 2 pairs are left: (60 - 8 - 48) / 2. */
    @Test
    void everySwingCountsForTheCap() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 1; i <= 24; i++) {
            shots.add(shot("Alder", "" + i, 150.0 + i % 5).build());
            Shot.Builder blank = Shot.builder("Rowan").pair("" + i);
            shots.add(
                    i % 2 == 0
                            ? blank.build()
                            : shot("Rowan", "" + i, 148.0 - i % 7).build());
        }
        PairByPair session = NEW.appendAll(ShotSet.of(shots), "Alder", "Rowan", Metric.CARRY);
        assertEquals(12, session.pairs());
        assertEquals(48, session.swings());
        assertEquals(14, session.mostPairs());
        assertEquals(14, session.withMostSwings(60, 8, 4).mostPairs());
        assertEquals(12, session.withMostSwings(56, 8, 4).mostPairs());
        assertEquals(List.of(), codes(session));
        PairByPair nothing = NEW.appendAll(
                ShotSet.of(shots).filter(s -> !s.has(Metric.CARRY) || s.club().equals("Alder")),
                "Alder",
                "Rowan",
                Metric.CARRY);
        assertEquals(36, nothing.swings());
        assertEquals(0, nothing.pairs());
        assertEquals(8, nothing.mostPairs());
        assertEquals(
                Standing.Advice.WILL_NOT_SETTLE,
                nothing.withMostSwings(44, 8, 4).standing().advice());
    }

    /** Of 60 swings 8 warm up; 4 re-hits use up the reserve, each 2 more cost a pair. */
    @Test
    void reHitsBeyondTheReserveAreTakenFromThePairs() {
        PairByPair session = NEW.append(1.0, 0.0);
        int[] most = {24, 24, 24, 24, 24, 23, 23, 22};
        for (int reHits = 0; reHits < most.length; reHits++) {
            assertEquals(most[reHits], session.mostPairs());
            assertEquals(most[reHits], session.shot(ReHit.Side.FIRST, 1.0).mostPairs());
            session = session.reHit(ReHit.Side.FIRST, "slipped");
        }
        assertEquals(24, session.withMostPairs(24).mostPairs());
        assertThrows(IllegalArgumentException.class, () -> NEW.withMostSwings(15, 8, 4));
    }

    /** Pairs 2, 4 and 6 are taken out by an exclusion, with names and by order; the ball of pair 8, in play, is hit again. */
    @Test
    void pairsTakenOutAreToldOfAndAreNoReHits() {
        for (boolean named : new boolean[] {true, false}) {
            List<Shot> shots = new ArrayList<>();
            for (int i = 1; i <= 8; i++) {
                boolean out = i % 2 == 0;
                String[] order = i % 2 == 0 ? new String[] {"Rowan", "Alder"} : new String[] {"Alder", "Rowan"};
                for (int k = 0; k < 2; k++) {
                    Shot.Builder shot = Shot.builder(order[k]).measured(Metric.CARRY, 150.0 + k * (7 * i * i % 5));
                    shot = out && k == (i == 4 ? 0 : 1) ? shot.exclusion("odd") : shot;
                    shots.add((named ? shot.pair("" + i) : shot).build());
                }
            }
            PairByPair session = NEW.appendAll(ShotSet.of(shots), "Alder", "Rowan", Metric.CARRY);
            assertEquals(4, session.pairs());
            assertEquals(16, session.swings());
            assertEquals(1, session.reHits().size());
            assertEquals(List.of("pairs-dropped"), codes(session));
            assertTrue(session.standing().warnings().get(0).message().contains("not hit again: 3;"));
            assertEquals(5, session.shot(ReHit.Side.FIRST, 150.0).pairs());
        }
    }

    /** Two balls with each club excluded as warming up are no re-hits; beyond what was planned they cost pairs. */
    @Test
    void warmingUpIsCountedApart() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 1; i <= 6; i++) {
            Shot.Builder alder = shot("Alder", "" + i, 150.0 + i);
            Shot.Builder rowan = shot("Rowan", "" + i, 150.0);
            shots.add((i < 3 ? alder.exclusion("warm-up") : alder).build());
            shots.add((i < 3 ? rowan.exclusion("warm-up") : rowan).build());
        }
        PairByPair session = NEW.appendAll(ShotSet.of(shots), "Alder", "Rowan", Metric.CARRY);
        assertEquals(8, session.swings());
        assertEquals(List.of(), session.reHits());
        assertEquals(List.of(), codes(session));
        assertEquals(24, session.mostPairs());
        assertEquals(26, session.withMostSwings(60, 4, 4).mostPairs());
        assertEquals(26, session.withMostSwings(60, 3, 4).mostPairs());
    }

    /** Equal clubs, half a metre lost with each shot: twelve apart in a block make 6 m out of nothing, and that settles nothing. */
    private static List<Shot> drifting(String order) {
        SplittableRandom random = new SplittableRandom(7);
        int[] pairs = new int[2];
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < order.length(); i++) {
            int club = order.charAt(i) == 'A' ? 0 : 1;
            shots.add(shot(club == 0 ? "Alder" : "Rowan", "" + ++pairs[club], 150.0 - 0.5 * i + random.nextGaussian())
                    .build());
        }
        return shots;
    }

    private static PairByPair hit(List<Shot> shots) {
        return NEW.appendAll(ShotSet.of(shots), "Alder", "Rowan", Metric.CARRY);
    }

    @Test
    void clubsHitInBlocksSettleNothing() {
        for (String order :
                List.of("A".repeat(12) + "R".repeat(12), "A".repeat(11) + "R".repeat(12) + "A", "AAARRR".repeat(4))) {
            PairByPair session = hit(drifting(order));
            Standing now = session.standing();
            assertEquals(12, session.pairs());
            assertEquals(List.of("clubs-in-blocks"), codes(session), order);
            assertEquals(Verdict.UNDECIDED, now.verdict());
            assertEquals(
                    Standing.Advice.WILL_NOT_SETTLE,
                    session.withMostPairs(12).standing().advice());
            assertTrue(now.settledAfter().isEmpty() && now.prediction().isEmpty());
        }
        PairByPair inTurn = hit(drifting("ARRA".repeat(6)));
        assertEquals(List.of(), codes(inTurn));
        assertEquals(Verdict.PRACTICALLY_THE_SAME, inTurn.standing().verdict());
    }

    /** Two pairs of nine are less than a quarter; of four they are a half, and five more pairs in turn mend it. */
    @Test
    void aFewPairsApartAreOutweighed() {
        assertEquals(List.of(), codes(hit(drifting("AARR" + "ARRA".repeat(3) + "AR"))));
        PairByPair begun = hit(drifting("AARRARRA"));
        assertEquals(List.of("clubs-in-blocks"), codes(begun));
        assertEquals(Standing.Advice.KEEP_GOING, begun.standing().advice());
        assertEquals(
                Standing.Advice.WILL_NOT_SETTLE,
                begun.withMostPairs(7).standing().advice());
        assertFalse(codes(hit(drifting("ARRA").subList(0, 3))).contains("clubs-in-blocks"));
    }

    /** Pair 1 gets its second shot last, so it is looked at last. */
    @Test
    void looksComeInTheOrderInWhichPairsBecameWhole() {
        List<Shot> shots = List.of(
                shot("Alder", "1", 150.0).build(),
                shot("Rowan", "2", 140.0).build(),
                shot("Alder", "2", 142.0).build(),
                shot("Alder", "3", 145.0).build(),
                shot("Rowan", "3", 142.0).build(),
                shot("Rowan", "1", 149.0).build());
        assertArrayEquals(new double[] {2.0, 3.0, 1.0}, hit(shots).differences());
    }

    private static List<String> codes(PairByPair session) {
        return session.standing().warnings().stream().map(Warning::code).toList();
    }

    private static Shot.Builder shot(String club, String pair, double carry) {
        return Shot.builder(club).pair(pair).measured(Metric.CARRY, carry);
    }

    @Test
    void packageExample() {
        FittingPlan.Result r = FittingPlan.withDefaults().forMargin(5.0, SpreadGuess.known(6.0));
        assertEquals(24, r.mostPairs());
        PairByPair session =
                PairByPair.withinMargin(5.0).withMostPairs(r.mostPairs()).append(152.0, 149.5);
        assertEquals(Standing.Advice.KEEP_GOING, session.standing().advice());
    }

    /** Two-sided binomial, by hand: 6 of 6 has p = 2/64 = 0.031, 5 of 5 has 2/32 = 0.063, 8 of 9 has 20/512 = 0.039. */
    @Test
    void reHitsOfOneClubOnlyAreToldOf() {
        assertEquals(0, told(5, 0));
        assertEquals(1, told(6, 0));
        assertEquals(1, told(0, 6));
        assertEquals(1, told(8, 1));
        assertEquals(0, told(7, 1) + told(4, 4));
    }

    private static long told(int first, int second) {
        PairByPair session = NEW.append(1.0, 0.0);
        for (int i = 0; i < first + second; i++) {
            session = session.reHit(i < first ? ReHit.Side.FIRST : ReHit.Side.SECOND, "slipped");
        }
        return session.standing().warnings().stream()
                .filter(w -> w.code().equals("one-sided-re-hits"))
                .count();
    }

    @Test
    void refusesWhatWouldSpoilTheLevel() {
        assertThrows(IllegalStateException.class, () -> NEW.append(1.0, 0.0).withLevel(0.9));
        assertThrows(IllegalArgumentException.class, () -> NEW.withLevel(0.5));
        assertThrows(IllegalArgumentException.class, () -> NEW.withMostPairs(1));
        assertThrows(IllegalArgumentException.class, () -> NEW.append(Double.NaN, 0.0));
        assertThrows(IllegalArgumentException.class, () -> PairByPair.withinMargin(-1.0));
    }
}
