package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Sessions made up for tests, with the two invented 6-irons Alder and Rowan. */
final class InventedSession {
    static final String A = "Alder";
    static final String B = "Rowan";

    private InventedSession() {}

    /** One shot for each letter of {@code order} (A or B), taking the carries of its club in turn [m]. */
    static Session carries(String order, double[] alder, double[] rowan) {
        List<Shot> shots = new ArrayList<>();
        int a = 0;
        int b = 0;
        for (int i = 0; i < order.length(); i++) {
            boolean first = order.charAt(i) == 'A';
            shots.add(Shot.builder(first ? A : B)
                    .number(i + 1)
                    .measured(Metric.CARRY, first ? alder[a++] : rowan[b++])
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** Pairs in ABBA order with eight measured metrics; Alder's face is {@code faceDegrees} more to the right. */
    static Session full(long seed, int pairs, double faceDegrees, double carryMeters) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < pairs; i++) {
            double common = random.nextGaussian();
            boolean alderLeads = i % 2 == 0;
            for (int k = 0; k < 2; k++) {
                boolean alder = alderLeads == (k == 0);
                double path = Math.toRadians(1.5 * random.nextGaussian());
                double face = Math.toRadians(random.nextGaussian() + (alder ? faceDegrees : 0.0)) + 0.3 * path;
                double toe = 0.008 * random.nextGaussian();
                double up = 0.005 * random.nextGaussian();
                double speed = 52.0 + 0.5 * common + 0.6 * random.nextGaussian() - 4_000.0 * (toe * toe + up * up);
                double carry = 2.9 * speed + (alder ? carryMeters : 0.0) + random.nextGaussian();
                double curve = 60.0 * (face - path) + random.nextGaussian();
                double start = 0.8 * face + 0.2 * path;
                shots.add(Shot.builder(alder ? A : B)
                        .number(shots.size() + 1)
                        .measured(Metric.CLUB_PATH, path)
                        .measured(Metric.FACE_ANGLE, face)
                        .measured(Metric.STRIKE_TOE, toe)
                        .measured(Metric.STRIKE_UP, up)
                        .measured(Metric.BALL_SPEED, speed)
                        .measured(Metric.START_DIRECTION, start)
                        .measured(Metric.CURVE, curve)
                        .measured(Metric.CARRY, carry)
                        .measured(Metric.SIDE, carry * Math.sin(start) + curve)
                        .build());
            }
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** The same with the other measured metrics of a club's delivery and of a launch, so that flights can be computed. */
    static Session complete(long seed, int pairs) {
        Session session = full(seed, pairs, 0.5, 1.0);
        SplittableRandom random = new SplittableRandom(~seed);
        List<Shot> shots = new ArrayList<>();
        for (Shot shot : session.shots()) {
            shots.add(shot.toBuilder()
                    .measured(Metric.CLUB_SPEED, 38.0 + 0.5 * random.nextGaussian())
                    .measured(Metric.ATTACK_ANGLE, Math.toRadians(-4.0 + random.nextGaussian()))
                    .measured(Metric.DYNAMIC_LOFT, Math.toRadians(23.0 + random.nextGaussian()))
                    .measured(Metric.DYNAMIC_LIE, Math.toRadians(random.nextGaussian()))
                    .measured(Metric.LAUNCH_ANGLE, Math.toRadians(17.0 + random.nextGaussian()))
                    .measured(Metric.SPIN_RATE, 650.0 + 30.0 * random.nextGaussian())
                    .measured(Metric.AXIS_TILT, Math.toRadians(3.0 * random.nextGaussian()))
                    .build());
        }
        return session.withShots(ShotSet.of(shots));
    }

    static double[] normal(SplittableRandom random, int n, double mean, double sd) {
        return random.doubles(n).map(u -> mean + sd * random.nextGaussian()).toArray();
    }
}
