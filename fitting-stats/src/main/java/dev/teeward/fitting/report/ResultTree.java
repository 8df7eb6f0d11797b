package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The tree of one result. */
final class ResultTree {
    private final HeadToHeadResult result;
    private final UnitSystem units;

    ResultTree(HeadToHeadResult result, UnitSystem units) {
        this.result = result;
        this.units = units;
    }

    Map<String, @Nullable Object> build() {
        Map<String, @Nullable Object> root = new LinkedHashMap<>();
        root.put("schema", ReportData.SCHEMA);
        root.put("units", units.name().toLowerCase(Locale.ROOT));
        root.put("level", result.level());
        return ReportData.frozen(root);
    }
}
