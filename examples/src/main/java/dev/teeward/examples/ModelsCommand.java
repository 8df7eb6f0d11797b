package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Flies invented shots through every aerodynamic model and shows how far apart they land. */
@Command(
        name = "models",
        description = "Flies the same invented shots through every aerodynamic model that gives both drag and lift.",
        sortOptions = false,
        footer = {
            "",
            "A model flown outside the range in which it was measured says so. Sources that give only lift or only drag are"
                    + " not flown: from Java they can be combined."
        })
final class ModelsCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(names = "--html", paramLabel = "FILE", description = "Also write a page with a picture of each shot.")
    private @Nullable Path html;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() throws IOException {
        new ReportFiles(html, null).check(List.of());
        ModelSpread spread = new ModelSpread();
        if (html != null) {
            String page = spread.html();
            WholeFile.write(html, file -> file.write(page));
        }
        spec.commandLine().getOut().print(spread.text());
        return 0;
    }
}
