package dev.teeward.flight.batch;

/** What to know of the flight of a row; the warnings of a single {@link dev.teeward.flight.Flight}, without their sentences. */
public enum RowWarning {
    /** The ball starts on the landing elevation and does not rise above it. */
    LANDS_AT_ONCE(1, "lands-at-once"),

    /** The Reynolds number left the range of the aerodynamic model. */
    REYNOLDS_OUTSIDE_MODEL(2, "reynolds-outside-model"),

    /** The spin ratio left the range of the aerodynamic model. */
    SPIN_RATIO_OUTSIDE_MODEL(4, "spin-ratio-outside-model"),

    /** Launched where backspin pushes some balls down. */
    REVERSE_LIFT_POSSIBLE(8, "reverse-lift-possible"),

    /** The ball lands faster or flatter than the bounce model covers; told only if the table has the total or the run. */
    BOUNCE_EXTRAPOLATED(16, "bounce-extrapolated"),

    /** The ball still moves 60 s after landing; told only if the table has the total or the run. */
    DOES_NOT_STOP(32, "does-not-stop"),

    /**
     * The ball comes down far faster or flatter than the bounce model covers, so that its total is not known; told only if the
     * table has the total or the run.
     */
    BOUNCE_OUTSIDE_MODEL(64, "bounce-outside-model");

    private final byte bit;
    private final String code;

    RowWarning(int bit, String code) {
        this.bit = (byte) bit;
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

    static RowWarning of(String code) {
        for (RowWarning one : values()) {
            if (one.code.equals(code)) {
                return one;
            }
        }
        throw new IllegalArgumentException("no row warning has the code " + code);
    }

    byte bit() {
        return bit;
    }
}
