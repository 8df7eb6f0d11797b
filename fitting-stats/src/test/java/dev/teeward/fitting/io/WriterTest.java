package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.SpeedUnit;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WriterTest {
    private static Session session(Shot... shots) {
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    private static String written(SessionWriter writer, Session session) throws IOException {
        StringWriter out = new StringWriter();
        writer.write(out, session);
        return out.toString();
    }

    @Test
    void onlyWhatWasMeasuredUnlessAsked() throws IOException {
        Session session = session(Shot.builder("Alder")
                .measured(Metric.CARRY, 137.16)
                .reading(Metric.APEX, Reading.of(30.48, Origin.COMPUTED))
                .build());
        assertEquals("club,shot,carry_yd\nAlder,1,150\n", written(SessionWriter.withDefaults(), session));
        assertEquals(
                "club,shot,apex_ft,carry_yd\nAlder,1,100,150\n",
                written(SessionWriter.withDefaults().withDerived(true), session));
        assertEquals(
                "club,shot,carry_m\nAlder,1,137.16\n",
                written(SessionWriter.withDefaults().withUnits(UnitSystem.METRIC), session));
    }

    @Test
    void headersComeBackAsTheyWereGiven() throws IOException {
        String text = """
                # hand: left
                # aim offset: -1.5 deg
                # elevation: 5280 ft
                # temperature: 85 degF
                # humidity: 20 %
                # pressure: 30.05 inHg altimeter
                # wind: 8 mph from 30 deg
                # date: 2026-05-14
                # tolerance ball_speed: 0.5 mph
                # club Alder: loft 29 deg, lie 61.5 deg, length 37.5 in, mass 268 g, shaft graphite, regular
                club,shot,pair,exclude,note,feel,ball_speed_kmh,coach
                Alder,1,1,,,4,189.6,A
                Rowan,2,1,topped,=1+1,1,120,
                """;
        assertEquals(
                text,
                written(
                        SessionWriter.withDefaults(),
                        SessionReader.withDefaults().read(text, "f")));
    }

    @Test
    void nothingUnreadableIsWritten() {
        SessionWriter writer = SessionWriter.withDefaults();
        for (String name : List.of("carry", "Carry_yd", "club", "side_yd", "spin_rate_mph", "notes")) {
            Session bad = session(Shot.builder("Alder").other(name, "x").build());
            assertThrows(IllegalArgumentException.class, () -> written(writer, bad), name);
        }
        Session header = session(Shot.builder("Alder").build()).toBuilder()
                .other("temperture", "x")
                .build();
        assertThrows(IllegalArgumentException.class, () -> written(writer, header));
        assertThrows(IllegalArgumentException.class, () -> written(writer, session()));
    }

    @Test
    void filesAppearWholeOrNotAtAll(@TempDir Path folder) throws IOException {
        Session session =
                session(Shot.builder("Alder").measured(Metric.CARRY, 137.16).build());
        Path file = folder.resolve("out.csv");
        SessionWriter.withDefaults().write(file, session);
        assertEquals("club,shot,carry_yd\nAlder,1,150\n", Files.readString(file));
        IllegalStateException broken = assertThrows(
                IllegalStateException.class,
                () -> WholeFile.write(file, out -> {
                    out.write("half");
                    throw new IllegalStateException("broken");
                }));
        assertEquals("broken", broken.getMessage());
        InputException full = assertThrows(
                InputException.class,
                () -> WholeFile.write(file, out -> {
                    throw new IOException("no space left");
                }));
        assertEquals(file + ": cannot be written: no space left", full.getMessage());
        assertEquals("club,shot,carry_yd\nAlder,1,150\n", Files.readString(file));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
        TableWriter.withDefaults().write(file, TableReader.withDefaults().read("ball_speed_mph\n100\n", "f"));
        assertEquals("ball_speed_mph\n100\n", Files.readString(file));
        ColumnTable back = TableReader.withDefaults().read(file);
        assertEquals(SpeedUnit.MILE_PER_HOUR.toSi(100.0), back.value(Metric.BALL_SPEED, 0));
    }

    @Test
    void placesThatCannotBeWrittenSaySo(@TempDir Path folder) {
        Session session = session(Shot.builder("Alder").build());
        Path nowhere = folder.resolve("missing").resolve("out.csv");
        assertEquals(
                nowhere + ": the folder to write to does not exist",
                assertThrows(
                                InputException.class,
                                () -> SessionWriter.withDefaults().write(nowhere, session))
                        .getMessage());
        assertEquals(
                folder + ": is a folder, not a file",
                assertThrows(
                                InputException.class,
                                () -> SessionWriter.withDefaults().write(folder, session))
                        .getMessage());
        assertTrue(Files.notExists(folder.resolve("missing")));
    }

    @Test
    void linksAreFollowed(@TempDir Path folder) throws IOException {
        Path real = Files.writeString(folder.resolve("real.csv"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), real);
        WholeFile.write(link, out -> out.write("new"));
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(real));
    }
}
