package dev.teeward.fitting.screen;

import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Warning;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/**
 * A shot that stands out, with the reason. A flag never removes a shot: whoever reads it decides, by something known about
 * the swing, and results are shown with and without the flagged shots.
 *
 * <pre>{@code
 * Flag flag = GrubbsTest.withDefaults().screen(carries).flags().get(0);
 * flag.index();    // 6: the seventh shot
 * flag.reason();   // "lies farther from the other shots than chance explains: G = 2.47 is above 2.13 ..."
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Flag {
    private final int index;
    private final String method;
    private final String symbol;
    private final double statistic;
    private final double cutOff;
    private final double falseAlarmRate;

    Flag(int index, String method, String symbol, double statistic, double cutOff, double falseAlarmRate) {
        this.index = index;
        this.method = method;
        this.symbol = symbol;
        this.statistic = statistic;
        this.cutOff = cutOff;
        this.falseAlarmRate = falseAlarmRate;
    }

    /**
     * Where the shot stands in the data that were screened.
     *
     * @return the index, from 0
     */
    public int index() {
        return index;
    }

    /**
     * The method that raised the flag.
     *
     * @return the field's name of the method, such as {@code Grubbs test}
     */
    public String method() {
        return method;
    }

    /**
     * The statistic of this shot.
     *
     * @return the number, without a unit
     */
    public double statistic() {
        return statistic;
    }

    /**
     * The value that the statistic exceeded.
     *
     * @return the cut-off, without a unit
     */
    public double cutOff() {
        return cutOff;
    }

    /**
     * How often a set of good shots, normally spread, raises at least one flag: exact or simulated, and nominal for
     * {@link GeneralizedEsdTest}, which documents the measured rates.
     *
     * @return the rate for one screened set, in (0, 1)
     */
    public double falseAlarmRate() {
        return falseAlarmRate;
    }

    /**
     * The reason as text.
     *
     * @return one clause without a subject and without a full stop
     */
    public String reason() {
        String comparison = statistic > cutOff
                ? String.format(Locale.ROOT, "%s = %.4g is above %.4g", symbol, statistic, cutOff)
                : String.format(
                        Locale.ROOT,
                        "%s = %.4g, which hides behind a further shot that stands out, since alone it is not above %.4g",
                        symbol,
                        statistic,
                        cutOff);
        return String.format(
                Locale.ROOT,
                "lies farther from the other shots than chance explains: %s (%s; %s %% of good sets raise a flag)",
                comparison,
                method,
                percent());
    }

    private String percent() {
        return BigDecimal.valueOf(100.0 * falseAlarmRate)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Index and reason. */
    @Override
    public String toString() {
        return "shot " + (index + 1) + " " + reason();
    }

    /**
     * How often at least one of several sets of good shots raises a flag, for instance one for each club and metric. Exact
     * for independent sets; sets that share shots give less.
     *
     * @param falseAlarmRate the rate for one set, in (0, 1)
     * @param sets the number of sets, at least 1
     * @return 1 - (1 - rate)^sets
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double falseAlarmRateOver(double falseAlarmRate, int sets) {
        Data.checkRate(falseAlarmRate);
        if (sets < 1) {
            throw new IllegalArgumentException("sets must be at least 1, but was " + sets);
        }
        return -Math.expm1(sets * Math.log1p(-falseAlarmRate));
    }

    static Warning noSpread() {
        return Warning.of(
                "zero-spread",
                "all values are equal, so that nothing can stand out; the readings may be rounded too coarsely");
    }
}
