package dev.teeward.flight.study;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;

/** A function over a rectangle, seen in shares of its sides, and its highest point. */
final class Landscape {
    private static final int GRID = 13;
    private static final double FIRST_RADIUS = 0.05;
    private static final double LAST_RADIUS = 1e-7;

    /** A function that may have no value. */
    interface Height {
        OptionalDouble at(double x, double y);
    }

    private final Limits first;
    private final Limits second;
    private final Height height;

    Landscape(Limits first, Limits second, Height height) {
        this.first = first;
        this.second = second;
        this.height = height;
    }

    /** The height at shares of the sides; minus infinity where there is none. */
    double at(double u, double v) {
        return height.at(first.at(u), second.at(v)).orElse(Double.NEGATIVE_INFINITY);
    }

    /** The shares of the highest point. */
    double[] highest() {
        double[] best = {0.0, 0.0};
        double top = Double.NEGATIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        for (int i = 0; i < GRID; i++) {
            for (int j = 0; j < GRID; j++) {
                double u = i / (GRID - 1.0);
                double v = j / (GRID - 1.0);
                double value = at(u, v);
                if (value > top) {
                    top = value;
                    best = new double[] {u, v};
                }
                if (value > Double.NEGATIVE_INFINITY) {
                    bottom = Math.min(bottom, value);
                }
            }
        }
        if (top == Double.NEGATIVE_INFINITY) {
            throw new IllegalArgumentException("nothing within the limits of " + first.name() + " and " + second.name()
                    + " flies; widen them or raise the speed");
        }
        double floor = bottom;
        double[] refined = refined(best, floor);
        return snapped(at(refined[0], refined[1]) > top ? refined : best);
    }

    private double[] refined(double[] start, double floor) {
        try {
            return new BOBYQAOptimizer(5, FIRST_RADIUS, LAST_RADIUS)
                    .optimize(
                            new MaxEval(5_000),
                            GoalType.MAXIMIZE,
                            new ObjectiveFunction(p -> Math.max(floor, at(p[0], p[1]))),
                            new InitialGuess(start),
                            new SimpleBounds(new double[] {0.0, 0.0}, new double[] {1.0, 1.0}))
                    .getPoint();
        } catch (MathRuntimeException e) {
            return start; // a landscape of terraces stops the search; the grid's best point stands
        }
    }

    /** A point on a side instead of a hair's breadth beside it, if it is no lower there. */
    private double[] snapped(double[] point) {
        double[] best = point.clone();
        for (int k = 0; k < 2; k++) {
            double[] moved = best.clone();
            moved[k] = Math.rint(best[k]);
            if (Math.abs(moved[k] - best[k]) < 1e-4 && at(moved[0], moved[1]) >= at(best[0], best[1])) {
                best = moved;
            }
        }
        return best;
    }

    /** The sides on which a point lies and away from which it is lower. */
    List<String> pressedSides(double[] point) {
        List<String> sides = new ArrayList<>(2);
        for (int k = 0; k < 2; k++) {
            if (point[k] > 0.0 && point[k] < 1.0) {
                continue;
            }
            double[] inward = point.clone();
            inward[k] = Math.abs(point[k] - 0.01);
            if (at(inward[0], inward[1]) < at(point[0], point[1])) {
                sides.add((point[k] > 0.5 ? "highest " : "lowest ") + (k == 0 ? first : second).name());
            }
        }
        return sides;
    }
}
