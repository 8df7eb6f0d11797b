package dev.teeward.flight.impact;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How the club head arrives at the ball: its velocity, the direction of its face, and where on the face the ball is struck.
 *
 * <p>Face angle and dynamic loft are azimuth and elevation of the face normal at the centre of the face as delivered; they
 * already contain lie, shaft lean and bend, so none of these is added again. The velocity is that of the head at the same
 * instant. Right of the target and upwards are positive for both hands; the strike is positive towards the toe and upwards
 * from the centre of the face, measured along the face.
 *
 * <pre>{@code
 * Delivery delivery = Delivery.builder()
 *     .clubSpeed(mph(83.0)).attackAngle(degrees(-4.0)).clubPath(degrees(1.0))
 *     .faceAngle(degrees(2.0)).dynamicLoft(degrees(25.0)).build();
 * }</pre>
 *
 * <p>Immutable and thread-safe; the builder is neither.
 */
public final class Delivery implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The speed of the head. */
    private final Speed clubSpeed;

    /** The angle of the head's velocity above the horizontal. */
    private final Angle attackAngle;

    /** The bearing of the head's velocity, right positive. */
    private final Angle clubPath;

    /** The bearing of the face normal, right positive. */
    private final Angle faceAngle;

    /** The angle of the face normal above the horizontal. */
    private final Angle dynamicLoft;

    /** The strike, towards the toe positive. */
    private final Length strikeToe;

    /** The strike, upwards positive. */
    private final Length strikeUp;

    private Delivery(
            Speed clubSpeed,
            Angle attackAngle,
            Angle clubPath,
            Angle faceAngle,
            Angle dynamicLoft,
            Length strikeToe,
            Length strikeUp) {
        this.clubSpeed = clubSpeed;
        this.attackAngle = attackAngle;
        this.clubPath = clubPath;
        this.faceAngle = faceAngle;
        this.dynamicLoft = dynamicLoft;
        this.strikeToe = strikeToe;
        this.strikeUp = strikeUp;
    }

    /**
     * Starts a builder. Everything but the strike must be given; the strike is the centre of the face unless given.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * A builder that starts from this delivery, for a copy with one thing changed.
     *
     * @return a full builder
     */
    public Builder toBuilder() {
        return new Builder()
                .clubSpeed(clubSpeed)
                .attackAngle(attackAngle)
                .clubPath(clubPath)
                .faceAngle(faceAngle)
                .dynamicLoft(dynamicLoft)
                .strikeToe(strikeToe)
                .strikeUp(strikeUp);
    }

    /**
     * The speed of the head just before impact.
     *
     * @return the speed, in (0, 70] m/s
     */
    public Speed clubSpeed() {
        return clubSpeed;
    }

    /**
     * The angle of the head's velocity above the horizontal; a descending head has a negative one.
     *
     * @return the angle, in [-45, 45] deg
     */
    public Angle attackAngle() {
        return attackAngle;
    }

    /**
     * The bearing of the head's velocity, right of the target positive.
     *
     * @return the angle, in [-45, 45] deg
     */
    public Angle clubPath() {
        return clubPath;
    }

    /**
     * The bearing of the face normal, right of the target positive.
     *
     * @return the angle, in [-60, 60] deg
     */
    public Angle faceAngle() {
        return faceAngle;
    }

    /**
     * The angle of the face normal above the horizontal.
     *
     * @return the angle, in [-20, 85] deg
     */
    public Angle dynamicLoft() {
        return dynamicLoft;
    }

    /**
     * Where the ball was struck, from the centre of the face towards the toe.
     *
     * @return the distance, negative towards the heel, in [-60, 60] mm
     */
    public Length strikeToe() {
        return strikeToe;
    }

    /**
     * Where the ball was struck, from the centre of the face upwards along the face.
     *
     * @return the distance, negative downwards, in [-40, 40] mm
     */
    public Length strikeUp() {
        return strikeUp;
    }

    /**
     * Face angle minus club path: how open the face is to the path, right positive.
     *
     * @return the angle
     */
    public Angle faceToPath() {
        return Angle.ofRadians(faceAngle.radians() - clubPath.radians());
    }

    /**
     * The angle between the face normal at the centre and the head's velocity, in three dimensions.
     *
     * <p>{@code cos(psi) = sin L sin A + cos L cos A cos(F - P)}; with face and path in line it is dynamic loft minus
     * attack angle. Computed from the half-angle form, which is exact near 0.
     *
     * @return the angle, not negative
     */
    public Angle spinLoft() {
        return Angle.ofRadians(between(faceNormal(), headDirection()));
    }

    Vector faceNormal() {
        return Vector.direction(dynamicLoft.radians(), faceAngle.radians());
    }

    Vector headDirection() {
        return Vector.direction(attackAngle.radians(), clubPath.radians());
    }

    /** The angle between two unit vectors [rad], without the loss of digits that an arc cosine has near 0. */
    static double between(Vector a, Vector b) {
        return 2.0 * Math.atan2(a.plus(-1.0, b).norm(), a.plus(1.0, b).norm());
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Delivery that
                && clubSpeed.equals(that.clubSpeed)
                && attackAngle.equals(that.attackAngle)
                && clubPath.equals(that.clubPath)
                && faceAngle.equals(that.faceAngle)
                && dynamicLoft.equals(that.dynamicLoft)
                && strikeToe.equals(that.strikeToe)
                && strikeUp.equals(that.strikeUp);
    }

    @Override
    public int hashCode() {
        return Objects.hash(clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft, strikeToe, strikeUp);
    }

    @Override
    public String toString() {
        return "club speed " + clubSpeed + ", attack angle " + attackAngle + ", club path " + clubPath + ", face angle "
                + faceAngle + ", dynamic loft " + dynamicLoft + ", strike toe " + strikeToe + ", strike up " + strikeUp;
    }

    /** Collects a delivery; each setter checks its own range. Mutable, not thread-safe. */
    public static final class Builder {
        private @Nullable Speed clubSpeed;
        private @Nullable Angle attackAngle;
        private @Nullable Angle clubPath;
        private @Nullable Angle faceAngle;
        private @Nullable Angle dynamicLoft;
        private Length strikeToe = Length.ofMeters(0.0);
        private Length strikeUp = Length.ofMeters(0.0);

        private Builder() {}

        /**
         * Sets the speed of the head.
         *
         * @param value the speed, in (0, 70] m/s (0-157 mph)
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder clubSpeed(Speed value) {
            double mps = value.metersPerSecond();
            if (!(mps > 0.0 && mps <= 70.0)) {
                throw new IllegalArgumentException("clubSpeed must be in (0, 70] m/s (0-157 mph), but was " + value
                        + (mps > 70.0 && mps <= 157.0 ? "; for mph use Speed.ofMph(" + mps + ")" : ""));
            }
            clubSpeed = value;
            return this;
        }

        /**
         * Sets the attack angle.
         *
         * @param value the angle, upwards positive, in [-45, 45] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder attackAngle(Angle value) {
            attackAngle = Allowed.angle("attackAngle", value, -45.0, 45.0);
            return this;
        }

        /**
         * Sets the club path.
         *
         * @param value the bearing, right of the target positive, in [-45, 45] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder clubPath(Angle value) {
            clubPath = Allowed.angle("clubPath", value, -45.0, 45.0);
            return this;
        }

        /**
         * Sets the face angle.
         *
         * @param value the bearing of the face normal, right of the target positive, in [-60, 60] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder faceAngle(Angle value) {
            faceAngle = Allowed.angle("faceAngle", value, -60.0, 60.0);
            return this;
        }

        /**
         * Sets the dynamic loft.
         *
         * @param value the angle of the face normal above the horizontal, in [-20, 85] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder dynamicLoft(Angle value) {
            dynamicLoft = Allowed.angle("dynamicLoft", value, -20.0, 85.0);
            return this;
        }

        /**
         * Sets the strike between heel and toe.
         *
         * @param value the distance from the centre, towards the toe positive for both hands, in [-60, 60] mm
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder strikeToe(Length value) {
            strikeToe = Allowed.length("strikeToe", value, -60.0, 60.0);
            return this;
        }

        /**
         * Sets the height of the strike.
         *
         * @param value the distance from the centre along the face, upwards positive, in [-40, 40] mm
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder strikeUp(Length value) {
            strikeUp = Allowed.length("strikeUp", value, -40.0, 40.0);
            return this;
        }

        /**
         * Builds the delivery.
         *
         * @return the delivery
         * @throws IllegalStateException if anything but the strike was not given
         */
        public Delivery build() {
            return new Delivery(
                    Allowed.given("clubSpeed", clubSpeed),
                    Allowed.given("attackAngle", attackAngle),
                    Allowed.given("clubPath", clubPath),
                    Allowed.given("faceAngle", faceAngle),
                    Allowed.given("dynamicLoft", dynamicLoft),
                    strikeToe,
                    strikeUp);
        }
    }
}
