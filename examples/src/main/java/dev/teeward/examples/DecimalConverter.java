package dev.teeward.examples;

import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Numbers on the command line: plain decimals with a point, as in the files; no words, suffixes or separators. */
final class DecimalConverter implements ITypeConverter<Double> {
    private static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

    @Override
    public Double convert(String text) {
        if (!DECIMAL.matcher(text).matches()) {
            throw new TypeConversionException("\"" + text + "\" is not a number"
                    + (text.contains(",") ? "; write the decimal mark as a point" : ""));
        }
        return Double.valueOf(text);
    }
}
