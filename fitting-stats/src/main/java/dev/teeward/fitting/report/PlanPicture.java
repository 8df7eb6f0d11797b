package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.plan.FittingPlan;
import dev.teeward.fitting.plan.PairByPair;
import dev.teeward.quantity.Unit;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * Pictures of a plan. Before the first pair: the chance of settling the margin against the number of pairs, looked at once at the end
 * (full line) or after every pair (dashed), with the wanted chance and the pairs that the cap allows marked. On the way: mean
 * difference and always-valid interval after each pair, with zero and the margin.
 *
 * <pre>{@code
 * FittingPlan plan = FittingPlan.withDefaults();
 * Picture before = PlanPicture.chances(plan, plan.forMargin(margin, spread));
 * Picture now = PlanPicture.looks(session, "Alder", "Rowan", Metric.CARRY, UnitSystem.US);
 * }</pre>
 *
 * <p>Thread-safe: it has no state.
 */
public final class PlanPicture {
    private static final double LEFT = 44.0;
    private static final double RIGHT = 350.0;
    private static final double TOP = 40.0;
    private static final double BOTTOM = 220.0;
    private static final double HEIGHT = BOTTOM + 42.0;

    private PlanPicture() {}

    /**
     * How the chances grow with the pairs.
     *
     * @param plan the plan
     * @param result what it gave
     * @return the picture {@code chances}
     */
    public static Picture chances(FittingPlan plan, FittingPlan.Result result) {
        List<FittingPlan.Chance> chances = plan.chances(result.margin(), result.spread());
        int cap = result.mostPairs();
        int last = chances.get(chances.size() - 1).pairs();
        Scale x = new Scale(0.0, last, LEFT, RIGHT);
        Scale y = new Scale(0.0, 100.0, BOTTOM, TOP);
        String description = "Chance of settling the margin either way. With the " + cap + " pairs of the cap: "
                + percent(chances.get(cap - 2).atTheEnd()) + " % looking once at the end, "
                + percent(chances.get(cap - 2).afterEveryPair()) + " % looking after every pair; wanted are "
                + percent(plan.chance()) + " %.";
        SvgDrawing drawing = new SvgDrawing("chances", "Chance of settling the margin", description, HEIGHT);
        key(drawing, 0.0, 10.0, "none", "looking once, at the end");
        key(drawing, 180.0, 10.0, "5 3", "looking after every pair");
        axes(drawing, x, y, Ticks.of(0.0, last, 6), Ticks.of(0.0, 100.0, 6));
        drawing.text(0.0, TOP - 10.0, "start", "chance, %", "fill", Palette.SOFT, "font-size", "11");
        double wanted = y.at(100.0 * plan.chance());
        drawing.line(LEFT, wanted, RIGHT, wanted, "class", "wanted", "stroke", Palette.SOFT, "stroke-width", "1.2");
        drawing.text(RIGHT, wanted - 4.0, "end", "wanted", "fill", Palette.SOFT, "font-size", "11");
        double most = x.at(cap);
        drawing.line(most, TOP, most, BOTTOM, "class", "cap", "stroke", Palette.INK, "stroke-width", "1.6");
        boolean room = most < 0.5 * (LEFT + RIGHT);
        drawing.text(
                room ? most + 4.0 : most - 4.0,
                BOTTOM - 6.0,
                room ? "start" : "end",
                "cap: " + cap + " pairs",
                "font-weight",
                "600");
        curve(drawing, chances, x, y, FittingPlan.Chance::atTheEnd, "none");
        curve(drawing, chances, x, y, FittingPlan.Chance::afterEveryPair, "5 3");
        return drawing.finish();
    }

    private static String percent(double share) {
        return NumberText.fixed(100.0 * share, 0);
    }

    private static void curve(
            SvgDrawing drawing,
            List<FittingPlan.Chance> chances,
            Scale x,
            Scale y,
            ToDoubleFunction<FittingPlan.Chance> of,
            String dashes) {
        drawing.polyline(
                chances.stream().mapToDouble(chance -> x.at(chance.pairs())).toArray(),
                chances.stream()
                        .mapToDouble(chance -> y.at(100.0 * of.applyAsDouble(chance)))
                        .toArray(),
                false,
                "class",
                "chance",
                "fill",
                "none",
                "stroke",
                Palette.FIRST,
                "stroke-width",
                "2.4",
                "stroke-dasharray",
                dashes);
    }

    private static void key(SvgDrawing drawing, double x, double y, String dashes, String words) {
        drawing.line(x, y, x + 24.0, y, "stroke", Palette.FIRST, "stroke-width", "2.4", "stroke-dasharray", dashes);
        drawing.text(x + 29.0, y + 4.0, "start", words, "fill", Palette.SOFT, "font-size", "11");
    }

