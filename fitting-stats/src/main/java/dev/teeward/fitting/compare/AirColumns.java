package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** One metric of two groups of shots, or of pairs, as found and with what the air did to each. Not thread-safe; for one run. */
final class AirColumns {
    private static final double MANY_DF = 1e9;

    private final Metric metric;
    private final double level;
    private final List<Row> first = new ArrayList<>();
    private final List<Row> second = new ArrayList<>();
    private final List<Exclusion> exclusions = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();
    private boolean paired;

    AirColumns(Metric metric, double level) {
        this.metric = metric;
        this.level = level;
    }

    /**
     * One shot, or the difference of a pair: the value as found, found minus brought over, and how that changes with one
     * standard deviation of the ball's drag and of its lift [SI unit of the metric].
     */
    record Row(Shot shot, double found, double air, double drag, double lift) {
        Row minus(Row other) {
            return new Row(shot, found - other.found, air - other.air, drag - other.drag, lift - other.lift);
        }
    }

    /** A mean difference, its squared error, and degrees of freedom. */
    private record Part(double value, double variance, double df) {}

    void first(List<Row> rows) {
        first.addAll(rows);
    }

    void second(List<Row> rows) {
        second.addAll(rows);
    }

    void pairs(List<Row> differences) {
        paired = true;
        first.addAll(differences);
    }

    void exclude(int count, String reason) {
        if (count > 0) {
            exclusions.add(new Exclusion(count, reason));
        }
    }

    void warn(Warning warning) {
        if (warnings.stream().noneMatch(w -> w.message().equals(warning.message()))) {
            warnings.add(warning);
        }
    }

    AirShareResult result() {
        if (first.isEmpty() || (!paired && second.isEmpty())) {
            throw new IllegalArgumentException(
                    "both sides need a used shot with " + metric.label()
                            + " and a launch that can be flown, but one has none; the launch is ball speed, launch angle and spin rate");
        }
        Part found = part(Row::found, false);
        Part air = part(Row::air, true);
        Part rest = part(row -> row.found() - row.air(), true);
        if (Math.min(first.size(), paired ? first.size() : second.size()) < 2) {
            warn(Warning.of("too-few-shots", "one shot says nothing about spread, so there are no limits"));
        }
        return new AirShareResult(
                metric,
                estimate(found),
                estimate(air),
                estimate(rest),
                share(found, air),
                first.size(),
                paired ? first.size() : second.size(),
                paired,
                exclusions,
                warnings);
    }

    /** Of one group: brought over minus found. */
    AirChange change() {
        Part air = part(row -> -row.air(), true);
        double before = first.stream().mapToDouble(Row::found).average().orElse(0.0);
        if (first.size() < 2) {
            warn(Warning.of("too-few-shots", "one shot says nothing about spread, so there are no limits"));
        }
        return new AirChange(metric, first.size(), before, estimate(air), exclusions, warnings);
    }

    private Part part(ToDoubleFunction<Row> of, boolean ball) {
        Moments x = moments(first, of);
        Moments.Pivot pivot = paired ? Moments.Pivot.paired(x) : Moments.Pivot.welch(x, moments(second, of));
        boolean single = x.size() < 2 || (!paired && second.size() < 2);
        double sampling = pivot.standardError() * pivot.standardError();
        double drag = mean(first, Row::drag) - mean(second, Row::drag);
        double lift = mean(first, Row::lift) - mean(second, Row::lift);
        double whole = sampling + (ball ? drag * drag + lift * lift : 0.0);
        double df = sampling > 0.0
                ? Math.min(MANY_DF, pivot.degreesOfFreedom() * (whole / sampling) * (whole / sampling))
                : MANY_DF;
        return new Part(pivot.estimate(), whole, single ? 0.0 : df);
    }

    private Estimate estimate(Part part) {
        boolean known = part.df() > 0.0 && part.variance() > 0.0;
        double reach = known ? quantile(part.df()) * Math.sqrt(part.variance()) : 0.0;
        return Estimate.of(
                part.value(),
                known ? Interval.of(part.value() - reach, part.value() + reach, level) : Interval.unbounded(level),
                metric.siUnit());
    }

    /** Fieller: the ratios r at which |air - r found| is within t of its own error. */
    private Optional<Estimate> share(Part found, Part air) {
        double t = found.df() > 0.0 && air.df() > 0.0 ? quantile(Math.min(found.df(), air.df())) : 0.0;
        double a = found.value() * found.value() - t * t * found.variance();
        if (!(t > 0.0) || !(a > 0.0)) {
            warn(Warning.of(
                    "share-unsettled",
                    "the difference as found may as well be 0, so that no share of it can be told; see its parts"));
            return Optional.empty();
        }
        double b = found.value() * air.value() - t * t * covariance();
        double c = air.value() * air.value() - t * t * air.variance();
        double root = Math.sqrt(Math.max(0.0, b * b - a * c));
        return Optional.of(Estimate.of(
                air.value() / found.value(), Interval.of((b - root) / a, (b + root) / a, level), RatioUnit.ONE));
    }

    /** Of the two mean differences; the ball does not move what was found. */
    private double covariance() {
        return covariance(first) + (paired ? 0.0 : covariance(second));
    }

    private static double covariance(List<Row> rows) {
        double found = mean(rows, Row::found);
        double air = mean(rows, Row::air);
        double sum = rows.stream()
                .mapToDouble(r -> (r.found() - found) * (r.air() - air))
                .sum();
        return sum / (rows.size() * (rows.size() - 1.0));
    }

    private double quantile(double df) {
        double p = 0.5 * (1.0 + level);
        return df < MANY_DF ? Distributions.tQuantile(p, df) : Distributions.normalQuantile(p);
    }

    private static Moments moments(List<Row> rows, ToDoubleFunction<Row> of) {
        return Moments.of(Sample.of("shots", rows.stream().mapToDouble(of).toArray()));
    }

    private static double mean(List<Row> rows, ToDoubleFunction<Row> of) {
        return rows.stream().mapToDouble(of).average().orElse(0.0);
    }
}
