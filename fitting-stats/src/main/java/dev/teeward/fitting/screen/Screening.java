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
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;

/** One run over a session: its used shots, and the flags and warnings found so far. Confined to one thread. */
final class Screening {
    /** Below this number of shots nothing can be said; a choice of this library, and the first size with a simulated cut-off. */
    static final int FEWEST = McdCutOffs.FEWEST;

    /** Makes the median absolute deviation of normal data their standard deviation: 1 / quantile of 0.75. */
    private static final double MAD_TO_SD = 1.482602218505602;

    private final Session session;
    private final List<Shot> shots;
    private final int[] used;
    private final Map<String, int[]> byClub = new LinkedHashMap<>();
    private final Map<Metric, double[]> known = new EnumMap<>(Metric.class);
    private final Map<Metric, double[]> measured = new EnumMap<>(Metric.class);
    private final List<ShotFlag> flags = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();

    Screening(Session session) {
        this.session = session;
        this.shots = session.shots().shots();
        int[] found = new int[shots.size()];
        int count = 0;
        Map<String, IntStream.Builder> clubs = new LinkedHashMap<>();
        for (int i = 0; i < found.length; i++) {
            Shot shot = shots.get(i);
            if (shot.used()) {
                found[count++] = i;
                clubs.computeIfAbsent(shot.club(), name -> IntStream.builder()).add(i);
            }
        }
        this.used = Arrays.copyOf(found, count);
        clubs.forEach((name, indices) -> byClub.put(name, indices.build().toArray()));
    }

    Session session() {
        return session;
    }

    Shot shot(int index) {
        return shots.get(index);
    }

    /** The indices of the used shots; never changed. */
    int[] used() {
        return used;
    }

    /** The indices of the used shots by club, in the order of first appearance; never changed. */
    Map<String, int[]> byClub() {
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

    /**
     * What was measured, or follows from measured readings by definition, for every shot by its index; NaN where neither.
     * Never changed.
     */
    double[] known(Metric metric) {
        double[] found = known.get(metric);
        if (found == null) {
            found = column(metric, false);
            if (metric == Metric.SMASH_FACTOR) {
                double[] ball = measured(Metric.BALL_SPEED);
                double[] club = measured(Metric.CLUB_SPEED);
                for (int i = 0; i < found.length; i++) {
                    if (Double.isNaN(found[i])) {
                        found[i] = ball[i] / club[i];
                    }
                }
            }
            known.put(metric, found);
        }
        return found;
    }

    /** What was measured, for every shot by its index; NaN where it was not. Never changed. */
    double[] measured(Metric metric) {
        double[] found = measured.get(metric);
        if (found == null) {
            found = column(metric, true);
            measured.put(metric, found);
        }
        return found;
    }

    private double[] column(Metric metric, boolean measuredOnly) {
        double[] column = new double[shots.size()];
        for (int i = 0; i < column.length; i++) {
            column[i] = shots.get(i)
                    .reading(metric)
                    .filter(reading -> reading.origin() == Origin.MEASURED
                            || (!measuredOnly && reading.origin() == Origin.DERIVED))
                    .map(Reading::value)
                    .orElse(Double.NaN);
        }
        return column;
    }

    /** Those of the shots of which all the metrics are known. */
    int[] with(int[] indices, List<Metric> metrics) {
        int[] complete = indices;
        for (Metric metric : metrics) {
            complete = present(complete, known(metric));
        }
        return complete;
    }

    /** Those of the shots with a number in the column. */
    static int[] present(int[] indices, double[] column) {
        int[] kept = new int[indices.length];
        int count = 0;
        for (int index : indices) {
            if (!Double.isNaN(column[index])) {
                kept[count++] = index;
            }
        }
        return count == indices.length ? indices : Arrays.copyOf(kept, count);
    }

    /** What is known of a metric that all of the shots have. */
    double[] values(int[] indices, Metric metric) {
        return pick(known(metric), indices);
    }

    static double[] pick(double[] column, int[] indices) {
        double[] values = new double[indices.length];
        for (int k = 0; k < values.length; k++) {
            values[k] = column[indices[k]];
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
