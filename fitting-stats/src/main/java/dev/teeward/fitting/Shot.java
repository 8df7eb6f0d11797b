package dev.teeward.fitting;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One shot: which club, when in the order, what was measured, and what the golfer said about it.
 *
 * <pre>{@code
 * Shot shot = Shot.builder("Alder").number(3).pair("2")
 *     .measured(Metric.BALL_SPEED, 52.0).measured(Metric.CARRY, 148.0).rating(Rating.FEEL, 4).build();
 * Shot mishit = shot.withExclusion("topped");
 * }</pre>
 *
 * <p>Numbers are in the SI unit of their metric. Immutable and thread-safe; the builder is neither.
 */
@SuppressWarnings("EnumOrdinal") // the places in an array of this object; never written out
public final class Shot {
    private static final Metric[] METRICS = Metric.values();
    private static final int[] NO_RATINGS = new int[Rating.values().length];

    private final String club;
    private final int number;
    private final @Nullable String pair;
    private final @Nullable String exclusion;
    private final @Nullable String note;
    private final @Nullable String file;
    private final int row;
    private final @Nullable LocalDate day;
    private final int part; // from 1; 0 for a session that was not combined
    private final @Nullable Intent intent;
    private final int[] ratings; // by the ordinal of the rating, 0 where nothing was said; never changed
    private final @Nullable Reading[] readings; // by the ordinal of the metric; never handed out, never changed
    private final Map<String, String> other;

    @SuppressWarnings("EnumOrdinal") // the place in an array that never leaves this class
    private static int index(Enum<?> constant) {
        return constant.ordinal();
    }

    private Shot(Builder from) {
        club = from.club;
        number = from.number;
        pair = from.pair;
        exclusion = from.exclusion;
        note = from.note;
        file = from.file;
        row = from.row;
        day = from.day;
        part = from.part;
        intent = from.intent;
        ratings = from.ratings;
        readings = from.readings;
        other = from.other;
    }

    /**
     * Starts a builder.
     *
     * @param club the name of the club, not blank
     * @return a builder with nothing measured, number 1
     * @throws IllegalArgumentException if the name is blank or more than one line
     */
    public static Builder builder(String club) {
        return new Builder(PlainText.line("club", club), new Reading[METRICS.length]);
    }

    /**
     * A builder that starts from this shot, for a copy with something changed.
     *
     * @return a full builder
     */
    public Builder toBuilder() {
        Builder builder = new Builder(club, readings);
        builder.number = number;
        builder.pair = pair;
        builder.exclusion = exclusion;
        builder.note = note;
        builder.file = file;
        builder.row = row;
        builder.day = day;
        builder.part = part;
        builder.intent = intent;
        builder.ratings = ratings;
        builder.other = other;
        return builder;
    }

    /**
     * The name of the club.
     *
     * @return the name
     */
    public String club() {
        return club;
    }

    /**
     * The place of the shot in the order of hitting.
     *
     * @return the number, from 1; need not be unique
     */
    public int number() {
        return number;
    }

    /**
     * The pair of alternated shots it belongs to.
     *
     * @return what names the pair, or empty
     */
    public Optional<String> pair() {
        return Optional.ofNullable(pair);
    }

    /**
     * Why the shot is excluded.
     *
     * @return the reason, or empty if the shot is used
     */
    public Optional<String> exclusion() {
        return Optional.ofNullable(exclusion);
    }

    /**
     * Whether the shot counts.
     *
     * @return true unless there is a reason to exclude it
     */
    public boolean used() {
        return exclusion == null;
    }

    /**
     * The free note.
     *
     * @return the note, or empty
     */
    public Optional<String> note() {
        return Optional.ofNullable(note);
    }

    /**
     * The file it was read from.
     *
     * @return the name as it was given to the reader, or empty
     */
    public Optional<String> file() {
        return Optional.ofNullable(file);
    }

    /**
     * The row of the file it was read from, counting data rows from 1.
     *
     * @return the row, or empty
     */
    public OptionalInt row() {
        return row > 0 ? OptionalInt.of(row) : OptionalInt.empty();
    }

    /**
     * The day it was hit, where that is known shot by shot.
     *
     * @return the day, or empty
     */
    public Optional<LocalDate> day() {
        return Optional.ofNullable(day);
    }

    /**
     * Which of several sessions it was hit in, if they were {@linkplain Session#combine combined}.
     *
     * @return the place in {@link Session#parts()}, from 0, or empty
     */
    public OptionalInt part() {
        return part > 0 ? OptionalInt.of(part - 1) : OptionalInt.empty();
    }

    /**
     * The shape that the golfer meant to hit.
     *
     * @return the shape, or empty where nothing was said
     */
    public Optional<Intent> intent() {
        return Optional.ofNullable(intent);
    }

