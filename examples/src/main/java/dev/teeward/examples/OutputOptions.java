package dev.teeward.examples;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.io.WholeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where an answer goes besides the screen, and in which units, on the command line. */
final class OutputOptions {
    @Option(
            names = "--units",
            paramLabel = "us|metric",
            converter = UnitsConverter.class,
            description = "The units of the answer, whatever those of the file are; us if not given.")
    private UnitSystem units = UnitSystem.US;

    @Option(
            names = "--html",
            paramLabel = "FILE",
            description = "Also write the answer with pictures as one page that needs no network.")
    private @Nullable Path html;

    @Option(names = "--json", paramLabel = "FILE", description = "Also write every number; see the command schema.")
    private @Nullable Path json;

    UnitSystem units() {
        return units;
    }

    @Nullable
    Path html() {
        return html;
    }

    @Nullable
    Path json() {
        return json;
    }

    /** Finds out beforehand what would stop the writing. */
    void check(List<Path> inputs) throws IOException {
        new ReportFiles(html, json).check(inputs);
    }

    /** Writes what was asked for, all or nothing. */
    void write(Supplier<String> page, Supplier<Map<String, @Nullable Object>> numbers) {
        Map<Path, WholeFile.Content> files = new LinkedHashMap<>();
        if (html != null) {
            String text = page.get();
            files.put(html, file -> file.write(text));
        }
        if (json != null) {
            String text = JsonText.of(numbers.get());
            files.put(json, file -> file.write(text));
        }
        WholeFile.writeAll(files);
    }
}
