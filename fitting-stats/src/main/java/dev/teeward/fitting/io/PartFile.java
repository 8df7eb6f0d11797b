package dev.teeward.fitting.io;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A file under a name of its own until it takes the name that is meant for it; until it is kept that can be undone. */
final class PartFile {
    private final Path path;
    private final Path real;
    private final Path part;
    private @Nullable Path before;
    private boolean taken;

    private PartFile(Path path, Path real) {
        this.path = path;
        this.real = real;
        this.part = real.resolveSibling("." + UUID.randomUUID() + ".part");
    }

    /** In the folder of the file itself, behind links. */
    static PartFile beside(Path path) throws IOException {
        Path target = path.toAbsolutePath();
        return new PartFile(path, Files.exists(target) ? target.toRealPath() : target);
    }

    /** The name that is meant for it, as it was given. */
    Path path() {
        return path;
    }

    /** Where to write meanwhile. */
    Path part() {
        return part;
    }

    /** Takes the name; what had it before is kept aside if this may have to be undone. */
    void take(boolean last) throws IOException {
        if (!last && Files.exists(real)) {
            Path aside = real.resolveSibling("." + UUID.randomUUID() + ".before");
            before = aside;
            Files.copy(real, aside, StandardCopyOption.COPY_ATTRIBUTES);
        }
        move(part, real);
        taken = true;
    }

    /** From here on it is not undone. */
    void keep() {
        taken = false;
    }

    /** Unless it is kept, everything is as it was; a part and what was kept aside go in any case. */
    void undo() {
        try {
            if (taken && before != null) {
                move(before, real);
            } else if (taken) {
                Files.deleteIfExists(real);
            }
            taken = false;
            Files.deleteIfExists(part);
            if (before != null) {
                Files.deleteIfExists(before);
            }
        } catch (IOException e) {
            // The failure that led here is the one to report; what is left has a name that begins with a dot.
            taken = false;
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