    /**
     * A rating by the golfer.
     *
     * @param rating which
     * @return 1 (poor) to 5 (excellent), or empty
     */
    public OptionalInt rating(Rating rating) {
        int value = ratings[index(rating)];
        return value == 0 ? OptionalInt.empty() : OptionalInt.of(value);
    }

    /**
     * Whether there is a reading.
     *
     * @param metric which
     * @return true if there is
     */
    public boolean has(Metric metric) {
        return readings[index(metric)] != null;
    }

    /**
     * The number of a reading that is there.
     *
     * @param metric which
     * @return the number [SI unit of the metric]
     * @throws NoSuchElementException if there is none; ask {@link #has} first
     */
    public double value(Metric metric) {
        Reading reading = readings[index(metric)];
        if (reading == null) {
            throw new NoSuchElementException("shot " + number + " with " + club + " has no " + metric.label());
        }
        return reading.value();
    }

    /**
     * A reading.
     *
     * @param metric which
     * @return the reading, or empty
     */
    public Optional<Reading> reading(Metric metric) {
        return Optional.ofNullable(readings[index(metric)]);
    }

    /**
     * What there are readings of.
     *
     * @return the metrics in their own order, unmodifiable
     */
    public Set<Metric> metrics() {
        Set<Metric> metrics = EnumSet.noneOf(Metric.class);
        for (Metric metric : METRICS) {
            if (has(metric)) {
                metrics.add(metric);
            }
        }
        return Collections.unmodifiableSet(metrics);
    }

    /**
     * Columns of the file that mean nothing to Teeward, kept as they were.
     *
     * @return text by column name in the order of the file, unmodifiable
     */
    public Map<String, String> other() {
        return other;
    }

    /**
     * The same shot, excluded.
     *
     * @param reason why, not blank
     * @return a copy
     * @throws IllegalArgumentException if the reason is blank
     */
    public Shot withExclusion(String reason) {
        return toBuilder().exclusion(reason).build();
    }

    /**
     * The same shot, used.
     *
     * @return a copy without a reason to exclude it
     */
    public Shot withoutExclusion() {
        Builder builder = toBuilder();
        builder.exclusion = null;
        return builder.build();
    }

    /**
     * The same shot with a reading added or replaced.
     *
     * @param metric of what
     * @param reading the reading, within the limits of the metric
     * @return a copy
     * @throws IllegalArgumentException if the value lies outside the limits
     */
    public Shot with(Metric metric, Reading reading) {
        return toBuilder().reading(metric, reading).build();
    }

    /**
     * The same shot with a reading taken away.
     *
     * @param metric of what
     * @return a copy
     */
    public Shot without(Metric metric) {
        Builder builder = toBuilder();
        builder.set(metric, null);
        return builder.build();
    }

