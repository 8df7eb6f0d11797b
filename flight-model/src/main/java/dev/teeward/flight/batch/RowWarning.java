package dev.teeward.flight.batch;

/** What to know of the flight of a row; the warnings of a single {@link dev.teeward.flight.Flight}, without their sentences. */
public enum RowWarning {
    /** The ball starts on the landing elevation and does not rise above it. */
    LANDS_AT_ONCE("lands-at-once"),

    /** The Reynolds number left the range of the aerodynamic model. */
    REYNOLDS_OUTSIDE_MODEL("reynolds-outside-model"),

    /** The spin ratio left the range of the aerodynamic model. */
    SPIN_RATIO_OUTSIDE_MODEL("spin-ratio-outside-model"),

    /** Launched where backspin pushes some balls down. */
    REVERSE_LIFT_POSSIBLE("reverse-lift-possible");

    private final String code;

    RowWarning(String code) {
        this.code = code;
    }

    /**
     * The code of the same warning of a single flight.
     *
     * @return words joined by hyphens
     */
    public String code() {
        return code;
    }

    byte bit() {
        return (byte) (1 << ordinal());
    }
}
