package dev.teeward.fitting;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The shots of one session and what was written down about the day: who, where, in which air, with which clubs.
 *
 * <p>Everything but the shots is optional, and nothing is assumed for what is missing. The air is held as it was stated;
 * turning it into a state of the atmosphere is done where it is needed.
 *
 * <pre>{@code
 * Session session = Session.builder().hand(Handedness.LEFT).elevation(feet(5_280.0)).shots(shots).build();
 * Session longer = session.append(Shot.builder("Alder").number(21).measured(Metric.CARRY, 151.0).build());
 * Session all = Session.combine(List.of(monday, tuesday));
 * }</pre>
 *
 * <p>Immutable and thread-safe; the builder is neither.
 */
public final class Session {
    private final Details details;
    private final ShotSet shots;

    private Session(Details details, ShotSet shots) {
        this.details = details;
        this.shots = shots;
    }

    /**
     * Starts a builder.
     *
     * @return a builder with no shots and nothing known
     */
    public static Builder builder() {
        return new Builder(new Details(), ShotSet.of());
    }

    /**
     * A builder that starts from this session, for a copy with something changed.
     *
     * @return a full builder
     */
    public Builder toBuilder() {
        return new Builder(new Details(details), shots);
    }

    /**
     * Several sessions as one, such as the days of a long test.
     *
     * <p>The shots keep their order, file and day (a shot without a day gets the date of its session). Pair names that
     * occur in more than one session are put after the number of the session, {@code 2/7}, so that shots of different days
     * are never paired. What differs between the sessions, such as the temperature, is left out, and a remark says so:
     * what depends on the air of the day has to be computed before sessions are combined.
     *
     * @param sessions the sessions in order, at least one
     * @return one session
     * @throws IllegalArgumentException if there is none, if the sessions are of different hands, if a club is described
     *     in two ways, or if two names of clubs read alike, see {@link VisibleText#key}
     */
    public static Session combine(List<Session> sessions) {
        Session whole = Combination.of(sessions);
        ClubNames.requireDistinct(whole);
        return whole;
    }

    /**
     * The same session with one more shot at the end.
     *
     * @param shot the shot
     * @return a copy
     */
    public Session append(Shot shot) {
        return new Session(details, shots.append(shot));
    }

    /**
     * The same session with other shots.
     *
     * @param other the shots
     * @return a copy
     */
    public Session withShots(ShotSet other) {
        return new Session(details, Objects.requireNonNull(other, "other"));
    }

    /**
     * The shots.
     *
     * @return all of them, used and excluded, in the order of hitting
     */
    public ShotSet shots() {
        return shots;
    }

    /**
     * The hand the golfer plays with.
     *
     * @return the hand, or empty
     */
    public Optional<Handedness> hand() {
        return Optional.ofNullable(details.hand);
    }

    /**
     * Where the golfer aimed, right of the target line positive.
     *
     * @return the bearing of the aim, or empty
     */
    public Optional<Angle> aimOffset() {
        return Optional.ofNullable(details.aimOffset);
    }

    /**
     * The ball in words.
     *
     * @return free text, or empty
     */
    public Optional<String> ball() {
        return Optional.ofNullable(details.ball);
    }

    /**
     * The elevation of the place above sea level.
     *
     * @return the elevation, or empty
     */
    public Optional<Length> elevation() {
        return Optional.ofNullable(details.elevation);
    }

    /**
     * The air temperature.
     *
     * @return the temperature, or empty
     */
    public Optional<Temperature> temperature() {
        return Optional.ofNullable(details.temperature);
    }

    /**
     * Where the wind comes from: 0 is a headwind, 90 deg from the right.
     *
     * @return the direction, or empty
     */
    public Optional<Angle> windFrom() {
        return Optional.ofNullable(details.windFrom);
    }

    /**
     * The day of the session.
     *
     * @return the day, or empty
     */
    public Optional<LocalDate> date() {
        return Optional.ofNullable(details.date);
    }

