package dev.teeward.fitting.compare;

import static dev.teeward.fitting.compare.InventedSession.A;
import static dev.teeward.fitting.compare.InventedSession.B;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Warning;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which shots are pairs by the order of hitting; every expected pair is read off the order by hand. */
class ShotPairingTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

    /** The carry of each shot is its place in the order, from 1; an x excludes the shot before it. */
    private static List<Shot> shots(String order, int from, LocalDate day) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < order.length(); i++) {
            char letter = order.charAt(i);
            int last = shots.size() - 1;
            if (letter == 'x') {
                shots.set(last, shots.get(last).withExclusion("topped"));
            } else {
                int number = from + shots.size();
                shots.add(Shot.builder(letter == 'A' ? A : B)
                        .number(number)
                        .day(day)
                        .measured(Metric.CARRY, number)
                        .build());
            }
        }
        return shots;
    }

    private static ShotPairing pairing(String order) {
        return ShotPairing.of(ShotSet.of(shots(order, 1, MONDAY)), A, B);
    }

    private static String pairs(ShotPairing pairing) {
        StringBuilder text = new StringBuilder();
        pairing.pairs()
                .forEach(p -> text.append(p.first().number())
                        .append('-')
                        .append(p.second().number())
                        .append(' '));
        return text.toString().trim();
    }

    private static HeadToHead carry() {
        return HeadToHead.withDefaults().withPrimary(Metric.CARRY).withMargin(Metric.CARRY, 4.0);
    }

    private static List<String> codes(List<Warning> warnings) {
        return warnings.stream().map(Warning::code).toList();
    }

    @Test
    void aShotHitAgainIsLeftOver() {
        ShotPairing p = pairing("ABBAAABBA");
        assertEquals(ShotPairing.Source.ORDER, p.source());
        assertEquals("1-2 4-3 6-7 9-8", pairs(p));
        assertEquals(ShotOrderKind.ALTERNATED_ABBA, p.order());
        assertEquals(
                "[pair 2+: shot 5 with Alder was followed by another with the same club]",
                p.broken().toString());
        assertEquals(BrokenPair.Kind.SURPLUS, p.broken().get(0).kind());
        assertEquals(List.of(), p.unpaired());
        assertTrue(p.enough());
    }

    @Test
    void twoInTenLeftOverAreNoTurns() {
        assertEquals("3-2 4-5 7-6 8-9 11-10", pairs(pairing("BBAABBAABBA")));
        ShotPairing p = pairing("AABBAABB");
        assertEquals(ShotPairing.Source.NONE, p.source());
        assertEquals(8, p.unpaired().size());
        assertEquals(ShotOrderKind.MIXED, p.order());
    }

    @Test
    void excludedShotsKeepTheirPlaceBesideAShotHitAgain() {
        ShotPairing p = pairing("ABBxAABBAAABBA");
        assertEquals("1-2 5-6 8-7 10-11 13-12", pairs(p));
        assertEquals(
                "[pair 2: shot 3 with Rowan is excluded (topped), pair 4+: shot 9 with Alder was followed by another with"
                        + " the same club]",
                p.broken().toString());
    }

    /** Ten pairs that share most of their scatter, 1 m apart; one more Alder after the second pair. */
    @Test
    void aShotHitAgainDoesNotCostThePairs() {
        double[] common = {0, 9, -7, 4, -9, 6, -3, 8, -6, 2};
        double[] apart = {1.2, 0.8, 1.4, 0.6, 1.1, 0.9, 1.3, 0.7, 1.0, 1.0};
        double[] alder = new double[11];
        double[] rowan = new double[10];
        for (int i = 0; i < 10; i++) {
            rowan[i] = 150.0 + common[i];
            alder[i < 2 ? i : i + 1] = 150.0 + common[i] + apart[i];
        }
        alder[2] = 150.0;
        HeadToHeadResult r = carry().compare(InventedSession.carries("ABBAAABBAABBAABBAABBA", alder, rowan));
        assertTrue(r.primary().paired());
        assertEquals(10, r.primary().pairs());
        assertEquals(1.0, r.primary().difference().estimate().value(), 1e-12);
        assertTrue(r.primary().difference().pValue() < 1e-5);
        assertEquals(List.of("surplus-shots"), codes(r.warnings()));
        assertEquals(11, r.primary().first().n());
        HeadToHeadResult mixed = carry().compare(
                        InventedSession.carries("AABABBABBAABABAB", Arrays.copyOf(alder, 8), Arrays.copyOf(rowan, 8)));
        assertTrue(codes(mixed.warnings()).contains("no-pairs"));
    }

    /** Five shots on one day, seven on the next: no pair spans the night. */
    @Test
    void pairsStayWithinADay() {
        List<Shot> both = shots("ABABA", 1, MONDAY);
        both.addAll(shots("BABABAB", 6, MONDAY.plusDays(1)));
        ShotPairing p = ShotPairing.of(ShotSet.of(both), A, B);
        assertEquals("1-2 3-4 7-6 9-8 11-10", pairs(p));
        assertEquals(
                "[pair 3: there is no shot with Rowan, pair 7: there is no shot with Alder]",
                p.broken().toString());
        assertEquals(ShotOrderKind.ALTERNATED, p.order());
        HeadToHeadResult r =
                carry().compare(Session.builder().shots(ShotSet.of(both)).build());
        assertArrayEquals(new double[] {1, 3, 7, 9, 11}, r.primary().pairedFirst());
        assertArrayEquals(new double[] {2, 4, 6, 8, 10}, r.primary().pairedSecond());
    }

    @Test
    void aDayInBlocksHasNoPairs() {
        List<Shot> both = shots("ABBAABBAABBA", 1, MONDAY);
        both.addAll(shots("AAABBB", 13, MONDAY.plusDays(1)));
        ShotPairing p = ShotPairing.of(ShotSet.of(both), A, B);
        assertEquals("1-2 4-3 5-6 8-7 9-10 12-11", pairs(p));
        assertEquals(6, p.unpaired().size());
        assertEquals(ShotOrderKind.MIXED, p.order());
        assertTrue(p.enough());
        HeadToHeadResult r =
                carry().compare(Session.builder().shots(ShotSet.of(both)).build());
        assertTrue(codes(r.warnings()).contains("shots-without-pair"));
        List<Shot> days = shots("AAAA", 1, MONDAY);
        days.addAll(shots("BBBB", 5, MONDAY.plusDays(1)));
        assertEquals(
                ShotOrderKind.BLOCKED, ShotPairing.of(ShotSet.of(days), A, B).order());
    }

    /** Three of eight are fewer than half, four are half. */
    @Test
    void halfOfTheShotsInPairsAreEnough() {
        for (int named : new int[] {3, 4}) {
            List<Shot> all = shots("AABABBABBAABABAB", 1, MONDAY);
            int a = 0;
            int b = 0;
            for (int i = 0; i < all.size(); i++) {
                int k = all.get(i).club().equals(A) ? ++a : ++b;
                if (k <= named) {
                    all.set(i, all.get(i).toBuilder().pair("p" + k).build());
                }
            }
            ShotPairing p = ShotPairing.of(ShotSet.of(all), A, B);
            assertEquals(named, p.pairs().size());
            assertEquals(named == 4, p.enough());
            HeadToHeadResult r =
                    carry().compare(Session.builder().shots(ShotSet.of(all)).build());
            assertEquals(named == 4, r.primary().paired());
            assertEquals(named == 3, codes(r.warnings()).contains("too-few-pairs"));
        }
    }

    @Test
    void reversedFromPairToPairIsMoreThanReversedInHalf() {
        assertEquals(ShotOrderKind.ALTERNATED, pairing("ABABABBABABA").order());
        assertEquals(ShotOrderKind.ALTERNATED_ABBA, pairing("ABBAABBAABBA").order());
    }

    /** Nine flawless pairs lag by 1/9 of a shot, which is no complaint; ABAB lags by one. */
    @Test
    void theOrderOfTheShotsThatCountIsJudged() {
        String nine = "ABBAABBAABBAABBAAB";
        assertFalse(warns(nine, "drift-not-cancelled"));
        assertTrue(warns("ABABABABABABABABAB", "drift-not-cancelled"));
        // Counted, the four excluded shots would pull the mean of Rowan several shots forward.
        assertFalse(warns("BxBxBxBx" + "ABBAABBAABBA", "drift-not-cancelled"));
    }

    private static boolean warns(String order, String code) {
        Session session =
                Session.builder().shots(ShotSet.of(shots(order, 101, MONDAY))).build();
        return codes(carry().compare(session).warnings()).contains(code);
    }
}
