package dev.teeward.flight.air;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.io.Serializable;
import java.util.Arrays;

/** The same wind at every height. */
record UniformWind(double along, double right) implements Wind, Serializable {
    static final UniformWind CALM = new UniformWind(0.0, 0.0);

    static UniformWind from(Angle direction, Speed speed) {
        double mps = speed.metersPerSecond();
        if (!(mps >= 0.0 && mps <= 50.0)) {
            throw new IllegalArgumentException("wind speed must be in [0, 50] m/s (0-112 mph), but was " + speed
                    + "; give the direction it comes from as an angle instead of a sign");
        }
        double radians = direction.radians();
        return new UniformWind(-mps * StrictMath.cos(radians) + 0.0, -mps * StrictMath.sin(radians) + 0.0);
    }

    @Override
    public double alongTarget(double height) {
        return along;
    }

    @Override
    public double towardsRight(double height) {
        return right;
    }

    @Override
    public void velocities(double[] height, double[] alongs, double[] rights) {
        Arrays.fill(alongs, 0, height.length, along);
        Arrays.fill(rights, 0, height.length, right);
    }
}
