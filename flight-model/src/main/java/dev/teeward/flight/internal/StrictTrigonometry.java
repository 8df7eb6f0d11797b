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

    private static final double S1 = -0.16666666666666632;
    private static final double S2 = 0.00833333333332249;
    private static final double S3 = -0.0001984126982985795;
    private static final double S4 = 2.7557313707070068e-6;
    private static final double S5 = -2.5050760253406863e-8;
    private static final double S6 = 1.58969099521155e-10;

    private static final double C1 = 0.0416666666666666;
    private static final double C2 = -0.001388888888887411;
    private static final double C3 = 2.480158728947673e-5;
    private static final double C4 = -2.7557314351390663e-7;
    private static final double C5 = 2.087572321298175e-9;
    private static final double C6 = -1.1359647557788195e-11;

    private static final double T0 = 0.3333333333333293;
    private static final double T1 = -0.19999999999876483;
    private static final double T2 = 0.14285714272503466;
    private static final double T3 = -0.11111110405462356;
    private static final double T4 = 0.09090887133436507;
    private static final double T5 = -0.0769187620504483;
    private static final double T6 = 0.06661073137387531;
    private static final double T7 = -0.058335701337905735;
    private static final double T8 = 0.049768779946159324;
    private static final double T9 = -0.036531572744216916;
    private static final double T10 = 0.016285820115365782;

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
            return arc((2.0 * tangent - 1.0) / (2.0 + tangent), 0.4636476090008061, 2.2698777452961687e-17);
        }
        if (tangent < 1.1875) {
            return arc((tangent - 1.0) / (tangent + 1.0), 0.7853981633974483, 3.061616997868383e-17);
        }
        if (tangent < 2.4375) {
            return arc((tangent - 1.5) / (1.0 + 1.5 * tangent), 0.982793723247329, 1.3903311031230998e-17);
        }
        return arc(-1.0 / tangent, 1.5707963267948966, 6.123233995736766e-17);
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
