package dev.teeward.fitting.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Takes out of a tree what only comes of computing in binary. Levels and percentages are rounded to 12 decimals, so that twice
 * 0.95 less 1 is 0.9. In the branch of a metric a difference of readings, or an end of its interval, that is smaller than
 * 1e-12 of the largest reading is 0: readings of that size are 2e-16 of themselves apart, and sums of thousands of them are
 * certain to a thousand times that, while devices show four or five digits.
 */
final class RoundingNoise {
    private static final int DECIMALS = 12;
    private static final double NOISE = 1e-12;
    private static final List<String> DIFFERENCES = List.of("difference", "exact", "shift", "equivalence");
    private static final List<String> ENDS = List.of("value", "lower", "upper");

    private RoundingNoise() {}

    static Map<String, @Nullable Object> without(Map<String, @Nullable Object> tree) {
        return map(tree);
    }

    private static Map<String, @Nullable Object> map(Map<?, ?> tree) {
        double noise = NOISE * Math.max(largest(tree.get("first")), largest(tree.get("second")));
        Map<String, @Nullable Object> clean = new LinkedHashMap<>();
        tree.forEach((key, value) -> {
            String name = String.valueOf(key);
            if (name.equals("exclusions")) {
                clean.put(name, value); // counts and words
            } else if (value instanceof Double number && isLevel(name)) {
                clean.put(name, rounded(number));
            } else if (value instanceof Map<?, ?> branch && DIFFERENCES.contains(name) && noise > 0.0) {
                clean.put(name, difference(map(branch), noise));
            } else {
                clean.put(name, any(value));
            }
        });
        return Collections.unmodifiableMap(clean);
    }

    private static @Nullable Object any(@Nullable Object value) {
        if (value instanceof LaterMap later) {
            return new LaterMap(() -> map(later));
        }
        if (value instanceof Map<?, ?> branch) {
            return map(branch);
        }
        return value instanceof List<?> list
                ? Collections.unmodifiableList(list.stream()
                        .map(item -> item instanceof Map<?, ?> branch ? map(branch) : item)
                        .toList())
                : value;
    }

    private static boolean isLevel(String name) {
        return name.equals("level") || name.endsWith("_percent");
    }

    private static Object rounded(double number) {
        return BigDecimal.valueOf(number)
                        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                        .doubleValue()
                + 0.0;
    }

    /** The size of the largest reading of a summary, 0 if it is none. */
    private static double largest(@Nullable Object summary) {
        return summary instanceof Map<?, ?> map
                        && map.get("min") instanceof Double low
                        && map.get("max") instanceof Double high
                ? Math.max(Math.abs(low), Math.abs(high))
                : 0.0;
    }

    private static Map<String, @Nullable Object> difference(Map<String, @Nullable Object> branch, double noise) {
        Map<String, @Nullable Object> clean = new LinkedHashMap<>(branch);
        for (String end : ENDS) {
            if (clean.get(end) instanceof Double number && Math.abs(number) < noise) {
                clean.put(end, 0.0);
            }
        }
        return Collections.unmodifiableMap(clean);
    }
}
