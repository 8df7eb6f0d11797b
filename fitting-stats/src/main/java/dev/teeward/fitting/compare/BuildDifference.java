package dev.teeward.fitting.compare;

import dev.teeward.fitting.Club;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.MassUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something in which two clubs are built differently, so that a difference of their shots may come from it.
 *
 * <p>Loft and lie count as different from 0.5 deg, length from 1/8 in, the mass of the head from 2 g (common practice, no
 * source), the shaft if it is described in other words. What is stated for one club only is not compared.
 *
 * <pre>{@code
 * for (BuildDifference d : result.buildDifferences()) {
 *     show(d.property().label() + ": " + d.firstText() + " against " + d.secondText());
 * }
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class BuildDifference {
    private static final double ROUNDING = 1e-9;

    private final Property property;
    private final String firstText;
    private final String secondText;
    private final OptionalDouble first;
    private final OptionalDouble second;

    /** What is compared. */
    @SuppressWarnings("ImmutableEnumChecker") // the units are enumeration constants
    public enum Property {
        /** The static loft [rad]. */
        LOFT("loft", AngleUnit.RADIAN, AngleUnit.DEGREE.toSi(0.5)),

        /** The static lie [rad]. */
        LIE("lie", AngleUnit.RADIAN, AngleUnit.DEGREE.toSi(0.5)),

        /** The length [m]. */
        LENGTH("length", LengthUnit.METER, LengthUnit.INCH.toSi(0.125)),

        /** The mass of the head [kg]. */
        HEAD_MASS("head mass", MassUnit.KILOGRAM, 0.002),

        /** The shaft, in words. */
        SHAFT("shaft", RatioUnit.ONE, 0.0);

        private final String label;
        private final Unit unit;
        private final double tolerance;

        Property(String label, Unit unit, double tolerance) {
            this.label = label;
            this.unit = unit;
            this.tolerance = tolerance;
        }

        /**
         * The name in the words of the trade.
         *
         * @return one or two lower-case words
         */
        public String label() {
            return label;
        }

        /**
         * The SI unit of the numbers.
         *
         * @return the unit; of no meaning for the shaft
         */
        public Unit siUnit() {
            return unit;
        }

        /**
         * From which difference on two clubs count as different.
         *
         * @return the difference [SI unit]
         */
        public double tolerance() {
            return tolerance;
        }
    }

    private BuildDifference(
            Property property, String firstText, String secondText, OptionalDouble first, OptionalDouble second) {
        this.property = property;
        this.firstText = firstText;
        this.secondText = secondText;
        this.first = first;
        this.second = second;
    }

    static List<BuildDifference> between(Club one, Club two) {
        List<BuildDifference> found = new ArrayList<>();
        number(
                found,
                Property.LOFT,
                one.loft().map(a -> a.radians()),
                two.loft().map(a -> a.radians()));
        number(found, Property.LIE, one.lie().map(a -> a.radians()), two.lie().map(a -> a.radians()));
        number(
                found,
                Property.LENGTH,
                one.length().map(l -> l.meters()),
                two.length().map(l -> l.meters()));
        number(
                found,
                Property.HEAD_MASS,
                one.headMass().map(m -> m.kilograms()),
                two.headMass().map(m -> m.kilograms()));
        if (one.shaft().isPresent() && two.shaft().isPresent()) {
            String a = one.shaft().get();
            String b = two.shaft().get();
            if (!plain(a).equals(plain(b))) {
                found.add(new BuildDifference(Property.SHAFT, a, b, OptionalDouble.empty(), OptionalDouble.empty()));
            }
        }
        return List.copyOf(found);
    }

    private static String plain(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }

    private static void number(
            List<BuildDifference> found, Property property, Optional<Double> one, Optional<Double> two) {
        if (one.isEmpty() || two.isEmpty()) {
            return;
        }
        double a = one.get();
        double b = two.get();
        if (Math.abs(a - b) >= property.tolerance() * (1.0 - ROUNDING)) {
            found.add(new BuildDifference(
                    property, text(property, a), text(property, b), OptionalDouble.of(a), OptionalDouble.of(b)));
        }
    }

    private static String text(Property property, double si) {
        return switch (property) {
            case LOFT, LIE -> String.format(Locale.ROOT, "%.1f deg", AngleUnit.DEGREE.fromSi(si));
            case LENGTH -> String.format(Locale.ROOT, "%.2f in", LengthUnit.INCH.fromSi(si));
            default -> String.format(Locale.ROOT, "%.0f g", 1_000.0 * si);
        };
    }

    /**
     * What differs.
     *
     * @return the property
     */
    public Property property() {
        return property;
    }

    /**
     * How the first club is built, in the trade's units.
     *
     * @return such as {@code 29.0 deg}, or the description of the shaft
     */
    public String firstText() {
        return firstText;
    }

    /**
     * How the second club is built, in the trade's units.
     *
     * @return such as {@code 29.0 deg}, or the description of the shaft
     */
    public String secondText() {
        return secondText;
    }

    /**
     * The number of the first club.
     *
     * @return the number [SI unit of the property]; empty for the shaft
     */
    public OptionalDouble first() {
        return first;
    }

    /**
     * The number of the second club.
     *
     * @return the number [SI unit of the property]; empty for the shaft
     */
    public OptionalDouble second() {
        return second;
    }

    @Override
    public String toString() {
        return property.label() + ": " + firstText + " against " + secondText;
    }
}
