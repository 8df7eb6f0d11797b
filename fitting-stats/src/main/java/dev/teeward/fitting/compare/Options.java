package dev.teeward.fitting.compare;

import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.Objects;

/** What every test can be told. */
record Options(double level, Alternative alternative, double nullValue, Unit unit) {
    static final Options DEFAULTS = new Options(0.95, Alternative.TWO_SIDED, 0.0, RatioUnit.ONE);

    Options {
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in (0, 1), but was " + level + "; for 95 percent use 0.95");
        }
        if (!Double.isFinite(nullValue)) {
            throw new IllegalArgumentException("nullValue must be finite, but was " + nullValue);
        }
        Objects.requireNonNull(alternative, "alternative");
        Objects.requireNonNull(unit, "unit");
    }

    Options withLevel(double other) {
        return new Options(other, alternative, nullValue, unit);
    }

    Options withAlternative(Alternative other) {
        return new Options(level, other, nullValue, unit);
    }

    Options withNullValue(double other) {
        return new Options(level, alternative, other, unit);
    }

    Options withUnit(Unit other) {
        return new Options(level, alternative, nullValue, other);
    }

    double tail() {
        return alternative.tail(level);
    }

    /** Opens the end that a one-sided question leaves open. */
    Interval interval(double lower, double upper) {
        return Interval.of(
                alternative == Alternative.LESS ? Double.NEGATIVE_INFINITY : lower,
                alternative == Alternative.GREATER ? Double.POSITIVE_INFINITY : upper,
                level);
    }
}
