package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadToHeadExampleTest {
    private static final List<String> OPTIONS = List.of("--primary", "face_to_path", "--margin", "club_speed=1mph");

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
        Path comparedPage = folder.resolve("compared.html");
        StringWriter compared = new StringWriter();
        StringWriter faults = new StringWriter();
        List<String> args = new ArrayList<>(List.of("compare", session.toString(), "--html", comparedPage.toString()));
        args.addAll(OPTIONS);
        assertEquals(
                0,
                TeewardExamples.run(new PrintWriter(compared), new PrintWriter(faults), args.toArray(String[]::new)));
        assertEquals("", faults.toString());
        assertEquals(compared.toString(), text);
        assertEquals(Files.readString(comparedPage), Files.readString(page));
        assertTrue(Files.readString(page).contains("<svg"));
    }

    /** The demo and the README's first screen ask the same as well, so that all of them give one answer. */
    @Test
    void asksWhatTheDemoAndTheReadmeAsk() throws IOException {
        Path session = Files.writeString(folder.resolve("session.csv"), JsonText.resource(DemoCommand.SESSION));
        StringWriter compared = new StringWriter();
        StringWriter faults = new StringWriter();
        List<String> args = new ArrayList<>(List.of("compare", session.toString()));
        args.addAll(OPTIONS);
        assertEquals(
                0,
                TeewardExamples.run(new PrintWriter(compared), new PrintWriter(faults), args.toArray(String[]::new)));
        assertEquals("", faults.toString());
        HeadToHeadReport demo = DemoCommand.report(SessionReader.withDefaults().read(session));
        assertEquals(demo.text(), compared.toString());
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        try (PrintStream stream = new PrintStream(printed, true, StandardCharsets.UTF_8)) {
            ReadmePrograms.answer(session, stream);
        }
        assertEquals(
                demo.sections().get(0).sentences().stream()
                        .map(Object::toString)
                        .toList(),
                printed.toString(StandardCharsets.UTF_8).lines().toList());
        String readme = Files.readString(Path.of("..", "README.md"), StandardCharsets.UTF_8);
        assertTrue(readme.contains("compare session.csv " + String.join(" ", OPTIONS)), "the options are not stated");
    }

    @Test
    void isShort() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("src/main/java/dev/teeward/examples/HeadToHeadExample.java"));
        int length = lines.indexOf("// README end") - lines.indexOf("// README begin") - 1;
        assertEquals(true, length > 20 && length <= 40, length + " lines");
    }
}
