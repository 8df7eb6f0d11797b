package dev.teeward.fitting.io;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Writes a file whole or not at all: into a new file beside it, which then takes its name.
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
        String name = path.toString();
        Path target = path.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw InputException.of(name, "the folder to write to does not exist");
        }
        if (Files.isDirectory(target)) {
            throw InputException.of(name, "is a folder, not a file");
        }
        try {
            if (Files.exists(target) && !Files.isRegularFile(target)) {
                fill(target, content, StandardOpenOption.WRITE);
                return;
            }
            Path real = Files.exists(target) ? target.toRealPath() : target;
            Path part = real.resolveSibling("." + UUID.randomUUID() + ".part");
            try {
                fill(part, content, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                move(part, real);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            InputException failure = InputException.of(name, "cannot be written: " + TextFile.reason(e));
            failure.initCause(e);
            throw failure;
        }
    }

    private static void fill(Path file, Content content, StandardOpenOption... options) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8, options)) {
            content.writeTo(out);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
