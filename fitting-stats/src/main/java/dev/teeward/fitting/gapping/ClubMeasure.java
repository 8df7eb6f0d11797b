package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.ScaledT;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Measures one club of a bag. */
final class ClubMeasure {
    private ClubMeasure() {}

    /** A club with at least two used shots, all of which have a carry. */
    static BagClub of(
            String name, Session session, double level, double coverTolerance, double coverShare, int flagged) {
        ShotSet shots = session.shots().club(name);
        ShotSet used = shots.used();
        double[] carries = used.values(Metric.CARRY);
        SampleSummary summary = SampleSummary.withDefaults().withLevel(level).withUnit(LengthUnit.METER);
        SampleSummary.Result carry = summary.summarize(carries);
        Sample sample = Sample.of("carry", carries);
        Optional<ScaledT> next = next(sample);
        double[] totals = used.values(Metric.TOTAL);
        return new BagClub(
                name,
                session.club(name),
                carries.length,
                Arrays.stream(carries).boxed().toList(),
                (int) used.stream().filter(ClubMeasure::computed).count(),
                flagged,
                exclusions(shots.excluded()),
                carry.mean(),
                carry.standardDeviation().orElseThrow(),
                next.map(t -> around(t, Gapping.NEXT_SHOT_SHARE)),
                totals.length < 2
                        ? Optional.empty()
                        : Optional.of(summary.summarize(totals).mean()),
                next.flatMap(t -> Coverage.of(t, coverTolerance, coverShare)));
    }

    /** The predictive distribution of a shot to come, unless the shots are all equal. */
    static Optional<ScaledT> next(Sample sample) {
        return sample.variance() > 0.0 ? Optional.of(ScaledT.nextAfter(sample)) : Optional.empty();
    }

    private static Interval around(ScaledT t, double share) {
        double reach = t.reach(share);
        return Interval.of(t.centre() - reach, t.centre() + reach, share);
    }

    private static boolean computed(Shot shot) {
        return shot.reading(Metric.CARRY)
                .map(Reading::origin)
                .filter(Origin.COMPUTED::equals)
                .isPresent();
    }

    private static List<Exclusion> exclusions(ShotSet excluded) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        excluded.forEach(shot -> counts.merge(shot.exclusion().orElse(""), 1, Integer::sum));
        return counts.entrySet().stream()
                .map(entry -> new Exclusion(entry.getValue(), entry.getKey()))
                .toList();
    }
}
