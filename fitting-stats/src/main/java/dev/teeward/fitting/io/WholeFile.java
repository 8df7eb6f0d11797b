package dev.teeward.fitting.io;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes files whole or not at all: into new files beside them, which then take their names.
 *
 * <pre>{@code
 * WholeFile.write(path, out -> out.write("text"));
 * }</pre>
 *
 * <p>Thread-safe. Two writers of the same file do not mix; the last one wins.
 */
public final class WholeFile {
    private WholeFile() {}

    /** What is to be written. */
    @FunctionalInterface
    public interface Content {
        /**
         * Writes everything.
         *
         * @param out where to; closed afterwards by the caller
         * @throws IOException if it cannot be written
         */
        void writeTo(Writer out) throws IOException;
    }

    /**
     * Writes a file in UTF-8. If anything goes wrong the file is what it was before.
     *
     * @param path the file, replaced if it exists; its folder must exist
     * @param content what to write
     * @throws InputException if the folder is missing or the file cannot be written
     */
    public static void write(Path path, Content content) {
        writeAll(Map.of(path, content));
    }

    /**
     * Writes several files in UTF-8, all or none: each into a new file beside its own, and only when all are written do they
     * take their names. If anything goes wrong all files are what they were before, and none is left that was not there. What
     * is no regular file, such as a pipe or a device, cannot be taken back and is written before any file takes its name.
     *
     * <pre>{@code
     * Map<Path, WholeFile.Content> files = new LinkedHashMap<>();
     * files.put(page, out -> out.write(html));
     * files.put(numbers, out -> out.write(json));
     * WholeFile.writeAll(files);
     * }</pre>
     *
     * @param files what to write where, in order; files are replaced if they exist, their folders must exist
     * @throws InputException if a folder is missing or a file cannot be written; it names the file
     */
    public static void writeAll(Map<Path, Content> files) {
        List<PartFile> parts = new ArrayList<>();
        try {
            for (Path path : files.keySet()) {
                check(path);
            }
            Map<Path, Content> streams = new LinkedHashMap<>();
            files.forEach((path, content) -> {
                if (Files.exists(path) && !Files.isRegularFile(path)) {
                    streams.put(path, content);
                } else {
                    naming(path, () -> {
                        PartFile part = PartFile.beside(path);
                        parts.add(part);
                        fill(part.part(), content, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    });
                }
            });
            streams.forEach((path, content) -> naming(path, () -> fill(path, content, StandardOpenOption.WRITE)));
            for (PartFile part : parts) {
                boolean last = part == parts.get(parts.size() - 1); // after it nothing can fail
                naming(part.path(), () -> part.take(last));
            }
            parts.forEach(PartFile::keep);
        } finally {
            parts.forEach(PartFile::undo);
        }
    }

    private static void check(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw InputException.of(path.toString(), "the folder to write to does not exist");
        }
        if (Files.isDirectory(path)) {
            throw InputException.of(path.toString(), "is a folder, not a file");
        }
    }

    /** A step that can fail. */
    private interface Step {
        void run() throws IOException;
    }

    private static void naming(Path path, Step step) {
        try {
            step.run();
        } catch (IOException e) {
            InputException failure = InputException.of(path.toString(), "cannot be written: " + TextFile.reason(e));
            failure.initCause(e);
            throw failure;
        }
    }

    private static void fill(Path file, Content content, OpenOption... options) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8, options)) {
            content.writeTo(out);
        }
    }
}
