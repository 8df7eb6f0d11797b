package dev.teeward.flight.impact;

import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A club head as an impact sees it: mass, liveliness and grip of the face, and for off-centre strikes inertia, depth of the
 * centre of mass and curvature of the face.
 *
 * <p>The centre of mass lies on the normal through the centre of the face, {@link #massCenterDepth()} behind it; inertia is
 * given about the axes of the face (along its normal, up the face, from heel to toe), products of inertia are left out.
 * Bulge and roll are radii of curvature; without them the face is flat. Handedness says on which side the toe is.
 *
 * <pre>{@code
 * ClubHead driver = ClubHead.builder().mass(grams(204.0)).restitution(0.83)
 *     .massCenterDepth(millimeters(42.3)).inertia(5.679e-4, 4.085e-4, 2.843e-4)
 *     .bulgeRadius(millimeters(305.0)).rollRadius(millimeters(305.0)).build();
 * }</pre>
 *
 * <p>Those numbers are of the head measured in Proceedings (MDPI) 49(1):47, 2020, table 1; which of its three moments belongs
 * to which axis is inferred, and the roll, which it does not give, is assumed equal to the bulge. Immutable and thread-safe if the restitution is; the builder is neither.
 */
public final class ClubHead {
    private final Mass mass;
    private final NormalRestitution restitution;
    private final double tangentialRestitution;
    private final double friction;
    private final Handedness handedness;
    private final Length massCenterDepth;
    private final @Nullable Inertia inertia;
    private final @Nullable Length bulgeRadius;
    private final @Nullable Length rollRadius;

    /** Moments about the axes of the face [kg m2]. */
    record Inertia(double upFace, double heelToToe, double normal) {}

    private ClubHead(Builder builder) {
        this.mass = Allowed.given("mass", builder.mass);
        this.restitution = Allowed.given("restitution", builder.restitution);
        this.tangentialRestitution = builder.tangentialRestitution;
        this.friction = builder.friction;
        this.handedness = builder.handedness;
        this.massCenterDepth = builder.massCenterDepth;
        this.inertia = builder.inertia;
        this.bulgeRadius = builder.bulgeRadius;
        this.rollRadius = builder.rollRadius;
    }

    /**
     * Starts a builder. Mass and restitution must be given.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * A builder that starts from this head, for a copy with one thing changed.
     *
     * @return a full builder
     */
    public Builder toBuilder() {
        Builder copy = new Builder();
        copy.mass = mass;
        copy.restitution = restitution;
        copy.tangentialRestitution = tangentialRestitution;
        copy.friction = friction;
        copy.handedness = handedness;
        copy.massCenterDepth = massCenterDepth;
        copy.inertia = inertia;
        copy.bulgeRadius = bulgeRadius;
        copy.rollRadius = rollRadius;
        return copy;
    }

    /**
     * The mass of the head.
     *
     * @return the mass, in [0.05, 1] kg
     */
    public Mass mass() {
        return mass;
    }

    /**
     * The restitution along the face normal.
     *
     * @return the coefficient as a function of speed
     */
    public NormalRestitution restitution() {
        return restitution;
    }

    /**
     * The restitution along the face: the part of the tangential speed of the contact that comes back. 0 leaves the ball
     * rolling, 1 would reverse the sliding.
     *
     * @return the coefficient, in [0, 1]
     */
    public double tangentialRestitution() {
        return tangentialRestitution;
    }

    /**
     * The friction between face and ball.
     *
     * @return the coefficient of Coulomb friction, in [0, 1]
     */
    public double friction() {
        return friction;
    }

    /**
     * For which hand the head is made, that is, on which side the toe is.
     *
     * @return the hand
     */
    public Handedness handedness() {
        return handedness;
    }

    /**
     * How far the centre of mass lies behind the centre of the face.
     *
     * @return the depth, in [0, 80] mm
     */
    public Length massCenterDepth() {
        return massCenterDepth;
    }

    /**
     * Whether the inertia is known, which off-centre strikes need.
     *
     * @return true if it was given
     */
    public boolean hasInertia() {
        return inertia != null;
    }

    @Nullable
    Inertia inertia() {
        return inertia;
    }

    /** How much the face turns towards the toe per metre [rad/m]. */
    double bulgeCurvature() {
        return bulgeRadius == null ? 0.0 : 1.0 / bulgeRadius.meters();
    }

    /** How much the face turns upwards per metre [rad/m]. */
    double rollCurvature() {
        return rollRadius == null ? 0.0 : 1.0 / rollRadius.meters();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof ClubHead that
                && mass.equals(that.mass)
                && restitution.equals(that.restitution)
                && Double.compare(tangentialRestitution, that.tangentialRestitution) == 0
                && Double.compare(friction, that.friction) == 0
                && handedness == that.handedness
                && massCenterDepth.equals(that.massCenterDepth)
                && Objects.equals(inertia, that.inertia)
                && Objects.equals(bulgeRadius, that.bulgeRadius)
                && Objects.equals(rollRadius, that.rollRadius);
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                mass,
                restitution,
                tangentialRestitution,
                friction,
                handedness,
                massCenterDepth,
                inertia,
                bulgeRadius,
                rollRadius);
    }

    @Override
    public String toString() {
        return "head mass " + mass + ", friction " + friction + ", " + handedness + ", centre of mass "
                + massCenterDepth + " behind the face";
    }

    /** Collects a club head; each setter checks its own range. Mutable, not thread-safe. */
    public static final class Builder {
        private @Nullable Mass mass;
        private @Nullable NormalRestitution restitution;
        private double tangentialRestitution;
        private double friction = 0.4;
        private Handedness handedness = Handedness.RIGHT;
        private Length massCenterDepth = Length.ofMeters(0.0);
        private @Nullable Inertia inertia;
        private @Nullable Length bulgeRadius;
        private @Nullable Length rollRadius;

        private Builder() {}

        /**
         * Sets the mass of the head alone; about 0.2 kg for a driver, 0.3 kg for a wedge (from memory).
         *
         * @param value the mass, in [0.05, 1] kg (1.8-35 oz)
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder mass(Mass value) {
            double kg = value.kilograms();
            if (!(kg >= 0.05 && kg <= 1.0)) {
                throw new IllegalArgumentException("mass of the head must be in [0.05, 1] kg (1.8-35 oz), but was "
                        + value + "; for grams use Mass.ofGrams");
            }
            mass = value;
            return this;
        }

        /**
         * Sets a restitution that is the same at every speed.
         *
         * @param coefficient the coefficient, in [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder restitution(double coefficient) {
            return restitution(NormalRestitution.constant(coefficient));
        }

        /**
         * Sets a restitution that may depend on speed.
         *
         * @param value the coefficient as a function of speed
         * @return this builder
         */
        public Builder restitution(NormalRestitution value) {
            restitution = Objects.requireNonNull(value, "restitution");
            return this;
        }

        /**
         * Sets the restitution along the face, 0 unless given.
         *
         * @param coefficient the coefficient, in [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder tangentialRestitution(double coefficient) {
            tangentialRestitution = Allowed.number(
                    "tangentialRestitution", coefficient, 0.0, 1.0, "0 leaves the ball rolling on the face");
            return this;
        }

        /**
         * Sets the friction between face and ball, 0.4 (dry and clean, from memory) unless given. It makes no difference
         * while the face grips.
         *
         * @param coefficient the coefficient, in [0, 1]
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder friction(double coefficient) {
            friction = Allowed.number("friction", coefficient, 0.0, 1.0, "a wet face has about 0.2 (from memory)");
            return this;
        }

        /**
         * Sets for which hand the head is made, right unless given.
         *
         * @param value the hand
         * @return this builder
         */
        public Builder handedness(Handedness value) {
            handedness = Objects.requireNonNull(value, "handedness");
            return this;
        }

        /**
         * Sets the depth of the centre of mass behind the centre of the face, 0 unless given.
         *
         * @param value the depth, in [0, 80] mm
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder massCenterDepth(Length value) {
            massCenterDepth = Allowed.length("massCenterDepth", value, 0.0, 80.0);
            return this;
        }

        /**
         * Sets the moments of inertia about the axes of the face through the centre of mass [kg m2]. For g cm2 multiply by
         * 1e-7.
         *
         * @param upFace about the axis up the face, which resists opening and closing, in [1e-5, 1e-2] [kg m2]
         * @param heelToToe about the axis from heel to toe, which resists lofting, in [1e-5, 1e-2] [kg m2]
         * @param normal about the face normal, in [1e-5, 1e-2] [kg m2]
         * @return this builder
         * @throws IllegalArgumentException if one lies outside, or one exceeds the sum of the other two, which no body has
         */
        public Builder inertia(double upFace, double heelToToe, double normal) {
            String hint = "the unit is kg m2; for g cm2 multiply by 1e-7";
            Allowed.number("inertia upFace", upFace, 1e-5, 1e-2, hint);
            Allowed.number("inertia heelToToe", heelToToe, 1e-5, 1e-2, hint);
            Allowed.number("inertia normal", normal, 1e-5, 1e-2, hint);
            double sum = upFace + heelToToe + normal;
            if (2.0 * Math.max(upFace, Math.max(heelToToe, normal)) > sum) {
                throw new IllegalArgumentException(
                        "inertia: no moment can exceed the sum of the other two, but they were " + upFace + ", "
                                + heelToToe + " and " + normal + " kg m2");
            }
            inertia = new Inertia(upFace, heelToToe, normal);
            return this;
        }

        /**
         * Sets the radius of the face's curvature from heel to toe; flat unless given.
         *
         * @param value the radius, in [100, 10000] mm; a strike towards the toe then meets a face turned that way
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder bulgeRadius(Length value) {
            bulgeRadius = Allowed.length("bulgeRadius", value, 100.0, 10_000.0);
            return this;
        }

        /**
         * Sets the radius of the face's curvature from sole to crown; flat unless given.
         *
         * @param value the radius, in [100, 10000] mm; a high strike then meets more loft
         * @return this builder
         * @throws IllegalArgumentException if it lies outside
         */
        public Builder rollRadius(Length value) {
            rollRadius = Allowed.length("rollRadius", value, 100.0, 10_000.0);
            return this;
        }

        /**
         * Builds the head.
         *
         * @return the head
         * @throws IllegalStateException if mass or restitution was not given
         */
        public ClubHead build() {
            return new ClubHead(this);
        }
    }
}
