package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** What every command shares: help, version, exit codes, one line for an error. */
class CommandLineTest {
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
}
