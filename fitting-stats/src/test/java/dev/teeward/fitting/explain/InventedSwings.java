package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Handedness;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Sessions of invented pairs with the two invented 6-irons Alder and Rowan: deliveries and launches, normally spread. */
final class InventedSwings {
    static final String A = "Alder";
    static final String B = "Rowan";

    private static final double DEG = Math.PI / 180.0;

    private final long seed;
    private final int pairs;
    private final Map<Metric, double[]> inputs = new EnumMap<>(Metric.class);
    private Handedness hand = Handedness.RIGHT;

    private InventedSwings(long seed, int pairs) {
        this.seed = seed;
        this.pairs = pairs;
    }

    /** Swings whose means do not differ. */
    static InventedSwings of(long seed, int pairs) {
        return new InventedSwings(seed, pairs)
                .input(Metric.CLUB_SPEED, 38.0, 0.4, 0.0)
                .input(Metric.ATTACK_ANGLE, -4.0 * DEG, 0.6 * DEG, 0.0)
                .input(Metric.CLUB_PATH, 1.0 * DEG, 0.8 * DEG, 0.0)
                .input(Metric.FACE_ANGLE, 0.5 * DEG, 0.9 * DEG, 0.0)
                .input(Metric.DYNAMIC_LOFT, 24.0 * DEG, 0.8 * DEG, 0.0)
                .input(Metric.DYNAMIC_LIE, 0.0, 0.6 * DEG, 0.0)
                .input(Metric.STRIKE_TOE, 0.001, 0.004, 0.0)
                .input(Metric.STRIKE_UP, 0.0, 0.003, 0.0)
                .launch(Metric.BALL_SPEED, 52.0, 0.5, 0.0)
                .launch(Metric.LAUNCH_ANGLE, 17.0 * DEG, 0.6 * DEG, 0.0)
                .launch(Metric.START_DIRECTION, 0.5 * DEG, 0.8 * DEG, 0.0)
                .launch(Metric.SPIN_RATE, 620.0, 20.0, 0.0)
                .launch(Metric.AXIS_TILT, 2.0 * DEG, 2.0 * DEG, 0.0);
    }

    /** Mean, spread, and by how much Alder has more [SI]. */
    InventedSwings input(Metric metric, double mean, double sd, double alderMore) {
        inputs.put(metric, new double[] {mean, sd, alderMore});
        return this;
    }

    private InventedSwings launch(Metric metric, double mean, double sd, double alderMore) {
        return input(metric, mean, sd, alderMore);
    }

    /** Alder has more of a metric, its mean and spread unchanged. */
    InventedSwings more(Metric metric, double alderMore) {
        double[] old = inputs.get(metric);
        return input(metric, old[0], old[1], alderMore);
    }

    /** A metric always at its mean. */
    InventedSwings withoutScatter(Metric metric) {
        double[] old = inputs.get(metric);
        return input(metric, old[0], 0.0, old[2]);
    }

    InventedSwings without(Metric metric) {
        inputs.remove(metric);
        return this;
    }

    InventedSwings hand(Handedness value) {
        hand = value;
        return this;
    }

    /** Flights are not measured, so that the flight model works them out. */
    Session session() {
        SplittableRandom random = new SplittableRandom(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < pairs; i++) {
            for (int k = 0; k < 2; k++) {
                boolean alder = (i % 2 == 0) == (k == 0);
                Shot.Builder shot = Shot.builder(alder ? A : B).number(shots.size() + 1);
                for (Map.Entry<Metric, double[]> e : inputs.entrySet()) {
                    double[] v = e.getValue();
                    shot.measured(e.getKey(), v[0] + v[1] * random.nextGaussian() + (alder ? v[2] : 0.0));
                }
                shots.add(shot.build());
            }
        }
        return Session.builder().hand(hand).shots(ShotSet.of(shots)).build();
    }
}
