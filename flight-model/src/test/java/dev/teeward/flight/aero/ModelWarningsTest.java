package dev.teeward.flight.aero;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.Trajectory;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Whatever the model, a flight that leaves its measured range says so, and one that does not, does not. */
class ModelWarningsTest {
    private static final List<AerodynamicModel> MODELS = List.of(
            TypicalAerodynamics.of(),
            SmitsSmith1994.of(),
            Davies1949.of(),
            AerodynamicModel.combining(Williams1959.of(), Lyu2018.of()),
            AerodynamicModel.combining(TypicalAerodynamics.of(), Us6729976.liftBySpinRatio()),
            AerodynamicModel.scaled(TypicalAerodynamics.of(), 1.1, 0.9),
            TableAerodynamics.sampling(
                    TypicalAerodynamics.of(), new double[] {6e4, 1e5, 2.5e5}, new double[] {0.05, 0.2, 0.9}));

    @Test
    void everyModelKnowsItsRange() {
        for (AerodynamicModel model : MODELS) {
            assertNotEquals(ModelDomain.unbounded(), model.domain(), model::reference);
        }
    }

    /** 200 random full shots by each; whether they left is worked out from 400 points of each trajectory. */
    @Test
    void whoLeavesTheRangeSaysSoAndNobodyElse() {
        SplittableRandom random = new SplittableRandom(20_260_401L);
        for (AerodynamicModel model : MODELS) {
            FlightModel flights = FlightModel.of(Ball.of(model));
            int left = 0;
            for (int i = 0; i < 200; i++) {
                Flight flight = flights.fly(LaunchConditions.builder()
                        .ballSpeed(metersPerSecond(random.nextDouble(20.0, 80.0)))
                        .launchAngle(degrees(random.nextDouble(6.0, 40.0)))
                        .spinRate(rpm(random.nextDouble(1_500.0, 9_000.0)))
                        .build());
                check(
                        flights,
                        flight,
                        "reynolds-outside-model",
                        reynolds(flights, flight),
                        model.domain().minRe(),
                        model.domain().maxRe());
                check(
                        flights,
                        flight,
                        "spin-ratio-outside-model",
                        ratios(flight),
                        model.domain().minS(),
                        model.domain().maxS());
                left += flight.warnings().isEmpty() ? 0 : 1;
            }
            assertTrue(left > 0, model::reference);
        }
    }

    private static double[] reynolds(FlightModel model, Flight flight) {
        double perSpeed = model.air().density() * 0.04267 / model.air().dynamicViscosity();
        return flight.trajectory().evenly(400).stream()
                .mapToDouble(point -> perSpeed * point.speed().metersPerSecond())
                .toArray();
    }

    private static double[] ratios(Flight flight) {
        return flight.trajectory().evenly(400).stream()
                .mapToDouble(ModelWarningsTest::ratio)
                .toArray();
    }

    private static double ratio(Trajectory.Point point) {
        return 0.021335 * point.spinRate().radiansPerSecond() / point.speed().metersPerSecond();
    }

    /** The warning looks at the ends of the integrator's steps; 2 percent of the range either way are left to their spacing. */
    private static void check(FlightModel model, Flight flight, String code, double[] values, double low, double high) {
        List<String> codes = flight.warnings().stream().map(Warning::code).toList();
        boolean outside = false;
        boolean inside = true;
        for (double value : values) {
            outside |= value < 0.98 * low || value > 1.02 * high;
            inside &= value > 1.02 * low && value < 0.98 * high;
        }
        Supplier<String> where = () -> model + ": " + flight + " " + codes;
        assertTrue(!outside || codes.contains(code), where);
        assertTrue(!inside || !codes.contains(code), where);
        assertEquals(codes.stream().distinct().count(), codes.size(), where);
    }
}
