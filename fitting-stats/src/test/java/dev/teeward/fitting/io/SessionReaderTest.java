package dev.teeward.fitting.io;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.grams;
import static dev.teeward.quantity.Units.inches;
import static dev.teeward.quantity.Units.inchesOfMercury;
import static dev.teeward.quantity.Units.mph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.PressureKind;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SessionReaderTest {
    private static final String EXAMPLE = """
            # hand: left
            # elevation: 5280 ft
            # temperature: 85 F
            # humidity: 20 %
            # pressure: 30.05 inHg altimeter
            # wind: 8 mph from 30 deg
            # aim offset: -1.5 deg
            # ball: white, three pieces
            # date: 2026-05-14
            # place: studio
            # tolerance ball_speed: 0.5 mph
            # tolerance smash_factor: 0.01
            # club Alder: loft 29 deg, lie 61.5 deg, length 37.5 in, mass 268 g, shaft graphite, regular
            # mat: worn
            # invented data
            club,shot,pair,exclude,note,feel,ball_speed_mph,launch_angle_deg,carry_yd,coach
            Alder,1,1,,,4,117.8,17.1,165.2,A
            Rowan,2,1,topped,"said ""sorry"", twice",1,80.3,4.0,,
            """;

    @Test
    void readsTheExampleOfThePackage() {
        Session session = SessionReader.withDefaults().read(new StringReader(EXAMPLE), "session.csv");
        assertEquals(Optional.of(Handedness.LEFT), session.hand());
        assertEquals(Optional.of(feet(5_280.0)), session.elevation());
        assertEquals(Optional.of(fahrenheit(85.0)), session.temperature());
        assertEquals(0.2, session.humidity().orElseThrow(), 1e-15);
        assertEquals(Optional.of(inchesOfMercury(30.05)), session.pressure());
        assertEquals(Optional.of(PressureKind.ALTIMETER), session.pressureKind());
        assertEquals(Optional.of(mph(8.0)), session.windSpeed());
        assertEquals(Optional.of(degrees(30.0)), session.windFrom());
        assertEquals(Optional.of(degrees(-1.5)), session.aimOffset());
        assertEquals(Optional.of("white, three pieces"), session.ball());
        assertEquals(Optional.of(LocalDate.of(2026, 5, 14)), session.date());
        assertEquals(Optional.of("studio"), session.place());
        assertEquals(0.22352, session.tolerance(Metric.BALL_SPEED).orElseThrow(), 1e-15);
        assertEquals(0.01, session.tolerance(Metric.SMASH_FACTOR).orElseThrow(), 1e-15);
        assertTrue(session.tolerance(Metric.CARRY).isEmpty());
        assertEquals(
                Optional.of(Club.builder("Alder")
                        .loft(degrees(29.0))
                        .lie(degrees(61.5))
                        .length(inches(37.5))
                        .headMass(grams(268.0))
                        .shaft("graphite, regular")
                        .build()),
                session.club("Alder"));
        assertEquals(Map.of("mat", "worn"), session.other());
        assertEquals(List.of("invented data"), session.remarks());
        assertEquals(Optional.of(LengthUnit.YARD), session.unit(Metric.CARRY));

        Shot first = session.shots().shots().get(0);
        assertEquals(117.8 * 0.44704, first.value(Metric.BALL_SPEED), 1e-12);
        assertEquals(165.2 * 0.9144, first.value(Metric.CARRY), 1e-12);
        assertEquals(OptionalInt.of(4), first.rating(Rating.FEEL));
        assertEquals("A", first.other().get("coach"));
        assertEquals(Optional.of("session.csv"), first.file());
        assertEquals(OptionalInt.of(1), first.row());
        Shot second = session.shots().shots().get(1);
        assertFalse(second.used());
        assertEquals(Optional.of("topped"), second.exclusion());
        assertEquals(Optional.of("said \"sorry\", twice"), second.note());
        assertFalse(second.has(Metric.CARRY));
        assertEquals(2, second.number());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void marksAndLineEndsMakeNoDifference(String end) {
        Session plain = SessionReader.withDefaults().read(EXAMPLE, "f");
        assertEquals(plain, SessionReader.withDefaults().read("\uFEFF" + EXAMPLE.replace("\n", end), "f"));
    }

    @Test
    void decimalCommasComeWithSemicolonsOrTabs() {
        String text = "# temperature: 29,5 C\nclub;carry_m;side_m\nAlder;150,25;-3,5\nRowan;148;2\n";
        for (String table : List.of(text, text.replace(';', '\t'), text.replace("29,5", "29.5"))) {
            if (table.contains("29.5")) {
                assertEquals(29.5, temperature(table), 1e-9);
                continue;
            }
            Session session = SessionReader.withDefaults().read(table, "f");
            assertEquals(150.25, session.shots().shots().get(0).value(Metric.CARRY));
            assertEquals(-3.5, session.shots().shots().get(0).value(Metric.SIDE));
            assertEquals(2.0, session.shots().shots().get(1).value(Metric.SIDE));
            assertEquals(29.5, temperature(table), 1e-9);
        }
        Session points = SessionReader.withDefaults().read("club;carry_m\nAlder;150.25\n", "f");
        assertEquals(150.25, points.shots().shots().get(0).value(Metric.CARRY));
    }

    private static double temperature(String text) {
        return SessionReader.withDefaults()
                .read(text, "f")
                .temperature()
                .orElseThrow()
                .celsius();
    }

    /** Factors as in NIST SP 811 (2008), appendix B.8, typed by hand; angles and spin by definition. */
    @ParameterizedTest
    @CsvSource({
        "mps,10,10",
        "kmh,36,10",
        "mph,100,44.704",
        "fps,100,30.48",
        "kn,36,18.52",
        "m,0.05,0.05",
        "cm,5,0.05",
        "mm,50,0.05",
        "yd,0.1,0.09144",
        "ft,0.2,0.06096",
        "in,2,0.0508",
        "rad,0.25,0.25",
        "deg,18,0.3141592653589793",
        "radps,100,100",
        "rpm,3000,314.1592653589793",
        "rps,50,314.1592653589793",
        "s,5.5,5.5",
        "ms,5500,5.5",
        "'',1.4,1.4"
    })
    void everyUnitOfEveryMetric(String suffix, double number, double si) {
        int metrics = 0;
        for (Metric metric : Metric.values()) {
            boolean has = metric.units().stream().map(Unit::suffix).anyMatch(suffix::equals);
            if (has) {
                metrics++;
                String heading = suffix.isEmpty() ? metric.key() : metric.key() + "_" + suffix;
                Session session = SessionReader.withDefaults().read("club," + heading + "\nA," + number + "\n", "f");
                assertEquals(si, session.shots().shots().get(0).value(metric), 1e-12 * si, heading);
            }
        }
        assertTrue(metrics >= 1, suffix);
    }

    @Test
    void windMayBeCalmAndPressureAtTheStation() {
        Session session = SessionReader.withDefaults()
                .read("# wind: calm\n# pressure: 834 hPa station\n#\n\n# hand: Right\nclub\nAlder\n", "f");
        assertEquals(0.0, session.windSpeed().orElseThrow().metersPerSecond());
        assertEquals(Optional.of(PressureKind.STATION), session.pressureKind());
        assertEquals(Optional.of(Handedness.RIGHT), session.hand());
    }

    @Test
    void mappedTables() {
        ColumnMapping mapping = ColumnMapping.parse("""
                # heading = meaning
                Iron       = club
                Off face   = ball_speed km/h
                Finish     = side yd sign R/L
                Face       = face_angle deg negate
                Carry note = other
                Carry      = other
                """, "mapping");
        Session session = SessionReader.withDefaults().withMapping(mapping).read("""
                        Iron,Off face,Finish,Face,Carry note,Carry
                        Alder,180,12.3 L,2.5,good,far
                        Rowan,144,R4,-1,,
                        Rowan,144,0,-1,,
                        Rowan,144,4r,,,
                        """, "f");
        List<Shot> shots = session.shots().shots();
        assertEquals(50.0, shots.get(0).value(Metric.BALL_SPEED), 1e-12);
        assertEquals(-12.3 * 0.9144, shots.get(0).value(Metric.SIDE), 1e-12);
        assertEquals(4.0 * 0.9144, shots.get(1).value(Metric.SIDE), 1e-12);
        assertEquals(0.0, shots.get(2).value(Metric.SIDE));
        assertEquals(4.0 * 0.9144, shots.get(3).value(Metric.SIDE), 1e-12);
        assertEquals(degrees(-2.5).radians(), shots.get(0).value(Metric.FACE_ANGLE), 1e-15);
        assertEquals(Map.of("Carry note", "good", "Carry", "far"), shots.get(0).other());
        for (String cell : List.of("12.3", "-12.3 L", "L")) {
            InputException e = assertThrows(
                    InputException.class,
                    () -> SessionReader.withDefaults()
                            .withMapping(mapping)
                            .read("Iron,Finish\nAlder," + cell + "\n", "f"));
            assertTrue(e.getMessage().startsWith("f: row 1, Finish: \"" + cell + "\" "), e.getMessage());
        }
        InputException near = assertThrows(
                InputException.class,
                () -> SessionReader.withDefaults().withMapping(mapping).read("Iron,off FACE\nAlder,1\n", "f"));
        assertEquals("f: heading, off FACE: is not a known name; did you mean Off face?", near.getMessage());
    }

    @Test
    void severalDays(@TempDir Path folder) throws IOException {
        Path monday =
                Files.writeString(folder.resolve("mon.csv"), "# hand: left\n# date: 2026-05-11\nclub,pair\nA,1\nB,1\n");
        Path tuesday =
                Files.writeString(folder.resolve("tue.csv"), "# hand: left\n# date: 2026-05-12\nclub,pair\nB,1\nA,1\n");
        Path other = Files.writeString(folder.resolve("wed.csv"), "# hand: right\nclub,pair\nB,1\nA,1\n");
        Session both = SessionReader.withDefaults().readAll(List.of(monday, tuesday));
        assertEquals(2, both.shots().pairs("A", "B").size());
        Shot last = both.shots().shots().get(3);
        assertEquals(Optional.of(tuesday.toString()), last.file());
        assertEquals(OptionalInt.of(2), last.row());
        assertEquals(Optional.of(LocalDate.of(2026, 5, 12)), last.day());
        InputException e = assertThrows(
                InputException.class, () -> SessionReader.withDefaults().readAll(List.of(monday, other)));
        assertEquals(
                other + ": sessions of a right-handed and a left-handed golfer cannot be combined into one",
                e.getMessage());
    }
}
