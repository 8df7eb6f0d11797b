package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One metric in a {@link StripPicture}: a strip for each club and the difference beside them.
 *
 * <p>The difference has two intervals, because two questions are asked of it: whether it is zero is read off the thin one of
 * the level of the result, whether it lies within the margin off the thick one of the equivalence test, whose level is twice
 * that less 1. Both are of this metric alone; a verdict that allowing for the number of metrics changed has a mark.
 */
final class StripRow {
    static final double HEIGHT = 66.0;
    static final double STRIP_LEFT = 8.0;
    static final double DIFFERENCE_RIGHT = SvgDrawing.WIDTH - 6.0;
    private static final double STRIP_RIGHT = 214.0;
    private static final double DIFFERENCE_LEFT = 238.0;
    private static final int MOST_SHOTS = 300;

    private final DrawnShots shots;
    private final MetricComparison comparison;
    private final Unit unit;
    private final Estimate[] means;
    private final Estimate difference;
    private final @Nullable Estimate equivalence;
    private final Scale strip;
    private final Scale differences;

    StripRow(DrawnShots shots, MetricComparison comparison, UnitSystem units) {
        this.shots = shots;
        this.comparison = comparison;
        this.unit = comparison.metric().unit(units);
        SampleSummary.Result first = comparison.first();
        SampleSummary.Result second = comparison.second();
        this.means = new Estimate[] {first.mean().convertTo(unit), second.mean().convertTo(unit)};
        this.difference = comparison.difference().estimate().convertTo(unit);
        this.equivalence = comparison
                .equivalence()
                .map(test -> test.estimate().convertTo(unit))
                .orElse(null);
        this.strip = strip(new Extent()
                .add(unit.fromSi(first.minimum()), unit.fromSi(first.maximum()))
                .add(unit.fromSi(second.minimum()), unit.fromSi(second.maximum())));
        this.differences = differences();
    }

    private Scale strip(Extent dots) {
        Extent all = new Extent().add(dots.low(), dots.high());
        for (Estimate mean : means) {
            // With two shots an interval is many times as wide as the shots; it may not squeeze the dots.
            Interval interval = mean.interval();
            all.add(Math.max(interval.lower(), dots.low() - 0.5 * dots.width()));
            all.add(Math.min(interval.upper(), dots.high() + 0.5 * dots.width()));
        }
        Extent shown = all.padded(smallest(), 0.04);
        return new Scale(shown.low(), shown.high(), STRIP_LEFT, STRIP_RIGHT);
    }

    private Scale differences() {
        Extent all = new Extent().add(0.0, difference.value());
        if (difference.interval().bounded()) {
            all.add(difference.interval().lower(), difference.interval().upper());
        }
        if (comparison.margin().isPresent()) {
            double margin = unit.fromSi(comparison.margin().getAsDouble());
            all.add(-margin, margin);
        }
        Extent shown = all.padded(smallest(), 0.06);
        return new Scale(shown.low(), shown.high(), DIFFERENCE_LEFT, DIFFERENCE_RIGHT);
    }

    /** The least width of an axis: equal numbers must not divide by zero. */
    private double smallest() {
        return Math.max(1e-3, 1e-3 * Math.abs(means[0].value()));
    }

    /** Draws the row, {@value #HEIGHT} high. */
    void draw(SvgDrawing drawing, double top) {
        String kind = comparison.primary() ? " \u2013 decides" : "";
        drawing.text(STRIP_LEFT, top + 11.0, "start", name() + kind, "font-weight", "600");
        drawing.text(DIFFERENCE_RIGHT, top + 11.0, "end", verdict() + alone().mark, "font-size", "11");
        double bottom = top + 46.0;
        axis(drawing, strip, Ticks.of(strip.low(), strip.high(), 5), top + 17.0, bottom);
        margin(drawing, top + 17.0, bottom);
        axis(drawing, differences, Ticks.of(differences.low(), differences.high(), 4), top + 17.0, bottom);
        double zero = differences.at(0.0);
        drawing.line(zero, top + 17.0, zero, bottom, "stroke", Palette.SOFT, "stroke-width", "1.4");
        for (ClubMark mark : ClubMark.values()) {
            double lane = top + (mark == ClubMark.FIRST ? 25.0 : 38.0);
            interval(drawing, means[mark == ClubMark.FIRST ? 0 : 1], strip, lane, 6.0);
            dots(drawing, mark, lane);
        }
        if (equivalence != null && equivalence.interval().bounded()) {
            inner(drawing, equivalence.interval(), top + 31.5);
        }
        interval(drawing, difference, differences, top + 31.5, 8.0);
    }

