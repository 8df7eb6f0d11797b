package dev.teeward.examples;

import java.io.Console;
import java.io.PrintWriter;
import java.util.Locale;

/** One line on a terminal that says how far a long run has come, and is gone afterwards. */
final class Progress {
    /** Shorter runs are over before anybody could read it. */
    private static final int SHORTEST = 20_000;

    private static final int STEP = 5_000;

    private final PrintWriter err;
    private final int rows;
    private final boolean shown;
    private int widest;

    Progress(PrintWriter err, int rows, boolean terminal) {
        this.err = err;
        this.rows = rows;
        this.shown = terminal && rows >= SHORTEST;
    }

    /** Whether a person is watching. Since Java 22 there is a console even without a terminal, and it says which. */
    @SuppressWarnings("SystemConsoleNull") // null is the answer of Java 17; isTerminal that of 22
    static boolean onTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException before22) {
            return true;
        }
    }

    void done(int count) {
        if (shown && count % STEP == 0) {
            String text = String.format(Locale.ROOT, "%,d of %,d flights", count, rows);
            widest = Math.max(widest, text.length());
            err.print("\r" + text);
            err.flush();
        }
    }

    void end() {
        if (widest > 0) {
            err.print("\r" + " ".repeat(widest) + "\r");
            err.flush();
        }
    }
}
