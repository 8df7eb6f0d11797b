package dev.teeward.fitting.pool;

import static dev.teeward.quantity.Units.feet;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Invented golfers; the pair differences are d + (-1, 0, 1, -1, 0, 1), of mean d and variance 0.8. */
class ClubOverGolfersTest {
    private static Session golfer(Metric metric, double base, double d, Handedness hand) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double rowan = base + 0.5 * (i % 2);
            shots.add(Shot.builder("Alder")
                    .number(2 * i + 1)
                    .pair("p" + i)
                    .measured(metric, rowan + d + (i % 3 - 1))
                    .build());
            shots.add(Shot.builder("Rowan")
                    .number(2 * i + 2)
                    .pair("p" + i)
                    .measured(metric, rowan)
                    .build());
        }
        return Session.builder().hand(hand).shots(ShotSet.of(shots)).build();
    }

    private static Map<String, Session> five() {
        Map<String, Session> sessions = new LinkedHashMap<>();
        for (int g = 1; g <= 5; g++) {
            sessions.put("golfer " + g, golfer(Metric.CARRY, 140.0 + g, g, Handedness.RIGHT));
        }
        return sessions;
    }

    /** Equal errors: Student's t of 1 to 5, 3 +- 2.776445 sqrt(0.5); v = 0.8 / 6. */
    @Test
    void oneSessionForEachGolferGivesTheMeanOverGolfers() {
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(five());
        assertEquals(3.0, r.pooled().mean().value(), 1e-9);
        assertEquals(2.776445 * Math.sqrt(0.5), r.pooled().mean().interval().halfWidth(), 1e-6);
        assertEquals(2.5 - 0.8 / 6.0, r.pooled().variance(), 1e-8);
        assertEquals(5, r.golfers().size());
        assertEquals(2.0, r.golfers().get(1).difference().value(), 1e-9);
        assertEquals(Math.sqrt(0.8 / 6.0), r.golfers().get(1).standardError(), 1e-9);
        assertTrue(r.golfers().get(1).paired());
        assertTrue(r.leftOut().isEmpty());
    }

    /** The least k with t(k - 1) sqrt(2.5 / k) at most 1: t(11) = 2.200985 gives 1.0046, t(12) = 2.178813 gives 0.9555. */
    @Test
    void golfersNeededGoWithTheVarianceBetweenThem() {
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(five());
        GolfersNeeded needed = r.golfersNeeded(1.0);
        assertEquals(13, needed.golfers());
        assertEquals(8, needed.more());
        assertTrue(needed.low() < 13 && needed.high() > 13);
        assertEquals(0, r.golfersNeeded(50.0).more());
        assertThrows(IllegalArgumentException.class, () -> r.golfersNeeded(0.0));
    }

    /** A left-hander's difference to the left is one to the right in mirror image; lengths stay. */
    @Test
    void leftHandersAreMirroredWhereThereIsASide() {
        Map<String, Session> sides = new LinkedHashMap<>();
        sides.put("right 1", golfer(Metric.SIDE, 0.0, 2.0, Handedness.RIGHT));
        sides.put("right 2", golfer(Metric.SIDE, 0.0, 4.0, Handedness.RIGHT));
        sides.put("left", golfer(Metric.SIDE, 0.0, -3.0, Handedness.LEFT));
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.SIDE).pool(sides);
        assertEquals(3.0, r.pooled().mean().value(), 1e-9);
        assertTrue(r.golfers().get(2).mirrored());
        assertTrue(r.golfers().get(2).difference().interval().contains(3.0));
        assertTrue(r.warnings().stream().map(Warning::code).toList().contains("left-handers-mirrored"));
        Map<String, Session> carries = five();
        carries.put("left", golfer(Metric.CARRY, 140.0, 3.0, Handedness.LEFT));
        assertFalse(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY)
                .pool(carries)
                .golfers()
                .get(5)
                .mirrored());
    }

    /** The same left-handed session twice, once without its hand: the mirror images take each other out. */
    @Test
    void aHandThatIsNotGivenIsSaidWhereThereIsASide() {
        Map<String, Session> sides = new LinkedHashMap<>();
        Session left = golfer(Metric.CURVE, 0.0, -3.0, Handedness.LEFT);
        sides.put("given", left);
        sides.put("not given", Session.builder().shots(left.shots()).build());
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CURVE).pool(sides);
        assertEquals(0.0, r.pooled().mean().value(), 1e-9);
        Warning assumed = r.warnings().stream()
                .filter(w -> w.code().equals("hand-assumed"))
                .findFirst()
                .orElseThrow();
        assertTrue(assumed.message().contains("1 of 2 golfers (not given)"), assumed.message());
        Map<String, Session> carries = five();
        carries.put(
                "not given",
                Session.builder().shots(carries.get("golfer 1").shots()).build());
        assertFalse(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(carries).warnings().stream()
                .anyMatch(w -> w.code().equals("hand-assumed")));
    }

    /** Six shots with Alder, then six with Rowan, of equal clubs: the golfer gains half a metre from shot to shot. */
    private static Session warmingUp(double base) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            shots.add(Shot.builder(i < 6 ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CARRY, base + 0.5 * i + i % 2)
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    private static Warning warning(ClubOverGolfers.Result r, String code) {
        return r.warnings().stream()
                .filter(w -> w.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(r.warnings().toString()));
    }

    /** Six shots later on average at half a metre each: -3 m for equal clubs, whose interval does not hold 0. */
    @Test
    void clubsHitInOneGoAreSaidOverAllGolfers() {
        Map<String, Session> sessions = new LinkedHashMap<>();
        for (int g = 0; g < 6; g++) {
            sessions.put("golfer " + g, warmingUp(130.0 + 4.0 * g));
        }
        ClubOverGolfers.Result all =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions);
        assertEquals(-3.0, all.pooled().mean().value(), 1e-9);
        String said = warning(all, "clubs-in-blocks").message();
        assertTrue(said.startsWith("with 6 of 6 golfers each club was hit in one go"), said);
        assertEquals(
                List.of("clubs-in-blocks"),
                all.golfers().get(5).warnings().stream().map(Warning::code).toList());
        five().forEach((name, session) -> sessions.put("steady " + name, session));
        ClubOverGolfers.Result some =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions);
        said = warning(some, "clubs-in-blocks").message();
        assertTrue(
                said.startsWith(
                        "with 6 of 11 golfers (golfer 0, golfer 1, golfer 2, golfer 3, golfer 4, golfer 5) each"),
                said);
    }

    /** ABAB instead of ABBA is one shot of drift; a ball of 31 m/s among those of 54 m/s stands out. */
    @Test
    void orderAndFlaggedShotsAreSaidWithTheGolfers() {
        Map<String, Session> sessions = five();
        assertTrue(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions).golfers().stream()
                .allMatch(
                        g -> g.warnings().stream().map(Warning::code).toList().equals(List.of("drift-not-cancelled"))));
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            boolean alder = i % 4 == 0 || i % 4 == 3;
            shots.add(Shot.builder(alder ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CLUB_SPEED, 40.0 + 0.1 * (i % 5))
                    .measured(Metric.BALL_SPEED, i == 9 ? 31.0 : 54.0 + 0.1 * (i % 7))
                    .measured(Metric.CARRY, i == 9 ? 90.0 : 145.0 + i % 7)
                    .build());
        }
        sessions.put("topped one", Session.builder().shots(ShotSet.of(shots)).build());
        String said = warning(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions), "flagged-shots")
                .message();
        assertTrue(said.startsWith("with 1 of 6 golfers (topped one) shots stand out"), said);
    }

    /** Alder up high on one day, Rowan by the sea on the other: a matter of the carry, not of the face angle. */
    @Test
    void airsThatDifferAreSaidWhereTheAirMatters() {
        Map<String, Session> sessions = new LinkedHashMap<>();
        for (int g = 0; g < 2; g++) {
            List<Session> days = new ArrayList<>();
            for (String club : List.of("Alder", "Rowan")) {
                List<Shot> shots = new ArrayList<>();
                for (int i = 0; i < 5; i++) {
                    shots.add(Shot.builder(club)
                            .number(i + 1)
                            .measured(Metric.CARRY, 140.0 + g + i % 3)
                            .measured(Metric.FACE_ANGLE, 0.01 * (i % 3))
                            .build());
                }
                days.add(Session.builder()
                        .elevation(feet(club.equals("Alder") ? 5_280.0 : 0.0))
                        .shots(ShotSet.of(shots))
                        .build());
            }
            sessions.put("golfer " + g, Session.combine(days));
        }
        String said = warning(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions), "airs-differ")
                .message();
        assertTrue(said.startsWith("with 2 of 2 golfers the clubs were not hit in the same air"), said);
        assertTrue(ClubOverGolfers.of("Alder", "Rowan", Metric.FACE_ANGLE).pool(sessions).warnings().stream()
                .noneMatch(w -> w.code().equals("airs-differ")));
    }

    @Test
    void aGolferWithoutBothClubsIsLeftOutWithTheReason() {
        Map<String, Session> sessions = five();
        Session one = sessions.get("golfer 1");
        sessions.put("other", one.withShots(one.shots().club("Alder")));
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessions);
        assertEquals(5, r.golfers().size());
        assertTrue(r.leftOut().containsKey("other"));
        assertThrows(
                IllegalArgumentException.class,
                () -> ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(Map.of("golfer 1", one)));
        assertThrows(IllegalArgumentException.class, () -> ClubOverGolfers.of("Alder", "Alder", Metric.CARRY));
        assertThrows(
                IllegalArgumentException.class,
                () -> ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).withLevel(0.2));
    }

    @Test
    void theExampleOfThePackageRuns() {
        Map<String, Session> sessionsByGolfer = five();
        ClubOverGolfers.Result r =
                ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessionsByGolfer);
        Estimate mean = r.pooled().mean().convertTo(LengthUnit.YARD);
        Estimate next = r.pooled().nextGolfer().convertTo(LengthUnit.YARD);
        int more = r.golfersNeeded(LengthUnit.YARD.toSi(2.0)).more();
        assertEquals(3.0 / 0.9144, mean.value(), 1e-9);
        assertTrue(next.interval().width() > mean.interval().width());
        // 2 yd = 1.8288 m: t(4) sqrt(2.5 / 5) = 1.963 is too wide, t(5) sqrt(2.5 / 6) = 2.570582 x 0.645497 = 1.659 is
        // not.
        assertEquals(1, more);
    }
}
