package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The best launch or delivery that a {@link LaunchOptimizer} found, and the region in which little is lost.
 *
 * <pre>{@code
 * best.flight().carry().yards();
 * best.first().lowest();      // the least launch angle that loses at most a yard, with some spin [rad]
 * best.region().get(0);       // the first point of the contour
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LaunchOptimum {
    /**
     * How far the typical ball's carry is off at worst, as a fraction of it, on the 14 typical shots that it was fitted to:
     * 0.04. For a distance, the warning {@code loss-within-the-error} holds a loss against it.
     */
    public static final double CARRY_ERROR = 0.04;

    private final String objective;
    private final Flight flight;
    private final double value;
    private final Variable first;
    private final Variable second;
    private final double loss;
    private final boolean distance;
    private final List<Point> region;
    private final List<String> restsOn;
    private final List<Warning> ofImpact;

    LaunchOptimum(
            String objective,
            Flight flight,
            double value,
            Limits one,
            Limits two,
            double[] best,
            double loss,
            boolean distance,
            FlatRegion flat,
            List<String> restsOn,
            List<Warning> ofImpact) {
        this.objective = objective;
        this.flight = flight;
        this.value = value;
        this.loss = loss;
        this.distance = distance;
        first = new Variable(one.name(), one.at(best[0]), one.at(flat.lowest(0)), one.at(flat.highest(0)), one.unit());
        second = new Variable(two.name(), two.at(best[1]), two.at(flat.lowest(1)), two.at(flat.highest(1)), two.unit());
        List<Point> points = new ArrayList<>();
        for (double[] p : flat.contour()) {
            points.add(new Point(one.at(p[0]), two.at(p[1])));
        }
        region = List.copyOf(points);
        this.restsOn = List.copyOf(restsOn);
        this.ofImpact = List.copyOf(ofImpact);
    }

    /**
     * What was made as great as possible.
     *
     * @return its name
     */
    public String objective() {
        return objective;
    }

    /**
     * The greatest value found.
     *
     * @return the value, metres for carry and total, else in the objective's own unit
     */
    public double value() {
        return value;
    }

    /**
     * The flight of the optimum; its launch is the launch.
     *
     * @return the flight
     */
    public Flight flight() {
        return flight;
    }

    /**
     * The first variable: launch angle, or dynamic loft.
     *
     * @return its best value and the interval of the flat region
     */
    public Variable first() {
        return first;
    }

    /**
     * The second variable: spin rate, or attack angle.
     *
     * @return its best value and the interval of the flat region
     */
    public Variable second() {
        return second;
    }

    /**
     * How much may be lost in the region.
     *
     * @return the loss, in the unit of {@link #value}
     */
    public double loss() {
        return loss;
    }

    /**
     * The contour around everything that loses at most {@link #loss}: points on rays from the optimum, 3 deg apart in shares of
     * the limits. Where the region goes beyond the limits, the contour follows them.
     *
     * @return the points in order around the optimum, unmodifiable
     */
    public List<Point> region() {
        return region;
    }

    /**
     * The limits that the optimum rests on: beyond them it would be better still.
     *
     * @return as in {@code lowest spin_rate}; empty if the optimum lies inside
     */
    public List<String> restsOn() {
        return restsOn;
    }

    /**
     * What to know: {@code rests-on-a-limit}, {@code loss-within-the-error}, what the flight warns of, and what an impact model
     * warns of at the optimum or on the contour.
     *
     * @return the warnings, unmodifiable
     */
    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>(flight.warnings());
        warnings.addAll(ofImpact);
        if (!restsOn.isEmpty()) {
            warnings.add(Warning.of(
                    "rests-on-a-limit",
                    "the optimum rests on the limits set: " + String.join(", ", restsOn)
                            + "; beyond them it would be better"));
        }
        double error = CARRY_ERROR * Math.abs(value);
        if (distance && loss < error) {
            warnings.add(Warning.of(
                    "loss-within-the-error",
                    String.format(
                            Locale.ROOT,
                            "the ball's own error can be worth more than the loss of %.1f yd: up to %.0f percent of carry on the"
                                    + " shots that the typical ball was fitted to, here %.1f yd; trust the region, not its middle",
                            Length.ofMeters(loss).yards(),
                            100.0 * CARRY_ERROR,
                            Length.ofMeters(error).yards())));
        }
        return List.copyOf(warnings);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s %.2f at %s, %s", objective, value, first, second);
    }

    /**
     * One variable at the optimum. Immutable and thread-safe.
     *
     * @param name the name, as in files
     * @param value its best value [SI]
     * @param lowest its least value anywhere in the flat region, with the best other variable for it [SI]
     * @param highest its greatest [SI]
     * @param unit the SI unit
     */
    public record Variable(String name, double value, double lowest, double highest, Unit unit) {
        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%s %.4g %s (%.4g to %.4g)", name, value, unit.symbol(), lowest, highest);
        }
    }

    /**
     * A point of the contour. Immutable and thread-safe.
     *
     * @param first the first variable [SI]
     * @param second the second variable [SI]
     */
    public record Point(double first, double second) {}
}