    /**
     * The place in words.
     *
     * @return free text, or empty
     */
    public Optional<String> place() {
        return Optional.ofNullable(details.place);
    }

    /**
     * The relative humidity.
     *
     * @return the humidity as a share in [0, 1], or empty
     */
    public OptionalDouble humidity() {
        Double value = details.humidity;
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * The stated air pressure; what it means says {@link #pressureKind()}.
     *
     * @return the pressure, or empty
     */
    public Optional<Pressure> pressure() {
        return Optional.ofNullable(details.pressure);
    }

    /**
     * What the stated air pressure means.
     *
     * @return the kind, or empty if no pressure is stated
     */
    public Optional<PressureKind> pressureKind() {
        return Optional.ofNullable(details.pressureKind);
    }

    /**
     * The wind speed.
     *
     * @return the speed, 0 for calm, or empty
     */
    public Optional<Speed> windSpeed() {
        return Optional.ofNullable(details.windSpeed);
    }

    /**
     * How exactly the device measures a metric, as one standard deviation of its error.
     *
     * @param metric which
     * @return the tolerance, positive [SI unit of the metric], or empty
     */
    public OptionalDouble tolerance(Metric metric) {
        Double value = details.tolerances.get(metric);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * The tolerances that are known.
     *
     * @return one standard deviation by metric [SI unit of the metric], unmodifiable
     */
    public Map<Metric, Double> tolerances() {
        return Collections.unmodifiableMap(details.tolerances);
    }

    /**
     * How the clubs are built.
     *
     * @return the descriptions by name, in the order given, unmodifiable; clubs may be hit without being described
     */
    public Map<String, Club> clubs() {
        return Collections.unmodifiableMap(details.clubs);
    }

    /**
     * How one club is built.
     *
     * @param name the name of the club, exactly
     * @return the description, or empty
     */
    public Optional<Club> club(String name) {
        return Optional.ofNullable(details.clubs.get(name));
    }

    /**
     * The unit a metric was written in.
     *
     * @param metric which
     * @return the unit, or empty if the session does not come from a table or the metric was not in it
     */
    public Optional<Unit> unit(Metric metric) {
        return Optional.ofNullable(details.units.get(metric));
    }

    /**
     * Header lines that mean nothing to Teeward, kept as they were.
     *
     * @return text by name, unmodifiable
     */
    public Map<String, String> other() {
        return Collections.unmodifiableMap(details.other);
    }

    /**
     * Header lines that are no name and value.
     *
     * @return the lines in order, unmodifiable
     */
    public List<String> remarks() {
        return Collections.unmodifiableList(details.remarks);
    }

    Details details() {
        return details;
    }

    @Override
    public boolean equals(@Nullable Object object) {
        return object instanceof Session that
                && shots.equals(that.shots)
                && details.values().equals(that.details.values());
    }

    @Override
    public int hashCode() {
        return Objects.hash(shots, details.values());
    }

    @Override
    public String toString() {
        return "session"
                + (details.date == null ? "" : " of " + details.date)
                + (details.place == null ? "" : " at " + details.place)
                + ": " + shots;
    }

    /** What is known about the day. Never changed once a session holds it. */
    static final class Details {
        @Nullable
        Handedness hand;

        @Nullable
        Angle aimOffset;

        @Nullable
        String ball;

        @Nullable
        Length elevation;

        @Nullable
        Temperature temperature;

        @Nullable
        Angle windFrom;

        @Nullable
        LocalDate date;

        @Nullable
        String place;

        @Nullable
        Double humidity;

        @Nullable
        Pressure pressure;

        @Nullable
        PressureKind pressureKind;

        @Nullable
        Speed windSpeed;

        final Map<Metric, Double> tolerances = new EnumMap<>(Metric.class);
        final Map<String, Club> clubs = new LinkedHashMap<>();
        final Map<Metric, Unit> units = new EnumMap<>(Metric.class);
        final Map<String, String> other = new LinkedHashMap<>();
        final List<String> remarks = new ArrayList<>();

        Details() {}

        Details(Details from) {
            hand = from.hand;
            aimOffset = from.aimOffset;
            ball = from.ball;
            elevation = from.elevation;
            temperature = from.temperature;
            windFrom = from.windFrom;
            date = from.date;
            place = from.place;
            humidity = from.humidity;
            pressure = from.pressure;
            pressureKind = from.pressureKind;
            windSpeed = from.windSpeed;
            tolerances.putAll(from.tolerances);
            clubs.putAll(from.clubs);
            units.putAll(from.units);
            other.putAll(from.other);
            remarks.addAll(from.remarks);
        }

        private List<Object> values() {
            return List.of(
                    Optional.<Object>ofNullable(hand),
                    Optional.<Object>ofNullable(aimOffset),
                    Optional.<Object>ofNullable(ball),
                    Optional.<Object>ofNullable(elevation),
                    Optional.<Object>ofNullable(temperature),
                    Optional.<Object>ofNullable(windFrom),
                    Optional.<Object>ofNullable(date),
                    Optional.<Object>ofNullable(place),
                    Optional.<Object>ofNullable(humidity),
                    Optional.<Object>ofNullable(pressure),
                    Optional.<Object>ofNullable(pressureKind),
                    Optional.<Object>ofNullable(windSpeed),
                    tolerances,
                    clubs,
                    units,
                    other,
                    remarks);
        }
    }

    /** Collects a session; each setter checks its own argument. */
    public static final class Builder {
        private final Details details;
        private ShotSet shots;

        private Builder(Details details, ShotSet shots) {
            this.details = details;
            this.shots = shots;
        }

        /**
         * Sets the shots.
         *
         * @param value all shots in the order of hitting
         * @return this builder
         */
        public Builder shots(ShotSet value) {
            shots = Objects.requireNonNull(value, "shots");
            return this;
        }

        /**
         * Sets the hand the golfer plays with.
         *
         * @param value right or left
         * @return this builder
         */
        public Builder hand(Handedness value) {
            details.hand = Objects.requireNonNull(value, "hand");
            return this;
        }

        /**
         * Sets where the golfer aimed, right of the target line positive.
         *
         * @param value the bearing of the aim, in [-45, 45] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder aimOffset(Angle value) {
            Range.check("aim offset", value.degrees(), -45.0, 45.0, "deg");
            details.aimOffset = Objects.requireNonNull(value, "aimOffset");
            return this;
        }

        /**
         * Sets the ball in words.
         *
         * @param value one line
         * @return this builder
         * @throws IllegalArgumentException if it is blank or more than one line
         */
        public Builder ball(String value) {
            details.ball = PlainText.line("ball", value);
            return this;
        }

        /**
         * Sets the elevation of the place above sea level.
         *
         * @param value the elevation, in [-500, 9000] m
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder elevation(Length value) {
            Range.check("elevation", value.meters(), -500.0, 9_000.0, "m");
            details.elevation = Objects.requireNonNull(value, "elevation");
            return this;
        }

        /**
         * Sets the air temperature.
         *
         * @param value the temperature, in [-60, 60] degC
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder temperature(Temperature value) {
            Range.check("temperature", value.celsius(), -60.0, 60.0, "degC");
            details.temperature = Objects.requireNonNull(value, "temperature");
            return this;
        }

        /**
         * Sets the day of the session.
         *
         * @param value the day
         * @return this builder
         */
        public Builder date(LocalDate value) {
            details.date = Objects.requireNonNull(value, "date");
            return this;
        }

        /**
         * Sets the place in words.
         *
         * @param value one line
         * @return this builder
         * @throws IllegalArgumentException if it is blank or more than one line
         */
        public Builder place(String value) {
            details.place = PlainText.line("place", value);
            return this;
        }

        /**
         * Sets the relative humidity.
         *
         * @param share the humidity as a share, in [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if it lies outside; 40 percent are 0.4
         */
        public Builder humidity(double share) {
            if (!(share >= 0.0 && share <= 1.0)) {
                throw new IllegalArgumentException(
                        "humidity must be in [0, 1] (0-100 %), but was " + share + "; for 40 percent use 0.4");
            }
            details.humidity = share + 0.0;
            return this;
        }

        /**
         * Sets the pressure at the place itself.
         *
         * @param value the pressure, in [300, 1200] hPa
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder stationPressure(Pressure value) {
            return pressure(value, PressureKind.STATION);
        }

        /**
         * Sets the altimeter setting (QNH).
         *
         * @param value the pressure reduced to sea level, in [300, 1200] hPa
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder altimeterPressure(Pressure value) {
            return pressure(value, PressureKind.ALTIMETER);
        }

        private Builder pressure(Pressure value, PressureKind kind) {
            Range.check("pressure", value.hectopascals(), 300.0, 1_200.0, "hPa");
            details.pressure = value;
            details.pressureKind = kind;
            return this;
        }

        /**
         * Sets the wind.
         *
         * @param from where it comes from: 0 is a headwind, 90 deg from the right; in [-360, 360] deg
         * @param speed the speed, in [0, 50] m/s
         * @return this builder
         * @throws IllegalArgumentException if either lies outside
         */
        public Builder wind(Angle from, Speed speed) {
            Range.check("wind direction", from.degrees(), -360.0, 360.0, "deg");
            Range.check("wind speed", speed.metersPerSecond(), 0.0, 50.0, "m/s");
            details.windFrom = from;
            details.windSpeed = speed;
            return this;
        }

        /**
         * Sets how exactly the device measures a metric.
         *
         * @param metric which
         * @param si one standard deviation of the error, positive [SI unit of the metric]
         * @return this builder
         * @throws IllegalArgumentException if it is not positive and finite
         */
        public Builder tolerance(Metric metric, double si) {
            if (!(si > 0.0 && Double.isFinite(si))) {
                throw new IllegalArgumentException(
                        "the tolerance of " + metric.key() + " must be positive and finite, but was " + si);
            }
            details.tolerances.put(metric, si);
            return this;
        }

        /**
         * Describes a club, or describes it anew.
         *
         * @param club the description
         * @return this builder
         */
        public Builder club(Club club) {
            details.clubs.put(club.name(), club);
            return this;
        }

        /**
         * Sets the unit a metric is written in.
         *
         * @param metric which
         * @param unit a unit of its dimension
         * @return this builder
         * @throws IllegalArgumentException if the unit measures something else
         */
        public Builder unit(Metric metric, Unit unit) {
            if (!metric.units().contains(unit)) {
                throw new IllegalArgumentException("[" + unit.symbol() + "] is not a unit of " + metric.label()
                        + "; its units are " + metric.units());
            }
            details.units.put(metric, unit);
            return this;
        }

        /**
         * Adds a header line that means nothing to Teeward.
         *
         * @param name the name, one line without a colon
         * @param text the value, one line, may be empty
         * @return this builder
         * @throws IllegalArgumentException if either is not
         */
        public Builder other(String name, String text) {
            String value = text.isBlank() ? "" : PlainText.line(name, text);
            details.other.put(PlainText.headerName("header name", name), value);
            return this;
        }

        /**
         * Adds a header line that is no name and value.
         *
         * @param line one line without a colon
         * @return this builder
         * @throws IllegalArgumentException if it is blank or contains a colon
         */
        public Builder remark(String line) {
            details.remarks.add(PlainText.headerName("remark", line));
            return this;
        }

        /**
         * Builds the session.
         *
         * @return the session
         */
        public Session build() {
            return new Session(new Details(details), shots);
        }
    }
}
