package dev.teeward.flight;

import dev.teeward.flight.aero.ModelDomain;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.FlightPath;
import dev.teeward.flight.internal.ReverseLift;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Locale;

/** Compares Reynolds number and spin ratio along a flight with the domain of the aerodynamic model. */
final class DomainCheck {
    private final String name;
    private final double low;
    private final double high;
    private double least = Double.POSITIVE_INFINITY;
    private double most;
    private double secondsOutside;

    private DomainCheck(String name, double low, double high) {
        this.name = name;
        this.low = low;
        this.high = high;
    }

    static void add(FlightPath path, FlightEquations equations, ModelDomain domain, List<Warning> warnings) {
        DomainCheck reynolds = new DomainCheck("Reynolds number", domain.minRe(), domain.maxRe());
        DomainCheck ratio = new DomainCheck("spin ratio", domain.minS(), domain.maxS());
        for (int knot = 0; knot <= path.steps() && path.time(knot) <= path.endTime(); knot++) {
            // Each end of a step stands for half of the step before and half of the step after it.
            double before = knot == 0 ? 0.0 : path.time(knot) - path.time(knot - 1);
            double after = knot == path.steps() ? 0.0 : Math.min(path.time(knot + 1), path.endTime()) - path.time(knot);
            boolean last = knot == path.steps() || path.time(knot + 1) > path.endTime();
            double seconds = before / 2.0 + (last ? after : after / 2.0);
            double speed = path.airSpeed(knot);
            reynolds.see(equations.reynolds(speed), seconds);
            ratio.see(equations.radius() * path.spin(knot) / speed, seconds);
        }
        reynolds.report("reynolds-outside-model", path.endTime(), warnings);
        ratio.report("spin-ratio-outside-model", path.endTime(), warnings);
    }

    /** Warns of a launch where some balls are pushed down by backspin: Lyu, Kensrud, Smith 2020, abstract. */
    static void addReverseLift(FlightPath path, FlightEquations equations, List<Warning> warnings) {
        double speed = path.airSpeed(0);
        double re = equations.reynolds(speed);
        double s = equations.radius() * path.spin(0) / speed;
        if (ReverseLift.possible(re, s)) {
            warnings.add(Warning.of(
                    "reverse-lift-possible",
                    String.format(
                            Locale.ROOT,
                            "launched at Reynolds number %.3g and spin ratio %.3g, where backspin pushes some balls down instead"
                                    + " of lifting them",
                            re,
                            s)));
        }
    }

    private void see(double value, double seconds) {
        least = Math.min(least, value);
        most = Math.max(most, value);
        if (!(value >= low && value <= high)) {
            secondsOutside += seconds;
        }
    }

    private void report(String code, double flightTime, List<Warning> warnings) {
        if (least >= low && most <= high) {
            return;
        }
        warnings.add(Warning.of(
                code,
                String.format(
                        Locale.ROOT,
                        "the %s went from %.3g to %.3g, but the aerodynamic model covers %.3g to %.3g; outside for %.0f %% of"
                                + " the flight time",
                        name,
                        least,
                        most,
                        low,
                        high,
                        100.0 * secondsOutside / flightTime)));
    }
}
