package dev.teeward.fitting.io;

import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.VisibleText;
import java.io.Reader;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Reads sessions from files; the form of a file is described with the package.
 *
 * <p>Two names of clubs that a reader cannot tell apart, because they differ only in upper and lower case, in kinds of spaces,
 * in characters that do not show or in the way accents are put together, are refused rather than made one: which of them was
 * meant, only the golfer knows. See {@link VisibleText#key}.
 *
 * <pre>{@code
 * Session session = SessionReader.withDefaults().read(Path.of("session.csv"));
 * Session both = SessionReader.withDefaults().readAll(List.of(monday, tuesday));
 * }</pre>
 *
 * <p>Immutable and thread-safe. All failures are {@link InputException}s.
 */
public final class SessionReader {
    /** The columns of a session that are no metrics. */
    static final List<String> TEXT_COLUMNS =
            List.of("club", "shot", "pair", "exclude", "note", "feel", "sound", "look", "day", "part", "intent");

    private static final int MOST_DIGITS = 7;

    private final ColumnMapping mapping;

    private SessionReader(ColumnMapping mapping) {
        this.mapping = mapping;
    }

    /**
     * A reader of files with Teeward's own headings.
     *
     * @return the reader
     */
    public static SessionReader withDefaults() {
        return new SessionReader(ColumnMapping.none());
    }

    /**
     * With meanings for headings of one's own.
     *
     * @param columns the mapping
     * @return a copy
     */
    public SessionReader withMapping(ColumnMapping columns) {
        return new SessionReader(Objects.requireNonNull(columns, "columns"));
    }

    /**
     * Reads a file.
     *
     * @param path the file, UTF-8 with or without a byte-order mark
     * @return the session
     * @throws InputException if it cannot be used
     */
    public Session read(Path path) {
        return session(tables().read(path));
    }

    /**
     * Reads a text.
     *
     * @param reader the text; not closed
     * @param name what to call it in messages
     * @return the session
     * @throws InputException if it cannot be used
     */
    public Session read(Reader reader, String name) {
        return session(tables().read(reader, name));
    }

    /**
     * Reads a text.
     *
     * @param text the text
     * @param name what to call it in messages
     * @return the session
     * @throws InputException if it cannot be used
     */
    public Session read(String text, String name) {
        return session(tables().read(text, name));
    }

    /**
     * Reads several files, such as the days of a long test, as one session; see {@link Session#combine}.
     *
     * @param paths the files in order, at least one
     * @return one session
     * @throws InputException if one cannot be used or contradicts the ones before it
     * @throws IllegalArgumentException if there is no file
     */
    public Session readAll(List<Path> paths) {
        List<Session> sessions = new ArrayList<>();
        for (Path path : paths) {
            sessions.add(read(path));
            try {
                Session.combine(sessions);
            } catch (IllegalArgumentException e) {
                InputException failure = InputException.of(path.toString(), String.valueOf(e.getMessage()));
                failure.initCause(e);
                throw failure;
            }
        }
        return Session.combine(sessions);
    }

    /**
     * What the header block of any table says about the place, the air and the clubs, as that of a session does.
     *
     * @param table a table, of launches for example
     * @return a session without shots
     * @throws InputException if a line of the header block cannot be used
     */
    public static Session conditions(ColumnTable table) {
        Session.Builder session = Session.builder();
        SessionHeader header = new SessionHeader(table.file(), table.delimiter() != ',', session);
        header.read(table.header());
        header.addParts();
        return session.build();
    }

    private TableReader tables() {
        return TableReader.withDefaults().withMapping(mapping).withTextColumns(TEXT_COLUMNS);
    }

    private static Session session(ColumnTable table) {
        Session.Builder session = Session.builder();
        SessionHeader header = new SessionHeader(table.file(), table.delimiter() != ',', session);
        header.read(table.header());
        int club = table.textColumn("club");
        if (club < 0) {
            throw InputException.atHeading(table.file(), "club", "is missing; every shot needs the name of its club");
        }
        for (Metric metric : Metric.values()) {
            table.unit(metric).ifPresent(unit -> header.unit(metric, unit));
        }
        int parts = header.addParts();
        List<Shot> shots = new ArrayList<>(table.rows());
        Consistency consistency = new Consistency(table);
        for (int row = 0; row < table.rows(); row++) {
            Shot.Builder builder =
                    Shot.builder(club(table, row, club)).number(row + 1).source(table.file(), row + 1);
            table.measured(row, builder);
            texts(table, row, builder, parts);
            Shot shot = builder.build();
            consistency.check(shot, row + 1);
            shots.add(shot);
        }
        Session read = session.shots(ShotSet.of(shots)).build();
        try {
            return Session.combine(List.of(read)); // refuses names that read alike, in the header as well
        } catch (IllegalArgumentException e) {
            InputException failure = InputException.of(table.file(), String.valueOf(e.getMessage()));
            failure.initCause(e);
            throw failure;
        }
    }

    private static void texts(ColumnTable table, int row, Shot.Builder shot, int parts) {
        for (int i = 0; i < table.columns().size(); i++) {
            Column column = table.columns().get(i);
            if (column.metric() != null) {
                continue;
            }
            try {
                text(shot, column, table.text(row, i), parts);
            } catch (DateTimeException | IllegalArgumentException e) {
                InputException failure =
                        InputException.atCell(table.file(), row + 1, column.heading(), String.valueOf(e.getMessage()));
                failure.initCause(e);
                throw failure;
            }
        }
    }

    private static String club(ColumnTable table, int row, int place) {
        String name = table.text(row, place).strip();
        String heading = table.columns().get(place).heading();
        if (name.isEmpty()) {
            throw InputException.atCell(table.file(), row + 1, heading, "is empty");
        }
        for (int i = 0; i < name.length(); i++) {
            if (Character.isISOControl(name.charAt(i))) {
                throw InputException.atCell(table.file(), row + 1, heading, "must be one line");
            }
        }
        return name;
    }

    private static void text(Shot.Builder shot, Column column, String text, int parts) {
        if (column.text().isEmpty()) {
            shot.other(column.heading(), text);
            return;
        }
        if (text.isBlank() && !column.text().equals("note")) {
            return;
        }
        switch (column.text()) {
            case "shot" -> shot.number(whole(text.strip(), 1_000_000));
            case "pair" -> shot.pair(text);
            case "exclude" -> shot.exclusion(text);
            case "note" -> shot.note(text);
            case "feel" -> shot.rating(Rating.FEEL, whole(text.strip(), 5));
            case "sound" -> shot.rating(Rating.SOUND, whole(text.strip(), 5));
            case "look" -> shot.rating(Rating.LOOK, whole(text.strip(), 5));
            case "day" -> shot.day(day(text.strip()));
            case "part" -> shot.part(part(text.strip(), parts));
            case "intent" -> shot.intent(intent(text.strip()));
            default -> {
                // the club is read before everything else
            }
        }
    }

    private static int part(String text, int parts) {
        if (parts == 0) {
            throw new IllegalArgumentException("needs the header line parts, which says how many there are");
        }
        return whole(text, parts) - 1;
    }

    private static Intent intent(String text) {
        for (Intent intent : Intent.values()) {
            if (intent.key().equalsIgnoreCase(text)) {
                return intent;
            }
        }
        throw new IllegalArgumentException(InputException.quote(text) + " is none of draw, straight and fade");
    }

    private static int whole(String text, int most) {
        if (!wholeNumber(text) || Integer.parseInt(text) < 1 || Integer.parseInt(text) > most) {
            throw new IllegalArgumentException(InputException.quote(text) + " is not a whole number from 1 to " + most);
        }
        return Integer.parseInt(text);
    }

    private static boolean wholeNumber(String text) {
        boolean digits = !text.isEmpty() && text.length() <= MOST_DIGITS;
        for (int i = 0; digits && i < text.length(); i++) {
            digits = text.charAt(i) >= '0' && text.charAt(i) <= '9';
        }
        return digits;
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(InputException.quote(text) + " is not a date of the form 2026-05-14", e);
        }
    }

    /** What the shots of one file must not contradict. */
    private static final class Consistency {
        private final ColumnTable table;
        private final Map<String, String> clubs = new HashMap<>();
        private final Set<String> seen = new HashSet<>();
        private final Set<List<String>> pairs = new HashSet<>();

        Consistency(ColumnTable table) {
            this.table = table;
        }

        void check(Shot shot, int row) {
            String before = seen.add(shot.club()) ? clubs.putIfAbsent(VisibleText.key(shot.club()), shot.club()) : null;
            if (before != null && !before.equals(shot.club())) {
                throw InputException.atCell(
                        table.file(),
                        row,
                        "club",
                        InputException.quote(VisibleText.line(shot.club())) + " differs from "
                                + InputException.quote(VisibleText.line(before)) + " only in "
                                + VisibleText.difference(before, shot.club()) + "; write it in one way");
            }
            String pair = shot.pair().orElse(null);
            if (pair != null && shot.used() && !pairs.add(List.of(pair, shot.club()))) {
                throw InputException.atCell(
                        table.file(),
                        row,
                        "pair",
                        "pair " + pair + " already has a shot with " + shot.club() + "; exclude all but one");
            }
        }
    }
}
