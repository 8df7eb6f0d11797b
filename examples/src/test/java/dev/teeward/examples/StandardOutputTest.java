package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** What is printed either arrives or is reported as lost. */
class StandardOutputTest {
    private static final String LOST = "standard output cannot be written to, so the answer is not complete";

    private final StringWriter err = new StringWriter();

    private int delivered(int code, OutputStream sink) {
        PrintStream stream = new PrintStream(sink, false, StandardCharsets.UTF_8);
        PrintWriter out = new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
        out.print("some words");
        return TeewardExamples.delivered(code, out, stream, new PrintWriter(err, true));
    }

    private static OutputStream full() {
        return new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("no space left");
            }
        };
    }

    @Test
    void arrived() {
        ByteArrayOutputStream sink = new ByteArrayOutputStream();
        assertEquals(0, delivered(0, sink));
        assertEquals("some words", sink.toString(StandardCharsets.UTF_8));
        assertEquals("", err.toString());
    }

    @Test
    void lostIsAFailure() {
        assertEquals(1, delivered(0, full()));
        assertEquals(LOST, err.toString().strip());
    }

    @Test
    void lostDoesNotHideAnEarlierFailure() {
        assertEquals(2, delivered(2, full()));
    }

    /** /dev/full of Linux refuses every write with "no space left on device". */
    @Test
    void fullDevice() throws IOException, InterruptedException {
        File device = new File("/dev/full");
        assumeTrue(device.exists(), "there is no /dev/full");
        Process process = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-cp",
                        System.getProperty("java.class.path"),
                        TeewardExamples.class.getName(),
                        "schema")
                .redirectOutput(device)
                .start();
        String said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(true, process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(LOST, said.strip());
        assertEquals(1, process.exitValue());
    }
}
