package dev.teeward.flight.impact;

/** Restitution that changes with the speed along a straight line, kept within [0, 1]; a record, so that equal heads are equal. */
record LinearRestitution(double coefficient, double atSpeed, double slope) implements NormalRestitution {
    @Override
    public double at(double normalSpeed) {
        return Math.max(0.0, Math.min(1.0, coefficient + slope * (normalSpeed - atSpeed)));
    }
}
