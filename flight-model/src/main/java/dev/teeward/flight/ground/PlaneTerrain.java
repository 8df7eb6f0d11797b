package dev.teeward.flight.ground;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;

/** A plane: {@code elevation = height + along x + right z}. */
record PlaneTerrain(double height, double along, double right) implements Terrain {
    static final PlaneTerrain LEVEL = new PlaneTerrain(0.0, 0.0, 0.0);

    static PlaneTerrain level(Length elevation) {
        double meters = elevation.meters();
        if (!(Math.abs(meters) <= 1000.0)) {
            throw new IllegalArgumentException(
                    "elevation must be in [-1000, 1000] m (-3281 to 3281 ft), but was " + elevation);
        }
        return new PlaneTerrain(meters, 0.0, 0.0);
    }

    static PlaneTerrain of(Angle towardsTarget, Angle towardsRight) {
        return new PlaneTerrain(0.0, slope("towardsTarget", towardsTarget), slope("towardsRight", towardsRight));
    }

    private static double slope(String name, Angle angle) {
        if (!(Math.abs(angle.degrees()) <= 45.0)) {
            throw new IllegalArgumentException(
                    name + " must be in [-45, 45] deg (-0.785 to 0.785 rad), but was " + angle);
        }
        return StrictMath.tan(angle.radians());
    }

    boolean isLevel() {
        return along == 0.0 && right == 0.0;
    }

    @Override
    public double elevation(double x, double z) {
        return height + along * x + right * z;
    }

    @Override
    public double slopeAlongTarget(double x, double z) {
        return along;
    }

    @Override
    public double slopeTowardsRight(double x, double z) {
        return right;
    }

    @Override
    public String toString() {
        return isLevel()
                ? "level ground " + height + " m above the start"
                : "plane rising by " + along + " towards the target and " + right + " towards the right";
    }
}
