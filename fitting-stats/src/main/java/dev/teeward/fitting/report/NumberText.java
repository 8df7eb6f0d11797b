package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Normalizer;

/** Numbers and foreign text as a page prints them. */
final class NumberText {
    private static final int MOST_DECIMALS = 9;

    private NumberText() {}

    /** The decimals worth printing in a unit. */
    static int decimals(Unit unit) {
        if (unit instanceof SpinRateUnit) {
            return 0;
        }
        if (unit instanceof DurationUnit) {
            return 2;
        }
        if (unit instanceof RatioUnit) {
            return 3;
        }
        return unit == LengthUnit.FOOT ? 0 : 1;
    }

    /** As many decimals as it takes for no number to be printed as something that it is not. */
    static int decimals(int least, double forbidden, double... numbers) {
        int decimals = least;
        for (double number : numbers) {
            while (decimals < MOST_DECIMALS
                    && Double.isFinite(number)
                    && number != forbidden
                    && round(number, decimals).compareTo(BigDecimal.valueOf(forbidden)) == 0) {
                decimals++;
            }
        }
        return decimals;
    }

    /** Without an exponent, and with a sign only if it is not all zeros. */
    static String fixed(double number, int decimals) {
        return round(number, decimals).toPlainString();
    }

    private static BigDecimal round(double number, int decimals) {
        return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN);
    }

    /** A percentage with at most one decimal, and that only if it is needed. */
    static int percentDecimals(double percent) {
        return Math.abs(percent - Math.rint(percent)) < 0.05 ? 0 : 1;
    }

    /** Text from outside on one line, without characters that a screen would obey rather than show. */
    static String line(String foreign) {
        return VisibleText.line(foreign);
    }

    /** Letters without their accents, and a question mark for what has no ASCII form. */
    static String ascii(String text) {
        String parts = Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("\\p{Mn}+", "");
        return parts.replaceAll("[^\\x20-\\x7e]", "?");
    }
}
