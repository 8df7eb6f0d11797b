package dev.teeward.flight.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Accuracy;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The examples of the documentation of this package, as they stand there. */
class BatchExamplesTest {
    @Test
    void packageExample() {
        double[] speeds = {70.0, 55.0, 45.0};
        double[] angles = {0.20, 0.28, 0.42};
        double[] spins = {280.0, 520.0, 900.0};
        double[] tilts = {0.05, 0.0, -0.08};

        LaunchTable launches = LaunchTable.builder()
                .ballSpeed(speeds)
                .launchAngle(angles)
                .spinRate(spins)
                .axisTilt(tilts)
                .build();
        FlightTable flights = FlightBatch.of(FlightModel.standard().withAccuracy(Accuracy.MILLIMETER))
                .withThreads(2)
                .fly(launches);
        double[] carries = flights.carry();

        assertEquals(3, flights.landed());
        FlightModel model = FlightModel.standard().withAccuracy(Accuracy.MILLIMETER);
        for (int row = 0; row < 3; row++) {
            LaunchConditions one = LaunchConditions.builder()
                    .ballSpeed(Speed.ofMetersPerSecond(speeds[row]))
                    .launchAngle(Angle.ofRadians(angles[row]))
                    .spinRate(SpinRate.ofRadiansPerSecond(spins[row]))
                    .axisTilt(Angle.ofRadians(tilts[row]))
                    .build();
            assertEquals(model.fly(one).carry().meters(), carries[row]);
        }
    }

    @Test
    void exampleOfATableWithOneColumn() {
        LaunchTable launches = LaunchTable.builder().rows(8).build();
        Arrays.fill(launches.ballSpeed(), 60.0);
        Arrays.fill(launches.launchAngle(), 0.25);
        Arrays.fill(launches.spinRate(), 400.0);
        double[] myArray = new double[8];
        FlightBatch batch = FlightBatch.of(FlightModel.standard());

        FlightTable flights =
                FlightTable.builder(launches.rows()).carry(myArray).build();
        batch.fly(launches, flights);

        assertTrue(flights.status(7).landed());
        assertEquals(myArray[0], myArray[7]);
        assertEquals(myArray[7], flights.carry()[7]);
    }
}
