package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.PracticalMargins;
import dev.teeward.fitting.io.MetricText;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A margin on the command line, such as {@code carry=5yd}: the largest difference of a metric that does not matter [SI]. */
record Margin(Metric metric, double si) {
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
                return new Margin(metric, si);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(String.valueOf(e.getMessage()));
            }
        }
    }
}
