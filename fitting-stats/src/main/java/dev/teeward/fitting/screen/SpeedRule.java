package dev.teeward.fitting.screen;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.flight.Ball;
import dev.teeward.quantity.Mass;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Ball speed beyond what the club speed allows.
 *
 * <p>A free rigid head of mass M gives a ball of mass m the speed V (1 + e) cos(s) / (1 + m/M) along the face normal, s being
 * the spin loft, and along the face at most V b sin(s) with b = (2/7) / (1 + (2/7) m/M) when it leaves rolling. The ceiling
 * is both together, with e = 0.83 (the limit of the rules of golf for the restitution, R&amp;A and USGA, from memory).
 */
final class SpeedRule {
    static final double RESTITUTION = 0.83;

    /** A heavy head, about that of a wedge; common practice, no source [kg]. */
    static final double HEAVY_HEAD = 0.30;

    /** One standard deviation of a device, relative; common practice, no source. */
    static final double BALL_TOLERANCE = 0.01;

    static final double CLUB_TOLERANCE = 0.02;

    /** How much smaller than stated the spin loft may be; common practice, no source [rad]. */
    static final double SPIN_LOFT_ALLOWANCE = Math.toRadians(5.0);

    private static final double ALLOWED_SD = 3.0;

    private SpeedRule() {}

    static void apply(Screening screening) {
        double[] ball = screening.measured(Metric.BALL_SPEED);
        double[] club = screening.measured(Metric.CLUB_SPEED);
        double[] smashes = screening.known(Metric.SMASH_FACTOR);
        double[] lofts = screening.known(Metric.SPIN_LOFT);
        screening.byClub().forEach((name, shots) -> {
            double head = screening
                    .session()
                    .club(name)
                    .flatMap(Club::headMass)
                    .map(Mass::kilograms)
                    .orElse(HEAVY_HEAD);
            for (int index : shots) {
                double ratio = ball[index] / club[index];
                double smash = Double.isNaN(ratio) ? smashes[index] : ratio;
                double ceiling = ceiling(spinLoft(lofts[index]), head);
                if (smash > ceiling) {
                    check(screening, index, smash, ceiling, head);
                }
            }
        });
    }

    private static void check(Screening screening, int index, double smash, double ceiling, double head) {
        Shot shot = screening.shot(index);
        double ball = screening.measured(Metric.BALL_SPEED)[index];
        double limit = ceiling * (1.0 + allowance(screening, shot));
        if (smash > limit) {
            screening.rule(
                    index,
                    "ball speed against club speed",
                    List.of(Metric.BALL_SPEED, Metric.CLUB_SPEED),
                    Screening.format(
                            "%s is %.3f times the club speed, which is impossible: a head of %.0f g gives at most"
                                    + " %.3f, or %.3f with the tolerance of the device",
                            Double.isNaN(ball)
                                    ? "the ball speed"
                                    : "ball speed " + Screening.words(Metric.BALL_SPEED, ball),
                            smash,
                            1_000.0 * head,
                            ceiling,
                            limit),
                    smash,
                    limit);
        }
    }

    /** The greatest ratio of ball speed to club speed. */
    static double ceiling(double spinLoft, double headMass) {
        double share = Ball.standard().mass().kilograms() / headMass;
        double along = (1.0 + RESTITUTION) * Math.cos(spinLoft) / (1.0 + share);
        double across = 2.0 / 7.0 / (1.0 + 2.0 / 7.0 * share) * Math.sin(spinLoft);
        return Math.hypot(along, across);
    }

    /** The spin loft less its allowance; 0 if it is not known, which is NaN. */
    private static double spinLoft(double known) {
        return Double.isNaN(known) ? 0.0 : Math.max(0.0, known - SPIN_LOFT_ALLOWANCE);
    }

    private static double allowance(Screening screening, Shot shot) {
        return ALLOWED_SD
                * Math.hypot(
                        relative(screening, shot, Metric.BALL_SPEED, BALL_TOLERANCE),
                        relative(screening, shot, Metric.CLUB_SPEED, CLUB_TOLERANCE));
    }

    private static double relative(Screening screening, Shot shot, Metric metric, double otherwise) {
        OptionalDouble tolerance = screening.session().tolerance(metric);
        return tolerance.isPresent() && shot.has(metric) ? tolerance.getAsDouble() / shot.value(metric) : otherwise;
    }
}
