package dev.teeward.examples;

import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.WholeFile;
import dev.teeward.fitting.report.HeadToHeadReport;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Where a report goes besides the screen. Nothing is written before everything is known to be there. */
final class ReportFiles {
    private final @Nullable Path html;
    private final @Nullable Path json;

    /** Either may be null, for a report that does not go there. */
    ReportFiles(@Nullable Path html, @Nullable Path json) {
        this.html = html;
        this.json = json;
    }

    /** Finds out beforehand what would stop the writing; the inputs must survive it. */
    void check(List<Path> inputs) throws IOException {
        check(html, inputs);
        check(json, inputs);
        if (html != null && json != null && same(html, json)) {
            throw InputException.of(json.toString(), "is given both for the page and for the numbers");
        }
    }

    private static void check(@Nullable Path file, List<Path> inputs) throws IOException {
        if (file == null) {
            return;
        }
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw InputException.of(file.toString(), "the folder to write to does not exist");
        }
        if (Files.isDirectory(file)) {
            throw InputException.of(file.toString(), "is a folder, not a file");
        }
        for (Path input : inputs) {
            if (same(file, input)) {
                throw InputException.of(file.toString(), "is read as well; write to a file of another name");
            }
        }
    }

    private static boolean same(Path one, Path other) throws IOException {
        if (Files.exists(one) && Files.exists(other)) {
            return Files.isSameFile(one, other);
        }
        return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
    }

    /** Writes the files and those given besides, all or none, then the text to the screen. */
    void write(HeadToHeadReport report, Map<Path, String> besides, PrintWriter out) {
        String text = report.text();
        Map<Path, String> texts = new LinkedHashMap<>(besides);
        if (html != null) {
            texts.put(html, report.html());
        }
        if (json != null) {
            texts.put(json, JsonText.of(report.data().root()));
        }
        Map<Path, WholeFile.Content> files = new LinkedHashMap<>();
        texts.forEach((path, content) -> files.put(path, file -> file.write(content)));
        WholeFile.writeAll(files);
        out.print(text);
    }
}
