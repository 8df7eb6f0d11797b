package dev.teeward.fitting;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.grams;
import static dev.teeward.quantity.Units.hectopascals;
import static dev.teeward.quantity.Units.inches;
import static dev.teeward.quantity.Units.mph;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import java.time.LocalDate;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SessionTest {
    private static Shot shot(String club, String pair, double carry) {
        return Shot.builder(club).pair(pair).measured(Metric.CARRY, carry).build();
    }

    @Test
    void examplesOfThePackage() {
        Shot shot =
                Shot.builder("Alder").number(1).measured(Metric.CARRY, 150.0).build();
        Session session =
                Session.builder().hand(Handedness.LEFT).shots(ShotSet.of(shot)).build();
        assertArrayEquals(
                new double[] {150.0}, session.shots().used().club("Alder").values(Metric.CARRY));
        Session longer = session.append(
                Shot.builder("Alder").number(21).measured(Metric.CARRY, 151.0).build());
        assertEquals(2, longer.shots().size());
        assertEquals(1, session.shots().size());
    }

    @Test
    void absentIsAbsent() {
        Shot shot = Shot.builder("Alder").build();
        assertFalse(shot.has(Metric.CARRY));
        assertEquals(Optional.empty(), shot.reading(Metric.CARRY));
        assertEquals(OptionalInt.empty(), shot.rating(Rating.FEEL));
        assertEquals(OptionalInt.empty(), shot.row());
        assertThrows(NoSuchElementException.class, () -> shot.value(Metric.CARRY));
        assertThrows(IllegalArgumentException.class, () -> Reading.of(Double.NaN, Origin.MEASURED));
        assertThrows(IllegalArgumentException.class, () -> Shot.builder("Alder").measured(Metric.CARRY, -1.0));
        assertTrue(Session.builder().build().elevation().isEmpty());
        assertTrue(Session.builder().build().humidity().isEmpty());
    }

    @Test
    void copiesLeaveTheOriginalAlone() {
        Shot shot = shot("Alder", "1", 150.0);
        Shot excluded = shot.withExclusion("topped");
        assertTrue(shot.used());
        assertEquals(Optional.of("topped"), excluded.exclusion());
        assertEquals(shot, excluded.withoutExclusion());
        Shot computed = shot.with(Metric.APEX, Reading.of(25.0, Origin.COMPUTED));
        assertEquals(
                Origin.COMPUTED, computed.reading(Metric.APEX).orElseThrow().origin());
        assertEquals(shot, computed.without(Metric.APEX));
        assertNotEquals(shot, computed);
        assertEquals(shot.hashCode(), shot.toBuilder().build().hashCode());
    }

    @Test
    void textThatAFileCouldNotHoldIsRefused() {
        List<Executable> bad = List.of(
                () -> Shot.builder(" "),
                () -> Shot.builder("a\nb"),
                () -> Shot.builder("a").note("bell \u0007"),
                () -> Shot.builder("a").note("half \uD83D"),
                () -> Shot.builder("a").exclusion(" "),
                () -> Shot.builder("a").pair(""),
                () -> Shot.builder("a").number(0),
                () -> Shot.builder("a").rating(Rating.LOOK, 6),
                () -> Shot.builder("a").source("f", 0),
                () -> Club.builder("a: b"),
                () -> Session.builder().remark("a: b"),
                () -> Session.builder().other("a:", "b"),
                () -> Session.builder().place("two\nlines"));
        for (Executable e : bad) {
            assertThrows(IllegalArgumentException.class, e);
        }
    }

    @Test
    void filtersKeepTheOrder() {
        ShotSet all = ShotSet.of(
                shot("Rowan", "1", 140.0),
                shot("Alder", "1", 150.0),
                shot("Alder", "2", 90.0).withExclusion("topped"),
                shot("Rowan", "2", 141.0),
                Shot.builder("Alder").pair("3").measured(Metric.SIDE, -4.0).build());
        assertEquals(List.of("Rowan", "Alder"), all.clubs());
        assertEquals(3, all.club("Alder").size());
        assertEquals(4, all.used().size());
        assertEquals(1, all.excluded().size());
        assertEquals(4, all.with(Metric.CARRY).size());
        assertEquals(Set.of(Metric.CARRY, Metric.SIDE), all.metrics());
        assertArrayEquals(new double[] {140.0, 150.0, 90.0, 141.0}, all.values(Metric.CARRY));
        List<ShotPair> pairs = all.pairs("Alder", "Rowan");
        assertEquals(1, pairs.size(), "the excluded shot breaks pair 2, the missing one pair 3");
        assertEquals("1", pairs.get(0).id());
        assertEquals(150.0, pairs.get(0).first().value(Metric.CARRY));
        assertEquals(140.0, pairs.get(0).second().value(Metric.CARRY));
        assertTrue(all.club("Hazel").isEmpty());
        ShotSet twice = all.append(shot("Rowan", "1", 142.0));
        assertThrows(IllegalArgumentException.class, () -> twice.pairs("Alder", "Rowan"));
        assertThrows(IllegalArgumentException.class, () -> all.pairs("Alder", "Alder"));
    }

    @Test
    void rangesAreChecked() {
        List<Executable> bad = List.of(
                () -> Session.builder().elevation(feet(50_000.0)),
                () -> Session.builder().temperature(fahrenheit(200.0)),
                () -> Session.builder().humidity(40.0),
                () -> Session.builder().humidity(Double.NaN),
                () -> Session.builder().stationPressure(hectopascals(30.0)),
                () -> Session.builder().altimeterPressure(hectopascals(3_000.0)),
                () -> Session.builder().wind(degrees(400.0), mph(3.0)),
                () -> Session.builder().wind(degrees(0.0), mph(-3.0)),
                () -> Session.builder().aimOffset(degrees(90.0)),
                () -> Session.builder().tolerance(Metric.CARRY, 0.0),
                () -> Session.builder().unit(Metric.CARRY, SpeedUnit.KNOT),
                () -> Club.builder("a").loft(degrees(100.0)),
                () -> Club.builder("a").lie(degrees(10.0)),
                () -> Club.builder("a").length(inches(3.0)),
                () -> Club.builder("a").headMass(grams(3.0)));
        for (Executable e : bad) {
            assertThrows(IllegalArgumentException.class, e);
        }
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class, () -> Session.builder().humidity(40.0));
        assertEquals("humidity must be in [0, 1] (0-100 %), but was 40.0; for 40 percent use 0.4", e.getMessage());
    }

    @Test
    void daysAreCombined() {
        Session monday = Session.builder()
                .hand(Handedness.LEFT)
                .date(LocalDate.of(2026, 5, 11))
                .elevation(feet(5_280.0))
                .temperature(fahrenheit(85.0))
                .club(Club.builder("Alder").loft(degrees(29.0)).build())
                .unit(Metric.CARRY, LengthUnit.YARD)
                .other("operator", "A")
                .shots(ShotSet.of(shot("Alder", "1", 150.0), shot("Rowan", "1", 140.0)))
                .build();
        Session tuesday = monday.toBuilder()
                .date(LocalDate.of(2026, 5, 12))
                .temperature(fahrenheit(70.0))
                .shots(ShotSet.of(shot("Alder", "1", 151.0), shot("Rowan", "1", 141.0)))
                .build();
        Session both = Session.combine(List.of(monday, tuesday));
        assertEquals(4, both.shots().size());
        assertEquals(Optional.of(feet(5_280.0)), both.elevation());
        assertEquals(Optional.empty(), both.temperature());
        assertEquals(List.of("temperature differs between the combined sessions"), both.remarks());
        assertEquals(Optional.empty(), both.date());
        assertEquals(
                Optional.of(LocalDate.of(2026, 5, 12)),
                both.shots().shots().get(3).day());
        assertEquals(Optional.of(LengthUnit.YARD), both.unit(Metric.CARRY));
        assertEquals("A", both.other().get("operator"));
        List<ShotPair> pairs = both.shots().pairs("Alder", "Rowan");
        assertEquals(List.of("1/1", "2/1"), pairs.stream().map(ShotPair::id).toList());
        assertEquals(141.0, pairs.get(1).second().value(Metric.CARRY));
        assertEquals(monday, Session.combine(List.of(monday)));
    }

    @Test
    void contradictionsAreRefused() {
        Session left = Session.builder().hand(Handedness.LEFT).build();
        Session right = Session.builder().hand(Handedness.RIGHT).build();
        Session unknown = Session.builder().build();
        assertThrows(IllegalArgumentException.class, () -> Session.combine(List.of(left, right)));
        assertThrows(IllegalArgumentException.class, () -> Session.combine(List.of()));
        assertEquals(
                Optional.of(Handedness.LEFT),
                Session.combine(List.of(unknown, left)).hand());
        Session weak = unknown.toBuilder()
                .club(Club.builder("Alder").loft(degrees(30.0)).build())
                .build();
        Session strong = unknown.toBuilder()
                .club(Club.builder("Alder").loft(degrees(26.0)).build())
                .build();
        assertThrows(IllegalArgumentException.class, () -> Session.combine(List.of(weak, strong)));
        Session calm = unknown.toBuilder()
                .wind(degrees(0.0), mph(0.0))
                .stationPressure(hectopascals(840.0))
                .build();
        Session same = Session.combine(List.of(calm, calm));
        assertEquals(calm.windSpeed(), same.windSpeed());
        assertEquals(Optional.of(PressureKind.STATION), same.pressureKind());
        assertEquals(Optional.empty(), Session.combine(List.of(calm, unknown)).pressure());
    }
}
