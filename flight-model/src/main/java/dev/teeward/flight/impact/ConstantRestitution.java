package dev.teeward.flight.impact;

/** Restitution that does not depend on speed; a record, so that equal heads are equal. */
record ConstantRestitution(double coefficient) implements NormalRestitution {
    @Override
    public double at(double normalSpeed) {
        return coefficient;
    }
}
