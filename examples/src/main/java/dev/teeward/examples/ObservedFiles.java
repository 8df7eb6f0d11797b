package dev.teeward.examples;

import dev.teeward.fitting.io.InputException;
import dev.teeward.flight.study.ObservedFlight;
import dev.teeward.flight.study.ObservedFlightReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Observed flights from files; whatever is wrong with a file is one line that names it. */
final class ObservedFiles {
    private ObservedFiles() {}

    static List<ObservedFlight> read(Path flights, @Nullable Path tracks) {
        List<ObservedFlight> seen;
        try {
            seen = ObservedFlightReader.flights(text(flights));
        } catch (IllegalArgumentException e) {
            throw wrong(flights, e);
        }
        if (seen.isEmpty()) {
            throw InputException.of(flights.toString(), "has no flight below its heading");
        }
        if (tracks == null) {
            return seen;
        }
        try {
            return ObservedFlightReader.withTracks(seen, text(tracks));
        } catch (IllegalArgumentException e) {
            throw wrong(tracks, e);
        }
    }

    /** An error of what a file holds. */
    static InputException wrong(Path file, RuntimeException cause) {
        InputException failure = InputException.of(file.toString(), String.valueOf(cause.getMessage()));
        failure.initCause(cause);
        return failure;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            String why = e instanceof NoSuchFileException ? "there is no such file" : String.valueOf(e.getMessage());
            InputException failure = InputException.of(file.toString(), "cannot be read: " + why);
            failure.initCause(e);
            throw failure;
        }
    }
}
