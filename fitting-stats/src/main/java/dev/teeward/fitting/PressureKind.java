package dev.teeward.fitting;

/** What a stated air pressure means. The two differ by about 12 hPa for every 100 m of elevation. */
public enum PressureKind {
    /** The pressure at the place itself, as a barometer there shows it. */
    STATION,

    /** The altimeter setting (QNH): reduced to sea level by the standard atmosphere; needs the elevation to be of use. */
    ALTIMETER
}