    private String name() {
        String label = comparison.metric().label();
        String sign = switch (comparison.metric().sense()) {
            case LATERAL -> "right +";
            case UP -> "up +";
            case TOE -> "toe +";
            case NONE -> "";
        };
        String inBrackets = unit.symbol() + (unit.symbol().isEmpty() || sign.isEmpty() ? "" : ", ") + sign;
        return inBrackets.isEmpty() ? label : label + " [" + inBrackets + "]";
    }

    /** What a metric would be called if it were the only one, where it is called undecided among many. */
    enum Alone {
        /** The verdict is the same alone. */
        NOTHING("", ""),

        /** The equivalence test says so, Holm's adjustment does not. */
        WITHIN_MARGIN("\u00b9", "within the margin taken alone, not after allowing for the number of metrics"),

        /** The test of the difference says so, Holm's adjustment does not. */
        NOT_ZERO("\u00b2", "leaves out zero taken alone, not after allowing for the number of metrics");

        private final String mark;
        private final String words;

        Alone(String mark, String words) {
            this.mark = mark;
            this.words = words;
        }

        String mark() {
            return mark;
        }

        String words() {
            return words;
        }
    }

    Alone alone() {
        if (comparison.verdict().verdict() != Verdict.UNDECIDED) {
            return Alone.NOTHING;
        }
        if (comparison.equivalence().filter(TostTest.Result::equivalent).isPresent()) {
            return Alone.WITHIN_MARGIN;
        }
        return difference.interval().contains(0.0) ? Alone.NOTHING : Alone.NOT_ZERO;
    }

    /** The level of the thick interval, or empty if there is none. */
    OptionalDouble equivalenceLevel() {
        return equivalence == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(equivalence.interval().level());
    }

    /** Whether a shot of it stands in a ring. */
    boolean ringed() {
        return Stream.of(ClubMark.values())
                .flatMap(mark -> shots.all(mark, false, comparison.metric()).stream())
                .anyMatch(shot -> shots.kind(shot) == PlacedShot.Kind.FLAGGED);
    }

    private String verdict() {
        return switch (comparison.verdict().verdict()) {
            case DIFFERENT -> "different";
            case PRACTICALLY_THE_SAME -> "practically the same";
            case UNDECIDED -> "undecided";
        };
    }

    private static void axis(SvgDrawing drawing, Scale x, Ticks ticks, double top, double bottom) {
        drawing.group("stroke", Palette.GRID, "stroke-width", "1");
        ticks.values().forEach(v -> drawing.line(x.at(v), top, x.at(v), bottom));
        drawing.line(x.from(), bottom, x.to(), bottom);
        drawing.end();
        drawing.group("font-size", "10.5", "fill", Palette.SOFT);
        for (double v : ticks.values()) {
            // The text of a tick at the edge must not be cut off.
            double half = 3.0 * ticks.label(v).length();
            double place = Math.max(half, Math.min(SvgDrawing.WIDTH - half, x.at(v)));
            drawing.text(place, bottom + 11.0, "middle", ticks.label(v));
        }
        drawing.end();
    }

    private void margin(SvgDrawing drawing, double top, double bottom) {
        if (comparison.margin().isEmpty()) {
            return;
        }
        double margin = unit.fromSi(comparison.margin().getAsDouble());
        double from = differences.at(-margin);
        drawing.rectangle(
                from, top, differences.at(margin) - from, bottom - top, "class", "margin", "fill", Palette.BAND);
    }

