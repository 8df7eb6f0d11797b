package dev.teeward.flight.impact;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Objects;

/**
 * The result of an impact: the launch of the ball, and how it came about.
 *
 * <pre>{@code
 * Impact impact = RigidImpact.standard().strike(delivery, head);
 * impact.smashFactor();          // 1.457
 * impact.slipped();              // false: the face gripped the ball
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Impact {
    private final LaunchConditions launch;
    private final double smashFactor;
    private final Angle spinLoft;
    private final boolean slipped;
    private final Speed headSpeedAfter;
    private final double energyLoss;
    private final List<Warning> warnings;

    private Impact(Builder builder, LaunchConditions launch) {
        this.launch = launch;
        this.smashFactor = builder.smashFactor;
        this.spinLoft = builder.spinLoft;
        this.slipped = builder.slipped;
        this.headSpeedAfter = builder.headSpeedAfter;
        this.energyLoss = builder.energyLoss;
        this.warnings = List.copyOf(builder.warnings);
    }

    /**
     * Starts a result, for the author of an impact model.
     *
     * @param launch the launch of the ball
     * @param delivery the delivery it came from, which gives smash factor, spin loft and head speed until set otherwise
     * @return a builder
     */
    public static Builder builder(LaunchConditions launch, Delivery delivery) {
        return new Builder(launch, delivery);
    }

    /**
     * The launch of the ball.
     *
     * @return speed, direction and spin
     */
    public LaunchConditions launch() {
        return launch;
    }

    /**
     * Ball speed over club speed.
     *
     * @return the ratio
     */
    public double smashFactor() {
        return smashFactor;
    }

    /**
     * The angle between the head's velocity and the face normal where the ball was struck; on a curved face that differs
     * from {@link Delivery#spinLoft()} away from the centre.
     *
     * @return the angle, in [0, 90) deg
     */
    public Angle spinLoft() {
        return spinLoft;
    }

    /**
     * Whether the ball was still sliding on the face when it left, so that friction set the spin.
     *
     * @return true if it slid, false if the face gripped it
     */
    public boolean slipped() {
        return slipped;
    }

    /**
     * The speed of the head's centre of mass just after the impact.
     *
     * @return the speed
     */
    public Speed headSpeedAfter() {
        return headSpeedAfter;
    }

    /**
     * The kinetic energy of head and ball that the impact turned into heat and vibration.
     *
     * @return the loss [J]
     */
    public double energyLoss() {
        return energyLoss;
    }

    /**
     * What a reader must know.
     *
     * @return the warnings, often none
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return launch + ", smash factor " + smashFactor + (slipped ? ", slipped" : ", gripped");
    }

    /** Collects a result. Mutable, not thread-safe. */
    public static final class Builder {
        private final LaunchConditions launch;
        private final double smashFactor;
        private Angle spinLoft;
        private boolean slipped;
        private Speed headSpeedAfter;
        private double energyLoss;
        private List<Warning> warnings = List.of();

        private Builder(LaunchConditions launch, Delivery delivery) {
            this.launch = launch;
            this.smashFactor =
                    launch.ballSpeed().metersPerSecond() / delivery.clubSpeed().metersPerSecond();
            this.spinLoft = delivery.spinLoft();
            this.headSpeedAfter = delivery.clubSpeed();
        }

        /**
         * Sets the spin loft where the ball was struck.
         *
         * @param value the angle
         * @return this builder
         */
        public Builder spinLoft(Angle value) {
            spinLoft = Objects.requireNonNull(value, "spinLoft");
            return this;
        }

        /**
         * Sets whether the ball slid.
         *
         * @param value true if it was still sliding when it left
         * @return this builder
         */
        public Builder slipped(boolean value) {
            slipped = value;
            return this;
        }

        /**
         * Sets the speed of the head after the impact.
         *
         * @param value the speed
         * @return this builder
         */
        public Builder headSpeedAfter(Speed value) {
            headSpeedAfter = Objects.requireNonNull(value, "headSpeedAfter");
            return this;
        }

        /**
         * Sets the kinetic energy lost.
         *
         * @param value the loss, finite [J]
         * @return this builder
         * @throws IllegalArgumentException if it is not finite
         */
        public Builder energyLoss(double value) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("energyLoss must be finite, but was " + value + " J");
            }
            energyLoss = value;
            return this;
        }

        /**
         * Sets the warnings.
         *
         * @param value the warnings
         * @return this builder
         */
        public Builder warnings(List<Warning> value) {
            warnings = List.copyOf(value);
            return this;
        }

        /**
         * Builds the result.
         *
         * @return the result
         */
        public Impact build() {
            return new Impact(this, launch);
        }
    }
}
