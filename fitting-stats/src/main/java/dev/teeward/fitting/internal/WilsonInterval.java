package dev.teeward.fitting.internal;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;

/**
 * A share of counted things with the score interval of Wilson (1927, Journal of the American Statistical Association 22, from
 * memory): all shares p with {@code |count / n - p| <= z sqrt(p (1 - p) / n)}. It lies within [0, 1] and has an extent at none
 * of n and at n of n too.
 *
 * <p>Stateless and thread-safe.
 */
public final class WilsonInterval {
    private WilsonInterval() {}

    /**
     * The share.
     *
     * @param count how many, in [0, n]
     * @param n of how many, at least 1
     * @param level the level, in (0, 1)
     * @return count / n with its interval
     */
    public static Estimate share(int count, int n, double level) {
        double z = Distributions.normalQuantile(0.5 + 0.5 * level);
        double p = count / (double) n;
        double centre = p + z * z / (2.0 * n);
        double reach = z * Math.sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * (double) n));
        double divisor = 1.0 + z * z / n;
        double lower = count == 0 ? 0.0 : Math.max(0.0, (centre - reach) / divisor);
        double upper = count == n ? 1.0 : Math.min(1.0, (centre + reach) / divisor);
        return Estimate.of(p, Interval.of(lower, upper, level), RatioUnit.ONE);
    }
}
