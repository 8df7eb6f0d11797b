package dev.teeward.flight.study;

import dev.teeward.quantity.Unit;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What is known of one impact: any of the twelve {@linkplain ImpactQuantity quantities}, each with the standard deviation of
 * its measurement, or assumed to be exact.
 *
 * <pre>{@code
 * MeasuredImpact shot = MeasuredImpact.empty()
 *     .with(ImpactQuantity.CLUB_SPEED, 83.0, 1.0, SpeedUnit.MILE_PER_HOUR)
 *     .with(ImpactQuantity.LAUNCH_ANGLE, 19.3, 0.3, AngleUnit.DEGREE)
 *     .assuming(ImpactQuantity.STRIKE_TOE, 0.0, LengthUnit.MILLIMETER);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MeasuredImpact {
    private static final MeasuredImpact EMPTY = new MeasuredImpact(new EnumMap<>(ImpactQuantity.class));

    private final Map<ImpactQuantity, Reading> readings;

    /** A value and its standard deviation, 0 if assumed, both in the quantity's unit. */
    record Reading(double value, double deviation) {}

    private MeasuredImpact(Map<ImpactQuantity, Reading> readings) {
        this.readings = readings;
    }

    /**
     * Nothing known.
     *
     * @return the empty impact
     */
    public static MeasuredImpact empty() {
        return EMPTY;
    }

    /**
     * A copy with one more measurement, or another one.
     *
     * @param quantity what was measured
     * @param value the value, in the unit
     * @param standardDeviation the standard deviation of the measurement's error, in the unit, positive
     * @param unit the unit of both
     * @return the copy
     * @throws IllegalArgumentException if the unit is of another kind, the value is outside what the quantity allows, or the
     *     standard deviation is not positive and finite
     */
    public MeasuredImpact with(ImpactQuantity quantity, double value, double standardDeviation, Unit unit) {
        double own = convert(quantity, value, unit);
        double deviation = quantity.unit().fromSi(unit.toSi(standardDeviation));
        if (!(deviation > 0.0 && deviation < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "standardDeviation of " + quantity.label() + " must be positive, but was " + standardDeviation + " "
                            + unit.symbol() + "; what is exact is assumed, see assuming(..)");
        }
        return put(quantity, new Reading(own, deviation));
    }

    /**
     * A copy in which a quantity of the delivery is taken to have an exact value.
     *
     * @param quantity a quantity of the delivery
     * @param value its value, in the unit
     * @param unit the unit
     * @return the copy
     * @throws IllegalArgumentException if it is one of the launch, or the unit or the value does not suit it
     */
    public MeasuredImpact assuming(ImpactQuantity quantity, double value, Unit unit) {
        if (!quantity.isDelivery()) {
            throw new IllegalArgumentException(
                    quantity.label() + " is one of the launch and follows from the delivery; give it with a deviation");
        }
        return put(quantity, new Reading(convert(quantity, value, unit), 0.0));
    }

    /**
     * A copy without a quantity.
     *
     * @param quantity what to forget
     * @return the copy
     */
    public MeasuredImpact without(ImpactQuantity quantity) {
        Map<ImpactQuantity, Reading> copy = new EnumMap<>(ImpactQuantity.class);
        copy.putAll(readings);
        copy.remove(quantity);
        return new MeasuredImpact(copy);
    }

    private MeasuredImpact put(ImpactQuantity quantity, Reading reading) {
        Map<ImpactQuantity, Reading> copy = new EnumMap<>(ImpactQuantity.class);
        copy.putAll(readings);
        copy.put(quantity, reading);
        return new MeasuredImpact(copy);
    }

    private static double convert(ImpactQuantity quantity, double value, Unit unit) {
        Objects.requireNonNull(quantity, "quantity");
        if (!unit.siUnit().equals(quantity.unit().siUnit())) {
            throw new IllegalArgumentException(quantity.label() + " cannot be given in " + unit.symbol()
                    + "; its unit is like " + quantity.unit().symbol());
        }
        double own = quantity.unit().fromSi(unit.toSi(value));
        if (!(own >= quantity.low() && own <= quantity.high())) {
            throw new IllegalArgumentException(quantity.label() + " must be in [" + quantity.low() + ", "
                    + quantity.high() + "] " + quantity.unit().symbol() + ", but was " + own);
        }
        return own;
    }

    /**
     * What is known, measured or assumed.
     *
     * @return the quantities, unmodifiable
     */
    public Set<ImpactQuantity> quantities() {
        return Set.copyOf(readings.keySet());
    }

    /**
     * The value of a quantity.
     *
     * @param quantity which
     * @return the value in the quantity's {@linkplain ImpactQuantity#unit() unit}; empty if it is not known
     */
    public OptionalDouble value(ImpactQuantity quantity) {
        Reading reading = readings.get(quantity);
        return reading == null ? OptionalDouble.empty() : OptionalDouble.of(reading.value);
    }

    /** The readings, by quantity. */
    Map<ImpactQuantity, Reading> readings() {
        return readings;
    }

    @Override
    public String toString() {
        return readings.toString();
    }
}
