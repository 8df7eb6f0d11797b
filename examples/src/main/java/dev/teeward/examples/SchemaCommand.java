package dev.teeward.examples;

import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints what the JSON of a command looks like. */
@Command(
        name = "schema",
        description = "Prints the JSON schema (draft 2020-12) of what a command writes with --json.",
        footer = {"", "The number in the name of the schema goes up whenever something is renamed or taken away."})
final class SchemaCommand implements Callable<Integer> {
    /** The schema of what each command writes. */
    static final Map<String, String> SCHEMAS = Map.of(
            "compare", JsonText.SCHEMA,
            "gap", "bag-1.schema.json",
            "choose", "choice-1.schema.json",
            "plan", "plan-1.schema.json",
            "pool", "pool-1.schema.json",
            "curve", "curve-1.schema.json",
            "altitude", "altitude-1.schema.json",
            "optimise", "optimum-1.schema.json",
            "validate", "validation-1.schema.json",
            "calibrate", "calibration-1.schema.json");

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "COMMAND",
            description =
                    "The command: altitude, calibrate, choose, compare, curve, gap, optimise, plan, pool or validate;"
                            + " compare if not given.")
    private String command = "compare";

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        String file = SCHEMAS.get(command);
        if (file == null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "\"" + command + "\" writes no JSON; there are "
                            + String.join(", ", new TreeSet<>(SCHEMAS.keySet())));
        }
        spec.commandLine().getOut().print(JsonText.resource(file));
        return 0;
    }
}
