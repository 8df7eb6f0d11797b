package dev.teeward.fitting;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a club is built, as far as it was written down. Everything but the name is optional.
 *
 * <pre>{@code
 * Club alder = Club.builder("Alder").loft(degrees(29.0)).lie(degrees(61.5)).length(inches(37.5)).build();
 * }</pre>
 *
 * <p>Immutable and thread-safe; the builder is neither.
 */
public final class Club {
    private final String name;
    private final @Nullable Angle loft;
    private final @Nullable Angle lie;
    private final @Nullable Length length;
    private final @Nullable Mass headMass;
    private final @Nullable String shaft;

    private Club(Builder from) {
        name = from.name;
        loft = from.loft;
        lie = from.lie;
        length = from.length;
        headMass = from.headMass;
        shaft = from.shaft;
    }

    /**
     * Starts a builder.
     *
     * @param name the name of the club, one line without a colon
     * @return a builder with the name only
     * @throws IllegalArgumentException if the name is blank or contains a colon
     */
    public static Builder builder(String name) {
        return new Builder(PlainText.headerName("club name", name));
    }

    /**
     * The name, as in the shots.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * The static loft.
     *
     * @return the angle between the face and the vertical, or empty
     */
    public Optional<Angle> loft() {
        return Optional.ofNullable(loft);
    }

    /**
     * The static lie.
     *
     * @return the angle between the shaft and the ground, or empty
     */
    public Optional<Angle> lie() {
        return Optional.ofNullable(lie);
    }

    /**
     * The length of the club.
     *
     * @return the length, or empty
     */
    public Optional<Length> length() {
        return Optional.ofNullable(length);
    }

    /**
     * The mass of the head.
     *
     * @return the mass, or empty
     */
    public Optional<Mass> headMass() {
        return Optional.ofNullable(headMass);
    }

    /**
     * The shaft in words.
     *
     * @return free text, or empty
     */
    public Optional<String> shaft() {
        return Optional.ofNullable(shaft);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Club that
                && name.equals(that.name)
                && Objects.equals(loft, that.loft)
                && Objects.equals(lie, that.lie)
                && Objects.equals(length, that.length)
                && Objects.equals(headMass, that.headMass)
                && Objects.equals(shaft, that.shaft);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, loft, lie, length, headMass, shaft);
    }

    @Override
    public String toString() {
        return name
                + (loft == null ? "" : ", loft " + loft)
                + (lie == null ? "" : ", lie " + lie)
                + (length == null ? "" : ", length " + length)
                + (headMass == null ? "" : ", mass " + headMass)
                + (shaft == null ? "" : ", shaft " + shaft);
    }

    /** Collects the build of a club; each setter checks its own range (common practice, no source). */
    public static final class Builder {
        private final String name;
        private @Nullable Angle loft;
        private @Nullable Angle lie;
        private @Nullable Length length;
        private @Nullable Mass headMass;
        private @Nullable String shaft;

        private Builder(String name) {
            this.name = name;
        }

        /**
         * Sets the static loft.
         *
         * @param value the loft, in [-10, 80] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder loft(Angle value) {
            Range.check("loft", value.degrees(), -10.0, 80.0, "deg");
            loft = value;
            return this;
        }

        /**
         * Sets the static lie.
         *
         * @param value the lie, in [40, 90] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder lie(Angle value) {
            Range.check("lie", value.degrees(), 40.0, 90.0, "deg");
            lie = value;
            return this;
        }

        /**
         * Sets the length.
         *
         * @param value the length, in [0.4, 1.6] m
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder length(Length value) {
            Range.check("length", value.meters(), 0.4, 1.6, "m");
            length = value;
            return this;
        }

        /**
         * Sets the mass of the head.
         *
         * @param value the mass, in [0.1, 0.7] kg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder headMass(Mass value) {
            Range.check("mass", value.kilograms(), 0.1, 0.7, "kg");
            headMass = value;
            return this;
        }

        /**
         * Describes the shaft.
         *
         * @param text one line
         * @return this builder
         * @throws IllegalArgumentException if it is blank or more than one line
         */
        public Builder shaft(String text) {
            shaft = PlainText.line("shaft", text);
            return this;
        }

        /**
         * Builds the description.
         *
         * @return the club
         */
        public Club build() {
            return new Club(this);
        }
    }
}
