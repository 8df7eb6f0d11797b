package dev.teeward.flight.internal;

/**
 * The sine, cosine and arc tangent of {@link StrictMath}, bit for bit, where a launch or a landing needs them, without its price:
 * a call out of the virtual machine before Java 21, an object for each call since.
 *
 * <p>These are the kernels of fdlibm 5.3, which the specification of {@code StrictMath} names as its result. Their notice: Copyright
 * (C) 1993 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun Microsystems, Inc. business. Permission to
 * use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved. Arguments outside the
 * ranges below go to {@code StrictMath} itself.
 *
 * <p>Thread-safe.
 */
public final class StrictTrigonometry {
    private static final double QUARTER = 0x1.921fb54442d18p-1;

    private static final double S1 = -1.66666666666666324348e-01;
    private static final double S2 = 8.33333333332248946124e-03;
    private static final double S3 = -1.98412698298579493134e-04;
    private static final double S4 = 2.75573137070700676789e-06;
    private static final double S5 = -2.50507602534068634195e-08;
    private static final double S6 = 1.58969099521155010221e-10;

    private static final double C1 = 4.16666666666666019037e-02;
    private static final double C2 = -1.38888888888741095749e-03;
    private static final double C3 = 2.48015872894767294178e-05;
    private static final double C4 = -2.75573143513906633035e-07;
    private static final double C5 = 2.08757232129817482790e-09;
    private static final double C6 = -1.13596475577881948265e-11;

    private static final double T0 = 3.33333333333329318027e-01;
    private static final double T1 = -1.99999999998764832476e-01;
    private static final double T2 = 1.42857142725034663711e-01;
    private static final double T3 = -1.11111104054623557880e-01;
    private static final double T4 = 9.09088713343650656196e-02;
    private static final double T5 = -7.69187620504482999495e-02;
    private static final double T6 = 6.66107313738753120669e-02;
    private static final double T7 = -5.83357013379057348645e-02;
    private static final double T8 = 4.97687799461593236017e-02;
    private static final double T9 = -3.65315727442169155270e-02;
    private static final double T10 = 1.62858201153657823623e-02;

    private StrictTrigonometry() {}

    /**
     * The sine; quick up to 45 deg to either side.
     *
     * @param x the angle [rad]
     * @return the sine
     */
    public static double sin(double x) {
        if (!(Math.abs(x) <= QUARTER && Math.abs(x) >= 0x1.0p-26)) {
            return x == 0.0 ? x : StrictMath.sin(x);
        }
        double z = x * x;
        double v = z * x;
        return x + v * (S1 + z * (S2 + z * (S3 + z * (S4 + z * (S5 + z * S6)))));
    }

    /**
     * The cosine; quick up to 45 deg to either side.
     *
     * @param x the angle [rad]
     * @return the cosine
     */
    public static double cos(double x) {
        double size = Math.abs(x);
        if (!(size <= QUARTER && size >= 0x1.0p-26)) {
            return x == 0.0 ? 1.0 : StrictMath.cos(x);
        }
        double z = x * x;
        double r = z * (C1 + z * (C2 + z * (C3 + z * (C4 + z * (C5 + z * C6)))));
        int high = (int) (Double.doubleToRawLongBits(size) >>> 32);
        if (high < 0x3FD33333) {
            return 1.0 - (0.5 * z - z * r);
        }
        double quarter = high > 0x3fe90000 ? 0.28125 : Double.longBitsToDouble((long) (high - 0x00200000) << 32);
        return 1.0 - quarter - (0.5 * z - quarter - z * r);
    }

    /**
     * The angle of a fall below the horizontal, {@code -atan2(up, along)}; quick for a ball that falls and moves.
     *
     * @param up the upward velocity
     * @param along the horizontal velocity, not negative
     * @return the angle [rad]
     */
    public static double fall(double up, double along) {
        double tangent = -up / along;
        if (!(tangent >= 0x1.0p-20 && tangent <= 0x1.0p20)) {
            return -StrictMath.atan2(up, along);
        }
        if (tangent < 0.4375) {
            return tangent - tangent * series(tangent);
        }
        if (tangent < 0.6875) {
            return arc((2.0 * tangent - 1.0) / (2.0 + tangent), 4.63647609000806093515e-01, 2.26987774529616870924e-17);
        }
        if (tangent < 1.1875) {
            return arc((tangent - 1.0) / (tangent + 1.0), 7.85398163397448278999e-01, 3.06161699786838301793e-17);
        }
        if (tangent < 2.4375) {
            return arc((tangent - 1.5) / (1.0 + 1.5 * tangent), 9.82793723247329054082e-01, 1.39033110312309984516e-17);
        }
        return arc(-1.0 / tangent, 1.57079632679489655800e+00, 6.12323399573676603587e-17);
    }

    private static double arc(double x, double high, double low) {
        return high - (x * series(x) - low - x);
    }

    private static double series(double x) {
        double z = x * x;
        double w = z * z;
        double odd = z * (T0 + w * (T2 + w * (T4 + w * (T6 + w * (T8 + w * T10)))));
        double even = w * (T1 + w * (T3 + w * (T5 + w * (T7 + w * T9))));
        return odd + even;
    }
}
