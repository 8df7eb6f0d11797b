package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.Impact;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Warning;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/**
 * The best launch angle and spin at a ball speed, or the best dynamic loft and attack angle at a club speed, within limits;
 * and how far one may be from it for a stated loss.
 *
 * <p>What is best is the carry, or a total with a roll of one's own, or any function of the flight. The greatest value on a
 * grid of 13 by 13 points is refined by BOBYQA, a bounded search without derivatives (Powell 2009, Cambridge report NA06, as
 * in Hipparchus); the result says which limits it rests on. An optimum is flat: {@link LaunchOptimum#region} is the set of
 * launches that lose at most a stated amount, one yard of carry unless said otherwise, and matters more than its middle.
 *
 * <p>A flight model's own error may be worth more than the loss: the typical ball's carry is off by up to
 * {@value LaunchOptimum#CARRY_ERROR} of itself on the shots that it was fitted to, and the result warns with that in yards.
 * What all launches share of that error moves no optimum; what it has of slope does.
 *
 * <p>Nothing here knows whether a golfer can deliver what it asks for, nor that a ball of more spin or loft may stop sooner.
 * Optimising the launch takes speed, angle and spin as free of each other, which no club makes them; optimising the delivery
 * lets the impact model tie them.
 *
 * <pre>{@code
 * LaunchOptimum best = LaunchOptimizer.of(FlightModel.standard())
 *     .withLaunchAngles(degrees(5.0), degrees(25.0)).withSpinRates(rpm(1_500.0), rpm(4_500.0))
 *     .launch(drive);
 * best.first().value();        // the launch angle [rad], with the interval that loses at most one yard
 * best.restsOn();              // the limits it rests on
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the model and the objective are.
 */
public final class LaunchOptimizer {
    private static final Length YARD = Length.ofYards(1.0);

    private final FlightModel model;
    private final String objective;
    private final ToDoubleFunction<Flight> value;
    private final double loss;
    private final boolean distance;
    private final Limits launchAngles;
    private final Limits spinRates;
    private final Limits lofts;
    private final Limits attackAngles;

    private LaunchOptimizer(
            FlightModel model,
            String objective,
            ToDoubleFunction<Flight> value,
            double loss,
            boolean distance,
            Limits launchAngles,
            Limits spinRates,
            Limits lofts,
            Limits attackAngles) {
        this.model = Objects.requireNonNull(model, "model");
        this.objective = Objects.requireNonNull(objective, "objective");
        this.value = Objects.requireNonNull(value, "value");
        this.loss = loss;
        this.distance = distance;
        this.launchAngles = launchAngles;
        this.spinRates = spinRates;
        this.lofts = lofts;
        this.attackAngles = attackAngles;
    }

    /**
     * The greatest carry by a model; launch angle 0 to 60 deg, spin 500 to 12,000 rpm, dynamic loft 5 to 60 deg, attack angle
     * -8 to 8 deg, loss 1 yd.
     *
     * @param model ball, air, wind and place
     * @return the procedure
     */
    public static LaunchOptimizer of(FlightModel model) {
        return new LaunchOptimizer(
                model,
                "carry",
                flight -> flight.carry().meters(),
                YARD.meters(),
                true,
                Limits.of("launch_angle", Angle.ofDegrees(0.0), Angle.ofDegrees(60.0)),
                Limits.of("spin_rate", SpinRate.ofRpm(500.0), SpinRate.ofRpm(12_000.0)),
                Limits.of("dynamic_loft", Angle.ofDegrees(5.0), Angle.ofDegrees(60.0)),
                Limits.of("attack_angle", Angle.ofDegrees(-8.0), Angle.ofDegrees(8.0)));
    }

    /**
     * A copy that makes another number of the flight as great as possible.
     *
     * @param name what it is, for reports
     * @param score the number, finite; greater is better. A flight for which it throws an IllegalArgumentException counts as none
     * @param lossAllowed how much of it may be lost in the flat region, positive, in its own unit
     * @return the copy
     * @throws IllegalArgumentException if the loss is not positive
     */
    public LaunchOptimizer withObjective(String name, ToDoubleFunction<Flight> score, double lossAllowed) {
        return withObjective(name, score, lossAllowed, false);
    }

