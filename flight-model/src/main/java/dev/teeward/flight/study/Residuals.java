package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.Trajectory;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Model less observation, over the standard deviation of the observation, row by row over all flights. */
final class Residuals {
    /** What a flight counts that a set of parameters keeps from landing: more than any step can gain. */
    private static final double NO_FLIGHT = 1e3;

    private final List<ObservedFlight> flights;
    private final Map<FlightOutput, Double> deviations;
    private final double trackDeviation;
    private final int[] flightOfRow;
    private final String[] whatOfRow;

    Residuals(List<ObservedFlight> flights, Map<FlightOutput, Double> deviations, double trackDeviation) {
        this.flights = flights;
        this.deviations = deviations;
        this.trackDeviation = trackDeviation;
        List<Integer> owners = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < flights.size(); i++) {
            for (FlightOutput output : flights.get(i).outputs()) {
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

    double[] of(AerodynamicModel model) {
        double[] out = new double[rows()];
        int row = 0;
        for (ObservedFlight seen : flights) {
            int many = seen.outputs().size() + 3 * seen.track().size();
            FlightModel conditions = seen.conditions();
            try {
                Flight flight = conditions
                        .withBall(conditions.ball().withAerodynamics(model))
                        .fly(seen.launch());
                fill(seen, flight, out, row);
            } catch (FlightException e) {
                Arrays.fill(out, row, row + many, NO_FLIGHT);
            }
            row += many;
        }
        return out;
    }

    private void fill(ObservedFlight seen, Flight flight, double[] out, int from) {
        int row = from;
        for (FlightOutput output : seen.outputs()) {
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
    }
}
