package dev.teeward.flight.aero;

import java.util.List;

/**
 * US 6,729,976, table 1, medians, from memory (the last two rows least surely): a ball of 1.68 in and 1.62 oz. Re S is nearly
 * constant, so this is one line through the plane, the state of a drive through its flight.
 *
 * @param re the Reynolds number
 * @param s the spin ratio
 * @param magnitude the magnitude of the coefficient of the whole force
 * @param degrees its angle above the drag [deg]
 */
record PatentTable(double re, double s, double magnitude, double degrees) {
    static final List<PatentTable> ROWS = List.of(
            new PatentTable(230e3, 0.085, 0.265, 33.0),
            new PatentTable(207e3, 0.095, 0.271, 36.0),
            new PatentTable(184e3, 0.106, 0.280, 38.0),
            new PatentTable(158e3, 0.122, 0.291, 40.0),
            new PatentTable(133e3, 0.142, 0.311, 41.0),
            new PatentTable(105e3, 0.178, 0.344, 42.0),
            new PatentTable(89e3, 0.211, 0.375, 43.0));

    double drag() {
        return magnitude * Math.cos(Math.toRadians(degrees));
    }

    double lift() {
        return magnitude * Math.sin(Math.toRadians(degrees));
    }
}