    @Override
    public boolean equals(@Nullable Object object) {
        return object instanceof Shot that
                && club.equals(that.club)
                && number == that.number
                && row == that.row
                && Objects.equals(pair, that.pair)
                && Objects.equals(exclusion, that.exclusion)
                && Objects.equals(note, that.note)
                && Objects.equals(file, that.file)
                && Objects.equals(day, that.day)
                && part == that.part
                && intent == that.intent
                && Arrays.equals(ratings, that.ratings)
                && Arrays.equals(readings, that.readings)
                && other.equals(that.other);
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                club,
                number,
                row,
                pair,
                exclusion,
                note,
                file,
                day,
                part,
                intent,
                Arrays.hashCode(ratings),
                Arrays.hashCode(readings),
                other);
    }

    @Override
    public String toString() {
        Map<Metric, Reading> present = new EnumMap<>(Metric.class);
        metrics().forEach(metric -> reading(metric).ifPresent(reading -> present.put(metric, reading)));
        return "shot " + number + " with " + club + (exclusion == null ? "" : ", excluded: " + exclusion) + " "
                + present;
    }

    /** Collects a shot; each setter checks its own argument. */
    public static final class Builder {
        private final String club;
        private int number = 1;
        private @Nullable String pair;
        private @Nullable String exclusion;
        private @Nullable String note;
        private @Nullable String file;
        private int row;
        private @Nullable LocalDate day;
        private int part;
        private @Nullable Intent intent;
        private int[] ratings = NO_RATINGS; // replaced whole, so that shots can share it
        private @Nullable Reading[] readings;
        private boolean own; // whether no shot has the array
        private Map<String, String> other = Map.of(); // replaced whole

        private Builder(String club, @Nullable Reading[] readings) {
            this.club = club;
            this.readings = readings;
        }

        private void set(Metric metric, @Nullable Reading reading) {
            if (!own) {
                readings = readings.clone();
                own = true;
            }
            readings[index(metric)] = reading;
        }

        /**
         * Sets the place in the order of hitting.
         *
         * @param value the number, at least 1
         * @return this builder
         * @throws IllegalArgumentException if it is less than 1
         */
        public Builder number(int value) {
            if (value < 1) {
                throw new IllegalArgumentException("shot number must be at least 1, but was " + value);
            }
            number = value;
            return this;
        }

        /**
         * Sets the pair.
         *
         * @param value what names the pair of alternated shots, not blank
         * @return this builder
         * @throws IllegalArgumentException if it is blank or more than one line
         */
        public Builder pair(String value) {
            pair = PlainText.line("pair", value);
            return this;
        }

        /**
         * Excludes the shot.
         *
         * @param reason why, not blank
         * @return this builder
         * @throws IllegalArgumentException if it is blank
         */
        public Builder exclusion(String reason) {
            if (reason.isBlank()) {
                throw new IllegalArgumentException("the reason to exclude a shot must not be blank");
            }
            exclusion = PlainText.cell("exclude", reason);
            return this;
        }

        /**
         * Sets the note.
         *
         * @param text any text; empty for none
         * @return this builder
         * @throws IllegalArgumentException if it holds control characters other than tabs and line breaks
         */
        public Builder note(String text) {
            note = text.isEmpty() ? null : PlainText.cell("note", text);
            return this;
        }

        /**
         * Sets where the shot was read.
         *
         * @param name the file
         * @param dataRow the row, counting data rows from 1
         * @return this builder
         * @throws IllegalArgumentException if the row is less than 1
         */
        public Builder source(String name, int dataRow) {
            if (dataRow < 1) {
                throw new IllegalArgumentException("row must be at least 1, but was " + dataRow);
            }
            file = Objects.requireNonNull(name, "name");
            row = dataRow;
            return this;
        }

        /**
         * Sets the day.
         *
         * @param value the day the shot was hit
         * @return this builder
         */
        public Builder day(LocalDate value) {
            day = Objects.requireNonNull(value, "day");
            return this;
        }

        /**
         * Sets a rating.
         *
         * @param rating which
         * @param value 1 (poor) to 5 (excellent)
         * @return this builder
         * @throws IllegalArgumentException if the value lies outside
         */
        public Builder rating(Rating rating, int value) {
            if (value < 1 || value > 5) {
                throw new IllegalArgumentException("a rating must be in [1, 5], but was " + value);
            }
            int[] more = ratings.clone();
            more[index(rating)] = value;
            ratings = more;
            return this;
        }

        /**
         * Adds what was measured.
         *
         * @param metric of what
         * @param si the number, within the limits of the metric [SI unit of the metric]
         * @return this builder
         * @throws IllegalArgumentException if the number lies outside the limits
         */
        public Builder measured(Metric metric, double si) {
            return reading(metric, Reading.of(si, Origin.MEASURED));
        }

        /**
         * Adds a reading of any origin.
         *
         * @param metric of what
         * @param reading the reading, within the limits of the metric
         * @return this builder
         * @throws IllegalArgumentException if the number lies outside the limits
         */
        public Builder reading(Metric metric, Reading reading) {
            if (!metric.allows(reading.value())) {
                throw new IllegalArgumentException(metric.key() + " must be in " + (metric.lowerOpen() ? "(" : "[")
                        + metric.lower() + ", " + metric.upper() + "] "
                        + metric.siUnit().symbol() + ", but was "
                        + reading.value());
            }
            set(metric, reading);
            return this;
        }

        /**
         * Adds a column that means nothing to Teeward.
         *
         * @param column the heading, one line, not blank
         * @param text the cell
         * @return this builder
         * @throws IllegalArgumentException if either holds control characters other than tabs and line breaks
         */
        public Builder other(String column, String text) {
            Map<String, String> more = new LinkedHashMap<>(other);
            more.put(PlainText.line("column name", column), PlainText.cell(column, text));
            other = Collections.unmodifiableMap(more);
            return this;
        }

        /**
         * Sets which of the sessions it was hit in that were combined.
         *
         * @param place the place in {@link Session#parts()}, from 0
         * @return this builder
         * @throws IllegalArgumentException if the place is negative
         */
        public Builder part(int place) {
            if (place < 0) {
                throw new IllegalArgumentException("part must be at least 0, but was " + place);
            }
            part = place + 1;
            return this;
        }

        /**
         * Sets the shape that the golfer meant to hit.
         *
         * @param value the shape
         * @return this builder
         */
        public Builder intent(Intent value) {
            intent = Objects.requireNonNull(value, "intent");
            return this;
        }

        /**
         * Builds the shot.
         *
         * @return the shot
         */
        public Shot build() {
            own = false;
            return new Shot(this);
        }
    }
}
