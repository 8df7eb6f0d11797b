package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented sessions for pictures: two 6-irons, a left-handed golfer, normally spread numbers from a fixed seed. */
final class InventedSession {
    static final String ALDER = "Alder";
    static final String ROWAN = "Rowan";

    private InventedSession() {}

    /** Twelve pairs, the second shot with Rowan excluded. */
    static HeadToHeadResult usual(Handedness hand) {
        return compare(session(ALDER, ROWAN, 12, hand, true));
    }

    static HeadToHeadResult compare(Session session) {
        return HeadToHead.withDefaults()
                .withPrimary(Metric.CARRY)
                .compare(SessionCompleter.withDefaults().complete(session).session());
    }

    static Session session(String first, String second, int pairs, Handedness hand, boolean excludeOne) {
        Random random = new Random(20_261_125L);
        List<Shot> shots = new ArrayList<>();
        for (int pair = 1; pair <= pairs; pair++) {
            boolean firstLeads = pair % 2 == 1;
            for (boolean leading : new boolean[] {true, false}) {
                boolean ofFirst = leading == firstLeads;
                Shot shot = shot(ofFirst ? first : second, ofFirst ? 0.0 : 1.0, shots.size() + 1, pair, random);
                shots.add(
                        excludeOne && pair == 2 && !ofFirst
                                ? shot.withExclusion("the ball slipped off the tee")
                                : shot);
            }
        }
        return Session.builder()
                .hand(hand)
                .elevation(Length.ofFeet(5_000.0))
                .temperature(Temperature.ofFahrenheit(70.0))
                .humidity(0.3)
                .shots(ShotSet.of(shots))
                .build();
    }

    private static Shot shot(String club, double shift, int number, int pair, Random random) {
        Shot.Builder shot = Shot.builder(club).number(number).pair(Integer.toString(pair));
        put(shot, Metric.CLUB_SPEED, 82.0, 1.2, random);
        put(shot, Metric.ATTACK_ANGLE, -3.5, 0.9, random);
        put(shot, Metric.CLUB_PATH, 2.0, 1.2, random);
        put(shot, Metric.FACE_ANGLE, 0.6 - 1.6 * shift, 1.2, random);
        put(shot, Metric.DYNAMIC_LOFT, 23.0, 1.0, random);
        put(shot, Metric.DYNAMIC_LIE, 0.8, 0.8, random);
        put(shot, Metric.STRIKE_TOE, 3.0 + 3.0 * shift, 6.0, random);
        put(shot, Metric.STRIKE_UP, -2.0, 4.0, random);
        put(shot, Metric.BALL_SPEED, 113.0 - 1.0 * shift, 1.6, random);
        put(shot, Metric.LAUNCH_ANGLE, 16.5, 1.0, random);
        put(shot, Metric.START_DIRECTION, 1.0 - 1.4 * shift, 1.3, random);
        put(shot, Metric.SPIN_RATE, 6_100.0 + 150.0 * shift, 300.0, random);
        put(shot, Metric.AXIS_TILT, -3.0 - 2.0 * shift, 2.5, random);
        return shot.build();
    }

    private static void put(Shot.Builder shot, Metric metric, double mean, double sd, Random random) {
        shot.measured(metric, metric.unit(UnitSystem.US).toSi(mean + sd * random.nextGaussian()));
    }

    /** All pictures of a result, in the order of the page. */
    static List<Picture> pictures(DrawnShots shots, UnitSystem units) {
        List<Picture> pictures = new ArrayList<>();
        LandingPicture.of(shots, units).ifPresent(pictures::add);
        FlightPicture.of(shots, units).ifPresent(pictures::add);
        FacePicture.of(shots, units).ifPresent(pictures::add);
        pictures.addAll(StripPicture.all(shots, units));
        return pictures;
    }
}
