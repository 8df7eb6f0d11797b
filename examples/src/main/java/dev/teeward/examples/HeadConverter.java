package dev.teeward.examples;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.TypicalHead;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A typical head on the command line: {@code driver}, {@code wood-5}, {@code hybrid-4}, {@code iron-7}, {@code wedge-54}. */
final class HeadConverter implements ITypeConverter<ClubHead> {
    private static final Pattern KIND = Pattern.compile("(wood|hybrid|iron|wedge)-([0-9]{1,2})");

    @Override
    public ClubHead convert(String text) {
        Matcher kind = KIND.matcher(text);
        if (text.equals("driver")) {
            return TypicalHead.driver();
        }
        if (!kind.matches()) {
            throw new TypeConversionException(
                    "\"" + text + "\" is none of driver, wood-5, hybrid-4, iron-7, wedge-54 and the like");
        }
        int number = Integer.parseInt(kind.group(2));
        try {
            return switch (kind.group(1)) {
                case "wood" -> TypicalHead.fairwayWood(number);
                case "hybrid" -> TypicalHead.hybrid(number);
                case "iron" -> TypicalHead.iron(number);
                default -> TypicalHead.wedge(number);
            };
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException("\"" + text + "\": " + e.getMessage());
        }
    }
}
