package dev.teeward.flight.aero;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** The fourteen calibration shots: common practice, recalled from memory, smoothed and rounded. */
final class TypicalShots {
    private TypicalShots() {}

    record Shot(String name, double mph, double launch, double rpm, double apex, double descent, double carry) {
        HandFlight fly(AerodynamicModel model) {
            return HandFlight.of(model, HandFlight.Air.CALIBRATION, mph * HandFlight.MPH, launch, rpm);
        }

        Residual residual(AerodynamicModel model) {
            HandFlight flight = fly(model);
            return new Residual(
                    100.0 * (flight.carryYards() / carry - 1.0), flight.apexYards() - apex, flight.descent() - descent);
        }
    }

    /**
     * Computed minus typical.
     *
     * @param carry [percent]
     * @param apex [yd]
     * @param descent [deg]
     */
    record Residual(double carry, double apex, double descent) {}

    static List<Shot> read() {
        List<Shot> shots = new ArrayList<>();
        for (String[] c : rows("typical_shots_calibration.csv")) {
            shots.add(
                    new Shot(c[0], number(c[1]), number(c[2]), number(c[3]), number(c[4]), number(c[5]), number(c[6])));
        }
        return shots;
    }

    /** What the calibration script found when it left each shot out. */
    static List<Residual> leftOut() {
        List<Residual> residuals = new ArrayList<>();
        for (String[] c : rows("typical_aerodynamics_left_out.csv")) {
            residuals.add(new Residual(number(c[1]), number(c[2]), number(c[3])));
        }
        return residuals;
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    /** The rows below the heading; no cell before the last one holds a comma. */
    private static List<String[]> rows(String name) {
        try (InputStream stream = Objects.requireNonNull(TypicalShots.class.getResourceAsStream(name), name);
                BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
