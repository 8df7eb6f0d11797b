package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class DeliveryToRestExampleTest {
    static String printed() {
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try {
            System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
            DeliveryToRestExample.main(new String[0]);
        } finally {
            System.setOut(before);
        }
        return printed.toString(StandardCharsets.UTF_8);
    }

    /** The way back ends where the way there began; a closed face from an inside path curves left of where it started. */
    @Test
    void goesThereAndBack() {
        List<String> lines = printed().lines().toList();
        assertEquals(3, lines.size());
        assertEquals("back:   face -0.5 deg, path +2.0 deg", lines.get(2));
        assertTrue(lines.get(0).matches("impact: ball 1\\d\\d\\.\\d mph, .* tilt -\\d+\\.\\d deg"), lines.get(0));
        assertTrue(lines.get(1).matches("flight: carry 1\\d\\d\\.\\d yd, curve -.* yd\\)"), lines.get(1));
        Matcher rest = Pattern.compile("at rest after (\\S+) yd \\((\\d+) to (\\d+) yd\\)$")
                .matcher(lines.get(1));
        assertTrue(rest.find(), lines.get(1));
        double total = Double.parseDouble(rest.group(1));
        assertTrue(
                Double.parseDouble(rest.group(2)) < total && total < Double.parseDouble(rest.group(3)), lines.get(1));
    }

    @Test
    void isShort() throws IOException {
        List<String> lines =
                Files.readAllLines(Path.of("src/main/java/dev/teeward/examples/DeliveryToRestExample.java")).stream()
                        .map(String::strip)
                        .toList();
        int length = lines.indexOf("// README end") - lines.indexOf("// README begin") - 1;
        assertTrue(length > 10 && length <= 40, length + " lines");
    }
}
