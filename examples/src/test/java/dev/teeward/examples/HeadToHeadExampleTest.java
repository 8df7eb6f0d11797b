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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadToHeadExampleTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void printsTheAnswerAndWritesThePage() throws IOException {
        Path session = Files.writeString(folder.resolve("session.csv"), JsonText.resource(DemoCommand.SESSION));
        Path page = folder.resolve("page.html");
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try {
            System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
            HeadToHeadExample.main(new String[] {session.toString(), page.toString()});
        } finally {
            System.setOut(before);
        }
        String text = printed.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains(DemoTruth.ALDER) && text.contains(DemoTruth.ROWAN), text);
        assertTrue(text.contains(" yd"), text);
        assertTrue(Files.readString(page).contains("<svg"));
    }

    @Test
    void isShort() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("src/main/java/dev/teeward/examples/HeadToHeadExample.java"));
        int length = lines.indexOf("// README end") - lines.indexOf("// README begin") - 1;
        assertEquals(true, length > 20 && length <= 40, length + " lines");
    }
}
