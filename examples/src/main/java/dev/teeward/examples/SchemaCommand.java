package dev.teeward.examples;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints what the JSON of {@code compare} looks like. */
@Command(
        name = "schema",
        description = "Prints the JSON schema (draft 2020-12) of what compare writes with --json.",
        footer = {"", "The number in the name of the schema goes up whenever something is renamed or taken away."})
final class SchemaCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        spec.commandLine().getOut().print(JsonText.schema());
        return 0;
    }
}
