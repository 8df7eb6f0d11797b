package dev.teeward.flight.batch;

/** How the flight of a row ended. */
public enum FlightStatus {
    /** The ball came down to the landing elevation: every column of the row holds a finite number. */
    LANDED(0),

    /** The ball starts on the landing elevation and does not rise: a carry of 0, all columns hold numbers. */
    LANDED_AT_ONCE(1),

    /** The ball came back to its starting height without having reached the higher landing elevation. */
    ELEVATION_NOT_REACHED(2),

    /** The ball was still in the air after 300 s or 20,000 steps. */
    DID_NOT_COME_DOWN(3),

    /** The forces are not finite or jump without end. */
    DID_NOT_CONVERGE(4),

    /** The row has not been flown. */
    NOT_FLOWN(5);

    private static final FlightStatus[] ALL = values();

    private final byte code;

    FlightStatus(int code) {
        this.code = (byte) code;
    }

    /**
     * Whether there is a landing.
     *
     * @return true for the first two
     */
    public boolean landed() {
        return this == LANDED || this == LANDED_AT_ONCE;
    }

    byte code() {
        return code;
    }

    static FlightStatus of(byte code) {
        return ALL[code];
    }
}
