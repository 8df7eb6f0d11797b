package dev.teeward.examples;

import dev.teeward.fitting.UnitSystem;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The family of units on the command line. */
final class UnitsConverter implements ITypeConverter<UnitSystem> {
    @Override
    public UnitSystem convert(String text) {
        return switch (text) {
            case "us" -> UnitSystem.US;
            case "metric" -> UnitSystem.METRIC;
            default -> throw new TypeConversionException("\"" + text + "\" is neither us nor metric");
        };
    }
}
