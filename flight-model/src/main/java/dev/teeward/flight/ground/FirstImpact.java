package dev.teeward.flight.ground;

import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Locale;

/** Judges whether the first impact, the hardest, lies where the bounce model may be believed. */
final class FirstImpact {
    /** The fastest that a ball may come down without a bounce and its rest be told [m/s]: our choice, no source. */
    private static final double FASTEST_ROLL = 10.0;

    private FirstImpact() {}

    /**
     * Judges a landing.
     *
     * @param motion velocity [m/s], then spin
     * @param into the speed into the ground [m/s]
     * @param bounces whether the ball bounces at all
     * @param warnings takes what is to be said
     * @return false if it lies so far outside that the rest is not known
     */
    static boolean judge(Ground ground, double[] motion, double into, boolean bounces, List<Warning> warnings) {
        double speed = Math.sqrt(motion[0] * motion[0] + motion[1] * motion[1] + motion[2] * motion[2]);
        if (!bounces) {
            return grazes(Math.sqrt(Math.max(0.0, speed * speed - into * into)), warnings);
        }
        BounceModel model = ground.bounce();
        double angle = StrictMath.acos(Math.min(1.0, into / speed));
        if (model.covers(speed, angle, ground.turf())) {
            return true;
        }
        boolean known = model.reaches(speed, angle, ground.turf());
        warnings.add(Warning.of(
                known ? "bounce-extrapolated" : "bounce-outside-model",
                String.format(
                        Locale.ROOT,
                        "the ball lands at %.1f m/s, %.1f deg above the ground, faster or flatter than the bounce model"
                                + " (%s) can be trusted: %s",
                        speed,
                        90.0 - Math.toDegrees(angle),
                        model.reference(),
                        known ? "bounce, roll and total are guesses" : "where it stops is not known")));
        return known;
    }

    /** A ball that comes down without a bounce, at a speed along the ground: one that is fast skims the turf, of which nothing here speaks. */
    private static boolean grazes(double along, List<Warning> warnings) {
        if (along <= FASTEST_ROLL) {
            return true;
        }
        warnings.add(Warning.of(
                "bounce-outside-model",
                String.format(
                        Locale.ROOT,
                        "the ball comes down at %.1f m/s too flat to bounce; faster than %.0f m/s it skims the turf, which"
                                + " neither the bounce nor the roll covers: where it stops is not known",
                        along,
                        FASTEST_ROLL)));
        return false;
    }
}