    private LaunchOptimizer withObjective(
            String name, ToDoubleFunction<Flight> score, double lossAllowed, boolean meters) {
        if (!(lossAllowed > 0.0 && lossAllowed < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("lossAllowed must be positive and finite, but was " + lossAllowed);
        }
        return new LaunchOptimizer(
                model, name, score, lossAllowed, meters, launchAngles, spinRates, lofts, attackAngles);
    }

    /**
     * A copy that makes the total as great as possible, on the ground of the model.
     *
     * <p>A launch whose flight has no total counts as one that does not fly. On sloping or hard ground the total may have several
     * tops and small jumps where one bounce more is made; the grid finds the highest as a rule, not always.
     *
     * @return the copy
     * @throws IllegalArgumentException if the model has no ground
     */
    public LaunchOptimizer withTotal() {
        if (model.ground().isEmpty()) {
            throw new IllegalArgumentException(
                    "the model must have a ground for a total; give it one (withGround), or a roll of your own here");
        }
        return withObjective("total", FlightOutput.TOTAL::of, loss, true);
    }

    /**
     * A copy that makes carry plus roll as great as possible.
     *
     * @param rollMeters bounce and roll after a flight [m]
     * @return the copy
     */
    public LaunchOptimizer withTotal(ToDoubleFunction<Flight> rollMeters) {
        Objects.requireNonNull(rollMeters, "rollMeters");
        return withObjective("total", flight -> flight.carry().meters() + rollMeters.applyAsDouble(flight), loss, true);
    }

    /**
     * A copy with another loss allowed in the flat region of carry or total.
     *
     * @param value the loss, positive
     * @return the copy
     * @throws IllegalArgumentException if it is not positive
     */
    public LaunchOptimizer withLoss(Length value) {
        return withObjective(objective, this.value, value.meters(), distance);
    }

    /**
     * A copy with other limits of the launch angle.
     *
     * @param lowest the lowest
     * @param highest the highest
     * @return the copy
     * @throws IllegalArgumentException if the limits are the wrong way round or outside [-90, 90] deg
     */
    public LaunchOptimizer withLaunchAngles(Angle lowest, Angle highest) {
        return withLimits(Limits.of("launch_angle", lowest, highest), spinRates, lofts, attackAngles);
    }

    /**
     * A copy with other limits of the spin rate.
     *
     * @param lowest the lowest
     * @param highest the highest
     * @return the copy
     * @throws IllegalArgumentException if the limits are the wrong way round or outside [0, 20000] rpm
     */
    public LaunchOptimizer withSpinRates(SpinRate lowest, SpinRate highest) {
        return withLimits(launchAngles, Limits.of("spin_rate", lowest, highest), lofts, attackAngles);
    }

    /**
     * A copy with other limits of the dynamic loft.
     *
     * @param lowest the lowest
     * @param highest the highest
     * @return the copy
     * @throws IllegalArgumentException if the limits are the wrong way round or outside [-90, 90] deg
     */
    public LaunchOptimizer withDynamicLofts(Angle lowest, Angle highest) {
        return withLimits(launchAngles, spinRates, Limits.of("dynamic_loft", lowest, highest), attackAngles);
    }

    /**
     * A copy with other limits of the attack angle.
     *
     * @param lowest the lowest, negative for downwards
     * @param highest the highest
     * @return the copy
     * @throws IllegalArgumentException if the limits are the wrong way round or outside [-90, 90] deg
     */
    public LaunchOptimizer withAttackAngles(Angle lowest, Angle highest) {
        return withLimits(launchAngles, spinRates, lofts, Limits.of("attack_angle", lowest, highest));
    }

    private LaunchOptimizer withLimits(Limits angles, Limits spins, Limits loftLimits, Limits attacks) {
        return new LaunchOptimizer(model, objective, value, loss, distance, angles, spins, loftLimits, attacks);
    }

    /**
     * The best launch angle and spin rate, everything else as given.
     *
     * @param launch ball speed, start direction and axis tilt; its launch angle and spin are not used
     * @return the optimum: first the launch angle, second the spin rate
     * @throws IllegalArgumentException if no launch within the limits flies, or the objective is not finite
     */
    public LaunchOptimum launch(LaunchConditions launch) {
        return optimum(
                launchAngles,
                spinRates,
                (angle, spin) -> launch.toBuilder()
                        .launchAngle(Angle.ofRadians(angle))
                        .spinRate(SpinRate.ofRadiansPerSecond(spin))
                        .build(),
                (angle, spin) -> List.of());
    }

    /**
     * The best dynamic loft and attack angle, everything else as given.
     *
     * @param delivery club speed, path, face angle and strike; its loft and attack angle are not used
     * @param head what arrives
     * @param impact what becomes of it
     * @return the optimum: first the dynamic loft, second the attack angle
     * @throws IllegalArgumentException if no delivery within the limits flies, or the objective is not finite
     */
    public LaunchOptimum delivery(Delivery delivery, ClubHead head, ImpactModel impact) {
        BiFunction<Double, Double, Impact> strikes = (loft, attack) -> impact.strike(
                delivery.toBuilder()
                        .dynamicLoft(Angle.ofRadians(loft))
                        .attackAngle(Angle.ofRadians(attack))
                        .build(),
                head);
        return optimum(
                lofts,
                attackAngles,
                (loft, attack) -> strikes.apply(loft, attack).launch(),
                (loft, attack) -> strikes.apply(loft, attack).warnings());
    }

    private LaunchOptimum optimum(
            Limits first,
            Limits second,
            BiFunction<Double, Double, LaunchConditions> launches,
            BiFunction<Double, Double, List<Warning>> told) {
        Landscape landscape = new Landscape(first, second, (x, y) -> {
            Flight flight;
            double score;
            try {
                flight = model.fly(launches.apply(x, y));
                score = value.applyAsDouble(flight);
            } catch (FlightException | IllegalArgumentException e) {
                return OptionalDouble.empty();
            }
            if (!Double.isFinite(score)) {
                throw new IllegalArgumentException(
                        "objective must be finite for every flight, but was " + score + " for " + flight);
            }
            return OptionalDouble.of(score);
        });
        double[] best = landscape.highest();
        FlatRegion region = FlatRegion.around(landscape, best, loss);
        Flight flight = model.fly(launches.apply(first.at(best[0]), second.at(best[1])));
        Set<Warning> warnings = new LinkedHashSet<>(told.apply(first.at(best[0]), second.at(best[1])));
        for (double[] point : region.contour()) {
            try {
                warnings.addAll(told.apply(first.at(point[0]), second.at(point[1])));
            } catch (IllegalArgumentException e) {
                // The contour touches where nothing flies, of which there is nothing to tell.
            }
        }
        return new LaunchOptimum(
                objective,
                flight,
                value.applyAsDouble(flight),
                first,
                second,
                best,
                loss,
                distance,
                region,
                landscape.pressedSides(best),
                List.copyOf(warnings));
    }
}
