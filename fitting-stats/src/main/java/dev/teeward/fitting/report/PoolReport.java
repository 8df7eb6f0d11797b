package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.pool.ClubOverGolfers;
import dev.teeward.fitting.pool.GolferEffect;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A club's effect over golfers as one page: words, a forest plot (each golfer's difference with its interval, the mean over golfers,
 * and the interval for the next one), and a table.
 *
 * <pre>{@code
 * PoolReport report = PoolReport.of(ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessionsByGolfer));
 * Files.writeString(path, report.html());
 * report.picture().svg();   // the forest plot alone
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PoolReport {
    private final ClubOverGolfers.Result result;
    private final UnitSystem units;

    private PoolReport(ClubOverGolfers.Result result, UnitSystem units) {
        this.result = result;
        this.units = units;
    }

    /**
     * The report of a pooled effect, in US units.
     *
     * @param result the effect over golfers
     * @return the report
     */
    public static PoolReport of(ClubOverGolfers.Result result) {
        return new PoolReport(Objects.requireNonNull(result, "result"), UnitSystem.US);
    }

    /**
     * The same report in other units.
     *
     * @param system the units
     * @return a changed copy
     */
    public PoolReport withUnits(UnitSystem system) {
        return new PoolReport(result, Objects.requireNonNull(system, "system"));
    }

    private Unit unit() {
        return result.metric().unit(units);
    }

    private String clubs() {
        return VisibleText.line(result.first()) + " minus " + VisibleText.line(result.second());
    }

    private String words(Estimate estimate) {
        Estimate e = estimate.convertTo(unit());
        int decimals = NumberText.decimals(unit());
        String value = NumberText.fixed(e.value(), decimals) + (unit().symbol().isEmpty() ? "" : " " + unit().symbol());
        return e.interval().bounded()
                ? value + " (" + BagWords.level(e.interval().level()) + " interval "
                        + NumberText.fixed(e.interval().lower(), decimals) + " to "
                        + NumberText.fixed(e.interval().upper(), decimals) + ")"
                : value + " (no interval can be told)";
    }

    /**
     * The words: {@code in-short}, and {@code warnings} if there are any.
     *
     * @return the sections in the order of reading, unmodifiable
     */
    public List<Section> sections() {
        List<String> said = new ArrayList<>();
        said.add(clubs() + ", " + result.metric().label() + ", over "
                + result.golfers().size() + " golfers: " + words(result.pooled().mean()) + ".");
        said.add("For one more golfer like these: " + words(result.pooled().nextGolfer()) + ".");
        said.add("Golfers differ by a standard deviation of "
                + words(result.pooled().spread()) + ".");
        new TreeMap<>(result.leftOut())
                .forEach((golfer, why) ->
                        said.add("Left out: " + VisibleText.line(golfer) + ", because " + VisibleText.line(why) + "."));
        said.add("Method: " + result.pooled().method() + ".");
        return Stream.of(Sentences.section("in-short", "In short", said), Sentences.warnings(result.warnings()))
                .filter(section -> !section.sentences().isEmpty())
                .toList();
    }

    /**
     * The one table: a row for each golfer, in the order given.
     *
     * @return the table
     */
    public Table table() {
        int decimals = NumberText.decimals(unit());
        List<List<String>> rows = new ArrayList<>();
        for (GolferEffect golfer : result.golfers()) {
            Estimate e = golfer.difference().convertTo(unit());
            rows.add(List.of(
                    VisibleText.line(golfer.golfer()),
                    NumberText.fixed(e.value(), decimals),
                    NumberText.fixed(e.interval().lower(), decimals),
                    NumberText.fixed(e.interval().upper(), decimals),
                    golfer.paired() ? "pairs" : "all shots",
                    golfer.mirrored() ? "yes" : "no"));
        }
        return Table.of(
                "golfers",
                "Each golfer's difference in " + result.metric().label() + ", in " + symbol()
                        + ", with its 95 % interval",
                List.of("Golfer", "Difference", "From", "To", "By", "Mirrored"),
                rows);
    }

    private String symbol() {
        return unit().symbol().isEmpty() ? "pure numbers" : unit().symbol();
    }

    /**
     * The forest plot.
     *
     * @return the picture {@code forest}
     */
    public Picture picture() {
        List<IntervalRows.Row> rows = new ArrayList<>();
        for (GolferEffect golfer : result.golfers()) {
            rows.add(row(golfer.golfer(), IntervalRows.Kind.SINGLE, golfer.difference()));
        }
        rows.add(row(
                "Mean over golfers", IntervalRows.Kind.POOLED, result.pooled().mean()));
        rows.add(row(
                "The next golfer", IntervalRows.Kind.PREDICTED, result.pooled().nextGolfer()));
        IntervalRows forest = new IntervalRows(
                rows,
                result.metric().label() + (unit().symbol().isEmpty() ? "" : ", " + unit().symbol()),
                OptionalDouble.of(0.0));
        SvgDrawing drawing = new SvgDrawing(
                "forest",
                "Golfer by golfer: " + clubs(),
                "Differences in " + result.metric().label() + " in " + symbol() + " with their intervals: "
                        + forest.description() + ".",
                forest.height());
        forest.draw(drawing, 0.0);
        return drawing.finish();
    }

    private IntervalRows.Row row(String name, IntervalRows.Kind kind, Estimate estimate) {
        Estimate shown = estimate.convertTo(unit());
        return new IntervalRows.Row(name, kind, List.of(), shown.value(), shown.interval());
    }

    /**
     * Words, picture and table as one page for a browser, which needs nothing outside itself; see {@link HtmlPage}.
     *
     * @return an HTML document
     */
    public String html() {
        return HtmlPage.of(
                clubs() + " over " + result.golfers().size() + " golfers",
                "en",
                sections(),
                List.of(table()),
                List.of(picture()));
    }
}
