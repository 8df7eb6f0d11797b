package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.Unit;
import java.io.Reader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringTokenizer;

/**
 * What the headings of somebody else's table mean.
 *
 * <p>A mapping is a small text file of lines {@code heading = meaning}. The heading is written as in the table; the last
 * equals sign divides. A meaning is one of
 *
 * <ul>
 *   <li>a metric and its unit, {@code ball_speed mph}; then, if wanted, {@code negate} where the table has the opposite sign,
 *       or {@code sign R/L} where a letter before or after the number is the sign: the first letter is positive;
 *   <li>a text column of a session: {@code club}, {@code shot}, {@code pair}, {@code exclude}, {@code note}, {@code feel},
 *       {@code sound}, {@code look}, {@code day};
 *   <li>{@code other}: kept as it is, whatever it looks like.
 * </ul>
 *
 * <p>Blank lines and lines beginning with {@code #} are skipped. Headings of the mapping that the table does not have are of
 * no consequence; headings of the table that the mapping does not have are read as usual.
 *
 * <pre>{@code
 * ColumnMapping mapping = ColumnMapping.parse("""
 *     Speed off the face = ball_speed mph
 *     Finish             = side yd sign R/L
 *     """, "mapping");
 * Session session = SessionReader.withDefaults().withMapping(mapping).read(path);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ColumnMapping {
    private static final Set<String> TEXT_COLUMNS = Set.copyOf(SessionReader.TEXT_COLUMNS);

    private final Map<String, Target> targets;

    private ColumnMapping(Map<String, Target> targets) {
        this.targets = targets;
    }

    /** What one heading means: a metric with a unit, a text column, or neither. */
    record Target(
            java.util.Optional<Metric> metric,
            java.util.Optional<Unit> unit,
            String text,
            boolean negate,
            char positive,
            char negative) {
        static final char NO_LETTER = 0;
    }

    /**
     * The mapping that maps nothing.
     *
     * @return an empty mapping
     */
    public static ColumnMapping none() {
        return new ColumnMapping(Map.of());
    }

    /**
     * Reads a mapping file.
     *
     * @param path the file, UTF-8
     * @return the mapping
     * @throws InputException if it cannot be read or a line is wrong; the message names the line
     */
    public static ColumnMapping read(Path path) {
        return parse(TextFile.read(path), path.toString());
    }

    /**
     * Reads a mapping.
     *
     * @param reader the text; not closed
     * @param name what to call it in messages
     * @return the mapping
     * @throws InputException if it cannot be read or a line is wrong; the message names the line
     */
    public static ColumnMapping read(Reader reader, String name) {
        return parse(TextFile.read(reader, name), name);
    }

    /**
     * Reads a mapping.
     *
     * @param text the lines
     * @param name what to call it in messages
     * @return the mapping
     * @throws InputException if a line is wrong; the message names the line
     */
    public static ColumnMapping parse(String text, String name) {
        Map<String, Target> targets = new LinkedHashMap<>();
        int number = 0;
        for (String raw : TextFile.checked(text, name).lines().toList()) {
            number++;
            String line = raw.strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String place = "line " + number;
            int divide = line.lastIndexOf('=');
            if (divide <= 0 || line.substring(divide + 1).isBlank()) {
                throw InputException.at(name, place, "is not of the form: heading = meaning");
            }
            String heading = line.substring(0, divide).strip();
            try {
                if (targets.put(heading, target(line.substring(divide + 1))) != null) {
                    throw new IllegalArgumentException(InputException.quote(heading) + " is mapped twice");
                }
            } catch (IllegalArgumentException e) {
                InputException failure = InputException.at(name, place, String.valueOf(e.getMessage()));
                failure.initCause(e);
                throw failure;
            }
        }
        return new ColumnMapping(Collections.unmodifiableMap(targets));
    }

    Map<String, Target> targets() {
        return targets;
    }

    private static Target target(String meaning) {
        List<String> words = words(meaning);
        String first = words.get(0);
        if (TEXT_COLUMNS.contains(first) || first.equals("other")) {
            if (words.size() > 1) {
                throw new IllegalArgumentException(first + " takes nothing after it");
            }
            return new Target(java.util.Optional.empty(), java.util.Optional.empty(), first, false, (char) 0, (char) 0);
        }
        Metric metric = Metric.find(first).orElseThrow(() -> unknown(first));
        int next = 1;
        Unit unit = metric.siUnit();
        if (!unit.symbol().isEmpty()) {
            if (words.size() < 2) {
                throw new IllegalArgumentException(first + " needs a unit: " + UnitText.list(metric.units()));
            }
            unit = UnitText.find(words.get(1), metric.units())
                    .orElseThrow(() -> new IllegalArgumentException(InputException.quote(words.get(1))
                            + " is not a unit of " + metric.label() + "; use " + UnitText.list(metric.units())));
            next = 2;
        }
        boolean negate = false;
        char positive = 0;
        char negative = 0;
        while (next < words.size()) {
            String word = words.get(next);
            if (word.equals("negate") && !negate) {
                negate = true;
                next++;
            } else if (word.equals("sign") && positive == 0 && next + 1 < words.size()) {
                String letters = words.get(next + 1).toUpperCase(Locale.ROOT);
                if (!letters.matches("[A-Z]/[A-Z]") || letters.charAt(0) == letters.charAt(2)) {
                    throw new IllegalArgumentException("sign needs two letters such as R/L, the positive one first");
                }
                positive = letters.charAt(0);
                negative = letters.charAt(2);
                next += 2;
            } else {
                throw new IllegalArgumentException(InputException.quote(word)
                        + " is not understood; after the unit there may be: negate, sign R/L");
            }
        }
        return new Target(java.util.Optional.of(metric), java.util.Optional.of(unit), "", negate, positive, negative);
    }

    private static IllegalArgumentException unknown(String word) {
        List<String> known = new ArrayList<>(SessionReader.TEXT_COLUMNS);
        known.add("other");
        for (Metric metric : Metric.values()) {
            known.add(metric.key());
        }
        return new IllegalArgumentException(InputException.quote(word) + " is neither a metric nor a text column"
                + Names.closest(word, known)
                        .map(n -> "; did you mean " + n + "?")
                        .orElse(""));
    }

    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        StringTokenizer tokens = new StringTokenizer(text);
        while (tokens.hasMoreTokens()) {
            words.add(tokens.nextToken());
        }
        return words;
    }
}
