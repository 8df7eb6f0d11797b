package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.PracticalMargins;
import dev.teeward.fitting.io.MetricText;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A margin on the command line, such as {@code carry=5yd}: the largest difference of a metric that does not matter [SI]. */
record Margin(Metric metric, double si) {
    /** A thousandth of the unit of the answer, of a pure number a hundred thousandth: finer than any device reads [SI]. */
    private static double least(Metric metric) {
        return metric.siUnit() == RatioUnit.ONE
                ? 1e-5
                : metric.unit(UnitSystem.US).toSi(1e-3);
    }

    private static String plain(double value, Unit unit) {
        String number = new BigDecimal(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
        return (number + " " + unit.symbol()).strip();
    }

    /** Reads it, and refuses what cannot be a margin. */
    static final class Converter implements ITypeConverter<Margin> {
        @Override
        public Margin convert(String text) {
            int equals = text.indexOf('=');
            if (equals <= 0) {
                throw new TypeConversionException("\"" + text
                        + "\" is not a margin; write a metric, = and an amount with its unit, as in carry=5yd");
            }
            try {
                Metric metric = MetricText.metric(text.substring(0, equals));
                double si = MetricText.amount(metric, text.substring(equals + 1));
                PracticalMargins.none().with(metric, si);
                double least = least(metric);
                if (si < least) {
                    throw new TypeConversionException("the margin of " + metric.label() + " must be at least "
                            + plain(metric.unit(UnitSystem.US).fromSi(least), metric.unit(UnitSystem.US)) + " ("
                            + plain(least, metric.siUnit()) + "), but was \""
                            + text.substring(equals + 1).strip()
                            + "\"; no device reads so finely");
                }
                return new Margin(metric, si);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(String.valueOf(e.getMessage()));
            }
        }
    }
}