    private static void axes(SvgDrawing drawing, Scale x, Scale y, Ticks across, Ticks up) {
        for (double value : across.values()) {
            drawing.line(x.at(value), TOP, x.at(value), BOTTOM + 4.0, "stroke", Palette.GRID, "stroke-width", "1");
            drawing.text(
                    x.at(value), BOTTOM + 17.0, "middle", across.label(value), "fill", Palette.SOFT, "font-size", "11");
        }
        for (double value : up.values()) {
            drawing.line(LEFT, y.at(value), RIGHT, y.at(value), "stroke", Palette.GRID, "stroke-width", "1");
            drawing.text(
                    LEFT - 5.0, y.at(value) + 4.0, "end", up.label(value), "fill", Palette.SOFT, "font-size", "11");
        }
        drawing.text(0.5 * (LEFT + RIGHT), BOTTOM + 33.0, "middle", "pairs", "fill", Palette.SOFT, "font-size", "11");
    }

    /**
     * How the difference came to be known.
     *
     * @param session the session, in SI units of the metric
     * @param first the first club
     * @param second the other, whose readings are subtracted
     * @param metric the metric that decides
     * @param units the units to draw in
     * @return the picture {@code looks}
     */
    public static Picture looks(PairByPair session, String first, String second, Metric metric, UnitSystem units) {
        Unit unit = metric.unit(units);
        List<PairByPair.Look> looks = session.looks();
        List<PairByPair.Look> told =
                looks.stream().filter(look -> look.interval().bounded()).toList();
        double margin = unit.fromSi(session.margin());
        double[] ends = DoubleStream.concat(
                        DoubleStream.of(-margin, margin), looks.stream().mapToDouble(look -> unit.fromSi(look.mean())))
                .toArray();
        // The first intervals are far wider than what they come to.
        double widest = told.isEmpty()
                ? 0.0
                : 3.0 * unit.fromSi(told.get(told.size() - 1).interval().halfWidth());
        double low = DoubleStream.of(ends).min().orElseThrow() - widest;
        double high = DoubleStream.of(ends).max().orElseThrow() + widest;
        double room = 0.05 * (high - low);
        Scale y = new Scale(low - room, high + room, BOTTOM, TOP);
        int last = Math.max(4, Math.max(looks.size(), session.mostPairs()));
        Scale x = new Scale(0.0, last, LEFT, RIGHT);
        String clubs = VisibleText.line(first) + " minus " + VisibleText.line(second);
        String title = "What each pair added: " + clubs;
        SvgDrawing drawing = new SvgDrawing("looks", title, said(looks, clubs, metric, unit), HEIGHT);
        drawing.rectangle(0.0, 5.0, 24.0, 10.0, "fill", Palette.BAND, "stroke", Palette.SOFT);
        drawing.text(29.0, 14.0, "start", "margin", "fill", Palette.SOFT, "font-size", "11");
        key(drawing, 90.0, 10.0, "none", "mean");
        key(drawing, 170.0, 10.0, "5 3", "interval after each pair");
        drawing.rectangle(
                LEFT,
                y.at(margin),
                RIGHT - LEFT,
                y.at(-margin) - y.at(margin),
                "class",
                "margin",
                "fill",
                Palette.BAND);
        axes(drawing, x, y, Ticks.of(0.0, last, 6), Ticks.of(low - room, high + room, 6));
        drawing.text(
                0.0,
                TOP - 10.0,
                "start",
                metric.label() + (unit.symbol().isEmpty() ? "" : ", " + unit.symbol()),
                "fill",
                Palette.SOFT,
                "font-size",
                "11");
        drawing.line(LEFT, y.at(0.0), RIGHT, y.at(0.0), "stroke", Palette.SOFT, "stroke-width", "1.4");
        look(drawing, looks, x, y, look -> unit.fromSi(look.mean()), "none");
        look(drawing, told, x, y, look -> unit.fromSi(look.interval().lower()), "5 3");
        look(drawing, told, x, y, look -> unit.fromSi(look.interval().upper()), "5 3");
        return drawing.finish();
    }

    private static void look(
            SvgDrawing drawing,
            List<PairByPair.Look> looks,
            Scale x,
            Scale y,
            ToDoubleFunction<PairByPair.Look> of,
            String dashes) {
        if (looks.isEmpty()) {
            return;
        }
        drawing.polyline(
                looks.stream().mapToDouble(look -> x.at(look.pairs())).toArray(),
                looks.stream()
                        .mapToDouble(look -> y.within(of.applyAsDouble(look)))
                        .toArray(),
                false,
                "class",
                "look",
                "fill",
                "none",
                "stroke",
                Palette.FIRST,
                "stroke-width",
                "2.2",
                "stroke-dasharray",
                dashes);
    }

    private static String said(List<PairByPair.Look> looks, String clubs, Metric metric, Unit unit) {
        if (looks.isEmpty()) {
            return "No whole pair yet.";
        }
        PairByPair.Look now = looks.get(looks.size() - 1);
        int decimals = NumberText.decimals(unit);
        String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        return "After " + now.pairs() + " pairs " + clubs + " is "
                + NumberText.fixed(unit.fromSi(now.mean()), decimals) + symbol + " of " + metric.label()
                + (now.interval().bounded()
                        ? ", " + BagWords.level(now.interval().level()) + " interval "
                                + NumberText.fixed(unit.fromSi(now.interval().lower()), decimals) + " to "
                                + NumberText.fixed(unit.fromSi(now.interval().upper()), decimals)
                        : ", without an interval yet")
                + ".";
    }
}
