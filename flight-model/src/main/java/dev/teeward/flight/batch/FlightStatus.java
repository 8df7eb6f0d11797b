package dev.teeward.flight.batch;

/** How the flight of a row ended. */
public enum FlightStatus {
    /** The ball came down to the landing elevation: every column of the row holds a finite number. */
    LANDED,

    /** The ball starts on the landing elevation and does not rise: a carry of 0, all columns hold numbers. */
    LANDED_AT_ONCE,

    /** The ball came back to its starting height without having reached the higher landing elevation. */
    ELEVATION_NOT_REACHED,

    /** The ball was still in the air after 300 s or 20,000 steps. */
    DID_NOT_COME_DOWN,

    /** The forces are not finite or jump without end. */
    DID_NOT_CONVERGE,

    /** The row has not been flown. */
    NOT_FLOWN;

    private static final FlightStatus[] ALL = values();

    /**
     * Whether there is a landing.
     *
     * @return true for the first two
     */
    public boolean landed() {
        return this == LANDED || this == LANDED_AT_ONCE;
    }

    byte code() {
        return (byte) ordinal();
    }

    static FlightStatus of(byte code) {
        return ALL[code];
    }
}
