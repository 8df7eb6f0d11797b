package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.io.MetricText;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Metrics on the command line, by the name that they have in files. */
final class MetricConverter implements ITypeConverter<Metric> {
    @Override
    public Metric convert(String text) {
        try {
            return MetricText.metric(text);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(String.valueOf(e.getMessage()));
        }
    }
}
