package dev.teeward.examples;

import dev.teeward.fitting.io.InputException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The entry point of the executable jar: finds the command, and turns every failure into one line and an exit code. */
@Command(
        name = "teeward-examples",
        mixinStandardHelpOptions = true,
        versionProvider = TeewardExamples.Version.class,
        description = "Runnable examples of the Teeward libraries.",
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Every command has --help. Exit codes: 0 done, 2 the command line or an input file is wrong, 1 anything"
                    + " else."
        })
public final class TeewardExamples implements Callable<Integer> {
    /** The commands by their names, in the order of the help. */
    static final Map<String, Class<?>> COMMANDS = commands();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    private TeewardExamples() {}

    private static Map<String, Class<?>> commands() {
        Map<String, Class<?>> commands = new LinkedHashMap<>();
        commands.put("compare", CompareCommand.class);
        commands.put("choose", ChooseCommand.class);
        commands.put("demo", DemoCommand.class);
        commands.put("schema", SchemaCommand.class);
        commands.put("fly", FlyCommand.class);
        commands.put("calibrate", CalibrateCommand.class);
        commands.put("plan", PlanCommand.class);
        commands.put("validate", ValidateCommand.class);
        commands.put("optimise", OptimiseCommand.class);
        commands.put("models", ModelsCommand.class);
        commands.put("altitude", AltitudeCommand.class);
        commands.put("gap", GapCommand.class);
        commands.put("curve", CurveCommand.class);
        commands.put("pool", PoolCommand.class);
        commands.put("make-demo", MakeDemoCommand.class);
        return Collections.unmodifiableMap(commands);
    }

    /**
     * What happens without a command.
     *
     * @return never
     * @throws ParameterException always
     */
    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), "a command is missing");
    }

    /**
     * Runs a command and ends the program with its exit code.
     *
     * @param args the command and its options
     */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), false);
        PrintWriter err = new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8), true);
        System.exit(delivered(run(out, err, args), out, System.out, err));
    }

    /** The exit code, or 1 if what was printed did not arrive, as on a full disk or a closed pipe. */
    static int delivered(int code, PrintWriter out, PrintStream stream, PrintWriter err) {
        if (out.checkError() || stream.checkError()) {
            err.println("standard output cannot be written to, so the answer is not complete");
            return code == CommandLine.ExitCode.OK ? CommandLine.ExitCode.SOFTWARE : code;
        }
        return code;
    }

    /**
     * Runs a command without ending the program.
     *
     * @param out where results go
     * @param err where errors and progress go
     * @param args the command and its options
     * @return the exit code: 0, 1 or 2
     */
    static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = new CommandLine(new TeewardExamples());
        // Reading the annotations of all commands takes longer than some of the commands.
        boolean named = args.length > 0 && COMMANDS.containsKey(args[0]);
        COMMANDS.forEach((name, command) -> {
            if (!named || name.equals(args[0])) {
                line.addSubcommand(name, command);
            }
        });
        line.setOut(out);
        line.setErr(err);
        line.setExpandAtFiles(false);
        line.setParameterExceptionHandler((bad, given) -> wrongCommandLine(bad));
        line.setExecutionExceptionHandler((failure, failed, parsed) -> failed(failure, failed));
        try {
            return args.length == 0 ? usage(line) : line.execute(args);
        } catch (OutOfMemoryError | StackOverflowError e) {
            err.println("there is not enough memory for this: " + e.getClass().getSimpleName());
            return CommandLine.ExitCode.SOFTWARE;
        } catch (LinkageError | InternalError e) {
            err.println("unexpected failure: " + oneLine(e.toString()));
            return CommandLine.ExitCode.SOFTWARE;
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static int usage(CommandLine line) {
        line.usage(line.getErr());
        return CommandLine.ExitCode.USAGE;
    }

    private static int wrongCommandLine(ParameterException bad) {
        CommandLine line = bad.getCommandLine();
        line.getErr().println(oneLine(bad) + "; see " + line.getCommandSpec().qualifiedName() + " --help");
        return CommandLine.ExitCode.USAGE;
    }

    private static int failed(Exception failure, CommandLine line) {
        if (failure instanceof InputException) {
            line.getErr().println(oneLine(failure));
            return CommandLine.ExitCode.USAGE;
        }
        String text = oneLine(failure);
        String kind = failure.getClass().getSimpleName();
        line.getErr().println("unexpected failure: " + (text.contains(kind) ? text : kind + ": " + text));
        return CommandLine.ExitCode.SOFTWARE;
    }

    /** Whatever a message quotes, it stays one line and cannot steer a terminal. */
    private static String oneLine(Exception failure) {
        return oneLine(Objects.requireNonNullElse(failure.getMessage(), failure.toString()));
    }

    private static String oneLine(String message) {
        return message.strip().replaceAll("\\s*\\R\\s*", " ").replaceAll("[\\p{Cc}\\p{Cs}\u2028\u2029]", "?");
    }

    /** The version from the jar's manifest. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = TeewardExamples.class.getPackage().getImplementationVersion();
            return new String[] {"teeward-examples " + Objects.requireNonNullElse(version, "(not from a jar)")};
        }
    }
}
