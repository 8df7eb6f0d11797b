package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.quantity.Handedness;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Invented pairs whose spin axis tilts with the face to the path, so that there is something to explain. */
final class ExplainedSessions {
    private static final double DEG = Math.PI / 180.0;

    private ExplainedSessions() {}

    /**
     * Two clubs compared.
     *
     * @param faceDegrees by how much the first club's face is more to the right of the path
     * @param follows what a read curve is multiplied by; with anything but 1 readings go against the flights
     */
    static HeadToHeadResult result(long seed, int pairs, Handedness hand, double faceDegrees, double follows) {
        return HeadToHead.withDefaults()
                .withClubs("Alder", "Rowan")
                .withPrimary(Metric.CURVE)
                .compare(session(seed, pairs, hand, faceDegrees, follows, 0.0, 0.0));
    }

    /**
     * Two clubs compared in carry, of forty pairs.
     *
     * @param ballMore how much faster the first club's ball is at the same swing [m/s]
     * @param clubMore how much faster the first club is swung, [m/s]
     */
    static Session carries(long seed, double ballMore, double clubMore) {
        return session(seed, 40, Handedness.RIGHT, 0.0, 1.0, ballMore, clubMore);
    }

    private static Session session(
            long seed,
            int pairs,
            Handedness hand,
            double faceDegrees,
            double follows,
            double ballMore,
            double clubMore) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            boolean alder = i % 4 == 0 || i % 4 == 3;
            double path = DEG * (1.0 + 0.5 * random.nextGaussian());
            double open = DEG * (random.nextGaussian() + (alder ? faceDegrees : 0.0));
            shots.add(Shot.builder(alder ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CLUB_SPEED, 38.0 + 0.3 * random.nextGaussian() + (alder ? clubMore : 0.0))
                    .measured(Metric.ATTACK_ANGLE, DEG * (-4.0 + 0.4 * random.nextGaussian()))
                    .measured(Metric.CLUB_PATH, path)
                    .measured(Metric.FACE_ANGLE, path + open)
                    .measured(Metric.DYNAMIC_LOFT, DEG * (24.0 + 0.5 * random.nextGaussian()))
                    .measured(Metric.BALL_SPEED, 52.0 + 0.4 * random.nextGaussian() + (alder ? ballMore : 0.0))
                    .measured(Metric.LAUNCH_ANGLE, DEG * (17.0 + 0.5 * random.nextGaussian()))
                    .measured(Metric.START_DIRECTION, path + 0.8 * open)
                    .measured(Metric.SPIN_RATE, 620.0 + 15.0 * random.nextGaussian())
                    .measured(Metric.AXIS_TILT, 3.0 * open + DEG * 0.5 * random.nextGaussian())
                    .build());
        }
        Session flown = SessionCompleter.withDefaults()
                .complete(Session.builder().hand(hand).shots(ShotSet.of(shots)).build())
                .session();
        List<Shot> read = new ArrayList<>();
        for (Shot shot : flown.shots()) {
            double curve = follows * shot.value(Metric.CURVE) + 0.4 * random.nextGaussian();
            read.add(shot.without(Metric.CURVE).toBuilder()
                    .measured(Metric.CURVE, curve)
                    .build());
        }
        return flown.withShots(ShotSet.of(read));
    }
}
