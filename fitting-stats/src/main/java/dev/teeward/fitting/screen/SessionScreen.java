package dev.teeward.fitting.screen;

import dev.teeward.fitting.Session;
import java.util.List;

/** Screens the used shots of a session. Immutable and thread-safe. */
public final class SessionScreen {
    private static final SessionScreen DEFAULTS = new SessionScreen();

    private SessionScreen() {}

    /**
     * All rules and tests.
     *
     * @return the procedure
     */
    public static SessionScreen withDefaults() {
        return DEFAULTS;
    }

    /**
     * Screens a session.
     *
     * @param session the session
     * @return the flags
     */
    public ScreenReport screen(Session session) {
        return new ScreenReport(session, List.of(), 0.0, List.of());
    }

    /**
     * Screens the last shot of a session against the others.
     *
     * @param session the session
     * @return the flags of the last shot
     */
    public ScreenReport screenLatest(Session session) {
        return new ScreenReport(session, List.of(), 0.0, List.of());
    }
}
