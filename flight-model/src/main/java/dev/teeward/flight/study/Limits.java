package dev.teeward.flight.study;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;

/** The limits of one variable of a search, in SI, and the way from shares of the distance between them. */
record Limits(String name, double lowest, double highest, Unit unit) {
    static Limits of(String name, Angle lowest, Angle highest) {
        double right = Math.PI / 2.0;
        if (!(lowest.radians() >= -right && lowest.radians() < highest.radians() && highest.radians() <= right)) {
            throw new IllegalArgumentException("limits of " + name
                    + " must satisfy -90 deg <= lowest < highest <= 90 deg (-1.5708 to 1.5708 rad), but were " + lowest
                    + " and " + highest);
        }
        return new Limits(name, lowest.radians(), highest.radians(), AngleUnit.RADIAN);
    }

    static Limits of(String name, SpinRate lowest, SpinRate highest) {
        if (!(lowest.rpm() >= 0.0 && lowest.rpm() < highest.rpm() && highest.rpm() <= 20_000.0)) {
            throw new IllegalArgumentException("limits of " + name
                    + " must satisfy 0 <= lowest < highest <= 20000 rpm (2094 rad/s), but were " + lowest + " and "
                    + highest);
        }
        return new Limits(name, lowest.radiansPerSecond(), highest.radiansPerSecond(), SpinRateUnit.RADIAN_PER_SECOND);
    }

    /** The value at a share of the way, exact at both ends. */
    double at(double share) {
        if (share >= 1.0) {
            return highest;
        }
        return Math.min(highest, lowest + Math.max(0.0, share) * (highest - lowest));
    }
}
