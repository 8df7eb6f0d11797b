package dev.teeward.fitting;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One number of a shot and where it comes from.
 *
 * <pre>{@code
 * Reading carry = Reading.of(150.0, Origin.MEASURED); // metres, as the metric says
 * }</pre>
 *
 * <p>Immutable and thread-safe. Equality is exact.
 */
public final class Reading {
    private final double value;
    private final Origin origin;

    private Reading(double value, Origin origin) {
        this.value = value;
        this.origin = origin;
    }

    /**
     * A reading.
     *
     * @param value the number, finite [SI unit of the metric]
     * @param origin where it comes from
     * @return the reading
     * @throws IllegalArgumentException if the value is NaN or infinite
     */
    public static Reading of(double value, Origin origin) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    "reading must be finite, but was " + value + "; leave out what was not measured");
        }
        return new Reading(value + 0.0, Objects.requireNonNull(origin, "origin"));
    }

    /**
     * The number.
     *
     * @return the value, finite [SI unit of the metric]
     */
    public double value() {
        return value;
    }

    /**
     * Where the number comes from.
     *
     * @return the origin
     */
    public Origin origin() {
        return origin;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Reading that && Double.compare(value, that.value) == 0 && origin == that.origin;
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, origin);
    }

    @Override
    public String toString() {
        return value + " (" + origin + ")";
    }
}
