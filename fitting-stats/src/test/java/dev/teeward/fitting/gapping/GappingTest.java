package dev.teeward.fitting.gapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bags in and out of the ordinary. */
class GappingTest {
    private static final Gapping WANTED =
            Gapping.withDefaults().withWanted(Length.ofMeters(11.0), Length.ofMeters(3.0));

    /** So much less than the gap of {@link #swings} that a mend is told from none. */
    private static final Gapping CLOSER = Gapping.withDefaults().withWanted(Length.ofMeters(4.0), Length.ofMeters(1.0));

    private static String message(Session session, Gapping procedure) {
        return String.valueOf(assertThrows(IllegalArgumentException.class, () -> procedure.measure(session))
                .getMessage());
    }

    @Test
    void badInputIsNamed() {
        Session bag = InventedBag.rounds(InventedBag.REFERENCE);
        assertTrue(message(bag, Gapping.withDefaults().withClubs("six", "two"))
                .contains("\"two\" was not hit; the clubs are seven, six, nine"));
        assertTrue(message(bag, Gapping.withDefaults().withHead("two", TypicalHead.iron(7)))
                .contains("\"two\" was not hit"));
        Session one = InventedBag.rounds(Map.of("six", new double[] {150.0, 151.0}));
        assertTrue(message(one, Gapping.withDefaults()).contains("at least two clubs"));
        assertTrue(
                message(InventedBag.session(List.of()), Gapping.withDefaults()).contains("there are no shots"));
        Session single = InventedBag.rounds(Map.of("six", new double[] {150.0}, "seven", new double[] {140.0}));
        assertTrue(message(single, Gapping.withDefaults()).contains("none has them"));
        assertTrue(message(single, Gapping.withDefaults().withClubs("six", "seven"))
                .contains("six has 1 used shot with a carry, and needs 2"));
        assertThrows(
                IllegalArgumentException.class, () -> Gapping.withDefaults().withClubs("six", "six"));
        assertThrows(
                IllegalArgumentException.class, () -> Gapping.withDefaults().withLevel(95.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> Gapping.withDefaults().withWanted(Length.ofMeters(3.0), Length.ofMeters(3.0)));
        assertThrows(
                IllegalArgumentException.class,
                () -> Gapping.withDefaults().withWanted(Length.ofMeters(0.0), Length.ofMeters(0.0)));
        assertThrows(
                IllegalArgumentException.class, () -> Gapping.withDefaults().withCover(Length.ofMeters(0.0), 0.5));
    }

    @Test
    void aClubWithOneShotIsLeftOutAndNamed() {
        List<Shot> shots = new ArrayList<>(
                InventedBag.rounds(InventedBag.REFERENCE).shots().shots());
        shots.add(Shot.builder("wedge").number(99).measured(Metric.CARRY, 90.0).build());
        Bag bag = Gapping.withDefaults().measure(InventedBag.session(shots));
        assertEquals(3, bag.clubs().size());
        assertTrue(bag.warns("club-left-out"));
        assertThrows(IllegalArgumentException.class, () -> bag.club("wedge"));
    }

    @Test
    void equalShotsSayNothingAboutTheirError() {
        Bag bag = WANTED.measure(InventedBag.rounds(
                Map.of("six", new double[] {150.0, 150.0, 150.0}, "seven", new double[] {140.0, 140.0, 140.0})));
        Gap gap = bag.gaps().get(0);
        assertEquals(10.0, gap.difference().estimate().value(), 1e-12);
        assertFalse(gap.difference().estimate().interval().bounded());
        assertTrue(gap.ordered().isEmpty()
                && gap.overlap().isEmpty()
                && gap.larger().isEmpty());
        assertTrue(bag.club("six").nextShot().isEmpty());
        assertTrue(bag.warns("covers-nothing") && bag.warns("order-not-sure"));
        assertEquals(1, bag.uncovered().size());
        assertEquals(10.0, bag.uncovered().get(0).length().meters(), 1e-12);
        assertFalse(bag.settled(bag.uncovered().get(0)));
    }

    @Test
    void excludedShotsAreOutAndSaidWhy() {
        Session bag = InventedBag.rounds(InventedBag.REFERENCE);
        List<Shot> shots = new ArrayList<>(bag.shots().shots());
        shots.set(1, shots.get(1).withExclusion("topped"));
        BagClub six =
                Gapping.withDefaults().measure(bag.withShots(ShotSet.of(shots))).club("six");
        assertEquals(7, six.shots());
        assertEquals("topped", six.exclusions().get(0).reason());
    }

    /** The probabilities of too small, right and too large are those of one posterior, and turn with the wanted gap. */
    @Test
    void aWiderWantedGapMakesSmallerLikelier() {
        Session bag = InventedBag.blocks(InventedBag.REFERENCE);
        double before = 0.0;
        for (double wanted : new double[] {8.0, 10.0, 12.0, 14.0}) {
            Gap gap = Gapping.withDefaults()
                    .withWanted(Length.ofMeters(wanted), Length.ofMeters(1.0))
                    .measure(bag)
                    .gaps()
                    .get(0);
            double smaller = gap.smaller().orElseThrow();
            assertTrue(smaller > before);
            assertTrue(smaller + gap.larger().orElseThrow() < 1.0);
            before = smaller;
        }
    }

    /** Two clubs of which deliveries are known, and carries only by the models, as the completer computes them. */
    private static Session swings(double moreLoft, double moreSpeed) {
        Random random = new Random(11L);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            boolean six = i % 2 == 0;
            shots.add(swing(
                    i + 1,
                    six ? "six" : "seven",
                    TypicalHead.iron(six ? 6 : 7),
                    36.0 + (six ? 0.5 : 0.0) + 0.3 * random.nextGaussian() + (six ? 0.0 : moreSpeed),
                    Math.toRadians((six ? 21.0 : 26.0) + 0.5 * random.nextGaussian()) + (six ? 0.0 : moreLoft)));
        }
        return InventedBag.session(shots).toBuilder()
                .club(Club.builder("six").loft(Angle.ofDegrees(29.0)).build())
                .club(Club.builder("seven").loft(Angle.ofDegrees(33.0)).build())
                .build();
    }

