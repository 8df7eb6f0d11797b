package dev.teeward.quantity;

import java.util.Objects;

/** The check that every number which becomes a quantity passes. */
final class Finite {
    private Finite() {}

    /** Converts to SI; refuses what is not finite before or after; turns -0.0 into 0.0 so that equality is numeric. */
    static double toSi(String name, double value, Unit unit) {
        double si = Objects.requireNonNull(unit, "unit").toSi(value);
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException(
                    name + " must be finite, but was " + value + (unit.symbol().isEmpty() ? "" : " " + unit.symbol()));
        }
        return si + 0.0;
    }
}
