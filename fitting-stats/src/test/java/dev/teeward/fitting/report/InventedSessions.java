package dev.teeward.fitting.report;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Sense;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Units;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Sessions out of nowhere, the same for the same seed. */
final class InventedSessions {
    private static final String[][] NAMES = {
        {"Alder", "Rowan"},
        {"Alder 6", "Rowan 6.5"},
        {"6-iron A", "6-iron -0.0"},
        {"12", "7"},
        {"<b>Alder</b>", "Érable & 1"}
    };
    private static final Map<Metric, double[]> TYPICAL = typical();

    private InventedSessions() {}

    private static Map<Metric, double[]> typical() {
        Map<Metric, double[]> map = new EnumMap<>(Metric.class);
        map.put(Metric.CLUB_SPEED, new double[] {38.0, 0.6});
        map.put(Metric.ATTACK_ANGLE, new double[] {-0.06, 0.015});
        map.put(Metric.CLUB_PATH, new double[] {-0.03, 0.025});
        map.put(Metric.FACE_ANGLE, new double[] {-0.01, 0.03});
        map.put(Metric.DYNAMIC_LOFT, new double[] {0.4, 0.02});
        map.put(Metric.DYNAMIC_LIE, new double[] {0.01, 0.02});
        map.put(Metric.STRIKE_TOE, new double[] {0.002, 0.005});
        map.put(Metric.STRIKE_UP, new double[] {-0.001, 0.004});
        map.put(Metric.BALL_SPEED, new double[] {52.0, 0.9});
        map.put(Metric.LAUNCH_ANGLE, new double[] {0.28, 0.02});
        map.put(Metric.START_DIRECTION, new double[] {-0.01, 0.03});
        map.put(Metric.SPIN_RATE, new double[] {600.0, 40.0});
        map.put(Metric.AXIS_TILT, new double[] {-0.05, 0.06});
        map.put(Metric.CURVE, new double[] {-4.0, 5.0});
        map.put(Metric.APEX, new double[] {28.0, 2.0});
        map.put(Metric.FLIGHT_TIME, new double[] {5.5, 0.2});
        map.put(Metric.CARRY, new double[] {150.0, 5.0});
        map.put(Metric.SIDE, new double[] {-3.0, 6.0});
        map.put(Metric.DESCENT_ANGLE, new double[] {0.8, 0.03});
        map.put(Metric.TOTAL, new double[] {156.0, 6.0});
        return map;
    }

    static Session session(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String[] names = NAMES[(int) (seed % NAMES.length)];
        int pairs = random.nextInt(8) == 0 ? 9 : 2 + random.nextInt(5);
        boolean blocked = pairs < 7 && random.nextInt(6) == 0;
        boolean named = random.nextBoolean();
        double shift = random.nextInt(3);
        double scatter = random.nextInt(6) == 0 ? 0.05 : 1.0;
        double missing = 0.35 + random.nextInt(3) * 0.25;
        double excluded = random.nextInt(3) * 0.06;
        boolean flagged = random.nextInt(4) == 0;
        boolean rated = random.nextInt(3) == 0;
        List<Metric> metrics = new ArrayList<>();
        Map<Metric, Double> moved = new EnumMap<>(Metric.class);
        for (Metric metric : TYPICAL.keySet()) {
            if (random.nextDouble() >= missing || metric == Metric.CARRY) {
                metrics.add(metric);
                moved.put(metric, shift * random.nextGaussian());
            }
        }
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            int club = blocked ? i / pairs : (i / 2 + i) % 2;
            Shot.Builder shot = Shot.builder(names[club]);
            if (named && !blocked) {
                shot.pair(String.valueOf(1 + i / 2));
            }
            boolean wild = flagged && i == pairs;
            for (Metric metric : metrics) {
                double[] of = TYPICAL.get(metric);
                double z =
                        scatter * random.nextGaussian() + (club == 0 ? 0.0 : moved.get(metric)) + (wild ? -9.0 : 0.0);
                if (random.nextInt(40) != 0 || metric == Metric.CARRY) {
                    shot.measured(metric, Math.max(metric.lower() + 1e-3, of[0] + of[1] * z));
                }
            }
            if (random.nextDouble() < excluded && i > 4) {
                shot.exclusion(random.nextBoolean() ? "topped" : "hit 2 cm behind");
            }
            if (rated && random.nextBoolean()) {
                shot.rating(Rating.FEEL, 1 + random.nextInt(5));
            }
            shots.add(shot.build());
        }
        Session.Builder session = Session.builder().shots(ShotSet.of(shots));
        if (random.nextInt(4) != 0) {
            session.hand(random.nextBoolean() ? Handedness.LEFT : Handedness.RIGHT);
        }
        if (random.nextBoolean()) {
            session.place("an invented studio, hall 3").elevation(Units.meters(1_200.0));
            session.temperature(Units.celsius(21.0));
        }
        if (random.nextBoolean()) {
            double lie = random.nextBoolean() ? 61.0 : 63.0;
            session.club(Club.builder(names[0]).lie(Units.degrees(61.0)).build());
            session.club(Club.builder(names[1]).lie(Units.degrees(lie)).build());
        }
        return session.build();
    }

    static HeadToHead procedure(long seed) {
        HeadToHead procedure = HeadToHead.withDefaults();
        if (seed % 3 == 0) {
            procedure = procedure.withPrimary(Metric.CARRY).withMargin(Metric.CARRY, 3.0);
        }
        if (seed % 14 == 0) {
            procedure = procedure.withTarget(Units.meters(150.0)).withoutPairing();
        }
        return seed % 11 == 0 ? procedure.withLevel(0.9) : procedure;
    }

    static HeadToHeadResult result(long seed) {
        return procedure(seed).compare(session(seed));
    }

    /** The same shots seen in a mirror. */
    static Session mirrored(Session session) {
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : session.shots()) {
            Shot.Builder other = shot.toBuilder();
            for (Metric metric : shot.metrics()) {
                if (metric.sense() == Sense.LATERAL) {
                    other.measured(metric, -shot.value(metric));
                }
            }
            shots.add(other.build());
        }
        Session.Builder other = session.toBuilder().shots(ShotSet.of(shots));
        session.hand().ifPresent(h -> other.hand(h == Handedness.LEFT ? Handedness.RIGHT : Handedness.LEFT));
        return other.build();
    }
}
