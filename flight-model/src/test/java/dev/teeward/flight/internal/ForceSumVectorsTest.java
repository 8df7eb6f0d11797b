package dev.teeward.flight.internal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.flight.air.Wind;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * The force sum against twenty states worked out from the written formulas by another program, in 40 digits: {@code
 * force_sum_vectors.py}, Python with mpmath, beside its result. The coefficients are taken from the file, so that only the
 * sum is judged here.
 */
class ForceSumVectorsTest {
    /** Some twenty rounded operations, and a floor of 1e-6 m/s under the speed, which is 1e-15 of its square at 30 m/s. */
    private static final double RELATIVE = 1e-13;

    @Test
    void theForceSumAgreesWithTwentyVectors() throws IOException {
        List<Map<String, String>> rows = rows();
        assertEquals(20, rows.size());
        for (Map<String, String> row : rows) {
            double mass = number(row, "mass_kg");
            double diameter = number(row, "diameter_m");
            assertEquals(0.0, number(row, "wind_y_mps"), "vertical wind is not modelled");
            FlightEquations equations = new FlightEquations(
                    FlightEquationsTest.constant(
                            number(row, "drag_coefficient"), number(row, "lift_coefficient"), 0.010),
                    mass,
                    diameter,
                    number(row, "inertia_factor") * mass * diameter * diameter / 4.0,
                    number(row, "density_kg_per_m3"),
                    number(row, "viscosity_pa_s"),
                    steady(number(row, "wind_x_mps"), number(row, "wind_z_mps")),
                    9.80665);
            double[] state = {
                number(row, "velocity_x_mps"),
                number(row, "velocity_y_mps"),
                number(row, "velocity_z_mps"),
                number(row, "spin_rate_rad_per_s"),
                0.0,
                0.0,
                0.0
            };
            double[] axis = {number(row, "axis_x"), number(row, "axis_y"), number(row, "axis_z")};
            double[] rates = new double[FlightEquations.RATES];
            equations.rates(state, axis, rates, 0);
            check(row, "acceleration_x_mps2", rates[FlightEquations.VX], 30.0);
            check(row, "acceleration_y_mps2", rates[FlightEquations.VY], 30.0);
            check(row, "acceleration_z_mps2", rates[FlightEquations.VZ], 30.0);
            check(row, "spin_rate_change_rad_per_s2", rates[FlightEquations.SPIN], 30.0);
        }
    }

    /** Relative to a typical size, because the components are differences of larger terms. */
    private static void check(Map<String, String> row, String column, double actual, double size) {
        assertEquals(number(row, column), actual, RELATIVE * size, () -> "case " + row.get("case") + ", " + column);
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(Objects.requireNonNull(row.get(column), column));
    }

    private static List<Map<String, String>> rows() throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(
                        ForceSumVectorsTest.class.getResourceAsStream("force_sum_vectors.csv"), "vectors"),
                UTF_8))) {
            List<String> lines =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            String[] names = lines.get(0).split(",", -1);
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                Map<String, String> row = new HashMap<>();
                for (int i = 0; i < names.length; i++) {
                    row.put(names[i], cells[i]);
                }
                rows.add(row);
            }
        }
        return rows;
    }

    private static Wind steady(double along, double right) {
        return new Wind() {
            @Override
            public double alongTarget(double height) {
                return along;
            }

            @Override
            public double towardsRight(double height) {
                return right;
            }
        };
    }
}
