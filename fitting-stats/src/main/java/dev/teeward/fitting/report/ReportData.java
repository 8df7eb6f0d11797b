package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.screen.SessionScreen;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Every number of a head-to-head result as a tree of plain values, in the order of a report.
 *
 * <p>Immutable and thread-safe.
 */
public final class ReportData {
    /** The name and version of the structure, which stands at {@code /schema}. */
    public static final String SCHEMA = "teeward-head-to-head/1";

    private final Map<String, @Nullable Object> root;

    private ReportData(Map<String, @Nullable Object> root) {
        this.root = root;
    }

    /**
     * The numbers of a result.
     *
     * @param result the result
     * @param units the units of all numbers
     * @return the numbers
     */
    public static ReportData of(HeadToHeadResult result, UnitSystem units) {
        return new ReportData(new ResultTree(
                        Objects.requireNonNull(result, "result"),
                        SessionScreen.withDefaults().screen(result.session()),
                        SessionAir.of(result.session()),
                        Objects.requireNonNull(units, "units"))
                .build());
    }

    /**
     * The whole tree: values are {@code Map<String, Object>}, {@code List<Object>}, {@code Double}, {@code Integer},
     * {@code String}, {@code Boolean} or null. An infinite end of an interval is null.
     *
     * @return the tree, unmodifiable
     */
    public Map<String, @Nullable Object> root() {
        return root;
    }

    /**
     * What stands at a place.
     *
     * @param pointer a JSON pointer (RFC 6901), such as {@code /metrics/carry/difference/value}; empty for the root
     * @return the value, or null if there is nothing or null
     */
    public @Nullable Object value(String pointer) {
        Objects.requireNonNull(pointer, "pointer");
        if (pointer.isEmpty()) {
            return root;
        }
        if (pointer.charAt(0) != '/') {
            throw new IllegalArgumentException(
                    "pointer must be empty or begin with /, but was \"" + pointer + "\"; see RFC 6901");
        }
        Object node = root;
        for (String token : pointer.substring(1).split("/", -1)) {
            String name = token.replace("~1", "/").replace("~0", "~");
            if (node instanceof Map<?, ?> map) {
                node = map.get(name);
            } else if (node instanceof List<?> list && name.matches("0|[1-9][0-9]{0,8}")) {
                int index = Integer.parseInt(name);
                node = index < list.size() ? list.get(index) : null;
            } else {
                return null;
            }
        }
        return node;
    }

    /**
     * The number at a place.
     *
     * @param pointer a JSON pointer (RFC 6901), such as {@code /metrics/carry/difference/value}
     * @return the number in the unit beside it, or empty if no number stands there
     * @throws IllegalArgumentException if the pointer is neither empty nor begins with a slash
     */
    public OptionalDouble number(String pointer) {
        return value(pointer) instanceof Number number
                ? OptionalDouble.of(number.doubleValue())
                : OptionalDouble.empty();
    }
}
