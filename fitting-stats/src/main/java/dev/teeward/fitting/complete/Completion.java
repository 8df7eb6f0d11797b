package dev.teeward.fitting.complete;

import dev.teeward.fitting.Session;
import dev.teeward.quantity.Warning;
import java.util.List;

/**
 * A session with everything that follows from its readings, and what to know about it.
 *
 * <pre>{@code
 * Completion completion = SessionCompleter.withDefaults().complete(session);
 * completion.session().shots().values(Metric.SPIN_LOFT);
 * completion.warnings();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Completion {
    private final Session session;
    private final SessionAir air;
    private final List<Warning> warnings;

    Completion(Session session, SessionAir air, List<Warning> warnings) {
        this.session = session;
        this.air = air;
        this.warnings = List.copyOf(warnings);
    }

    /**
     * The session with the readings added.
     *
     * @return the same shots in the same order, used and excluded
     */
    public Session session() {
        return session;
    }

    /**
     * The air in which the flights were computed.
     *
     * @return air and wind
     */
    public SessionAir air() {
        return air;
    }

    /**
     * What to know: what was assumed about the air (only if a flight was computed), which shots could not be flown, and
     * what {@link SessionCompleter} lists.
     *
     * @return the warnings, unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }
}
