package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.SmitsSmith1994;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Wind;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * The force sum against twenty vectors worked out in forty digits by another program (mpmath; the script lies beside the
 * file) from the written formulas. They check the arithmetic; the formulas have their sources in the documentation.
 */
class ForceSumVectorsTest {
    private static final String[] COLUMNS = {
        "case", "model", "drag_coefficient", "lift_coefficient", "density_kg_per_m3", "viscosity_pa_s", "mass_kg",
        "diameter_m", "inertia_factor", "velocity_x_mps", "velocity_y_mps", "velocity_z_mps", "wind_x_mps",
                "wind_y_mps",
        "wind_z_mps", "spin_rate_rad_per_s", "axis_x", "axis_y", "axis_z", "acceleration_x_mps2", "acceleration_y_mps2",
        "acceleration_z_mps2", "spin_rate_change_rad_per_s2"
    };

    @ParameterizedTest(name = "case {0}")
    @CsvFileSource(resources = "force_sum_vectors.csv", numLinesToSkip = 4)
    void agrees(ArgumentsAccessor row) {
        Map<String, String> cell = new HashMap<>();
        for (int i = 0; i < COLUMNS.length; i++) {
            cell.put(COLUMNS[i], row.getString(i));
        }
        double diameter = number(cell, "diameter_m");
        double mass = number(cell, "mass_kg");
        double inertia = number(cell, "inertia_factor") * mass * diameter * diameter / 4.0;
        assertEquals(0.0, number(cell, "wind_y_mps"), 0.0, "the equations know no vertical wind");
        FlightEquations equations = new FlightEquations(
                model(cell),
                mass,
                diameter,
                inertia,
                number(cell, "density_kg_per_m3"),
                number(cell, "viscosity_pa_s"),
                wind(number(cell, "wind_x_mps"), number(cell, "wind_z_mps")),
                9.80665);
        double[] state = new double[FlightEquations.STATE];
        state[FlightEquations.VX] = number(cell, "velocity_x_mps");
        state[FlightEquations.VY] = number(cell, "velocity_y_mps");
        state[FlightEquations.VZ] = number(cell, "velocity_z_mps");
        state[FlightEquations.SPIN] = number(cell, "spin_rate_rad_per_s");
        double[] axis = {number(cell, "axis_x"), number(cell, "axis_y"), number(cell, "axis_z")};
        double[] rates = new double[FlightEquations.RATES];
        equations.rates(state, axis, rates, 0);

        // Twenty roundings of double arithmetic on terms of this size, the cancellation against gravity included.
        double tolerance = 20.0 * Math.ulp(Math.max(10.0, Math.abs(rates[FlightEquations.VX])));
        assertEquals(number(cell, "acceleration_x_mps2"), rates[FlightEquations.VX], tolerance);
        assertEquals(number(cell, "acceleration_y_mps2"), rates[FlightEquations.VY], tolerance);
        assertEquals(number(cell, "acceleration_z_mps2"), rates[FlightEquations.VZ], tolerance);
        double spinChange = number(cell, "spin_rate_change_rad_per_s2");
        assertEquals(spinChange, rates[FlightEquations.SPIN], 20.0 * Math.ulp(spinChange));
    }

    private static double number(Map<String, String> cell, String column) {
        return Double.parseDouble(cell.get(column));
    }

    private static AerodynamicModel model(Map<String, String> cell) {
        return switch (cell.get("model")) {
            case "SmitsSmith1994" -> SmitsSmith1994.of();
            case "TypicalAerodynamics" -> TypicalAerodynamics.of();
            case "Constant" -> constant(number(cell, "drag_coefficient"), number(cell, "lift_coefficient"));
            default -> throw new AssertionError("no model " + cell.get("model"));
        };
    }

    private static AerodynamicModel constant(double drag, double lift) {
        return new AerodynamicModel() {
            @Override
            public double dragCoefficient(double re, double s) {
                return drag;
            }

            @Override
            public double liftCoefficient(double re, double s) {
                return lift;
            }
        };
    }

    private static Wind wind(double along, double right) {
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
