package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.rpm;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.internal.FlightEquations;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The default model from launch to landing against flights that another program worked out from the written formulas:
 * {@code default_flight_landings.py}, Python with SciPy, DOP853 at tolerances 1e-11, beside its result.
 */
class DefaultFlightTest {
    private static final double STANDARD_DENSITY = 1.225;

    /** The promise of the flight model [m]. */
    private static final double BOUND = 1e-4;

    @Test
    void landingsAreThoseOfAnotherProgram() throws IOException {
        List<Map<String, Double>> rows = rows();
        assertEquals(12, rows.size());
        for (Map<String, Double> row : rows) {
            Flight flight = model(row).fly(launch(row));
            assertEquals(of(row, "carry_x"), flight.landing().downrange().meters(), BOUND, row::toString);
            assertEquals(of(row, "side_z"), flight.side().meters(), BOUND, row::toString);
            assertEquals(of(row, "apex"), flight.apex().meters(), BOUND, row::toString);
            assertEquals(of(row, "time"), flight.flightTimeSeconds(), 1e-5, row::toString);
            assertEquals(of(row, "landing_rpm"), flight.landingSpin().rpm(), 1e-2, row::toString);
        }
    }

    /** Standard air and gravity are those of the model unless the row has others, so that the defaults are judged too. */
    private static FlightModel model(Map<String, Double> row) {
        FlightModel model = FlightModel.standard();
        AirState standard = model.air();
        double density = of(row, "density");
        double viscosity = of(row, "viscosity");
        // ISO 2533 and its viscosity at 15 C, 1.7894e-5 Pa s; everything else is other air.
        if (density != STANDARD_DENSITY || Math.abs(viscosity - 1.7894e-5) > 1e-9) {
            model = model.withAir(AirState.of(density, viscosity));
        } else {
            assertEquals(density, standard.density(), 1e-6);
        }
        if (of(row, "gravity") != 9.80665) {
            model = model.withGravity(of(row, "gravity"));
        }
        if (of(row, "inertia") > 9e-6) {
            model = model.withBall(model.ball().withMomentOfInertia(of(row, "inertia")));
        }
        if (of(row, "wind") > 0.0) {
            model = model.withWind(Wind.from(degrees(of(row, "wind_from")), metersPerSecond(of(row, "wind"))));
        }
        return model.withLandingElevation(meters(of(row, "elevation")));
    }

    private static LaunchConditions launch(Map<String, Double> row) {
        return LaunchConditions.builder()
                .ballSpeed(metersPerSecond(of(row, "speed")))
                .launchAngle(degrees(of(row, "up")))
                .startDirection(degrees(of(row, "right")))
                .spinRate(rpm(of(row, "rpm")))
                .axisTilt(degrees(of(row, "tilt")))
                .build();
    }

    /** Closed form: range v^2 sin 2t / g and apex (v sin t)^2 / 2g, under the gravity of the moon and without air. */
    @Test
    void gravityOfOnesOwnIsTheOneFlownUnder() {
        double g = 1.62;
        double v = 40.0;
        Flight flight = FlightModel.standard()
                .withAir(AirState.of(0.0, 1.8e-5))
                .withGravity(g)
                .fly(LaunchConditions.builder()
                        .ballSpeed(metersPerSecond(v))
                        .launchAngle(degrees(25.0))
                        .spinRate(rpm(5000.0))
                        .build());
        double angle = Math.toRadians(25.0);
        assertEquals(v * v * Math.sin(2.0 * angle) / g, flight.carry().meters(), 1e-7);
        assertEquals(
                Math.pow(v * Math.sin(angle), 2.0) / (2.0 * g), flight.apex().meters(), 1e-7);
        assertEquals(2.0 * v * Math.sin(angle) / g, flight.flightTimeSeconds(), 1e-8);
    }

    @Test
    void theSpinAxisIsAUnitVectorPerpendicularToTheLaunch() {
        SplittableRandom random = new SplittableRandom(20L);
        for (int i = 0; i < 2000; i++) {
            double v = random.nextDouble(1.0, 110.0);
            LaunchVectors vectors = LaunchVectors.of(LaunchConditions.builder()
                    .ballSpeed(metersPerSecond(v))
                    .launchAngle(degrees(random.nextDouble(-90.0, 90.0)))
                    .startDirection(degrees(random.nextDouble(-90.0, 90.0)))
                    .spinRate(rpm(3000.0))
                    .axisTilt(degrees(random.nextDouble(-180.0, 180.0)))
                    .build());
            double[] axis = vectors.axis();
            double[] state = vectors.state();
            // A dozen rounded operations on numbers below 1.
            assertEquals(1.0, Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1] + axis[2] * axis[2]), 1e-15 * 4);
            double along = axis[0] * state[FlightEquations.VX]
                    + axis[1] * state[FlightEquations.VY]
                    + axis[2] * state[FlightEquations.VZ];
            assertEquals(0.0, along / v, 1e-15 * 4);
        }
    }

    /** The window of Lyu, Kensrud, Smith 2020, Sports Engineering 23, abstract; full shots stay quiet. */
    @Test
    void aLaunchWhereReverseLiftWasMeasuredIsAWarning() {
        double[][] inside = {{20.0, 1500.0}, {22.0, 2000.0}, {25.0, 1200.0}};
        double[][] outside = {
            {16.0, 1200.0}, {27.0, 2000.0}, {22.0, 5000.0}, {22.0, 500.0}, {40.0, 9000.0}, {70.0, 2600.0}
        };
        for (double[] shot : inside) {
            assertEquals(1, reverseLift(shot), () -> shot[0] + " m/s");
        }
        for (double[] shot : outside) {
            assertEquals(0, reverseLift(shot), () -> shot[0] + " m/s");
        }
    }

    private static long reverseLift(double[] shot) {
        Flight flight = FlightModel.standard()
                .fly(LaunchConditions.builder()
                        .ballSpeed(metersPerSecond(shot[0]))
                        .launchAngle(degrees(20.0))
                        .spinRate(rpm(shot[1]))
                        .build());
        return flight.warnings().stream()
                .filter(warning -> warning.code().equals("reverse-lift-possible"))
                .count();
    }

    private static double of(Map<String, Double> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static List<Map<String, Double>> rows() throws IOException {
        List<Map<String, Double>> rows = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(
                        DefaultFlightTest.class.getResourceAsStream("default_flight_landings.csv"), "landings"),
                UTF_8))) {
            List<String> lines =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            String[] names = lines.get(0).split(",", -1);
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                Map<String, Double> row = new HashMap<>();
                for (int i = 0; i < names.length; i++) {
                    row.put(names[i], Double.parseDouble(cells[i]));
                }
                rows.add(row);
            }
        }
        return rows;
    }
}
