package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;
import dev.teeward.quantity.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Rows of estimates with their intervals above one axis: the name and the numbers on a line of their own, dots, interval and mean
 * below it. An interval that is more than four times as long as the middle one is cut and ends in an arrow.
 */
final class IntervalRows {
    static final double ROW = 36.0;
    static final double LEFT = 10.0;
    static final double RIGHT = 350.0;

    /** Below the last row: ticks and the name of the axis. */
    static final double FOOT = 42.0;

    private static final int NAME_COLUMNS = 24;
    private static final double LONGEST = 4.0;

    private final List<Row> rows;
    private final String axis;
    private final OptionalDouble reference;
    private final Scale scale;
    private final Ticks ticks;

    /** How a row is drawn. */
    enum Kind {
        /** One of many: a thin interval and a mark. */
        SINGLE,

        /** What they come to: a thick interval. */
        POOLED,

        /** What is to come: a band. */
        PREDICTED
    }

    /** Numbers in the unit of the axis. */
    record Row(String name, Kind kind, List<Double> dots, double value, Interval interval) {}

    /**
     * Rows.
     *
     * @param rows at least one
     * @param axis what the axis shows, with its unit
     * @param reference a number that a line is drawn at
     */
    IntervalRows(List<Row> rows, String axis, OptionalDouble reference) {
        this.rows = rows;
        this.axis = axis;
        this.reference = reference;
        double[] halves = rows.stream()
                .filter(row -> row.interval().bounded())
                .mapToDouble(row -> row.interval().halfWidth())
                .sorted()
                .toArray();
        double longest = halves.length == 0 ? 0.0 : LONGEST * halves[halves.length / 2];
        List<Double> ends = new ArrayList<>();
        for (Row row : rows) {
            ends.add(row.value());
            ends.addAll(row.dots());
            if (row.interval().bounded()) {
                ends.add(Math.max(row.interval().lower(), row.value() - longest));
                ends.add(Math.min(row.interval().upper(), row.value() + longest));
            }
        }
        reference.ifPresent(ends::add);
        double low = ends.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        double high = ends.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double room = high > low ? 0.03 * (high - low) : Math.max(0.5, 0.01 * Math.abs(low));
        this.scale = new Scale(low - room, high + room, LEFT, RIGHT);
        this.ticks = Ticks.withStep(low - room, high + room, 44.0 / scale.perUnit());
    }

    /** How much they need below their top. */
    double height() {
        return ROW * rows.size() + FOOT;
    }

    void draw(SvgDrawing drawing, double top) {
        double bottom = top + ROW * rows.size();
        for (double value : ticks.values()) {
            double x = scale.at(value);
            // Not through the words.
            for (int i = 0; i < rows.size(); i++) {
                double y = top + ROW * i;
                drawing.line(x, y + 18.0, x, y + 32.0, "stroke", Palette.GRID, "stroke-width", "1");
            }
            drawing.text(x, bottom + 17.0, "middle", ticks.label(value), "fill", Palette.SOFT, "font-size", "11");
        }
        reference.ifPresent(value -> drawing.line(
                scale.at(value),
                top + 16.0,
                scale.at(value),
                bottom + 4.0,
                "class",
                "reference",
                "stroke",
                Palette.SOFT,
                "stroke-width",
                "1.4"));
        drawing.text(0.5 * (LEFT + RIGHT), bottom + 33.0, "middle", axis, "fill", Palette.SOFT, "font-size", "11");
        for (int i = 0; i < rows.size(); i++) {
            row(drawing, rows.get(i), top + ROW * i);
        }
    }

    private void row(SvgDrawing drawing, Row row, double top) {
        drawing.text(
                LEFT,
                top + 13.0,
                "start",
                ClubMark.shortened(VisibleText.line(row.name()), NAME_COLUMNS),
                "font-weight",
                row.kind() == Kind.SINGLE ? "400" : "700");
        drawing.text(RIGHT, top + 13.0, "end", words(row.value(), row.interval()), "font-size", "11");
        double middle = top + 25.0;
        drawing.group("fill", Palette.FIRST, "fill-opacity", "0.75", "class", "dots");
        row.dots().forEach(dot -> drawing.circle(scale.within(dot), middle, 2.2));
        drawing.end();
        if (row.interval().bounded()) {
            interval(drawing, row, middle);
        }
        double x = scale.at(row.value());
        drawing.line(x, middle - 7.0, x, middle + 7.0, "class", "mean", "stroke", Palette.INK, "stroke-width", "1.8");
    }

    private void interval(SvgDrawing drawing, Row row, double middle) {
        double from = scale.within(row.interval().lower());
        double to = scale.within(row.interval().upper());
        if (row.kind() == Kind.PREDICTED) {
            drawing.rectangle(
                    from,
                    middle - 5.0,
                    to - from,
                    10.0,
                    "class",
                    "interval",
                    "fill",
                    Palette.BAND,
                    "stroke",
                    Palette.SOFT);
        } else {
            drawing.line(
                    from,
                    middle,
                    to,
                    middle,
                    "class",
                    "interval",
                    "stroke",
                    Palette.INK,
                    "stroke-width",
                    row.kind() == Kind.POOLED ? "5" : "2");
        }
        if (row.interval().lower() < scale.low()) {
            arrow(drawing, from, middle, 5.0);
        }
        if (row.interval().upper() > scale.high()) {
            arrow(drawing, to, middle, -5.0);
        }
    }

    private static void arrow(SvgDrawing drawing, double x, double y, double back) {
        drawing.polyline(
                new double[] {x + back, x, x + back},
                new double[] {y - 5.0, y, y + 5.0},
                false,
                "class",
                "arrow",
                "fill",
                "none",
                "stroke",
                Palette.INK,
                "stroke-width",
                "1.6");
    }

    /** All rows in words, for those who do not see them. */
    String description() {
        return String.join(
                "; ",
                rows.stream()
                        .map(row -> VisibleText.line(row.name()) + " " + words(row.value(), row.interval()))
                        .toList());
    }

    /** With as many decimals as the axis needs, and one more. */
    private String words(double value, Interval interval) {
        int decimals = ticks.decimals() + 1;
        return Decimals.label(value, decimals)
                + (interval.bounded()
                        ? " (" + Decimals.label(interval.lower(), decimals) + " to "
                                + Decimals.label(interval.upper(), decimals) + ")"
                        : " (no limits)");
    }
}
