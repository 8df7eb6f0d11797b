package dev.teeward.flight.aero;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.TypicalShots.Shot;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.quantity.Temperature;
import org.junit.jupiter.api.Test;

/** The calibration shots through the flight model as a user meets it, against a flight from the written formulas. */
class StandardModelTest {
    @Test
    void theDefaultModelFliesTheCalibrationShotsAsWorkedOutByHand() {
        // Pressure of the sea level atmosphere, 20 C and 50 percent humidity: 1.19931 kg/m3 in the hand flights.
        FlightModel model = FlightModel.standard()
                .withAir(Atmosphere.seaLevel()
                        .withTemperature(Temperature.ofCelsius(20.0))
                        .withRelativeHumidity(0.5));
        assertEquals(HandFlight.Air.CALIBRATION.density(), model.air().density(), 5e-5);
        for (Shot shot : TypicalShots.read()) {
            Flight flight = model.fly(LaunchConditions.builder()
                    .ballSpeed(mph(shot.mph()))
                    .launchAngle(degrees(shot.launch()))
                    .spinRate(rpm(shot.rpm()))
                    .build());
            HandFlight hand = shot.fly(TypicalAerodynamics.of());
            // The density of either is rounded to 1e-5 and the carry moves by less than half its share: 5 mm.
            assertEquals(hand.carry(), flight.carry().meters(), 5e-3, shot.name());
            assertEquals(hand.apex(), flight.apex().meters(), 5e-3, shot.name());
            assertEquals(hand.descent(), flight.descentAngle().degrees(), 5e-3, shot.name());
            assertEquals(hand.spinShare() * shot.rpm(), flight.landingSpin().rpm(), 0.1, shot.name());
        }
    }
}
