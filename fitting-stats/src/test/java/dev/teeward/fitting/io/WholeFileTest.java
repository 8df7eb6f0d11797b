package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several files, all or none. */
class WholeFileTest {
    @TempDir
    private Path folder = Path.of("");

    private Path first = Path.of("");
    private Path second = Path.of("");
    private final Map<Path, WholeFile.Content> files = new LinkedHashMap<>();

    @BeforeEach
    void paths() {
        first = folder.resolve("first");
        second = folder.resolve("second");
        files.put(first, out -> out.write("new first"));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void allAreWritten() throws IOException {
        Files.writeString(first, "old first");
        files.put(second, out -> out.write("new second"));
        WholeFile.writeAll(files);
        assertEquals("new first", Files.readString(first));
        assertEquals("new second", Files.readString(second));
        assertEquals(List.of("first", "second"), names());
    }

    @Test
    void ifOneFailsTheOthersStayAsTheyWere() throws IOException {
        files.put(second, out -> {
            throw new IOException("the disk is full");
        });
        InputException failure = assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        assertEquals(second + ": cannot be written: the disk is full", failure.getMessage());
        assertEquals(List.of(), names());
        Files.writeString(first, "old first");
        assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        assertEquals("old first", Files.readString(first));
        assertEquals(List.of("first"), names());
    }

    /** The last moment at which something can fail: a folder has the name meanwhile, so the file cannot take it. */
    @Test
    void ifANameCannotBeTakenTheOnesTakenAreGivenBack() throws IOException {
        files.put(second, out -> {
            Files.createDirectory(second);
            Files.writeString(second.resolve("in the way"), "");
            out.write("new second");
        });
        InputException failure = assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        assertTrue(failure.getMessage().startsWith(second + ": cannot be written: "), failure.getMessage());
        assertEquals(List.of("second"), names());
        Files.delete(second.resolve("in the way"));
        Files.delete(second);
        Files.writeString(first, "old first");
        assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        assertEquals("old first", Files.readString(first));
        assertEquals(List.of("first", "second"), names());
    }

    @Test
    void foldersAreLookedAtBeforeAnythingIsWritten() throws IOException {
        files.put(folder.resolve("nowhere").resolve("file"), out -> out.write("x"));
        assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        files.remove(folder.resolve("nowhere").resolve("file"));
        files.put(Files.createDirectory(second), out -> out.write("x"));
        InputException failure = assertThrows(InputException.class, () -> WholeFile.writeAll(files));
        assertEquals(second + ": is a folder, not a file", failure.getMessage());
        assertEquals(List.of("second"), names());
    }
}
