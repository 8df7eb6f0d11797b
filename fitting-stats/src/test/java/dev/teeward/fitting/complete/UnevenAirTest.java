package dev.teeward.fitting.complete;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Wind;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Invented days in different air. */
class UnevenAirTest {
    private static final List<String> CLUBS = List.of("Alder", "Rowan");

    private static Session day(double elevationFeet, double headwindMph, int alder, int rowan) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < alder + rowan; i++) {
            shots.add(Shot.builder(i < alder ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CARRY, 150.0 + i)
                    .build());
        }
        return Session.builder()
                .elevation(feet(elevationFeet))
                .wind(degrees(0.0), mph(headwindMph))
                .shots(ShotSet.of(shots))
                .build();
    }

    private static Optional<Warning> warning(Session... days) {
        return UnevenAir.warning(Session.combine(List.of(days)), CLUBS);
    }

    /**
     * U.S. Standard Atmosphere 1976, printed table: density 1.2250 kg/m3 at 0 ft and 1.0239 at 6,000 ft. Alder met 10 and 2 of
     * them in twelve, Rowan 2 and 10: means 1.1915 and 1.0574, apart 11.9 % of their mean.
     */
    @Test
    void aClubHitMostlyUpHighMetThinnerAir() {
        Warning warning =
                warning(day(0.0, 0.0, 10, 2), day(6_000.0, 0.0, 2, 10)).orElseThrow();
        assertEquals("airs-differ", warning.code());
        assertTrue(warning.message().contains("Rowan met air 11.9 % thinner than Alder"), warning.message());
    }

    @Test
    void aClubHitMostlyIntoTheWindIsTold() {
        Warning warning = warning(day(0.0, 12.0, 10, 2), day(0.0, 0.0, 2, 10)).orElseThrow();
        // 12 mph times 10/12 - 2/12.
        assertTrue(warning.message().contains("are 3.58 m/s (8.0 mph) apart"), warning.message());
    }

    /** On either side of 0.25 m/s, which is 0.5592 mph. */
    @Test
    void aQuarterOfAMetrePerSecondIsTold() {
        assertTrue(warning(day(0.0, 0.57, 12, 0), day(0.0, 0.0, 0, 12)).isPresent());
        assertTrue(warning(day(0.0, 0.55, 12, 0), day(0.0, 0.0, 0, 12)).isEmpty());
    }

    /**
     * Both limits let through the same: up to a yard for the launches told in the class, and at least a third of one. 104.5 m up
     * the air is 1 % thinner (U.S. Standard Atmosphere 1976: exp of -9.6e-5 a metre).
     */
    @Test
    void bothLimitsMeanLessThanAYardOfCarry() {
        double[][] launches = {{150.0, 12.0, 2_700.0}, {127.0, 14.0, 6_200.0}, {100.0, 25.0, 9_000.0}};
        FlightModel sea = FlightModel.standard().withAir(Atmosphere.seaLevel());
        for (double[] number : launches) {
            LaunchConditions launch = LaunchConditions.builder()
                    .ballSpeed(mph(number[0]))
                    .launchAngle(degrees(number[1]))
                    .spinRate(rpm(number[2]))
                    .build();
            double carry = sea.fly(launch).carry().yards();
            for (FlightModel limit : List.of(
                    sea.withAir(Atmosphere.standardAt(Length.ofMeters(104.5))),
                    sea.withWind(Wind.from(degrees(0.0), Speed.ofMetersPerSecond(0.25))),
                    sea.withWind(Wind.from(degrees(180.0), Speed.ofMetersPerSecond(0.25))))) {
                double moved = Math.abs(limit.fly(launch).carry().yards() - carry);
                assertTrue(moved > 1.0 / 3.0 && moved < 1.0, number[0] + " mph: " + moved);
            }
        }
    }

    /** However far apart the days, clubs hit equally often on each met the same air. */
    @Test
    void clubsSpreadEvenlyMetTheSameAir() {
        assertTrue(warning(day(0.0, 0.0, 6, 6), day(6_000.0, 10.0, 6, 6)).isEmpty());
        assertTrue(warning(day(0.0, 0.0, 8, 4), day(6_000.0, 10.0, 2, 1)).isEmpty());
    }

    @Test
    void oneAirIsEverybodys() {
        assertTrue(warning(day(0.0, 0.0, 10, 2), day(60.0, 0.5, 2, 10)).isEmpty());
        assertTrue(UnevenAir.warning(day(6_000.0, 10.0, 10, 2), CLUBS).isEmpty());
    }

    @Test
    void onlyUsedShotsAndTheClubsAskedForCount() {
        Session all = Session.combine(List.of(day(0.0, 0.0, 10, 0), day(6_000.0, 0.0, 0, 10)));
        assertTrue(UnevenAir.warning(all, CLUBS).isPresent());
        assertTrue(UnevenAir.warning(all, List.of("Alder", "Hazel")).isEmpty());
        Session excluded = all.withShots(ShotSet.of(all.shots().stream()
                .map(shot -> shot.club().equals("Rowan") ? shot.withExclusion("topped") : shot)
                .toList()));
        assertTrue(UnevenAir.warning(excluded, CLUBS).isEmpty());
    }
}
