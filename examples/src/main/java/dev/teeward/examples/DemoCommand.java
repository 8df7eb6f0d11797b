package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The main job on the session that comes with the program. */
@Command(
        name = "demo",
        description = "Compares the two clubs of the invented session that comes with the program.",
        sortOptions = false,
        footer = {
            "",
            "Writes the session, the page with pictures and the numbers into the folder; the last line is where the page is."
        })
final class DemoCommand implements Callable<Integer> {
    /** The session, in the jar and as it is written. */
    static final String SESSION = "demo_session.csv";

    /** The page with pictures, as it is written. */
    static final String PAGE = "head-to-head.html";

    /** The numbers, as they are written. */
    static final String NUMBERS = "head-to-head.json";

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "The folder to write to, created if there is none. If not given: the target folder that the program was built into, else"
                            + " the current one.")
    private @Nullable Path out;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        Path folder = out == null ? besideTheJar() : out;
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw InputException.of(folder.toString(), "is a file, not a folder");
        }
        String text = JsonText.resource(SESSION);
        HeadToHeadReport report = report(SessionReader.withDefaults().read(text, SESSION));
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw InputException.of(
                    folder.toString(), "cannot be created as a folder; a part of it may be a file or not yours");
        }
        Path page = folder.resolve(PAGE);
        PrintWriter screen = spec.commandLine().getOut();
        new ReportFiles(page, folder.resolve(NUMBERS)).write(report, Map.of(folder.resolve(SESSION), text), screen);
        screen.println();
        screen.println(page.toAbsolutePath().normalize());
        return 0;
    }

    /** The answer to the question of the demo, a golfer's who fades: does one club leave the face less open to the path? */
    static HeadToHeadReport report(Session session) {
        HeadToHead question = HeadToHead.withDefaults().withPrimary(Metric.FACE_TO_PATH);
        for (Map.Entry<Metric, Double> margin : DemoTruth.practicallySame().entrySet()) {
            question = question.withMargin(margin.getKey(), margin.getValue());
        }
        HeadToHeadResult result = question.compare(session);
        return HeadToHeadReport.of(result)
                .withExplanation(Explain.withDefaults().explain(result));
    }

    private static Path besideTheJar() {
        CodeSource source = DemoCommand.class.getProtectionDomain().getCodeSource();
        try {
            Path place = source == null ? null : Path.of(source.getLocation().toURI());
            Path folder = place == null ? null : place.getParent();
            if (folder != null && folder.endsWith("target")) {
                return folder;
            }
        } catch (URISyntaxException | IllegalArgumentException e) {
            return Path.of("");
        }
        return Path.of("");
    }
}
