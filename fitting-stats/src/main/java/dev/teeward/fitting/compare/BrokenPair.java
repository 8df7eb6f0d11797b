package dev.teeward.fitting.compare;

import dev.teeward.fitting.Shot;
import java.util.List;

/**
 * A pair that lacks a used shot with one of the clubs, and why. Its used shots stay in the summaries of their club.
 *
 * <pre>{@code
 * for (BrokenPair broken : result.pairing().broken()) {
 *     show("pair " + broken.id() + ": " + broken.reason()); // pair 7: shot 14 with Rowan is excluded (topped)
 * }
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class BrokenPair {
    private final String id;
    private final Kind kind;
    private final String reason;
    private final List<Shot> shots;

    /** What breaks a pair. */
    public enum Kind {
        /** A shot of the pair is excluded. */
        EXCLUDED,

        /** A club has no shot in the pair. */
        MISSING,

        /** A club has more than one used shot in the pair, or a shot was left over between pairs by order. */
        SURPLUS
    }

    BrokenPair(String id, Kind kind, String reason, List<Shot> shots) {
        this.id = id;
        this.kind = kind;
        this.reason = reason;
        this.shots = List.copyOf(shots);
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
     * What breaks it.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * What breaks it, in words.
     *
     * @return one clause
     */
    public String reason() {
        return reason;
    }

    /**
     * The shots of the pair, used and excluded.
     *
     * @return the shots, unmodifiable
     */
    public List<Shot> shots() {
        return shots;
    }

    @Override
    public String toString() {
        return "pair " + id + ": " + reason;
    }
}
