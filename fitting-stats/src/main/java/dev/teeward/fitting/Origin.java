package dev.teeward.fitting;

/** Where the number of a reading comes from. */
public enum Origin {
    /** Reported by a device or a person. */
    MEASURED,

    /** Follows from other readings of the same shot by definition, such as face angle minus club path. */
    DERIVED,

    /** Filled in from the flight model. */
    COMPUTED
}
