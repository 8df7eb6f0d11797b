package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.DurationUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Recognises names that are nearly right. */
final class Names {
    /** Other words of the trade for the same thing (common practice, no source). */
    private static final Map<String, Metric> SYNONYMS = Map.ofEntries(
            Map.entry("clubheadspeed", Metric.CLUB_SPEED),
            Map.entry("headspeed", Metric.CLUB_SPEED),
            Map.entry("swingspeed", Metric.CLUB_SPEED),
            Map.entry("angleofattack", Metric.ATTACK_ANGLE),
            Map.entry("launchdirection", Metric.START_DIRECTION),
            Map.entry("spinaxis", Metric.AXIS_TILT),
            Map.entry("landingangle", Metric.DESCENT_ANGLE),
            Map.entry("hangtime", Metric.FLIGHT_TIME),
            Map.entry("apexheight", Metric.APEX),
            Map.entry("carrydistance", Metric.CARRY),
            Map.entry("totaldistance", Metric.TOTAL));

    private static final Set<String> UNIT_WORDS = unitWords();

    private Names() {}

    /** Lower-case words joined by underscores, whatever the spelling was. */
    static String normal(String name) {
        StringBuilder words = new StringBuilder();
        char before = '_';
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean letter = Character.isLetterOrDigit(c);
            if ((Character.isUpperCase(c) && Character.isLowerCase(before)) || !letter) {
                underscore(words);
            }
            if (letter) {
                words.append(Character.toLowerCase(c));
            }
            before = c;
        }
        while (words.length() > 0 && words.charAt(words.length() - 1) == '_') {
            words.setLength(words.length() - 1);
        }
        return words.toString();
    }

    private static void underscore(StringBuilder words) {
        if (words.length() > 0 && words.charAt(words.length() - 1) != '_') {
            words.append('_');
        }
    }

    /** Without a unit at the end. */
    static String base(String normal) {
        int last = normal.lastIndexOf('_');
        return last > 0 && UNIT_WORDS.contains(normal.substring(last + 1)) ? normal.substring(0, last) : normal;
    }

    /** The metric that a heading probably means. */
    static Optional<Metric> metric(String heading) {
        String normal = normal(heading);
        String base = base(normal);
        Metric synonym = SYNONYMS.get(base.replace("_", ""));
        if (synonym != null) {
            return Optional.of(synonym);
        }
        List<String> keys = Stream.of(Metric.values()).map(Metric::key).toList();
        return closest(base, keys, !base.equals(normal)).map(Metric::of);
    }

    /** The name that was probably meant. */
    static Optional<String> closest(String name, Iterable<String> known) {
        return closest(normal(name), known, false);
    }

    private static Optional<String> closest(String normal, Iterable<String> known, boolean anyChange) {
        String written = normal.replace("_", "");
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String candidate : known) {
            String right = normal(candidate).replace("_", "");
            int distance = distance(written, right);
            int allowed = right.length() <= 6 ? 1 : 2;
            // Of short names one letter may be missing, doubled or swapped; another letter in its place is another
            // word.
            boolean otherWord = right.length() <= 4
                    && !anyChange
                    && distance == 1
                    && written.length() == right.length()
                    && !sameLetters(written, right);
            if (distance <= allowed && distance < least && !otherWord) {
                best = candidate;
                least = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    private static boolean sameLetters(String a, String b) {
        return a.chars()
                .sorted()
                .boxed()
                .toList()
                .equals(b.chars().sorted().boxed().toList());
    }

    /** Optimal string alignment distance: insertions, deletions, changes and swaps of neighbours. */
    static int distance(String a, String b) {
        if (Math.abs(a.length() - b.length()) > 3) {
            return Integer.MAX_VALUE;
        }
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                int best = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                d[i][j] = swapped ? Math.min(best, d[i - 2][j - 2] + 1) : best;
            }
        }
        return d[a.length()][b.length()];
    }

    /** A heading of the metric with a unit, as an example. */
    static String heading(Metric metric, Unit unit) {
        return unit.suffix().isEmpty() ? metric.key() : metric.key() + "_" + unit.suffix();
    }

    /** All headings that a metric may have. */
    static String headings(Metric metric) {
        return metric.units().stream().map(unit -> heading(metric, unit)).collect(Collectors.joining(", "));
    }

    private static Set<String> unitWords() {
        List<Unit> units = new ArrayList<>();
        Stream.of(
                        SpeedUnit.values(),
                        LengthUnit.values(),
                        AngleUnit.values(),
                        SpinRateUnit.values(),
                        DurationUnit.values(),
                        RatioUnit.values())
                .forEach(values -> units.addAll(List.of((Unit[]) values)));
        Set<String> words = new HashSet<>(List.of(
                "yards", "yard", "yds", "feet", "foot", "meters", "metres", "inches", "degrees", "degree", "degs",
                "kph", "seconds", "sec", "percent"));
        for (Unit unit : units) {
            words.add(unit.suffix().toLowerCase(Locale.ROOT));
        }
        words.remove("");
        return words;
    }
}
