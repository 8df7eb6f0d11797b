package dev.teeward.examples;

import dev.teeward.flight.ground.TurfClass;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A kind of turf on the command line: its name in small letters, with hyphens. */
final class TurfConverter implements ITypeConverter<TurfClass> {
    @Override
    public TurfClass convert(String text) {
        return Arrays.stream(TurfClass.values())
                .filter(turf -> name(turf).equals(text))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("\"" + text + "\" is none of "
                        + Arrays.stream(TurfClass.values())
                                .map(TurfConverter::name)
                                .collect(Collectors.joining(", "))));
    }

    static String name(TurfClass turf) {
        return turf.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
