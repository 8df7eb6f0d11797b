package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever the bytes are, there is a session or one line that says why not; never anything else. */
class JunkTest {
    private static final String[] PIECES = {
        "club",
        "carry_yd",
        "side_m",
        "ball_speed",
        "Alder",
        "150",
        "-1.5",
        "1e999",
        "NaN",
        ",",
        ";",
        "\t",
        "\n",
        "\r\n",
        "\"",
        "\"\"",
        "#",
        "# ",
        ": ",
        "hand",
        "left",
        "club Alder: ",
        "loft ",
        "29 deg",
        ", ",
        "shaft ",
        "wind: ",
        "pressure: ",
        "tolerance ",
        "humidity: ",
        " ",
        "=",
        "\uFEFF",
        "\uD83C\uDFCC",
        "\u2028",
        "\u0000",
        "day",
        "feel",
        "2026-05-14",
        "exclude",
        "pair",
        "8 mph from ",
        "date: ",
        "parts: ",
        "part 1 ",
        "part",
        "intent"
    };

    @Test
    void randomPieces() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20_260_514L);
        int refused = 0;
        int runs = 15_000;
        for (int run = 0; run < runs; run++) {
            StringBuilder text = new StringBuilder(run % 2 == 0 ? "" : "club,carry_yd,note\nAlder,150,x\n");
            int pieces = random.nextInt(25);
            for (int i = 0; i < pieces; i++) {
                String piece = PIECES[random.nextInt(PIECES.length)];
                text.insert(random.nextBoolean() ? text.length() : random.nextInt(text.length() + 1), piece);
            }
            refused += refuses(text.toString());
        }
        assertTrue(refused > runs / 4 && refused < runs, "refused " + refused);
    }

    private static int refuses(String text) {
        try {
            assertTrue(SessionReader.withDefaults().read(text, "f").shots().size() >= 1);
            return 0;
        } catch (InputException e) {
            assertEquals(1L, e.getMessage().lines().count(), e.getMessage());
            assertTrue(e.getMessage().startsWith("f: "), e.getMessage());
            return 1;
        }
    }

    @Test
    void randomBytes(@TempDir Path folder) throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(7L);
        Path file = folder.resolve("junk.csv");
        int refused = 0;
        for (int run = 0; run < 500; run++) {
            byte[] bytes = new byte[random.nextInt(300)];
            random.nextBytes(bytes);
            Files.write(file, bytes);
            try {
                SessionReader.withDefaults().read(file);
            } catch (InputException e) {
                assertEquals(1L, e.getMessage().lines().count());
                refused++;
            }
            try {
                ColumnMapping.read(
                        new InputStreamReader(new ByteArrayInputStream(bytes), StandardCharsets.ISO_8859_1), "m");
            } catch (InputException e) {
                assertTrue(e.getMessage().startsWith("m: "));
            }
        }
        assertEquals(500, refused);
    }
}
