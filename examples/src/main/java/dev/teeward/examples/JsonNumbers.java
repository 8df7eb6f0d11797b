package dev.teeward.examples;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Estimates as trees of plain values. */
final class JsonNumbers {
    private JsonNumbers() {}

    /** An estimate in SI units; an interval without an end has null there. */
    static Map<String, @Nullable Object> estimate(Estimate e, Unit shown) {
        boolean bounded = e.interval().bounded();
        Map<String, @Nullable Object> number = new LinkedHashMap<>();
        number.put("value", shown.fromSi(e.value()));
        number.put("lower", bounded ? (Double) shown.fromSi(e.interval().lower()) : null);
        number.put("upper", bounded ? (Double) shown.fromSi(e.interval().upper()) : null);
        number.put("level", e.interval().level());
        return number;
    }
}
