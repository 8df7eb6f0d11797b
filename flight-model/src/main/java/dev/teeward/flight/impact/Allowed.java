package dev.teeward.flight.impact;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Length;
import org.jspecify.annotations.Nullable;

/** The checks that what is entered passes, with one wording. */
final class Allowed {
    private Allowed() {}

    static Angle angle(String name, Angle value, double lowDegrees, double highDegrees) {
        if (!(value.radians() >= AngleUnit.DEGREE.toSi(lowDegrees)
                && value.radians() <= AngleUnit.DEGREE.toSi(highDegrees))) {
            throw new IllegalArgumentException(name + " must be in [" + lowDegrees + ", " + highDegrees + "] deg ("
                    + AngleUnit.DEGREE.toSi(lowDegrees) + " to " + AngleUnit.DEGREE.toSi(highDegrees)
                    + " rad), but was " + value + "; for degrees use Angle.ofDegrees");
        }
        return value;
    }

    static Length length(String name, Length value, double lowMillimeters, double highMillimeters) {
        double mm = value.millimeters();
        if (!(mm >= lowMillimeters && mm <= highMillimeters)) {
            throw new IllegalArgumentException(name + " must be in [" + lowMillimeters + ", " + highMillimeters
                    + "] mm (" + lowMillimeters / 25.4 + " to " + highMillimeters / 25.4 + " in), but was " + value
                    + "; for millimetres use Length.ofMillimeters");
        }
        return value;
    }

    static double number(String name, double value, double low, double high, String hint) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    name + " must be in [" + low + ", " + high + "], but was " + value + "; " + hint);
        }
        return value;
    }

    static <T> T given(String name, @Nullable T value) {
        if (value == null) {
            throw new IllegalStateException(name + " must be given; a default would be a guess");
        }
        return value;
    }
}
