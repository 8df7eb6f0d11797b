package dev.teeward.flight.study;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.NormalRestitution;

/**
 * How well a club head's coefficients are known: standard deviations of independent normal errors.
 *
 * <p>Take them from the intervals of an {@link ImpactCalibration} on the golfer's own shots, or {@link #typical()} for a head that
 * nobody measured.
 *
 * <pre>{@code
 * HeadSpread known = HeadSpread.of(0.01, 0.03, 0.05);
 * DeliveryPropagation.withDefaults().withHeadSpread(known);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param restitution the standard deviation of the restitution, in [0, 0.3] [1]
 * @param tangentialRestitution that of the restitution along the face, in [0, 0.3] [1]
 * @param friction that of the friction, in [0, 0.3] [1]
 */
public record HeadSpread(double restitution, double tangentialRestitution, double friction) {
    private static final HeadSpread TYPICAL = new HeadSpread(0.03, 0.06, 0.05);

    /**
     * Checks the ranges.
     *
     * @param restitution the standard deviation of the restitution, in [0, 0.3] [1]
     * @param tangentialRestitution that of the restitution along the face, in [0, 0.3] [1]
     * @param friction that of the friction, in [0, 0.3] [1]
     * @throws IllegalArgumentException if one lies outside
     */
    public HeadSpread {
        for (double value : new double[] {restitution, tangentialRestitution, friction}) {
            if (!(value >= 0.0 && value <= 0.3)) {
                throw new IllegalArgumentException(
                        "standard deviations of a head's coefficients must be in [0, 0.3], but one was " + value);
            }
        }
    }

    /**
     * A spread.
     *
     * @param restitution the standard deviation of the restitution, in [0, 0.3] [1]
     * @param tangentialRestitution that of the restitution along the face, in [0, 0.3] [1]
     * @param friction that of the friction, in [0, 0.3] [1]
     * @return the spread
     * @throws IllegalArgumentException if one lies outside
     */
    public static HeadSpread of(double restitution, double tangentialRestitution, double friction) {
        return new HeadSpread(restitution, tangentialRestitution, friction);
    }

    /**
     * 0.03, 0.06 and 0.05: what leaves about 2 percent of ball speed and 5 percent of spin open, as the typical heads do on the
     * shots of common practice that they were fitted to; for friction a judgement (common practice, no source).
     *
     * @return the spread
     */
    public static HeadSpread typical() {
        return TYPICAL;
    }

    /** A head that is off by some standard deviations in each coefficient; one that would leave [0, 1] ends there. */
    ClubHead at(ClubHead head, double first, double second, double third) {
        NormalRestitution middle = head.restitution();
        double shift = restitution * first;
        return head.toBuilder()
                .restitution(speed -> unit(middle.at(speed) + shift))
                .tangentialRestitution(unit(head.tangentialRestitution() + tangentialRestitution * second))
                .friction(unit(head.friction() + friction * third))
                .build();
    }

    private static double unit(double value) {
        return Math.max(0.0, Math.min(1.0, value));
    }
}
