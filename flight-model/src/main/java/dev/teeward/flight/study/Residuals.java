package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.Trajectory;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Model less observation, over the standard deviation of the observation, row by row over all flights, each row with its
 * weight, and whitened if the launches have errors. Total and run have no rows: they depend on the turf as much as on the flight.
 */
final class Residuals {
    /** What a flight counts that a set of parameters keeps from landing: more than any step can gain. */
    private static final double NO_FLIGHT = 1e3;

    private final List<ObservedFlight> flights;
    private final Map<FlightOutput, Double> deviations;
    private final double trackDeviation;
    private final int[] flightOfRow;
    private final String[] whatOfRow;

    /** How the rows count, flight by flight. */
    private final List<FlightRows> counting;

    private final boolean whitened;

    Residuals(List<ObservedFlight> flights, Map<FlightOutput, Double> deviations, double trackDeviation) {
        this(
                flights,
                deviations,
                trackDeviation,
                flights.stream()
                        .map(seen -> FlightRows.of(rows(seen), new double[0][]))
                        .toList(),
                false);
    }

    private Residuals(
            List<ObservedFlight> flights,
            Map<FlightOutput, Double> deviations,
            double trackDeviation,
            List<FlightRows> counting,
            boolean whitened) {
        this.counting = counting;
        this.whitened = whitened;
        this.flights = flights;
        this.deviations = deviations;
        this.trackDeviation = trackDeviation;
        List<Integer> owners = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < flights.size(); i++) {
            for (FlightOutput output : fitted(flights.get(i))) {
                owners.add(i);
                names.add(output.key());
            }
            for (int k = 0; k < 3 * flights.get(i).track().size(); k++) {
                owners.add(i);
                names.add("track");
            }
        }
        flightOfRow = owners.stream().mapToInt(Integer::intValue).toArray();
        whatOfRow = names.toArray(new String[0]);
    }

    private static List<FlightOutput> fitted(ObservedFlight seen) {
        return seen.outputs().stream().filter(o -> !o.needsGround()).toList();
    }

    /** How many rows a flight has. */
    static int rows(ObservedFlight seen) {
        return fitted(seen).size() + 3 * seen.track().size();
    }

    /** The same with the errors of the launches taken out, as they are with a model; the weights stay. */
    Residuals whitened(LaunchErrors errors, AerodynamicModel model) {
        List<FlightRows> changed = new ArrayList<>();
        for (int i = 0; i < flights.size(); i++) {
            ObservedFlight seen = flights.get(i);
            changed.add(FlightRows.of(rows(seen), errors.effects(seen, this, model))
                    .weighed(counting.get(i).weights()));
        }
        return new Residuals(flights, deviations, trackDeviation, changed, true);
    }

    /** The same with other weights of all rows. */
    Residuals weighed(double[] weights) {
        List<FlightRows> changed = new ArrayList<>();
        int row = 0;
        for (FlightRows own : counting) {
            int many = own.weights().length;
            changed.add(own.weighed(Arrays.copyOfRange(weights, row, row + many)));
            row += many;
        }
        return new Residuals(flights, deviations, trackDeviation, changed, whitened);
    }

    /** The same with every row counting in full. */
    Residuals unweighed() {
        double[] full = new double[rows()];
        Arrays.fill(full, 1.0);
        return weighed(full);
    }

    boolean isWhitened() {
        return whitened;
    }

    double[] weights() {
        return counting.stream()
                .flatMapToDouble(own -> Arrays.stream(own.weights()))
                .toArray();
    }

    /** How many numbers were seen that have no row. */
    int unused() {
        return flights.stream()
                .mapToInt(seen -> seen.outputs().size() - fitted(seen).size())
                .sum();
    }

    int rows() {
        return flightOfRow.length;
    }

    int flight(int row) {
        return flightOfRow[row];
    }

    /** The flight's name or number, and what was seen. */
    String describe(int row) {
        ObservedFlight seen = flights.get(flightOfRow[row]);
        String name = seen.name().isEmpty() ? "flight " + (flightOfRow[row] + 1) : seen.name();
        return name + " (" + whatOfRow[row] + ")";
    }

    /** The rows of the fit: weighted and whitened. */
    double[] of(AerodynamicModel model) {
        double[] out = new double[rows()];
        int row = 0;
        for (int i = 0; i < flights.size(); i++) {
            int many = rows(flights.get(i));
            try {
                double[] own = of(flights.get(i), flights.get(i).launch(), model);
                System.arraycopy(counting.get(i).whitened(own), 0, out, row, many);
            } catch (FlightException e) {
                Arrays.fill(out, row, row + many, NO_FLIGHT);
            }
            row += many;
        }
        return out;
    }

    /** Flight by flight, model less observation over the standard deviation of the observation. */
    List<double[]> raw(AerodynamicModel model) {
        return flights.stream()
                .map(seen -> {
                    try {
                        return of(seen, seen.launch(), model);
                    } catch (FlightException e) {
                        double[] none = new double[rows(seen)];
                        Arrays.fill(none, NO_FLIGHT);
                        return none;
                    }
                })
                .toList();
    }

    /** {@link FlightRows#judged} for the {@link #raw} rows of all flights. */
    double[] judged(List<double[]> raw) {
        double[] out = new double[rows()];
        int row = 0;
        for (int i = 0; i < counting.size(); i++) {
            double[] own = counting.get(i).judged(raw.get(i));
            System.arraycopy(own, 0, out, row, own.length);
            row += own.length;
        }
        return out;
    }

    /** {@link FlightRows#weights(RobustLoss, double, double[])} for the {@link #raw} rows of all flights. */
    double[] weights(RobustLoss loss, double scale, List<double[]> raw) {
        double[] out = new double[rows()];
        int row = 0;
        for (int i = 0; i < counting.size(); i++) {
            double[] own = counting.get(i).weights(loss, scale, raw.get(i));
            System.arraycopy(own, 0, out, row, own.length);
            row += own.length;
        }
        return out;
    }

    /** {@link FlightRows#squares} for the {@link #raw} rows of all flights. */
    double squares(List<double[]> raw) {
        double sum = 0.0;
        for (int i = 0; i < counting.size(); i++) {
            sum += counting.get(i).squares(raw.get(i));
        }
        return sum;
    }

    /** The rows of one flight from a launch, neither weighted nor whitened. */
    double[] of(ObservedFlight seen, LaunchConditions launch, AerodynamicModel model) {
        FlightModel conditions = seen.conditions();
        Flight flight =
                conditions.withBall(conditions.ball().withAerodynamics(model)).fly(launch);
        double[] out = new double[rows(seen)];
        int row = 0;
        for (FlightOutput output : fitted(seen)) {
            double deviation = Objects.requireNonNullElse(deviations.get(output), output.standardDeviation());
            out[row++] = (output.of(flight) - seen.value(output).orElseThrow()) / deviation;
        }
        Trajectory path = flight.trajectory();
        for (ObservedFlight.TrackPoint p : seen.track()) {
            // A ball that the model has landed already is carried on along its last velocity, so that the misfit stays
            // smooth.
            double time = Math.min(p.timeSeconds(), path.durationSeconds());
            double after = p.timeSeconds() - time;
            Trajectory.Point at = path.at(time);
            out[row++] =
                    (at.downrange().meters() + after * at.velocityDownrange().metersPerSecond() - p.downrange())
                            / trackDeviation;
            out[row++] =
                    (at.height().meters() + after * at.velocityUp().metersPerSecond() - p.height()) / trackDeviation;
            out[row++] =
                    (at.side().meters() + after * at.velocityRight().metersPerSecond() - p.side()) / trackDeviation;
        }
        return out;
    }
}
