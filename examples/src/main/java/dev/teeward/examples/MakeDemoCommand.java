package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the invented session of the demo, or another draw of it. */
@Command(
        name = "make-demo",
        description = "Invents the session of the demo: two 6-irons, 24 shots in alternation.",
        sortOptions = false,
        footer = {
            "",
            "Every number in it is computed by the impact and flight models of this library from random swings around known"
                    + " means; no golfer, club or device was measured. The same seed gives the same file. What was put in is"
                    + " written in the class DemoTruth."
        })
final class MakeDemoCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "SESSION.csv",
            description = "Where to write the session; replaced if it exists, and whole or not at all.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path out;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Another draw, a whole number; ${DEFAULT-VALUE} is the one that comes with the program.")
    private long seed = DemoSession.SEED;

    @Option(names = "--bag", description = "The invented bag of gap instead: ten clubs hit in rounds.")
    private boolean bag;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        String text = bag ? BagSession.text(seed) : DemoSession.text(seed);
        WholeFile.write(out, file -> file.write(text));
        String what = bag ? "an invented bag" : "an invented session of " + DemoTruth.SHOTS + " shots";
        spec.commandLine().getOut().println(out + ": " + what);
        return 0;
    }
}
