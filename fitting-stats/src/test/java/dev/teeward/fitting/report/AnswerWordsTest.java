package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Units;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the answer must say of sessions from which little can be said. */
class AnswerWordsTest {
    private static final double[] CARRY = {150.0, 153.0, 148.0, 151.5, 149.0, 152.0, 150.5, 147.5};

    private static Shot shot(String club, double carry, double side) {
        return Shot.builder(club)
                .measured(Metric.CARRY, carry)
                .measured(Metric.SIDE, side)
                .measured(Metric.BALL_SPEED, 50.0 + 0.1 * carry)
                .measured(Metric.LAUNCH_ANGLE, 0.3 + 0.001 * side)
                .build();
    }

    /** ABBA pairs, the second club longer by about an amount. */
    private static List<Shot> pairs(int pairs, double longer, double noise) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < pairs; i++) {
            double carry = CARRY[i % CARRY.length] + 0.01 * i;
            Shot one = shot("Alder", carry, -1.0 + 0.3 * (i % 4));
            Shot two = shot("Rowan", carry + longer + noise * (i % 3 - 1), 0.2 - 0.4 * (i % 5));
            for (Shot shot : i % 2 == 0 ? List.of(one, two) : List.of(two, one)) {
                shots.add(shot.toBuilder().number(shots.size() + 1).build());
            }
        }
        return shots;
    }

    private static Session session(List<Shot> shots) {
        return Session.builder().shots(ShotSet.of(shots)).hand(Handedness.RIGHT).build();
    }

    private static HeadToHeadReport report(Session session) {
        return HeadToHeadReport.of(
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session));
    }

    private static String words(HeadToHeadReport report, String id) {
        return String.join(
                "\n",
                report.sections().stream()
                        .filter(s -> s.id().equals(id))
                        .flatMap(s -> s.sentences().stream())
                        .map(Sentence::text)
                        .toList());
    }

    @Test
    void threePairsAreNotEnoughHoweverClearTheyLook() {
        HeadToHeadReport report = report(session(pairs(3, 10.0, 0.2)));
        assertEquals("different", report.data().value("/metrics/carry/verdict"));
        // Closed form: of 2^3 sign flips one and its mirror image are the most extreme, 2/8.
        assertEquals(
                25.0, report.data().number("/metrics/carry/least_p_percent").orElseThrow(), 1e-12);
        String[] lines = words(report, "in-short").split("\n", -1);
        assertEquals(
                "What decides is carry, as declared, from 3 pairs only: the clubs look different, but the exact test does"
                        + " not bear it out.",
                lines[0]);
        assertTrue(lines[1].contains("in 25 % of sessions, so do not decide on these alone"), lines[1]);
        assertTrue(words(report, "differs").contains("the exact test does not bear it out"));
    }

    @Test
    void sixPairsAreJudgedWithoutOnly() {
        HeadToHeadReport report = report(session(pairs(6, 10.0, 0.2)));
        // Closed form: 2 / 2^6.
        assertEquals(
                3.125, report.data().number("/metrics/carry/least_p_percent").orElseThrow(), 1e-12);
        String answer = words(report, "in-short");
        assertTrue(answer.startsWith("What decides is carry, as declared, from 6 pairs: the clubs differ."), answer);
        assertFalse(answer.contains("bear it out") || answer.contains("only"), answer);
    }

    @Test
    void twoSamplesOfThreeCountTheirArrangements() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            shots.add(shot("Alder", CARRY[i], 0.1 * i));
        }
        for (int i = 3; i < 7; i++) {
            shots.add(shot("Rowan", CARRY[i] + 30.0, 0.1 * i));
        }
        HeadToHeadReport report = report(session(shots));
        // Closed form: 7 choose 3 is 35 arrangements.
        assertEquals(
                200.0 / 35.0,
                report.data().number("/metrics/carry/least_p_percent").orElseThrow(),
                1e-12);
        String answer = words(report, "in-short");
        assertTrue(answer.startsWith("What decides is carry, as declared, from 3 and 4 shots only: "), answer);
        assertTrue(answer.contains("All shots of one club were hit before all of the other"), answer);
    }

    /** Sameness is of the metric that decides; in blocks a difference may be hidden, so no advice follows. */
    @Test
    void samenessNamesItsMetricAndBlocksGiveNoAdvice() {
        List<Shot> turns = pairs(8, 0.0, 0.2);
        String answer = words(report(session(turns)), "in-short");
        assertTrue(answer.contains(": in carry the clubs are practically the same."), answer);
        assertTrue(answer.contains("price or feel may decide"), answer);
        List<Shot> blocks = new ArrayList<>();
        for (String club : List.of("Alder", "Rowan")) {
            turns.stream().filter(shot -> shot.club().equals(club)).forEach(blocks::add);
        }
        String blocked = words(report(session(blocks)), "in-short");
        assertTrue(blocked.contains("in carry the clubs are practically the same."), blocked);
        assertTrue(blocked.contains("and one may be hidden by it"), blocked);
        assertFalse(blocked.contains("price or feel"), blocked);
    }

    /** Apex and the rest that the flight model works out are listed apart and count for nothing. */
    @Test
    void whatIsWorkedOutIsNoFindingAndNotCounted() {
        // A launch from which the flight model works out what is missing.
        List<Shot> shots = pairs(8, 10.0, 0.2).stream()
                .map(shot -> shot.toBuilder()
                        .measured(Metric.START_DIRECTION, 0.001 * shot.value(Metric.SIDE))
                        .measured(Metric.SPIN_RATE, 600.0 + shot.value(Metric.CARRY))
                        .measured(Metric.AXIS_TILT, 0.01 * shot.value(Metric.SIDE))
                        .build())
                .toList();
        HeadToHeadReport report = report(session(shots));
        assertEquals(false, report.data().value("/metrics/apex/in_family"));
        assertEquals(true, report.data().value("/metrics/ball_speed/in_family"));
        long asked = report.result().metrics().stream()
                .filter(c -> c.inFamily() && !c.primary())
                .count();
        assertEquals((double) asked, report.data().number("/secondary_count").orElseThrow());
        String differs = words(report, "differs");
        assertTrue(
                differs.contains("Worked out from the launch and the air, not measured, and so not judged: apex"),
                differs);
        assertFalse(words(report, "in-short").contains("apex"));
        assertFalse(words(report, "undecided").contains("apex"));
    }

    @Test
    void questionsThatOnlyTheOthersKeepOpenGetNoNumber() {
        int met = 0;
        for (long seed = 1; seed <= 30; seed++) {
            HeadToHeadReport report = HeadToHeadReport.of(InventedSessions.result(seed));
            for (String line : words(report, "undecided").split("\n", -1)) {
                if (line.contains("asked alone it would be settled")) {
                    met++;
                    assertFalse(line.contains("settle it") || line.contains("at hand"), line);
                }
            }
        }
        assertTrue(met > 10, "met " + met);
    }

    @Test
    void threeBallsCouldBeAnything() {
        int met = 0;
        for (int k = 1; k <= 40; k++) {
            HeadToHeadReport report = report(session(pairs(3, 1.0, 0.25 * k)));
            String patterns = words(report, "patterns");
            boolean anything = report.data().number("/patterns/ratio/lower").orElse(1.0) < 0.1
                    && report.data().number("/patterns/ratio/upper").orElse(1.0) > 10.0;
            assertEquals(anything, patterns.contains("by the 95 % interval it could be anything"), patterns);
            met += anything ? 1 : 0;
        }
        assertTrue(met > 0, "never met");
    }

    @Test
    void copiedRowsAreTold() {
        List<Shot> shots = new ArrayList<>(pairs(6, 1.0, 0.9));
        shots.set(4, shots.get(0).toBuilder().number(5).build());
        HeadToHeadReport report = report(session(shots));
        assertEquals(5.0, report.data().number("/duplicates/0/shot").orElseThrow());
        assertEquals(1.0, report.data().number("/duplicates/0/like").orElseThrow());
        assertTrue(words(report, "in-short").contains("rows may have been copied"));
        assertTrue(words(report, "warnings").contains("Shot 5 has all the readings of shot 1; if the row was copied"));
        assertEquals(List.of(), report(session(pairs(6, 1.0, 0.9))).data().value("/duplicates"));
    }

    @Test
    void shotsWithoutAPartnerAreNamed() {
        List<Shot> shots = new ArrayList<>(pairs(7, 10.0, 0.9));
        shots.set(2, shots.get(2).withExclusion("topped"));
        HeadToHeadReport report = report(session(shots));
        assertEquals(List.of(4), report.data().value("/pairing/without_partner"));
        String tested = words(report, "tested");
        assertTrue(
                tested.contains("Without a partner for carry: shot 4; differences come from the pairs alone"), tested);
        assertTrue(tested.contains("6 shots used with Rowan") || tested.contains("7 shots used with Alder, 6"), tested);
    }

    @Test
    void morePairsThanASessionHoldsAreCalledImpractical() {
        HeadToHeadReport report = report(session(pairs(8, 3.0, 25.0)));
        String undecided = words(report, "undecided");
        double more = report.data().number("/plan/metrics/carry/more/central").orElseThrow();
        assertTrue(more > 40.0, "more " + more);
        assertTrue(
                undecided.lines().anyMatch(l -> l.startsWith("Carry: ") && l.endsWith("not practical in one session.")),
                undecided);
        assertTrue(
                undecided.startsWith("The numbers of pairs or shots that follow settle a question in 80 % of sessions"),
                undecided);
    }

    @Test
    void airOfDaysThatDifferIsThatOfEach() {
        Session warm = session(pairs(6, 1.0, 0.9)).toBuilder()
                .date(LocalDate.of(2026, 5, 1))
                .temperature(Units.celsius(30.0))
                .elevation(Units.meters(1_500.0))
                .build();
        Session cold = warm.toBuilder()
                .date(LocalDate.of(2026, 5, 2))
                .temperature(Units.celsius(5.0))
                .build();
        String one = words(report(warm).withUnits(UnitSystem.METRIC), "tested");
        assertTrue(one.contains("The air, as stated: 30 degC and an elevation of 1500 m."), one);
        String both = words(report(Session.combine(List.of(warm, cold))).withUnits(UnitSystem.METRIC), "tested");
        assertTrue(both.contains("The days: 2026-05-01 with 6 pairs and 2026-05-02 with 6 pairs; no pair spans"), both);
        assertTrue(both.contains("computed in that of its own session"), both);
        assertTrue(both.contains("2026-05-01: the air, as stated: 30 degC and an elevation of 1500 m."), both);
        assertTrue(both.contains("2026-05-02: the air, as stated: 5 degC and an elevation of 1500 m."), both);
        assertTrue(both.contains("2026-05-02: not stated, so assumed: 0 % humidity, a pressure"), both);
    }

    @Test
    void buildsListWhatWasComparedAndWhatIsNotKnown() {
        Session session = session(pairs(6, 1.0, 0.9)).toBuilder()
                .club(Club.builder("Alder")
                        .loft(Units.degrees(28.0))
                        .lie(Units.degrees(62.0))
                        .build())
                .club(Club.builder("Rowan")
                        .loft(Units.degrees(28.0))
                        .lie(Units.degrees(64.0))
                        .build())
                .build();
        String tested = words(report(session), "tested");
        assertTrue(tested.contains("The builds differ in lie: 62.0 deg against 64.0 deg"), tested);
        assertTrue(tested.contains("The builds are the same, within what measuring gives, in loft."), tested);
        assertTrue(
                tested.contains("Not known of both clubs, so perhaps not the same: length, head mass and shaft."),
                tested);
    }

    @Test
    void fewBallsHaveNoOutlineForTheNextOne() {
        String few = words(report(session(pairs(4, 1.0, 0.9))), "patterns");
        assertTrue(few.contains("Alder: 4 balls are too few to say where the next one lands"), few);
        assertFalse(few.contains("ellipse"), few);
        assertTrue(words(report(session(pairs(6, 1.0, 0.9))), "patterns").contains("ellipse"));
    }

    /** Words for the golfer's club delivery, by closed form of the sign conventions. */
    @Test
    void deliveryIsToldInTheWordsOfTheTrade() {
        double[] wobble = {0.001, -0.001, 0.0005, -0.0005, 0.0008, -0.0008};
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < wobble.length; i++) {
            for (String club : i % 2 == 0 ? List.of("Alder", "Rowan") : List.of("Rowan", "Alder")) {
                double more = club.equals("Alder") ? 0.05 + wobble[i] : 0.0;
                shots.add(Shot.builder(club)
                        .measured(Metric.CARRY, CARRY[i])
                        .measured(Metric.FACE_TO_PATH, more + wobble[(i + 1) % 6])
                        .measured(Metric.CLUB_PATH, -more + wobble[(i + 2) % 6])
                        .measured(Metric.ATTACK_ANGLE, -0.08 - more)
                        .measured(Metric.DYNAMIC_LIE, more)
                        .build());
            }
        }
        String right = words(report(session(shots)), "differs");
        for (String phrase : Arrays.asList(
                "more open to the path with Alder than with Rowan",
                "more out-to-in with Alder than with Rowan",
                "steeper with Alder than with Rowan",
                "more upright with Alder than with Rowan")) {
            assertTrue(right.contains(phrase), phrase + " is not in " + right);
        }
        String left =
                words(report(session(shots).toBuilder().hand(Handedness.LEFT).build()), "differs");
        assertTrue(left.contains("more closed to the path with Alder than with Rowan"), left);
        assertTrue(left.contains("more in-to-out with Alder than with Rowan"), left);
    }

    /** A screen that tested nothing must not be heard as one that found nothing. */
    @Test
    void mishitsThatWereNotTestedForAreNotDenied() {
        List<Shot> carriesOnly = pairs(8, 1.0, 2.0).stream()
                .map(shot -> Shot.builder(shot.club())
                        .number(shot.number())
                        .measured(Metric.CARRY, shot.value(Metric.CARRY))
                        .build())
                .toList();
        String untested =
                "Whether a used shot stands out is not known, as mishits can't be told from these shots; see what to"
                        + " keep in mind.";
        HeadToHeadReport bare = report(session(carriesOnly));
        assertEquals(untested, words(bare, "flagged"));
        assertTrue(words(bare, "warnings").contains("Mishits cannot be told"), words(bare, "warnings"));
        HeadToHeadReport few = report(session(pairs(3, 1.0, 2.0)));
        assertEquals(untested, words(few, "flagged"));
        assertTrue(words(few, "warnings").contains("one may have gone unnoticed"), words(few, "warnings"));
        assertEquals(
                "No used shot stands out, so there is nothing to leave out.",
                words(report(session(pairs(8, 1.0, 2.0))), "flagged"));
    }
}
