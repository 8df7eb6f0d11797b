package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every program in the README is one that is compiled and run here, and every output in it is what it prints. */
class ReadmeTest {
    private static final Pattern FENCE = Pattern.compile("(?ms)^```(java|text)\\n(.*?)^```$");
    private static final Path SOURCES = Path.of("src", "test", "java", "dev", "teeward", "examples");

    @TempDir
    private Path folder;

    @Test
    void programsAreTheOnesRun() throws Exception {
        List<String> programs = fences("java");
        assertEquals(5, programs.size());
        String source = Files.readString(SOURCES.resolve("ReadmePrograms.java"), StandardCharsets.UTF_8);
        assertEquals(region(source, "// README answer"), programs.get(0));
        assertEquals(region(source, "// README flight"), programs.get(1));
        assertEquals(
                region(
                        Files.readString(
                                Path.of("src/main/java/dev/teeward/examples/DeliveryToRestExample.java"),
                                StandardCharsets.UTF_8),
                        "// README begin"),
                programs.get(2));
        String whole = Files.readString(
                Path.of("src", "main", "java", "dev", "teeward", "examples", "HeadToHeadExample.java"),
                StandardCharsets.UTF_8);
        assertEquals(region(whole, "// README begin"), programs.get(3));
        assertTrue(programs.get(3).lines().count() <= 40);
        assertEquals(region(source, "// README workable"), programs.get(4));
    }

    @Test
    void outputsAreTheRealOnes() throws Exception {
        Path session = folder.resolve("session.csv");
        try (InputStream demo = ReadmeTest.class.getResourceAsStream("demo_session.csv")) {
            Files.copy(demo, session);
        }
        List<String> outputs = fences("text");
        assertEquals(4, outputs.size());
        assertEquals(oneLine(printed(out -> ReadmePrograms.answer(session, out))), oneLine(outputs.get(0)));
        assertEquals(printed(ReadmePrograms::flight), outputs.get(1));
        assertEquals(DeliveryToRestExampleTest.printed(), outputs.get(2));
        assertEquals(oneLine(printed(out -> ReadmePrograms.workable(session, out))), oneLine(outputs.get(3)));
    }

    private static List<String> fences(String language) throws Exception {
        String readme = Files.readString(Path.of("..", "README.md"), StandardCharsets.UTF_8);
        List<String> found = new ArrayList<>();
        Matcher fence = FENCE.matcher(readme);
        while (fence.find()) {
            if (fence.group(1).equals(language)) {
                found.add(fence.group(2));
            }
        }
        return found;
    }

    /** What stands between a mark and the end mark, moved to the left edge, with System.out for the stream of the test. */
    private static String region(String source, String mark) {
        int from = source.indexOf('\n', source.indexOf(mark)) + 1;
        String inside = source.substring(from, source.lastIndexOf('\n', source.indexOf("// README end", from)) + 1);
        return (inside.stripTrailing().stripIndent() + "\n")
                .replace("forEach(out::println)", "forEach(System.out::println)")
                .replace("\nout.printf(", "\nSystem.out.printf(")
                .replace(".read(file)", ".read(Path.of(\"session.csv\"))");
    }

    private static String printed(Consumer<PrintStream> program) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8)) {
            program.accept(out);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }

    /** The README breaks long lines; nothing else may differ. */
    private static String oneLine(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }
}
