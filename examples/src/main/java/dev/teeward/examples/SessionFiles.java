package dev.teeward.examples;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.io.ColumnMapping;
import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.io.SessionReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How sessions are read, on the command line. */
final class SessionFiles {
    @Option(
            names = "--mapping",
            paramLabel = "FILE",
            description = "What the headings of another table mean: lines such as Ball Spd = ball_speed mph.")
    private @Nullable Path mapping;

    /** What is read: the sessions, and the mapping if there is one. */
    List<Path> inputs(List<Path> sessions) {
        List<Path> inputs = new ArrayList<>(sessions);
        if (mapping != null) {
            inputs.add(mapping);
        }
        return inputs;
    }

    @Nullable
    Path mapping() {
        return mapping;
    }

    SessionReader reader() {
        return mapping == null
                ? SessionReader.withDefaults()
                : SessionReader.withDefaults().withMapping(ColumnMapping.read(mapping));
    }

    /** One session, or several as one, each shot with the air of its own; an {@link IllegalArgumentException} if they do not go together. */
    Session together(List<Path> files) {
        if (new HashSet<>(files).size() < files.size()) {
            throw new IllegalArgumentException("a file is given twice; its shots would count double");
        }
        SessionReader reader = reader();
        List<Session> sessions = files.stream().map(reader::read).toList();
        return sessions.size() == 1 ? sessions.get(0) : Session.combine(sessions);
    }

    /** A session that cannot be used is a fault of its file. */
    static InputException wrong(List<Path> files, IllegalArgumentException e) {
        String where = files.get(0) + (files.size() == 1 ? "" : " and " + (files.size() - 1) + " more");
        InputException wrong = InputException.of(where, String.valueOf(e.getMessage()));
        wrong.initCause(e);
        return wrong;
    }
}
