package dev.teeward.flight.study;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.ImpliedDelivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * From a launch and whatever is known of the delivery to what is not: face angle, path, loft, spin loft, strike.
 *
 * <p>The delivery is sought whose impact agrees best with all measurements, by least squares of the differences in units of
 * their standard deviations (Levenberg and Marquardt). Which quantities that determines is read off the Jacobian of the
 * measurements: one that can change along its null space without any measurement noticing has no estimate, and
 * {@link Result#undetermined()} names it. The null space is taken there and at deliveries a few degrees and millimetres away,
 * for where the ball does not curve, left and right hide from up and down. The others get intervals from the standard
 * deviations given: out to where chi-square, everything else adjusted, has risen by the square of the normal quantile of the
 * level. For angles and speeds that is nearly the first order, covariance {@code (J' J)^-1}; a strike along the face of an iron
 * shows through the ball speed that it costs, by its square, and its interval is wide and lopsided.
 *
 * <p>There may be a second answer, as on a bulged face or without the tilt. So the search starts from other strikes, and from
 * other angles between face and path, too. The intervals reach over every answer found that the level does not refute; where
 * answers agree equally well, what differs between them is left open. One measurement more then takes no estimate away, short
 * of noise. The search is thorough, not exhaustive: it may miss an answer.
 *
 * <p>Five numbers of the launch cannot tell seven of the delivery. With a full launch and an assumed strike, speed, attack,
 * path, face and loft all follow if the ball gripped (in closed form: {@link ImpliedDelivery}); with a measured club speed,
 * path and attack, what is left over says something of the strike through the gear effect.
 *
 * <pre>{@code
 * ImpactInverse.Result r = ImpactInverse.withDefaults().solve(measured, TypicalHead.iron(7));
 * r.estimate(ImpactQuantity.FACE_ANGLE); // deg, with interval; empty if not determined
 * r.undetermined();                      // [strike toe, strike up]
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ImpactInverse {
    private static final ImpactInverse DEFAULTS = new ImpactInverse(RigidImpact.standard(), 0.95);

    private final ImpactModel model;
    private final double level;

    private ImpactInverse(ImpactModel model, double level) {
        this.model = Objects.requireNonNull(model, "model");
        this.level = level;
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + level);
        }
    }

    /**
     * The rigid impact of the ball of the rules, intervals at 95 percent.
     *
     * @return the procedure
     */
    public static ImpactInverse withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy with another level of the intervals.
     *
     * @param value the level, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public ImpactInverse withLevel(double value) {
        return new ImpactInverse(model, value);
    }

    /**
     * A copy that goes backwards through another model.
     *
     * @param value the impact model
     * @return the copy
     */
    public ImpactInverse withModel(ImpactModel value) {
        return new ImpactInverse(value, level);
    }

    /**
     * Finds the delivery.
     *
     * @param measured what is known of the impact; at least one quantity of the launch
     * @param head what hit the ball; without inertia the strike is assumed central unless given
     * @return the estimates and what is left open
     * @throws IllegalArgumentException if nothing of the launch was measured
     * @throws IllegalStateException if no delivery was found that agrees
     */
    public Result solve(MeasuredImpact measured, ClubHead head) {
        if (measured.quantities().stream().allMatch(ImpactQuantity::isDelivery)) {
            throw new IllegalArgumentException("at least one quantity of the launch must be measured to go back from");
        }
        List<Warning> warnings = new ArrayList<>();
        MeasuredImpact known = central(measured, head, warnings);
        ImpactAdjustment fit = ImpactAdjustment.of(model, head, known, start(known, head));
        return new Result(fit, level, warnings);
    }

    /** Without inertia an off-centre strike has no answer. */
    static MeasuredImpact central(MeasuredImpact measured, ClubHead head, List<Warning> warnings) {
        MeasuredImpact known = measured;
        if (!head.hasInertia()) {
            for (ImpactQuantity strike : List.of(ImpactQuantity.STRIKE_TOE, ImpactQuantity.STRIKE_UP)) {
                if (known.value(strike).isEmpty()) {
                    known = known.assuming(strike, 0.0, LengthUnit.MILLIMETER);
                }
            }
            if (known != measured) {
                warnings.add(
                        Warning.of(
                                "strike-assumed-central",
                                "The head has no inertia, so that the strike was taken to be central where it was not measured."));
            }
        }
        return known;
    }

    /** The closed form where the launch is whole, else a plain guess from what there is of it. */
    static double[] start(MeasuredImpact known, ClubHead head) {
        double speed = known.value(ImpactQuantity.BALL_SPEED).orElse(50.0);
        double launch = known.value(ImpactQuantity.LAUNCH_ANGLE).orElse(18.0);
        double direction = known.value(ImpactQuantity.START_DIRECTION).orElse(0.0);
        double spin = known.value(ImpactQuantity.SPIN_RATE).orElse(100.0 * speed);
        double tilt = known.value(ImpactQuantity.AXIS_TILT).orElse(0.0);
        double[] guess = {Math.min(69.0, speed / 1.35), -2.0, direction, direction, launch + 5.0, 0.0, 0.0};
        try {
            LaunchConditions conditions = LaunchConditions.builder()
                    .ballSpeed(Speed.ofMetersPerSecond(speed))
                    .launchAngle(Angle.ofDegrees(launch))
                    .startDirection(Angle.ofDegrees(direction))
                    .spinRate(SpinRate.ofRpm(spin))
                    .axisTilt(Angle.ofDegrees(tilt))
                    .build();
            ImpliedDelivery implied = ImpliedDelivery.of(conditions, head);
            guess[3] = implied.faceAngle().degrees();
            guess[4] = implied.dynamicLoft().degrees();
            implied.delivery().ifPresent(delivery -> {
                guess[0] = delivery.clubSpeed().metersPerSecond();
                guess[1] = delivery.attackAngle().degrees();
                guess[2] = delivery.clubPath().degrees();
            });
        } catch (IllegalArgumentException e) {
            // No central impact gives that launch; the search starts from the plain guess.
            guess[3] = direction;
        }
        if (known.value(ImpactQuantity.AXIS_TILT).isEmpty()) {
            // Where face and path are in line no slope tells how they part.
            guess[2] -= 0.5;
            guess[3] += 0.5;
        }
        return guess;
    }

    /** The delivery that agrees best, as far as it is determined. Immutable and thread-safe. */
    public static final class Result {
        private final ImpactAdjustment fit;
        private final double level;
        private final Map<ImpactQuantity, Estimate> estimates = new EnumMap<>(ImpactQuantity.class);
        private final List<ImpactQuantity> undetermined = new ArrayList<>();
        private final List<Warning> warnings;

        private Result(ImpactAdjustment fit, double level, List<Warning> warnings) {
            this.fit = fit;
            this.level = level;
            for (ImpactQuantity quantity : ImpactQuantity.values()) {
                if (quantity.isDelivery()) {
                    ToDoubleFunction<double[]> value = x -> x[quantity.index()];
                    Optional<Estimate> estimate = estimate(value, quantity.unit())
                            .filter(e -> e.interval().width() < quantity.high() - quantity.low());
                    estimate.ifPresentOrElse(e -> estimates.put(quantity, e), () -> undetermined.add(quantity));
                }
            }
            if (!undetermined.isEmpty()) {
                warnings.add(Warning.of(
                        "delivery-not-determined",
                        "What was measured does not determine "
                                + undetermined.stream()
                                        .map(ImpactQuantity::label)
                                        .collect(Collectors.joining(", "))
                                + "."));
                if (!fit.observed().contains(ImpactQuantity.AXIS_TILT)) {
                    warnings.add(Warning.of(
                            "axis-tilt-not-measured",
                            "The axis tilt was not measured and the search began near zero; what would be another at another"
                                    + " tilt is left open. A tilt that is known roughly helps: give it with a large"
                                    + " standard deviation."));
                }
            }
            this.warnings = List.copyOf(warnings);
        }

        private Optional<Estimate> estimate(ToDoubleFunction<double[]> value, Unit unit) {
            if (!fit.determines(value)) {
                return Optional.empty();
            }
            double quantile = new NormalDistribution().inverseCumulativeProbability(0.5 + 0.5 * level);
            ImpactProfile profile = new ImpactProfile(fit, value, quantile);
            double best = value.applyAsDouble(fit.delivery());
            return Optional.of(Estimate.of(
                    best,
                    Interval.of(Math.min(best, profile.end(-1.0)), Math.max(best, profile.end(1.0)), level),
                    unit));
        }

        /**
         * A quantity of the delivery.
         *
         * @param quantity which
         * @return the estimate in the quantity's unit, adjusted to all measurements; empty if they do not determine it, or it is
         *     one of the launch
         */
        public Optional<Estimate> estimate(ImpactQuantity quantity) {
            return Optional.ofNullable(estimates.get(quantity));
        }

        /**
         * The angle between face normal and head velocity.
         *
         * @return the estimate [deg]; empty if not determined
         */
        public Optional<Estimate> spinLoft() {
            return estimate(x -> ImpactEquations.delivery(x).spinLoft().degrees(), AngleUnit.DEGREE);
        }

        /**
         * Face angle minus club path, right positive.
         *
         * @return the estimate [deg]; empty if not determined
         */
        public Optional<Estimate> faceToPath() {
            return estimate(
                    x -> x[ImpactQuantity.FACE_ANGLE.index()] - x[ImpactQuantity.CLUB_PATH.index()], AngleUnit.DEGREE);
        }

        /**
         * What the measurements leave open.
         *
         * @return quantities of the delivery, in order, often none
         */
        public List<ImpactQuantity> undetermined() {
            return List.copyOf(undetermined);
        }

        /**
         * The rank of the measurements' Jacobian: how many independent combinations of the delivery they determine.
         *
         * @return the rank, at most 7 less the quantities that were assumed
         */
        public int rank() {
            return fit.rank();
        }

        /**
         * The sum of the squared differences between computed and measured, in units of the standard deviations.
         *
         * @return chi-square, not negative
         */
        public double chiSquare() {
            return fit.chiSquare();
        }

        /**
         * How many measurements there are beyond what they determine.
         *
         * @return the degrees of freedom of {@link #chiSquare()}, 0 if nothing is left to check
         */
        public int degreesOfFreedom() {
            return fit.observed().size() - fit.rank();
        }

        /**
         * What a reader must know.
         *
         * @return {@code delivery-not-determined}, {@code axis-tilt-not-measured}, {@code strike-assumed-central}, or nothing
         */
        public List<Warning> warnings() {
            return warnings;
        }

        @Override
        public String toString() {
            return estimates + (undetermined.isEmpty() ? "" : ", not determined " + undetermined);
        }
    }
}
