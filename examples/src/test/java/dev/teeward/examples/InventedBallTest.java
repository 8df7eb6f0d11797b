package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.AerodynamicModelContract;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** A model of one's own: the contract of the library's test-jar, a value by hand, and a flight. */
class InventedBallTest extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return new InventedBall();
    }

    @Test
    void givesItsFormulas() {
        assertEquals(0.22 + 0.05, model().dragCoefficient(1e5, 0.25), 1e-15);
        assertEquals(0.2, model().liftCoefficient(1e5, 0.25), 1e-15);
    }

    @Test
    void fliesAndSaysWhereItLeavesItsRange() {
        Flight flight =
                FlightModel.of(Ball.of(model())).fly(ModelSpread.SHOTS.get(2).launch());
        // Common practice, no source: a 6-iron at 118 mph carries somewhat more than 150 yd.
        assertTrue(flight.carry().yards() > 140.0 && flight.carry().yards() < 190.0, flight::toString);
        assertTrue(
                flight.warnings().stream().anyMatch(w -> w.code().equals("reynolds-outside-model")),
                () -> flight.warnings().toString());
    }

    @Test
    void isShort() throws IOException {
        Path source = Path.of("src", "main", "java", "dev", "teeward", "examples", "InventedBall.java");
        assertTrue(Files.readAllLines(source, StandardCharsets.UTF_8).size() < 60);
    }
}
