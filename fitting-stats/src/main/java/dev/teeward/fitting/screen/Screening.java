package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.descriptive.Median;

/** One run over a session: its used shots, and the flags and warnings found so far. Confined to one thread. */
final class Screening {
    /** Below this number of shots nothing can be said; a choice of this library, and the first size with a simulated cut-off. */
    static final int FEWEST = McdCutOffs.FEWEST;

    /** Makes the median absolute deviation of normal data their standard deviation: 1 / quantile of 0.75. */
    private static final double MAD_TO_SD = 1.482602218505602;

    private final Session session;
    private final List<Integer> used = new ArrayList<>();
    private final Map<String, List<Integer>> byClub = new LinkedHashMap<>();
    private final List<ShotFlag> flags = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();

    Screening(Session session) {
        this.session = session;
        List<Shot> all = session.shots().shots();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).used()) {
                used.add(i);
                byClub.computeIfAbsent(all.get(i).club(), name -> new ArrayList<>())
                        .add(i);
            }
        }
    }

    Session session() {
        return session;
    }

    Shot shot(int index) {
        return session.shots().shots().get(index);
    }

    /** The indices of the used shots. */
    List<Integer> used() {
        return used;
    }

    /** The indices of the used shots by club, in the order of first appearance. */
    Map<String, List<Integer>> byClub() {
        return byClub;
    }

    void rule(int index, String method, List<Metric> metrics, String reason, double statistic, double cutOff) {
        flags.add(new ShotFlag(
                index,
                shot(index),
                ShotFlag.Kind.MISREAD,
                method,
                metrics,
                reason + " (rule, not a statistical test)",
                statistic,
                cutOff,
                OptionalDouble.empty(),
                OptionalDouble.empty()));
    }

    /** A shot that is better than chance explains is no mishit of the golfer; the device may have got it wrong. */
    void test(int index, List<Metric> metrics, Flag flag, String reason, double sessionRate, boolean fast) {
        flags.add(new ShotFlag(
                index,
                shot(index),
                fast ? ShotFlag.Kind.MISREAD : ShotFlag.Kind.MISHIT,
                flag.method(),
                metrics,
                fast ? reason + "; it is on the fast side" : reason,
                flag.statistic(),
                flag.cutOff(),
                OptionalDouble.of(flag.falseAlarmRate()),
                OptionalDouble.of(sessionRate)));
    }

    boolean mishits() {
        return flags.stream().anyMatch(flag -> flag.kind() == ShotFlag.Kind.MISHIT);
    }

    void warn(String code, String message) {
        warnings.add(Warning.of(code, message));
    }

    /** The flags in the order of the shots. */
    List<ShotFlag> flags() {
        return flags.stream().sorted(Comparator.comparingInt(ShotFlag::index)).toList();
    }

    List<Warning> warnings() {
        return warnings.stream().distinct().toList();
    }

    /** A value that was measured, or follows from measured ones by definition. */
    static OptionalDouble value(Shot shot, Metric metric) {
        Reading reading = shot.reading(metric).orElse(null);
        if (reading != null && reading.origin() != Origin.COMPUTED) {
            return OptionalDouble.of(reading.value());
        }
        if (metric == Metric.SMASH_FACTOR && measured(shot, Metric.BALL_SPEED) && measured(shot, Metric.CLUB_SPEED)) {
            return OptionalDouble.of(shot.value(Metric.BALL_SPEED) / shot.value(Metric.CLUB_SPEED));
        }
        return OptionalDouble.empty();
    }

    static boolean measured(Shot shot, Metric metric) {
        Optional<Reading> reading = shot.reading(metric);
        return reading.isPresent() && reading.get().origin() == Origin.MEASURED;
    }

    /** Those of the shots that have all the metrics. */
    List<Integer> with(List<Integer> indices, List<Metric> metrics) {
        List<Integer> complete = new ArrayList<>(indices.size());
        for (Integer index : indices) {
            boolean all = true;
            for (Metric metric : metrics) {
                all = all && value(shot(index), metric).isPresent();
            }
            if (all) {
                complete.add(index);
            }
        }
        return Collections.unmodifiableList(complete);
    }

    double[] values(List<Integer> indices, Metric metric) {
        double[] values = new double[indices.size()];
        for (int k = 0; k < values.length; k++) {
            values[k] = value(shot(indices.get(k)), metric).orElseThrow();
        }
        return values;
    }

    static double median(double[] values) {
        return Median.withDefaults().evaluate(values.clone());
    }

    /** The median absolute deviation, scaled to a standard deviation. */
    static double robustSd(double[] values) {
        double median = median(values);
        double[] apart = new double[values.length];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = Math.abs(values[i] - median);
        }
        return MAD_TO_SD * median(apart);
    }

    /** A number with its unit, in both families of units where they differ. */
    static String words(Metric metric, double si) {
        Unit us = metric.unit(UnitSystem.US);
        Unit other = metric.unit(UnitSystem.METRIC);
        String first = number(us, si);
        return us == other ? first : first + " (" + number(other, si) + ")";
    }

    private static String number(Unit unit, double si) {
        double value = unit.fromSi(si);
        if (unit == RatioUnit.ONE) {
            return format("%.3f", value);
        }
        return format(Math.abs(value) < 1_000.0 ? "%.1f" : "%.0f", value) + " " + unit.symbol();
    }

    static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
