package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Temperature;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Sessions of all kinds that can be compared: complete and gappy, in pairs and in blocks, with and without exclusions. */
final class RandomSession {
    /** Means and standard deviations of a middle iron in US units, invented. */
    private static final Map<Metric, double[]> USUAL = usual();

    private RandomSession() {}

    private static Map<Metric, double[]> usual() {
        Map<Metric, double[]> usual = new EnumMap<>(Metric.class);
        usual.put(Metric.CLUB_SPEED, new double[] {80.0, 2.0});
        usual.put(Metric.ATTACK_ANGLE, new double[] {-3.0, 1.0});
        usual.put(Metric.CLUB_PATH, new double[] {1.0, 2.0});
        usual.put(Metric.FACE_ANGLE, new double[] {0.5, 2.0});
        usual.put(Metric.DYNAMIC_LOFT, new double[] {22.0, 1.5});
        usual.put(Metric.STRIKE_TOE, new double[] {0.0, 7.0});
        usual.put(Metric.STRIKE_UP, new double[] {-2.0, 5.0});
        usual.put(Metric.BALL_SPEED, new double[] {112.0, 3.0});
        usual.put(Metric.LAUNCH_ANGLE, new double[] {16.0, 1.2});
        usual.put(Metric.START_DIRECTION, new double[] {0.5, 2.0});
        usual.put(Metric.SPIN_RATE, new double[] {6_000.0, 400.0});
        usual.put(Metric.AXIS_TILT, new double[] {2.0, 5.0});
        usual.put(Metric.CARRY, new double[] {155.0, 5.0});
        usual.put(Metric.SIDE, new double[] {1.0, 8.0});
        usual.put(Metric.TOTAL, new double[] {165.0, 6.0});
        return usual;
    }

    /** A session of the seed. */
    static Session create(long seed) {
        Random random = new Random(seed);
        Session.Builder session = Session.builder();
        if (random.nextBoolean()) {
            session.hand(random.nextBoolean() ? Handedness.LEFT : Handedness.RIGHT);
        }
        if (random.nextBoolean()) {
            session.elevation(Length.ofFeet(6_000.0 * random.nextDouble()))
                    .temperature(Temperature.ofFahrenheit(40.0 + 50.0 * random.nextDouble()));
        }
        if (random.nextInt(3) == 0) {
            session.wind(Angle.ofDegrees(360.0 * random.nextDouble()), Speed.ofMph(15.0 * random.nextDouble()));
        }
        if (random.nextInt(4) == 0) {
            session.aimOffset(Angle.ofDegrees(4.0 * random.nextDouble() - 2.0));
        }
        return session.shots(shots(random)).build();
    }

    private static ShotSet shots(Random random) {
        List<Metric> measured = new ArrayList<>();
        for (Metric metric : USUAL.keySet()) {
            if (random.nextDouble() < 0.7) {
                measured.add(metric);
            }
        }
        if (measured.isEmpty() || !measured.contains(Metric.BALL_SPEED)) {
            measured.add(Metric.BALL_SPEED);
        }
        int pairs = 3 + random.nextInt(12);
        boolean blocks = random.nextInt(4) == 0;
        boolean named = random.nextBoolean();
        double gaps = random.nextInt(3) == 0 ? 0.1 : 0.0;
        double excluded = random.nextInt(3) == 0 ? 0.1 : 0.0;
        double shift = 3.0 * random.nextDouble() - 1.5;
        boolean constant = random.nextInt(8) == 0;
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            int pair = i / 2;
            boolean first = blocks ? i < pairs : (i % 2 == 0) == (pair % 2 == 0);
            Shot.Builder shot =
                    Shot.builder(first ? "One <b>&\"" : "Zw\u00F6lf").number(i + 1);
            if (named && !blocks) {
                shot.pair(Integer.toString(pair + 1));
            }
            for (Metric metric : measured) {
                boolean must = metric == Metric.BALL_SPEED && i % pairs < 4;
                if (!must && random.nextDouble() < gaps) {
                    continue;
                }
                double[] usual = USUAL.get(metric);
                double deviate = constant && metric == Metric.CARRY ? 0.0 : random.nextGaussian();
                if (random.nextInt(60) == 0) {
                    deviate *= 5.0;
                }
                double si = metric.unit(UnitSystem.US).toSi(usual[0] + usual[1] * (deviate + (first ? shift : 0.0)));
                if (metric.allows(si)) {
                    shot.measured(metric, si);
                }
            }
            boolean keep = i < 4 || i >= 2 * pairs - 2;
            if (!keep && random.nextDouble() < excluded) {
                shot.exclusion("topped");
            }
            shots.add(shot.build());
        }
        return ShotSet.of(shots);
    }
}
