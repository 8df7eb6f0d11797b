package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A measured carry or apex that contradicts the launch of the same shot.
 *
 * <p>The flight model flies each measured launch in the air of the session. What it is off by on the whole, because the ball,
 * the air or the device differ, is the median of measured / computed - 1 over all shots; a shot farther from that median
 * than the limit contradicts itself. The limit is the largest of 10 % (apex 20 %), five robust standard deviations of the
 * shots, and three tolerances of the device; differences below 5 m (apex 3 m) never count. All are choices of this library:
 * usual tolerances of launch readings move the carry by 2 to 3 % (common practice, no source).
 */
final class FlightRule {
    private static final double SPREAD_SD = 5.0;
    private static final double TOLERANCE_SD = 3.0;

    private FlightRule() {}

    static void apply(Screening screening, FlightModel model, Set<Metric> left) {
        List<Metric> checked = Stream.of(Metric.CARRY, Metric.APEX)
                .filter(metric -> !left.contains(metric))
                .toList();
        int[] candidates = screening.used();
        for (Metric metric : List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE)) {
            candidates = Screening.present(candidates, screening.measured(metric));
        }
        candidates = Screening.present(candidates, either(screening, checked));
        if (candidates.length == 0) {
            return;
        }
        SessionFlights flights;
        try {
            flights = SessionFlights.of(screening.session(), model);
        } catch (IllegalArgumentException e) {
            screening.warn("air-unknown", "carry was not checked against launch: " + e.getMessage());
            return;
        }
        double[] carries = new double[candidates.length];
        double[] heights = new double[candidates.length];
        for (int k = 0; k < candidates.length; k++) {
            Flight flight = fly(flights, screening.shot(candidates[k])).orElse(null);
            carries[k] = flight == null ? Double.NaN : flight.carry().meters();
            heights[k] = flight == null ? Double.NaN : flight.apex().meters();
        }
        if (checked.contains(Metric.CARRY)) {
            compare(screening, Metric.CARRY, candidates, carries, 0.10, 5.0);
        }
        if (checked.contains(Metric.APEX)) {
            compare(screening, Metric.APEX, candidates, heights, 0.20, 3.0);
        }
    }

    /** A number for every shot with a measured reading of one of the metrics. */
    private static double[] either(Screening screening, List<Metric> metrics) {
        double[] either = new double[screening.session().shots().size()];
        Arrays.fill(either, Double.NaN);
        for (Metric metric : metrics) {
            double[] measured = screening.measured(metric);
            for (int i = 0; i < either.length; i++) {
                either[i] = Double.isNaN(measured[i]) ? either[i] : measured[i];
            }
        }
        return either;
    }

    private static Optional<Flight> fly(SessionFlights flights, Shot shot) {
        try {
            return flights.fly(shot).filter(f -> f.carry().meters() > 0.0);
        } catch (FlightException e) {
            return Optional.empty();
        }
    }

    private static void compare(
            Screening screening, Metric metric, int[] shots, double[] computed, double share, double least) {
        double[] measured = screening.measured(metric);
        double[] ratios = new double[shots.length];
        int[] places = new int[shots.length];
        int count = 0;
        for (int k = 0; k < shots.length; k++) {
            if (!Double.isNaN(measured[shots[k]]) && computed[k] > 0.0) {
                ratios[count] = measured[shots[k]] / computed[k] - 1.0;
                places[count++] = k;
            }
        }
        if (count == 0) {
            return;
        }
        if (count < Screening.FEWEST) {
            screening.warn(
                    "too-few-shots",
                    metric.label() + " cannot be checked against launch with " + count + " shots; it needs "
                            + Screening.FEWEST);
            return;
        }
        double[] off = Arrays.copyOf(ratios, count);
        double centre = Screening.median(off);
        double spread = SPREAD_SD * Screening.robustSd(off);
        OptionalDouble tolerance = screening.session().tolerance(metric);
        for (int j = 0; j < off.length; j++) {
            int k = places[j];
            double expected = computed[k] * (1.0 + centre);
            double value = measured[shots[k]];
            double limit = Math.max(Math.max(share, spread), TOLERANCE_SD * tolerance.orElse(0.0) / computed[k]);
            double apart = Math.abs(off[j] - centre);
            if (apart > limit && Math.abs(value - expected) > least) {
                screening.rule(
                        shots[k],
                        metric.label() + " against launch",
                        List.of(metric, Metric.BALL_SPEED, Metric.LAUNCH_ANGLE, Metric.SPIN_RATE),
                        Screening.format(
                                "%s %s contradicts the launch, from which %s is computed in this air (after %+.1f %%, by"
                                        + " which the shots are off on the whole): %.1f %% apart, and %.1f %% is the limit",
                                metric.label(),
                                Screening.words(metric, value),
                                Screening.words(metric, expected),
                                100.0 * centre,
                                100.0 * apart,
                                100.0 * limit),
                        apart,
                        limit);
            }
        }
    }
}
