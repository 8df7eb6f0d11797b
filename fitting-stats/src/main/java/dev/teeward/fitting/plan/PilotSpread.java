package dev.teeward.fitting.plan;

import dev.teeward.fitting.internal.Distributions;

/**
 * What a pilot's standard deviation leaves open: the ends of its chi-square interval and its upper 80 % limit (Browne 1995).
 *
 * @param low the lower end of the interval of level 1 - alpha
 * @param central the pilot's standard deviation
 * @param safe its upper 80 % limit
 * @param high the upper end
 */
record PilotSpread(double low, double central, double safe, double high) {
    static PilotSpread of(double sd, double df, double alpha) {
        return new PilotSpread(
                sd * Math.sqrt(df / Distributions.chiSquareQuantile(1.0 - 0.5 * alpha, df)),
                sd,
                sd * Math.sqrt(df / Distributions.chiSquareQuantile(0.2, df)),
                sd * Math.sqrt(df / Distributions.chiSquareQuantile(0.5 * alpha, df)));
    }

    static void requireShots(int pilotShots) {
        if (pilotShots < 2) {
            throw new IllegalArgumentException("pilotShots must be at least 2, but was " + pilotShots);
        }
    }
}
