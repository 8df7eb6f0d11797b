package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.io.InputException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine.Command;

/** What every command shares: help, version, exit codes, one line for an error. */
class CommandLineTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    @Test
    void helpGoesToStandardOutput() {
        assertEquals(0, run("--help"));
        assertTrue(out.toString().contains("Usage: teeward-examples"), out.toString());
        assertEquals("", err.toString());
    }

    @Test
    void versionIsOneLine() {
        assertEquals(0, run("--version"));
        assertTrue(out.toString().startsWith("teeward-examples "), out.toString());
        assertEquals(1, out.toString().lines().count());
    }

    @Test
    void noCommandShowsTheUsageAsAnError() {
        assertEquals(2, run());
        assertTrue(err.toString().contains("Usage: teeward-examples"), err.toString());
        assertEquals("", out.toString());
    }

    @Test
    void unknownOptionIsOneLine() {
        assertEquals(2, run("--colour"));
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertTrue(err.toString().contains("--colour"), err.toString());
        assertTrue(err.toString().contains("--help"), err.toString());
    }

    @Test
    void helpListsTheCommands() {
        assertEquals(0, run("--help"));
        for (String name : TeewardExamples.COMMANDS.keySet()) {
            assertTrue(out.toString().contains("\n  " + name + " "), name + " is not in " + out);
        }
    }

    /** The name is written twice, so that a command can be found without reading the annotations of all. */
    @Test
    void commandsAreFoundByTheNamesThatTheyGiveThemselves() {
        assertTrue(TeewardExamples.COMMANDS.size() >= 15);
        TeewardExamples.COMMANDS.forEach((name, command) -> {
            assertEquals(name, command.getAnnotation(Command.class).name());
            out.getBuffer().setLength(0);
            assertEquals(0, run(name, "--help"), name);
            assertTrue(out.toString().startsWith("Usage: teeward-examples " + name + " "), out.toString());
        });
    }

    @Test
    void missingCommandIsOneLine() {
        assertEquals(2, run("--"));
        assertEquals(
                "a command is missing; see teeward-examples --help",
                err.toString().strip());
        assertEquals("", out.toString());
    }

    @Test
    void argumentsAreNotReadFromFiles() {
        assertEquals(2, run("compare", "@none.csv"));
        assertEquals(
                "@none.csv: cannot be read: there is no such file",
                err.toString().strip());
    }

    @Test
    void whatItQuotesCannotSteerATerminal() {
        assertEquals(2, run("no\u001B[31m\nsuch"));
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertEquals(-1, err.toString().indexOf('\u001B'), err.toString());
    }

    @Test
    void anInputThatCannotBeUsedIsTheUsersBusiness() {
        assertEquals(2, failing(InputException.of("a.csv", "is empty")));
        assertEquals("a.csv: is empty", err.toString().strip());
    }

    @Test
    void anythingElseIsOneLineToo() {
        assertEquals(1, failing(new IllegalStateException("first\nsecond")));
        assertEquals(
                "unexpected failure: IllegalStateException: first second",
                err.toString().strip());
    }

    @Test
    void aFailureWithoutWordsIsNamed() {
        assertEquals(1, failing(new NullPointerException()));
        assertEquals(
                "unexpected failure: java.lang.NullPointerException",
                err.toString().strip());
    }

    @Test
    void tooLittleMemoryIsOneLine() {
        assertEquals(1, failing(new OutOfMemoryError("Java heap space")));
        assertEquals(
                "there is not enough memory for this: OutOfMemoryError",
                err.toString().strip());
    }

    /** A command that fails when it says what it wrote. */
    private int failing(Throwable failure) {
        PrintWriter broken = new PrintWriter(out) {
            @Override
            public void println(String line) {
                if (failure instanceof Error error) {
                    throw error;
                }
                throw (RuntimeException) failure;
            }
        };
        Path session = folder.resolve("session.csv");
        return TeewardExamples.run(broken, new PrintWriter(err), "make-demo", "--out", session.toString());
    }
}
