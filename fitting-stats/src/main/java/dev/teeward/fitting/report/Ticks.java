package dev.teeward.fitting.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Round numbers along an axis: multiples of 1, 2 or 5 times a power of ten (the "nice numbers" of Heckbert 1990, Graphics
 * Gems, from memory).
 *
 * <pre>{@code
 * Ticks t = Ticks.of(142.0, 168.0, 6);
 * t.step();     // 5
 * t.values();   // 145, 150, 155, 160, 165
 * }</pre>
 */
final class Ticks {
    private final BigDecimal step;
    private final List<Double> values;

    private Ticks(BigDecimal step, double lower, double upper) {
        this.step = step;
        double width = step.doubleValue();
        long first = (long) Math.ceil(lower / width - 1e-9);
        long last = (long) Math.floor(upper / width + 1e-9);
        List<Double> found = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            found.add(step.multiply(BigDecimal.valueOf(i)).doubleValue());
        }
        this.values = List.copyOf(found);
    }

    /** At most so many ticks in a range of positive width. */
    static Ticks of(double lower, double upper, int most) {
        double width = upper - lower;
        if (!(width > 0.0 && Double.isFinite(width)) || most < 1) {
            throw new IllegalArgumentException("an axis needs a width above 0 and a tick, but was from " + lower
                    + " to " + upper + " with " + most);
        }
        Ticks ticks = withStep(lower, upper, width / most);
        // Both ends may be ticks, which makes one more than there are steps.
        return ticks.values.size() > most ? withStep(lower, upper, 1.01 * ticks.step()) : ticks;
    }

    /** Ticks at least so far apart. */
    static Ticks withStep(double lower, double upper, double least) {
        int exponent = (int) Math.floor(Math.log10(least));
        for (int e = exponent; e <= exponent + 1; e++) {
            for (int digit : new int[] {1, 2, 5}) {
                BigDecimal step = BigDecimal.valueOf(digit).scaleByPowerOfTen(e);
                if (step.doubleValue() >= least * (1.0 - 1e-9)) {
                    return new Ticks(step, lower, upper);
                }
            }
        }
        return new Ticks(BigDecimal.ONE.scaleByPowerOfTen(exponent + 2), lower, upper);
    }

    /** The distance of neighbours. */
    double step() {
        return step.doubleValue();
    }

    /** The numbers, ascending. */
    List<Double> values() {
        return values;
    }

    /** How many decimals tell neighbours apart. */
    int decimals() {
        return Math.max(0, step.stripTrailingZeros().scale());
    }

    /** A tick as text. */
    String label(double value) {
        return Decimals.label(value, decimals());
    }
}
