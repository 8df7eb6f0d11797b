package dev.teeward.flight.study;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;

/**
 * How well the delivery of a club is known: standard deviations of normal errors, and the correlations between them.
 *
 * <p>It stands for a device's errors, or for a golfer's swings; for both at once, add the variances.
 *
 * <pre>{@code
 * DeliveryTolerance device = DeliveryTolerance.typical().withFaceAngle(degrees(0.5))
 *     .withCorrelation(ImpactQuantity.FACE_ANGLE, ImpactQuantity.DYNAMIC_LOFT, -0.4);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class DeliveryTolerance {
    private static final DeliveryTolerance NONE =
            new DeliveryTolerance(CorrelatedErrors.none(ImpactQuantity.class, ImpactQuantity::label));

    private static final DeliveryTolerance TYPICAL = NONE.withClubSpeed(Speed.ofMph(1.0))
            .withAttackAngle(Angle.ofDegrees(0.7))
            .withClubPath(Angle.ofDegrees(0.7))
            .withFaceAngle(Angle.ofDegrees(0.7))
            .withDynamicLoft(Angle.ofDegrees(0.7))
            .withStrikeToe(Length.ofMillimeters(2.0))
            .withStrikeUp(Length.ofMillimeters(2.0));

    private final CorrelatedErrors<ImpactQuantity> errors;

    private DeliveryTolerance(CorrelatedErrors<ImpactQuantity> errors) {
        this.errors = errors;
    }

    /**
     * A delivery known exactly.
     *
     * @return no tolerance
     */
    public static DeliveryTolerance none() {
        return NONE;
    }

    /**
     * What a device that sees the club may be off by: 1 mph, 0.7 deg in each angle, 2 mm of strike either way, independent of each
     * other (common practice, no source).
     *
     * @return the tolerance
     */
    public static DeliveryTolerance typical() {
        return TYPICAL;
    }

    /**
     * A copy with another tolerance of the club speed.
     *
     * @param value the standard deviation, in [0, 20] m/s
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withClubSpeed(Speed value) {
        return with(ImpactQuantity.CLUB_SPEED, value.metersPerSecond(), 20.0);
    }

    /**
     * A copy with another tolerance of the attack angle.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withAttackAngle(Angle value) {
        return with(ImpactQuantity.ATTACK_ANGLE, value.degrees(), 20.0);
    }

    /**
     * A copy with another tolerance of the club path.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withClubPath(Angle value) {
        return with(ImpactQuantity.CLUB_PATH, value.degrees(), 20.0);
    }

    /**
     * A copy with another tolerance of the face angle.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withFaceAngle(Angle value) {
        return with(ImpactQuantity.FACE_ANGLE, value.degrees(), 20.0);
    }

    /**
     * A copy with another tolerance of the dynamic loft.
     *
     * @param value the standard deviation, in [0, 20] deg
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withDynamicLoft(Angle value) {
        return with(ImpactQuantity.DYNAMIC_LOFT, value.degrees(), 20.0);
    }

    /**
     * A copy with another tolerance of the strike between heel and toe; a head without inertia allows none.
     *
     * @param value the standard deviation, in [0, 30] mm
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withStrikeToe(Length value) {
        return with(ImpactQuantity.STRIKE_TOE, value.millimeters(), 30.0);
    }

    /**
     * A copy with another tolerance of the height of the strike; a head without inertia allows none.
     *
     * @param value the standard deviation, in [0, 30] mm
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryTolerance withStrikeUp(Length value) {
        return with(ImpactQuantity.STRIKE_UP, value.millimeters(), 30.0);
    }

    private DeliveryTolerance with(ImpactQuantity quantity, double value, double most) {
        if (!(value >= 0.0 && value <= most)) {
            throw new IllegalArgumentException("tolerance of " + quantity.label() + " must be in [0, " + most + "] "
                    + quantity.unit().symbol() + ", but was " + value);
        }
        return new DeliveryTolerance(errors.with(quantity, value));
    }

    /**
     * A copy in which the errors of two quantities go together.
     *
     * @param one a quantity of the delivery that has a tolerance
     * @param other another
     * @param correlation the correlation of their errors, in [-1, 1]
     * @return the copy
     * @throws IllegalArgumentException if a quantity has no tolerance, the two are the same, the correlation lies outside, or all
     *     correlations together are impossible
     */
    public DeliveryTolerance withCorrelation(ImpactQuantity one, ImpactQuantity other, double correlation) {
        return new DeliveryTolerance(errors.withCorrelation(one, other, correlation));
    }

    /**
     * The standard deviation of one quantity.
     *
     * @param quantity one of the delivery
     * @return the standard deviation, 0 if it is known exactly, in the {@linkplain ImpactQuantity#unit unit of the quantity}
     */
    public double standardDeviation(ImpactQuantity quantity) {
        return errors.standardDeviation(quantity);
    }

    CorrelatedErrors<ImpactQuantity> errors() {
        return errors;
    }

    @Override
    public String toString() {
        return errors.toString();
    }
}