    private static Shot swing(int number, String club, ClubHead head, double speed, double loft) {
        Delivery delivery = Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(speed))
                .attackAngle(Angle.ofDegrees(-3.5))
                .clubPath(Angle.ofDegrees(1.0))
                .faceAngle(Angle.ofDegrees(0.5))
                .dynamicLoft(Angle.ofRadians(loft))
                .build();
        LaunchConditions launch = RigidImpact.standard().strike(delivery, head).launch();
        return Shot.builder(club)
                .number(number)
                .measured(Metric.CLUB_SPEED, speed)
                .measured(Metric.ATTACK_ANGLE, delivery.attackAngle().radians())
                .measured(Metric.CLUB_PATH, delivery.clubPath().radians())
                .measured(Metric.FACE_ANGLE, delivery.faceAngle().radians())
                .measured(Metric.DYNAMIC_LOFT, loft)
                .measured(Metric.BALL_SPEED, launch.ballSpeed().metersPerSecond())
                .measured(Metric.LAUNCH_ANGLE, launch.launchAngle().radians())
                .measured(Metric.START_DIRECTION, launch.startDirection().radians())
                .measured(Metric.SPIN_RATE, launch.spinRate().radiansPerSecond())
                .measured(Metric.AXIS_TILT, launch.axisTilt().radians())
                .build();
    }

    /** What mends the gap is put into the swings, which are struck, flown and measured anew: the gap is then as wanted. */
    @Test
    void theMendMakesTheGapTheWantedOne() {
        Session before = swings(0.0, 0.0);
        Bag bag = CLOSER.measure(before);
        Gap gap = bag.gaps().get(0);
        assertEquals("six", gap.longer());
        assertTrue(gap.difference().estimate().value() > 11.5, gap.toString());
        // Less loft or more speed of the seven; the six shorter would do it too, but is the longest club of the bag.
        assertEquals(2, gap.mends().size());
        Mend loft = mend(gap, "seven", Mend.Means.LOFT);
        Mend speed = mend(gap, "seven", Mend.Means.CLUB_SPEED);
        assertTrue(loft.change().value() < 0.0 && speed.change().value() > 0.0);
        for (Session after : List.of(
                swings(loft.change().value(), 0.0), swings(0.0, speed.change().value()))) {
            double mended =
                    CLOSER.measure(after).gaps().get(0).difference().estimate().value();
            assertEquals(4.0, mended, 1e-6);
        }
        assertTrue(bag.warns("qualified-builder") && bag.warns("typical-head"));
    }

    /** With a longer club above it the six may be made shorter, by loft and not by a slower swing; the longest may not. */
    @Test
    void onlyTheLongestClubIsNeverMadeShorter() {
        List<Shot> shots = new ArrayList<>(swings(0.0, 0.0).shots().shots());
        for (int i = 0; i < 8; i++) {
            double loft = Math.toRadians(17.0 + 0.3 * (i % 4));
            shots.add(swing(17 + i, "four", TypicalHead.iron(5), 39.0 + 0.2 * (i % 3), loft));
        }
        Session three = swings(0.0, 0.0).withShots(ShotSet.of(shots)).toBuilder()
                .club(Club.builder("four").loft(Angle.ofDegrees(25.0)).build())
                .build();
        Bag bag = CLOSER.measure(three);
        Gap top = bag.gaps().get(0);
        assertEquals("four", top.longer());
        assertTrue(top.larger().orElseThrow() > 0.95, top.toString());
        assertTrue(top.mends().stream().allMatch(mend -> mend.club().equals("six")), top.toString());
        Gap below = bag.gaps().get(1);
        assertEquals(3, below.mends().size());
        assertTrue(mend(below, "six", Mend.Means.LOFT).change().value() > 0.0);
    }

    /** Means so far apart, each club half its shots above and half below by as much as is given, not in step. */
    private static Gap scattered(double gap, double by) {
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : swings(0.0, 0.0).shots().shots()) {
            int i = shots.size();
            boolean six = i % 2 == 0;
            boolean up = six ? i / 2 % 2 == 0 : i / 4 % 2 == 0;
            shots.add(shot.toBuilder()
                    .measured(Metric.CARRY, (six ? 140.0 : 140.0 - gap) + (up ? by : -by))
                    .build());
        }
        return WANTED.measure(swings(0.0, 0.0).withShots(ShotSet.of(shots)))
                .gaps()
                .get(0);
    }

    /** Of 5 m too many, told to within 1 m or so a mend is told, to within 20 m not even its sign; limits end where the search does. */
    @Test
    void aMendOfUnknownSignIsNoneAndLimitsEndAtTheSearch() {
        double largest = Math.toRadians(6.0);
        assertEquals(2, scattered(16.0, 1.0).mends().size());
        assertTrue(scattered(16.0, 20.0).difference().estimate().interval().contains(11.0));
        assertEquals(List.of(), scattered(16.0, 20.0).mends());
        boolean cut = false;
        for (double by = 0.5; by < 6.0; by += 0.25) {
            for (Mend mend : scattered(20.0, by).mends()) {
                assertFalse(mend.change().interval().contains(0.0), mend.toString());
                if (mend.means() == Mend.Means.LOFT) {
                    assertTrue(mend.change().interval().within(-largest, largest), mend.toString());
                    cut |= mend.change().interval().lower() == -largest;
                }
            }
        }
        assertTrue(cut, "some limit is cut");
    }

    /** To first order the interval is that of the gap over the slope: both ends of the gap mended give both ends, nearly. */
    @Test
    void theMendsIntervalFollowsTheGaps() {
        Gap gap = CLOSER.measure(swings(0.0, 0.0)).gaps().get(0);
        Mend loft = mend(gap, "seven", Mend.Means.LOFT);
        double half = gap.difference().estimate().interval().halfWidth();
        double at = gap.difference().estimate().value();
        double low = change(at - half - 4.0 + at);
        double high = change(at + half - 4.0 + at);
        double expected = 0.5 * Math.abs(high - low);
        // The scatter of the response adds a little; curvature changes it by a few percent.
        assertEquals(expected, loft.change().interval().halfWidth(), 0.1 * expected);
    }

    /** The loft of the seven that would make its gap twice the gap there is less so much. */
    private static double change(double twiceLess) {
        Gap gap = CLOSER.measure(swings(0.0, 0.0)).gaps().get(0);
        double wanted = 2.0 * gap.difference().estimate().value() - twiceLess;
        Gap other = Gapping.withDefaults()
                .withWanted(Length.ofMeters(wanted), Length.ofMeters(0.0))
                .measure(swings(0.0, 0.0))
                .gaps()
                .get(0);
        return mend(other, "seven", Mend.Means.LOFT).change().value();
    }

    private static Mend mend(Gap gap, String club, Mend.Means means) {
        return gap.mends().stream()
                .filter(mend -> mend.club().equals(club) && mend.means() == means)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void withoutAHeadNoMendIsTold() {
        Bag bag = WANTED.measure(InventedBag.rounds(InventedBag.REFERENCE));
        assertTrue(bag.gaps().stream().allMatch(gap -> gap.mends().isEmpty()));
        assertTrue(bag.warns("mend-not-told"));
        assertFalse(bag.warns("qualified-builder"));
    }

    /** A launch implies the delivery that made it if the strike was central and the ball gripped. */
    @Test
    void aLaunchAloneGivesTheSameMend() {
        Session whole = swings(0.0, 0.0);
        Session launches = whole.withShots(ShotSet.of(whole.shots().stream()
                .map(shot -> shot.without(Metric.CLUB_SPEED).without(Metric.DYNAMIC_LOFT))
                .toList()));
        Mend measured = mend(CLOSER.measure(whole).gaps().get(0), "seven", Mend.Means.LOFT);
        Bag bag = CLOSER.measure(launches);
        Mend implied = mend(bag.gaps().get(0), "seven", Mend.Means.LOFT);
        assertTrue(bag.warns("delivery-implied"));
        // The depth of the head's mass is left out of what a launch implies.
        assertEquals(
                measured.change().value(),
                implied.change().value(),
                0.03 * Math.abs(measured.change().value()));
    }

    /** Carries alone are screened by themselves: there is nothing else to tell a topped shot by. */
    @Test
    void aToppedShotAmongCarriesAloneIsFlagged() {
        Session bag = InventedBag.rounds(InventedBag.REFERENCE);
        assertFalse(Gapping.withDefaults().measure(bag).warns("flagged-shots"));
        List<Shot> shots = new ArrayList<>(bag.shots().shots());
        Shot first = shots.get(0);
        shots.set(0, first.toBuilder().measured(Metric.CARRY, 60.0).build());
        Bag topped = Gapping.withDefaults().measure(bag.withShots(ShotSet.of(shots)));
        assertTrue(topped.warns("flagged-shots"));
        assertEquals(1, topped.club(first.club()).flagged());
    }
}
