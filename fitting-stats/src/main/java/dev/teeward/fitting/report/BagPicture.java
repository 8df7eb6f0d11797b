package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.gapping.Bag;
import dev.teeward.fitting.gapping.BagClub;
import dev.teeward.fitting.gapping.Gap;
import dev.teeward.fitting.gapping.Stretch;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * The bag as steps: a row for each club, the longest on top. A band holds 8 of 10 single shots, a thick line the mean's
 * interval, dots the shots; the number between two rows is their gap. Distances that no club covers are dotted
 * columns, but for those that hang on estimates alone.
 */
final class BagPicture {
    private static final double LEFT = 84.0;
    private static final double RIGHT = 350.0;
    private static final double TOP = 48.0;
    private static final double ROW = 34.0;
    private static final int NAME_COLUMNS = 12;

    private final Bag bag;
    private final Unit unit;
    private final Scale scale;
    private final Ticks ticks;
    private final double bottom;

    BagPicture(Bag bag, UnitSystem units) {
        this.bag = bag;
        this.unit = Metric.CARRY.unit(units);
        double[] ends = bag.clubs().stream()
                .flatMapToDouble(club -> DoubleStream.concat(
                        club.carries().stream().mapToDouble(Double::doubleValue),
                        club.nextShot().stream()
                                .flatMapToDouble(i -> DoubleStream.of(Math.max(0.0, i.lower()), i.upper()))))
                .map(unit::fromSi)
                .toArray();
        double low = DoubleStream.of(ends).min().orElseThrow();
        double high = DoubleStream.of(ends).max().orElseThrow();
        double room = Math.max(1.0, 0.03 * (high - low));
        this.scale = new Scale(low - room, high + room, LEFT, RIGHT);
        this.ticks = Ticks.withStep(low - room, high + room, 40.0 / scale.perUnit());
        this.bottom = TOP + ROW * bag.clubs().size();
    }

    Picture draw() {
        SvgDrawing drawing = new SvgDrawing("bag", title(), description(), bottom + 42.0);
        key(drawing);
        uncovered(drawing);
        axis(drawing);
        for (int i = 0; i < bag.clubs().size(); i++) {
            club(drawing, bag.clubs().get(i), TOP + ROW * (i + 0.5));
        }
        for (int i = 0; i < bag.gaps().size(); i++) {
            gap(drawing, i, TOP + ROW * (i + 1.0));
        }
        return drawing.finish();
    }

    private String title() {
        return "The bag by carry, in " + unit.symbol();
    }

    private String description() {
        String clubs = bag.clubs().stream()
                .map(club -> VisibleText.line(club.name()) + " "
                        + number(club.carry().value()))
                .collect(Collectors.joining(", "));
        String open = bag.uncovered().stream()
                .map(s -> number(s.from().meters()) + " to " + number(s.to().meters())
                        + (bag.settled(s) ? "" : " (by the estimates)"))
                .collect(Collectors.joining(", "));
        return "Mean carries in " + unit.symbol() + ": " + clubs + ". "
                + (open.isEmpty() ? "Every distance between them is covered." : "Not covered: " + open + ".");
    }

    private String number(double meters) {
        return NumberText.fixed(unit.fromSi(meters), 1);
    }

    private double x(double meters) {
        return scale.within(unit.fromSi(meters));
    }

    private void key(SvgDrawing drawing) {
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        band(drawing, 0.0, 24.0, 10.0);
        drawing.text(29.0, 14.0, "start", "8 of 10 shots");
        mean(drawing, 116.0, 122.0, 140.0, 10.0);
        drawing.text(145.0, 14.0, "start", "mean, " + BagWords.level(bag.level()) + " interval");
        if (bag.uncovered().stream().anyMatch(bag::settled)) {
            open(drawing, 0.0, 24.0, 22.0, 12.0);
            drawing.text(29.0, 32.0, "start", "no club covers it");
        }
        drawing.text(145.0, 32.0, "start", "between two rows: their gap");
        drawing.end();
    }

    private static void open(SvgDrawing drawing, double from, double to, double y, double height) {
        drawing.rectangle(
                from,
                y,
                to - from,
                height,
                "fill",
                Palette.BAND,
                "stroke",
                Palette.SOFT,
                "stroke-width",
                "1",
                "stroke-dasharray",
                "2 2");
    }

    private static void band(SvgDrawing drawing, double from, double to, double middle) {
        drawing.rectangle(
                from,
                middle - 7.0,
                to - from,
                14.0,
                "fill",
                Palette.FIRST,
                "fill-opacity",
                "0.18",
                "stroke",
                Palette.FIRST,
                "stroke-width",
                "0.8");
    }

    private static void mean(SvgDrawing drawing, double from, double at, double to, double middle) {
        double center = 0.5 * (from + to);
        drawing.line(from, middle, to, middle, "stroke", Palette.INK, "stroke-width", "4");
        drawing.line(
                at == center ? at : center,
                middle - 8.0,
                at == center ? at : center,
                middle + 8.0,
                "stroke",
                Palette.INK,
                "stroke-width",
                "1.6");
    }

    private void uncovered(SvgDrawing drawing) {
        for (Stretch stretch : bag.uncovered().stream().filter(bag::settled).toList()) {
            open(drawing, x(stretch.from().meters()), x(stretch.to().meters()), TOP, bottom - TOP);
        }
    }

    private void axis(SvgDrawing drawing) {
        for (double value : ticks.values()) {
            double x = scale.at(value);
            drawing.line(x, TOP, x, bottom + 4.0, "stroke", Palette.GRID, "stroke-width", "1");
            drawing.text(x, bottom + 17.0, "middle", ticks.label(value), "fill", Palette.SOFT, "font-size", "11");
        }
        drawing.text(
                0.5 * (LEFT + RIGHT),
                bottom + 33.0,
                "middle",
                "carry, " + unit.symbol(),
                "fill",
                Palette.SOFT,
                "font-size",
                "11");
    }

    private void club(SvgDrawing drawing, BagClub club, double middle) {
        drawing.text(
                0.0,
                middle + 4.0,
                "start",
                ClubMark.shortened(VisibleText.line(club.name()), NAME_COLUMNS),
                "font-weight",
                "600");
        club.nextShot().ifPresent(next -> band(drawing, x(next.lower()), x(next.upper()), middle));
        drawing.group("fill", Palette.FIRST, "fill-opacity", "0.75");
        club.carries().forEach(carry -> drawing.circle(x(carry), middle, 2.2));
        drawing.end();
        Interval interval = club.carry().interval();
        double at = x(club.carry().value());
        mean(
                drawing,
                interval.bounded() ? x(interval.lower()) : at,
                at,
                interval.bounded() ? x(interval.upper()) : at,
                middle);
    }

    private void gap(SvgDrawing drawing, int index, double y) {
        Gap gap = bag.gaps().get(index);
        double longer = x(bag.clubs().get(index).carry().value());
        double shorter = x(bag.clubs().get(index + 1).carry().value());
        String verdict = BagWords.verdict(gap);
        drawing.line(shorter, y, longer, y, "stroke", Palette.SOFT, "stroke-width", "1.2");
        String text = number(gap.difference().estimate().value()) + (verdict.isEmpty() ? "" : ", " + verdict);
        boolean room = longer + 4.0 + 7.0 * text.length() < RIGHT + 8.0;
        drawing.text(
                room ? longer + 4.0 : shorter - 4.0,
                y + 4.0,
                room ? "start" : "end",
                text,
                "font-size",
                "11",
                "font-weight",
                verdict.isEmpty() ? "400" : "700");
    }
}
