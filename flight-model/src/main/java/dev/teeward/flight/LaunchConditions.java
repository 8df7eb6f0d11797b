package dev.teeward.flight;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How the ball leaves the club: speed, direction and spin.
 *
 * <p>Frame: x to the target, y up, z right; origin at the ball. The start direction is the bearing of the velocity, right of
 * the target positive for both hands. The spin axis is perpendicular to the launch velocity; its tilt is measured in that
 * plane from the horizontal, positive when the ball curves right. A tilt of 0 is pure backspin, 180 deg pure topspin.
 *
 * <pre>{@code
 * LaunchConditions launch = LaunchConditions.builder()
 *     .ballSpeed(mph(118.0)).launchAngle(degrees(17.2)).startDirection(degrees(-1.2))
 *     .spinRate(rpm(6_400.0)).axisTilt(degrees(-4.0)).build();
 * }</pre>
 *
 * <p>Immutable and thread-safe; the builder is neither.
 */
public final class LaunchConditions implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The ball speed. */
    private final Speed ballSpeed;

    /** The launch angle above the horizontal. */
    private final Angle launchAngle;

    /** The start direction, right positive. */
    private final Angle startDirection;

    /** The spin rate. */
    private final SpinRate spinRate;

    /** The tilt of the spin axis, positive when the ball curves right. */
    private final Angle axisTilt;

    private LaunchConditions(
            Speed ballSpeed, Angle launchAngle, Angle startDirection, SpinRate spinRate, Angle axisTilt) {
        this.ballSpeed = ballSpeed;
        this.launchAngle = launchAngle;
        this.startDirection = startDirection;
        this.spinRate = spinRate;
        this.axisTilt = axisTilt;
    }

    /**
     * Starts a builder. Ball speed, launch angle and spin rate must be given; direction and tilt are 0 unless given.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * A builder that starts from these conditions, for a copy with one thing changed.
     *
     * @return a full builder
     */
    public Builder toBuilder() {
        return new Builder()
                .ballSpeed(ballSpeed)
                .launchAngle(launchAngle)
                .startDirection(startDirection)
                .spinRate(spinRate)
                .axisTilt(axisTilt);
    }

    /**
     * The speed of the ball's centre at launch.
     *
     * @return the speed, in (0, 110] m/s
     */
    public Speed ballSpeed() {
        return ballSpeed;
    }

    /**
     * The angle of the launch velocity above the horizontal.
     *
     * @return the angle, in [-90, 90] deg
     */
    public Angle launchAngle() {
        return launchAngle;
    }

    /**
     * The bearing of the launch velocity, right of the target positive.
     *
     * @return the angle, in [-90, 90] deg
     */
    public Angle startDirection() {
        return startDirection;
    }

    /**
     * The spin rate.
     *
     * @return the rate, in [0, 20000] rpm
     */
    public SpinRate spinRate() {
        return spinRate;
    }

    /**
     * The tilt of the spin axis, positive when the ball curves right.
     *
     * @return the angle, in [-180, 180] deg
     */
    public Angle axisTilt() {
        return axisTilt;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LaunchConditions that
                && ballSpeed.equals(that.ballSpeed)
                && launchAngle.equals(that.launchAngle)
                && startDirection.equals(that.startDirection)
                && spinRate.equals(that.spinRate)
                && axisTilt.equals(that.axisTilt);
    }

    @Override
    public int hashCode() {
        return Objects.hash(ballSpeed, launchAngle, startDirection, spinRate, axisTilt);
    }

    @Override
    public String toString() {
        return "ball speed " + ballSpeed + ", launch angle " + launchAngle + ", start direction " + startDirection
                + ", spin rate " + spinRate + ", axis tilt " + axisTilt;
    }

    /** Collects launch conditions; each setter checks its own range. */
    public static final class Builder {
        private @Nullable Speed ballSpeed;
        private @Nullable Angle launchAngle;
        private Angle startDirection = Angle.ofRadians(0.0);
        private @Nullable SpinRate spinRate;
        private Angle axisTilt = Angle.ofRadians(0.0);

        private Builder() {}

        /**
         * Sets the ball speed.
         *
         * @param value the speed, in (0, 110] m/s (0-246 mph)
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder ballSpeed(Speed value) {
            double mps = value.metersPerSecond();
            if (!(mps > 0.0 && mps <= 110.0)) {
                throw new IllegalArgumentException("ballSpeed must be in (0, 110] m/s (0-246 mph), but was " + value
                        + (mps > 110.0 && mps <= 246.0
                                ? "; if mph was meant, use Speed.ofMph(" + plain(mps) + ")"
                                : ""));
            }
            ballSpeed = value;
            return this;
        }

        /**
         * Sets the launch angle.
         *
         * @param value the angle above the horizontal, in [-90, 90] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder launchAngle(Angle value) {
            launchAngle = angle("launchAngle", value, 90.0);
            return this;
        }

        /**
         * Sets the start direction.
         *
         * @param value the bearing, right of the target positive, in [-90, 90] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder startDirection(Angle value) {
            startDirection = angle("startDirection", value, 90.0);
            return this;
        }

        /**
         * Sets the spin rate.
         *
         * @param value the rate, in [0, 20000] rpm; the direction of the spin is the axis tilt's business
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder spinRate(SpinRate value) {
            double rpm = value.rpm();
            if (!(rpm >= 0.0 && rpm <= 20_000.0)) {
                throw new IllegalArgumentException(
                        "spinRate must be in [0, 20000] rpm (0-2094 rad/s), but was " + value + spinHint(value));
            }
            spinRate = value;
            return this;
        }

        /**
         * Sets the tilt of the spin axis.
         *
         * @param value the tilt, positive when the ball curves right, in [-180, 180] deg
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder axisTilt(Angle value) {
            axisTilt = angle("axisTilt", value, 180.0);
            return this;
        }

        /**
         * Builds the launch conditions.
         *
         * @return the conditions
         * @throws IllegalStateException if ball speed, launch angle or spin rate was not given
         */
        public LaunchConditions build() {
            return new LaunchConditions(
                    given("ballSpeed", ballSpeed),
                    given("launchAngle", launchAngle),
                    startDirection,
                    given("spinRate", spinRate),
                    axisTilt);
        }

        private static String spinHint(SpinRate value) {
            if (value.rpm() < 0.0) {
                return "; for topspin use an axisTilt of 180 deg";
            }
            double radians = value.radiansPerSecond();
            return radians <= 20_000.0 ? "; if rpm was meant, use SpinRate.ofRpm(" + plain(radians) + ")" : "";
        }

        private static String plain(double value) {
            return new BigDecimal(value)
                    .round(new MathContext(6))
                    .stripTrailingZeros()
                    .toPlainString();
        }

        private static <T> T given(String name, @Nullable T value) {
            if (value == null) {
                throw new IllegalStateException(name + " must be given; a default would be a guess");
            }
            return value;
        }

        private static Angle angle(String name, Angle value, double limitDegrees) {
            if (!(Math.abs(value.radians()) <= AngleUnit.DEGREE.toSi(limitDegrees))) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "%s must be in [-%.0f, %.0f] deg (-%.4f to %.4f rad), but was %s%s",
                        name,
                        limitDegrees,
                        limitDegrees,
                        AngleUnit.DEGREE.toSi(limitDegrees),
                        AngleUnit.DEGREE.toSi(limitDegrees),
                        value,
                        Math.abs(value.radians()) <= limitDegrees && Math.abs(value.radians()) >= 1.6
                                ? "; if degrees were meant, use Angle.ofDegrees(" + plain(value.radians()) + ")"
                                : ""));
            }
            return value;
        }
    }
}
