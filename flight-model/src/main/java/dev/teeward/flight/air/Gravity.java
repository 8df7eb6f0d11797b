package dev.teeward.flight.air;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Length;

/**
 * The acceleration of free fall, standard or by latitude and elevation.
 *
 * <p>Normal gravity on the WGS 84 ellipsoid, {@code g0 = 9.7803253359 (1 + 0.00193185265241 s) / sqrt(1 - 0.00669437999013
 * s)} with {@code s = sin^2(latitude)}, times {@code 1 - (2/a) (1 + f + m - 2 f s) h + 3 h^2 / a^2} for the height
 * {@code h}. From the equator to a pole it grows by 0.53 percent, and by 1000 m of height it falls by 0.03 percent. Local
 * anomalies (below 0.02 percent almost everywhere; from memory) are not in it.
 *
 * <p>Source: US Department of Defense, World Geodetic System 1984, TR8350.2 (third edition, 2000;
 * edition from memory).
 *
 * <pre>{@code
 * Gravity.STANDARD;                          // 9.80665 m/s2
 * Gravity.at(degrees(45.0), meters(1000.0)); // 9.80311294 m/s2
 * }</pre>
 *
 * <p>Stateless and thread-safe.
 */
public final class Gravity {
    /** Standard gravity [m/s2], exact by the 3rd CGPM (1901). */
    public static final double STANDARD = 9.80665;

    private static final double SEMI_MAJOR_AXIS = 6_378_137.0;
    private static final double FLATTENING = 1.0 / 298.257223563;
    private static final double M = 0.00344978650684;

    private Gravity() {}

    /**
     * Normal gravity at a place.
     *
     * @param latitude the geodetic latitude, north positive; the sign makes no difference, in [-90, 90] deg
     * @param elevation the height above the ellipsoid, for which the height above sea level serves, in [-500, 9000] m
     * @return the acceleration, downwards positive [m/s2]
     * @throws IllegalArgumentException if the latitude or the elevation lies outside its range
     */
    public static double at(Angle latitude, Length elevation) {
        double radians = latitude.radians();
        if (!(Math.abs(radians) <= AngleUnit.DEGREE.toSi(90.0))) {
            throw new IllegalArgumentException(
                    "latitude must be in [-90, 90] deg (-1.5708 to 1.5708 rad), but was " + latitude);
        }
        double height = AirLimits.elevation(elevation);
        double sine = StrictMath.sin(radians);
        double s = sine * sine;
        double onEllipsoid = 9.7803253359 * (1.0 + 0.00193185265241 * s) / Math.sqrt(1.0 - 0.00669437999013 * s);
        double relative = height / SEMI_MAJOR_AXIS;
        return onEllipsoid
                * (1.0 - 2.0 * (1.0 + FLATTENING + M - 2.0 * FLATTENING * s) * relative + 3.0 * relative * relative);
    }
}
