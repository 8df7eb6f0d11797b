package dev.teeward.examples;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.TypicalHead;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A typical head on the command line: its kind, with a number or the loft of a wedge after a hyphen. */
final class HeadConverter implements ITypeConverter<ClubHead> {
    static final String NAMES =
            "driver, fairway-wood-3, hybrid-4, iron-6 or wedge-56 (a wedge by its loft), or another number";

    private static final Pattern NAME = Pattern.compile("(driver)|(fairway-wood|hybrid|iron|wedge)-(\\d{1,2})");

    @Override
    public ClubHead convert(String text) {
        Matcher name = NAME.matcher(text);
        if (!name.matches()) {
            throw new TypeConversionException("\"" + text + "\" is none of " + NAMES);
        }
        if (name.group(1) != null) {
            return TypicalHead.driver();
        }
        int number = Integer.parseInt(name.group(3));
        try {
            return switch (name.group(2)) {
                case "fairway-wood" -> TypicalHead.fairwayWood(number);
                case "hybrid" -> TypicalHead.hybrid(number);
                case "iron" -> TypicalHead.iron(number);
                default -> TypicalHead.wedge(number);
            };
        } catch (IllegalArgumentException e) {
            TypeConversionException failure = new TypeConversionException("\"" + text + "\": " + e.getMessage());
            failure.initCause(e);
            throw failure;
        }
    }
}
