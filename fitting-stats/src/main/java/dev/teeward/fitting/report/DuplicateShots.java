package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Used shots whose readings are all those of an earlier shot, as when a row was copied. Two shots agree by chance in one or
 * two rounded readings, hardly in all of four or more (common practice, no source).
 */
final class DuplicateShots {
    private static final int FEWEST_READINGS = 4;

    private DuplicateShots() {}

    static List<Branch> of(HeadToHeadResult result) {
        Map<Readings, Shot> seen = new HashMap<>();
        List<Branch> found = new ArrayList<>();
        for (Shot shot : result.session().shots()) {
            if (!shot.used()
                    || !(shot.club().equals(result.first().name())
                            || shot.club().equals(result.second().name()))) {
                continue;
            }
            Readings readings = new Readings(shot);
            Shot before = readings.count < FEWEST_READINGS ? null : seen.putIfAbsent(readings, shot);
            if (before != null) {
                found.add(new Branch()
                        .count("shot", shot.number())
                        .count("like", before.number())
                        .text("club", shot.club()));
            }
        }
        return found;
    }

    /** What was measured with a shot, NaN where nothing was. */
    private static final class Readings {
        private static final Metric[] METRICS = Metric.values();

        private final double[] values = new double[METRICS.length];
        private final int count;

        Readings(Shot shot) {
            int measured = 0;
            for (int i = 0; i < values.length; i++) {
                Optional<Reading> reading = shot.reading(METRICS[i]);
                boolean there = reading.isPresent() && reading.get().origin() == Origin.MEASURED;
                values[i] = there ? reading.get().value() : Double.NaN;
                measured += there ? 1 : 0;
            }
            count = measured;
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Readings that && Arrays.equals(values, that.values);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(values);
        }
    }
}
