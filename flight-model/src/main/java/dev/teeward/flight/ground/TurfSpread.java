package dev.teeward.flight.ground;

import java.util.Locale;

/**
 * How well the turf is known: one unknown, its firmness, that moves bounce, dent and roll together.
 *
 * <p>At a firmness of f standard deviations the restitution is multiplied by {@code exp(a f)}, the tilt by {@code exp(-b f)} and
 * the rolling resistance by {@code exp(-c f)}, f standard normal: firmer turf bounces higher, gives way less and rolls farther,
 * as the kinds of {@link TurfClass} do. Friction is left as it is. What the bounce model itself gets wrong is not in it.
 *
 * <pre>{@code
 * TurfSpread spread = TurfSpread.typical();
 * spread.at(TurfClass.FAIRWAY.turf(), 1.96);   // about a dry fairway
 * spread.at(TurfClass.FAIRWAY.turf(), -1.96);  // about a wet one
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class TurfSpread {
    private static final TurfSpread TYPICAL = new TurfSpread(0.15, 0.12, 0.18);

    private final double restitution;
    private final double tilt;
    private final double rollingResistance;

    private TurfSpread(double restitution, double tilt, double rollingResistance) {
        this.restitution = within("restitution", restitution);
        this.tilt = within("tilt", tilt);
        this.rollingResistance = within("rollingResistance", rollingResistance);
    }

    /**
     * 0.15, 0.12 and 0.18: 95 of 100 fairways lie between {@link TurfClass#SOFT_FAIRWAY} and {@link TurfClass#FIRM_FAIRWAY}
     * (common practice, no source), so that each is the logarithm of the ratio of those two over 3.92.
     *
     * @return the spread
     */
    public static TurfSpread typical() {
        return TYPICAL;
    }

    /**
     * A spread of one's own.
     *
     * @param restitution the relative standard deviation of the restitution, in [0, 0.5]
     * @param tilt that of the tilt, in [0, 0.5]
     * @param rollingResistance that of the rolling resistance, in [0, 0.5]
     * @return the spread
     * @throws IllegalArgumentException if one lies outside
     */
    public static TurfSpread of(double restitution, double tilt, double rollingResistance) {
        return new TurfSpread(restitution, tilt, rollingResistance);
    }

    /**
     * Turf that is firmer or softer than another.
     *
     * @param turf the turf in the middle
     * @param firmness how much firmer, in standard deviations; negative for softer
     * @return the turf; a number that would leave the range of {@link Turf} ends there
     */
    public Turf at(Turf turf, double firmness) {
        return turf.withRestitutionFactor(Math.min(2.0, turf.restitutionFactor() * Math.exp(restitution * firmness)))
                .withTiltFactor(Math.min(2.0, turf.tiltFactor() * Math.exp(-tilt * firmness)))
                .withRollingResistance(Math.max(
                        0.005, Math.min(2.0, turf.rollingResistance() * Math.exp(-rollingResistance * firmness))));
    }

    private static double within(String name, double value) {
        if (!(value >= 0.0 && value <= 0.5)) {
            throw new IllegalArgumentException(
                    name + " must be in [0, 0.5], but was " + value + "; it is relative, 0.15 for 15 percent");
        }
        return value;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "firmness that moves restitution by %.0f, tilt by %.0f and rolling resistance by %.0f percent",
                100.0 * restitution,
                100.0 * tilt,
                100.0 * rollingResistance);
    }
}
