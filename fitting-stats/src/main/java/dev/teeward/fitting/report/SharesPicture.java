package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.fitting.explain.InputShare;
import dev.teeward.fitting.explain.OutcomeShares;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How much of a difference the flights give to each input: a bar from zero for each, with its interval, and a hollow one for
 * what stays unexplained. One panel for each outcome, each with its own axis; first club minus second.
 */
final class SharesPicture {
    private static final double ROW = 18.0;
    private static final double HEAD = 20.0;
    private static final double FOOT = 26.0;
    private static final double LEFT = 112.0;
    private static final double RIGHT = 305.0;
    private static final double BAR = 9.0;
    private static final String UNEXPLAINED = "unexplained";

    private final DrawnShots shots;
    private final List<Panel> panels = new ArrayList<>();

    private SharesPicture(DrawnShots shots, FlightCounterfactual.Result flights, UnitSystem units) {
        this.shots = shots;
        for (Metric outcome : ExplainedWords.outcomes(shots.result().primary().metric())) {
            flights.of(outcome).ifPresent(o -> panels.add(Panel.of(o, outcome.unit(units))));
        }
    }

    /** One bar. */
    private record Bar(String label, Estimate value, boolean hollow) {}

    private record Panel(String label, Unit unit, List<Bar> bars) {
        static Panel of(OutcomeShares o, Unit unit) {
            List<Bar> bars = new ArrayList<>();
            for (InputShare s : o.shares()) {
                bars.add(new Bar(Subject.label(s.input()), s.share().convertTo(unit), false));
                s.lie().ifPresent(e -> bars.add(new Bar("- in it the lie", e.convertTo(unit), false)));
            }
            o.rest().ifPresent(e -> bars.add(new Bar(UNEXPLAINED, e.convertTo(unit), true)));
            return new Panel(Subject.label(o.outcome()), unit, bars);
        }

        double height() {
            return HEAD + ROW * bars.size() + FOOT;
        }

        Scale scale() {
            Extent extent = new Extent().add(0.0);
            for (Bar bar : bars) {
                extent.add(bar.value().value());
                if (bar.value().interval().bounded()) {
                    extent.add(
                            bar.value().interval().lower(),
                            bar.value().interval().upper());
                }
            }
            Extent padded = extent.padded(1e-3, 0.04);
            return new Scale(padded.low(), padded.high(), LEFT, RIGHT);
        }

        private int decimals() {
            return NumberText.decimals(unit);
        }

        String number(double value) {
            return Decimals.label(value, decimals());
        }

        String words(Bar bar) {
            String value = bar.label() + " " + number(bar.value().value());
            return bar.value().interval().bounded()
                    ? value + " (" + number(bar.value().interval().lower()) + " to "
                            + number(bar.value().interval().upper()) + ")"
                    : value;
        }
    }

    static Optional<Picture> of(DrawnShots shots, Explanation why, UnitSystem units) {
        return why.flights()
                .map(flights -> new SharesPicture(shots, flights, units))
                .filter(picture -> !picture.panels.isEmpty())
                .map(SharesPicture::draw);
    }

    private Picture draw() {
        String first = shots.names().get(0);
        String second = shots.names().get(1);
        double height = 18.0 + panels.stream().mapToDouble(Panel::height).sum();
        SvgDrawing drawing =
                new SvgDrawing("explained-shares", "What goes with the difference, by flights", description(), height);
        drawing.text(
                0.0,
                12.0,
                "start",
                first.length() + second.length() <= 36 ? first + " minus " + second : "first minus second",
                "fill",
                Palette.SOFT);
        double top = 18.0;
        for (Panel panel : panels) {
            draw(drawing, panel, top);
            top += panel.height();
        }
        return drawing.finish();
    }

    private static void draw(SvgDrawing drawing, Panel panel, double top) {
        Scale scale = panel.scale();
        double bottom = top + HEAD + ROW * panel.bars().size();
        drawing.text(
                0.0,
                top + 14.0,
                "start",
                panel.label() + DifferenceWords.symbol(panel.unit()).replaceFirst("^ (.*)$", " [$1]"),
                "font-weight",
                "600");
        Ticks ticks = Ticks.of(scale.low(), scale.high(), 5);
        drawing.group("stroke", Palette.GRID);
        for (double tick : ticks.values()) {
            drawing.line(scale.at(tick), top + HEAD, scale.at(tick), bottom);
        }
        drawing.end();
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        for (double tick : ticks.values()) {
            drawing.text(scale.at(tick), bottom + 13.0, "middle", ticks.label(tick));
        }
        drawing.end();
        drawing.line(scale.at(0.0), top + HEAD - 3.0, scale.at(0.0), bottom + 2.0, "stroke", Palette.INK);
        for (int i = 0; i < panel.bars().size(); i++) {
            bar(drawing, panel, panel.bars().get(i), scale, top + HEAD + ROW * (i + 0.5));
        }
    }

    private static void bar(SvgDrawing drawing, Panel panel, Bar bar, Scale scale, double middle) {
        double from = Math.min(scale.at(0.0), scale.at(bar.value().value()));
        double to = Math.max(scale.at(0.0), scale.at(bar.value().value()));
        drawing.text(0.0, middle + 4.0, "start", bar.label());
        drawing.rectangle(
                from,
                middle - 0.5 * BAR,
                to - from,
                BAR,
                "class",
                bar.hollow() ? "rest" : "share",
                "fill",
                bar.hollow() ? Palette.PAPER : Palette.GRID,
                "stroke",
                Palette.SOFT);
        if (bar.value().interval().bounded()) {
            double low = scale.at(bar.value().interval().lower());
            double high = scale.at(bar.value().interval().upper());
            drawing.path(
                    "M" + SvgDrawing.point(low, middle) + "L" + SvgDrawing.point(high, middle) + "M"
                            + SvgDrawing.point(low, middle - 3.0) + "L" + SvgDrawing.point(low, middle + 3.0) + "M"
                            + SvgDrawing.point(high, middle - 3.0) + "L" + SvgDrawing.point(high, middle + 3.0),
                    "fill",
                    "none",
                    "stroke",
                    Palette.INK,
                    "stroke-width",
                    "1.6");
        }
        drawing.text(
                SvgDrawing.WIDTH, middle + 4.0, "end", panel.number(bar.value().value()));
    }

    private String description() {
        StringBuilder text = new StringBuilder("Bars from zero: how much of the difference, ")
                .append(shots.names().get(0))
                .append(" minus ")
                .append(shots.names().get(1))
                .append(
                        ", goes with each reading by flights, with intervals that hold one by one, and hollow what stays unexplained.");
        for (Panel panel : panels) {
            text.append(' ')
                    .append(Character.toUpperCase(panel.label().charAt(0)))
                    .append(panel.label().substring(1))
                    .append(
                            panel.unit().symbol().isEmpty()
                                    ? ""
                                    : " in " + panel.unit().symbol())
                    .append(": ")
                    .append(String.join(
                            "; ", panel.bars().stream().map(panel::words).toList()))
                    .append('.');
        }
        return text.toString();
    }
}
