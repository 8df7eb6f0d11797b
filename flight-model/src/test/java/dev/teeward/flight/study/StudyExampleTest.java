package dev.teeward.flight.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The program of the package text, run. */
class StudyExampleTest {
    @Test
    void packageExample() {
        LaunchConditions launch = SensitivityTest.launch(52.8, 17.2, -1.2, 6_400.0, -4.0);
        List<ObservedFlight> flights =
                SyntheticFlights.of(SyntheticFlights.ball(1.02, 0.99), 6, 1.0, new SplittableRandom(1L));
        List<ObservedFlight> otherFlights =
                SyntheticFlights.of(SyntheticFlights.ball(1.02, 0.99), 6, 1.0, new SplittableRandom(2L));

        FlightModel model = FlightModel.standard();
        assertTrue(ReferenceFlight.withDefaults().fly(model, launch).error().millimeters() < 0.1);

        Sensitivity.Result s = Sensitivity.of(model).at(launch);
        double perMph =
                s.derivative(FlightOutput.CARRY, LengthUnit.YARD, FlightInput.BALL_SPEED, SpeedUnit.MILE_PER_HOUR);
        // Williams 1959 (quoted from memory): 1.5 yd for every ft/s of a drive, 2.2 yd for a mph; an iron gains less.
        assertTrue(perMph > 1.0 && perMph < 2.2, () -> perMph + " yd per mph");
        Estimate carry = TolerancePropagation.withDefaults()
                .linear(s, Tolerances.none().with(FlightInput.BALL_SPEED, 0.3).with(FlightInput.SPIN_RATE, 20.0))
                .estimate(FlightOutput.CARRY);
        assertTrue(carry.interval().contains(model.fly(launch).carry().meters()));

        CalibrationResult own = Calibration.withDefaults().fit(ParametricAerodynamics.ball(), flights);
        String table = Validation.withDefaults()
                .with("typical", TypicalAerodynamics.of())
                .with("own ball", own.model())
                .compare(otherFlights)
                .markdown();
        assertEquals(2, table.lines().filter(l -> l.contains("| all | carry")).count());
    }
}
