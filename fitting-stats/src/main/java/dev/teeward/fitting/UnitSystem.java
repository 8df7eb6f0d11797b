package dev.teeward.fitting;

/** The family of units that results are shown in. */
public enum UnitSystem {
    /** Yards, feet, miles per hour. */
    US,

    /** Metres, kilometres per hour. */
    METRIC
}
