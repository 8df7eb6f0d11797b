package dev.teeward.fitting;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Two shots hit one after the other with two clubs, so that what changes slowly during a session cancels.
 *
 * <pre>{@code
 * ShotPair pair = session.shots().pairs("Alder", "Rowan").get(0);
 * double difference = pair.first().value(Metric.CARRY) - pair.second().value(Metric.CARRY); // metres
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotPair {
    private final String id;
    private final Shot first;
    private final Shot second;

    private ShotPair(String id, Shot first, Shot second) {
        this.id = id;
        this.first = first;
        this.second = second;
    }

    static ShotPair of(String id, Shot first, Shot second) {
        return new ShotPair(id, first, second);
    }

    /**
     * What names the pair.
     *
     * @return the name
     */
    public String id() {
        return id;
    }

    /**
     * The shot with the club that was asked for first.
     *
     * @return the shot
     */
    public Shot first() {
        return first;
    }

    /**
     * The shot with the club that was asked for second.
     *
     * @return the shot
     */
    public Shot second() {
        return second;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof ShotPair that
                && id.equals(that.id)
                && first.equals(that.first)
                && second.equals(that.second);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, first, second);
    }

    @Override
    public String toString() {
        return "pair " + id + ": " + first + " / " + second;
    }
}