    private void dots(SvgDrawing drawing, ClubMark mark, double lane) {
        Metric metric = comparison.metric();
        List<Shot> drawn = DrawnShots.thinned(shots.all(mark, false, metric), MOST_SHOTS);
        List<PlacedShot> placed = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            // Three heights in turn keep neighbours apart.
            double offset = 2.0 * (i % 3 - 1);
            placed.add(new PlacedShot(
                    strip.at(unit.fromSi(drawn.get(i).value(metric))), lane + offset, shots.kind(drawn.get(i))));
        }
        mark.draw(drawing, placed, 2.3);
    }

    private void inner(SvgDrawing drawing, Interval interval, double lane) {
        drawing.line(
                differences.within(interval.lower()),
                lane,
                differences.within(interval.upper()),
                lane,
                "class",
                "equivalence",
                "stroke",
                Palette.INK,
                "stroke-width",
                "5");
    }

    private static void interval(SvgDrawing drawing, Estimate estimate, Scale x, double lane, double half) {
        double lower = x.within(estimate.interval().lower());
        double upper = x.within(estimate.interval().upper());
        StringBuilder path =
                new StringBuilder("M" + SvgDrawing.point(lower, lane) + "L" + SvgDrawing.point(upper, lane));
        path.append(estimate.interval().lower() < x.low() ? arrow(lower, lane, 4.0) : stop(lower, lane));
        path.append(estimate.interval().upper() > x.high() ? arrow(upper, lane, -4.0) : stop(upper, lane));
        drawing.path(
                path.toString(), "class", "interval", "fill", "none", "stroke", Palette.INK, "stroke-width", "1.6");
        double mean = x.at(estimate.value());
        drawing.line(mean, lane - half, mean, lane + half, "class", "mean", "stroke", Palette.INK, "stroke-width", "3");
    }

    private static String stop(double x, double y) {
        return "M" + SvgDrawing.point(x, y - 3.0) + "L" + SvgDrawing.point(x, y + 3.0);
    }

    private static String arrow(double x, double y, double back) {
        return "M" + SvgDrawing.point(x + back, y - 3.5) + "L" + SvgDrawing.point(x, y) + "L"
                + SvgDrawing.point(x + back, y + 3.5);
    }

    /** The row in words, with one decimal more than its ticks. */
    String words() {
        int decimals = Ticks.of(strip.low(), strip.high(), 5).decimals() + 1;
        int finer = Math.max(
                decimals, Ticks.of(differences.low(), differences.high(), 4).decimals() + 1);
        String text = name() + ": " + shots.names().get(0) + " " + words(means[0], decimals) + ", "
                + shots.names().get(1) + " " + words(means[1], decimals) + ", difference " + words(difference, finer)
                + sameness(finer) + ", " + verdict()
                + (alone() == Alone.NOTHING ? "" : ": " + alone().words()) + ".";
        int all = shots.all(ClubMark.FIRST, false, comparison.metric()).size()
                + shots.all(ClubMark.SECOND, false, comparison.metric()).size();
        int drawn = Math.min(
                        MOST_SHOTS,
                        shots.all(ClubMark.FIRST, false, comparison.metric()).size())
                + Math.min(
                        MOST_SHOTS,
                        shots.all(ClubMark.SECOND, false, comparison.metric()).size());
        return text + DrawnShots.thinning(drawn, all);
    }

    /** The interval of the equivalence test and the margin it is held against. */
    private String sameness(int decimals) {
        if (equivalence == null || comparison.margin().isEmpty()) {
            return "";
        }
        Interval interval = equivalence.interval();
        String margin = Decimals.label(unit.fromSi(comparison.margin().getAsDouble()), decimals);
        return (interval.bounded()
                        ? ", thick bar " + Decimals.label(interval.lower(), decimals) + " to "
                                + Decimals.label(interval.upper(), decimals)
                        : "")
                + ", margin " + margin;
    }

    private static String words(Estimate estimate, int decimals) {
        String value = Decimals.label(estimate.value(), decimals);
        Interval interval = estimate.interval();
        if (!interval.bounded()) {
            return value + " (interval unbounded)";
        }
        return value + " (" + Decimals.label(interval.lower(), decimals) + " to "
                + Decimals.label(interval.upper(), decimals) + ")";
    }
}
