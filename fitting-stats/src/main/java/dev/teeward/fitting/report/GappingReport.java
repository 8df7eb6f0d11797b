package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.gapping.Bag;
import dev.teeward.fitting.gapping.BagClub;
import dev.teeward.fitting.gapping.Gap;
import dev.teeward.fitting.gapping.Gapping;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A bag in words, one table and one picture: as text, as a page, and as numbers.
 *
 * <pre>{@code
 * GappingReport report = GappingReport.of(bag).withUnits(UnitSystem.US);
 * System.out.print(report.text());
 * Files.writeString(path, report.html());
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GappingReport {
    /** The name and version of the structure of {@link #data()}, which stands at {@code /schema}. */
    public static final String SCHEMA = "teeward-bag/1";

    private static final int NAME_COLUMNS = 13;

    private final Bag bag;
    private final UnitSystem units;

    private GappingReport(Bag bag, UnitSystem units) {
        this.bag = bag;
        this.units = units;
    }

    /**
     * The report of a bag, in yards.
     *
     * @param bag the bag
     * @return the report
     */
    public static GappingReport of(Bag bag) {
        return new GappingReport(Objects.requireNonNull(bag, "bag"), UnitSystem.US);
    }

    /**
     * The same report in other units.
     *
     * @param system the units
     * @return a changed copy
     */
    public GappingReport withUnits(UnitSystem system) {
        return new GappingReport(bag, Objects.requireNonNull(system, "system"));
    }

    /**
     * The words: {@code in-short}, {@code mend} if anything would mend a gap, {@code method}, {@code warnings} if there are any.
     *
     * @return the sections in the order of reading, unmodifiable
     */
    public List<Section> sections() {
        BagWords words = new BagWords(bag, units);
        return Stream.of(words.inShort(), words.mend(), words.method(), words.warnings())
                .filter(section -> !section.sentences().isEmpty())
                .toList();
    }

    /**
     * The one table: a row for each club from the longest to the shortest, with the gap to the next.
     *
     * @return the table
     */
    public Table table() {
        return table(UnaryOperator.identity());
    }

    private Table table(UnaryOperator<String> name) {
        List<String> headings = new ArrayList<>(
                List.of("Club", "Shots", "Carry", "+-", "8 of 10", "Total", "Gap", "gap +-", "Overlap"));
        if (bag.wanted().isPresent()) {
            headings.addAll(List.of("Smaller", "Larger"));
        }
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < bag.clubs().size(); i++) {
            BagClub club = bag.clubs().get(i);
            Optional<Gap> gap = i < bag.gaps().size() ? Optional.of(bag.gaps().get(i)) : Optional.empty();
            List<String> row = new ArrayList<>(List.of(
                    name.apply(VisibleText.line(club.name())),
                    Integer.toString(club.shots()),
                    length(club.carry().value()),
                    reach(club.carry().interval()),
                    club.nextShot()
                            .map(i8 -> length(i8.lower()) + " to " + length(i8.upper()))
                            .orElse("-"),
                    club.total().map(total -> length(total.value())).orElse("-"),
                    gap.map(g -> length(g.difference().estimate().value())).orElse("-"),
                    gap.map(g -> reach(g.difference().estimate().interval())).orElse("-"),
                    percent(gap.map(Gap::overlap))));
            if (bag.wanted().isPresent()) {
                row.add(percent(gap.map(Gap::smaller)));
                row.add(percent(gap.map(Gap::larger)));
            }
            rows.add(row);
        }
        return Table.of("bag", caption(), headings, rows);
    }

    private String caption() {
        return "The bag, in " + unit().symbol() + ": mean carry and " + BagWords.level(bag.level())
                + " interval, where 8 of 10 single shots carry to, mean total; gap to the next club and its interval, chance"
                + " in % that a single shot with the next club carries farther"
                + (bag.wanted().isPresent() ? ", chances in % that the gap is smaller or larger than wanted" : "");
    }

    private Unit unit() {
        return Metric.CARRY.unit(units);
    }

    private String length(double meters) {
        return NumberText.fixed(unit().fromSi(meters), 1);
    }

    private String reach(Interval interval) {
        return interval.bounded() ? length(interval.halfWidth()) : "-";
    }

    private static String percent(Optional<OptionalDouble> probability) {
        return probability.isPresent() && probability.get().isPresent()
                ? BagWords.percent(probability.get().getAsDouble())
                : "-";
    }

    /**
     * The picture of the bag: shots, means with intervals and the reach of single shots of each club, the gaps between them, and the
     * distances that no club covers.
     *
     * @return the picture
     */
    public Picture picture() {
        return new BagPicture(bag, units).draw();
    }

    /**
     * Words and table for a terminal.
     *
     * @return lines of at most 96 columns, ending in a line feed
     */
    public String text() {
        return TextPage.of(
                title(), sections(), List.of(table(name -> Columns.cut(name, NAME_COLUMNS))), UnaryOperator.identity());
    }

    /**
     * Words, table and picture as one page for a browser, which needs nothing outside itself; see {@link HtmlPage}.
     *
     * @return an HTML document
     */
    public String html() {
        return HtmlPage.of(title(), "en", sections(), List.of(table()), List.of(picture()));
    }

    private String title() {
        return "A bag of " + bag.clubs().size() + " clubs";
    }

    /**
     * Every number as a tree of plain values: {@code schema, level, unit, wanted, tolerance, cover: {tolerance, share}, clubs, gaps,
     * uncovered, method, warnings}. Lengths are in {@code unit}; an estimate is {@code {value, lower, upper, level, unit}}; what is
     * unknown, absent or infinite is null; probabilities are in [0, 1].
     *
     * @return the tree, unmodifiable
     */
    public Map<String, @Nullable Object> data() {
        Unit unit = unit();
        return new Branch()
                .text("schema", SCHEMA)
                .number("level", bag.level())
                .text("unit", unit.symbol())
                .number("wanted", shown(bag.wanted().map(l -> l.meters())))
                .number("tolerance", shown(bag.tolerance().map(l -> l.meters())))
                .branch(
                        "cover",
                        new Branch()
                                .number(
                                        "tolerance",
                                        unit.fromSi(bag.coverTolerance().meters()))
                                .number("share", bag.coverShare()))
                .branches("clubs", Branch.each(bag.clubs(), this::club))
                .branches("gaps", Branch.each(bag.gaps(), this::gap))
                .branches(
                        "uncovered",
                        Branch.each(
                                bag.uncovered(),
                                s -> stretch(Optional.of(s.from().meters()), Optional.of(s.to().meters()))
                                        .truth("settled", bag.settled(s))))
                .text("method", bag.method())
                .warnings(bag.warnings())
                .toMap();
    }

    private OptionalDouble shown(Optional<Double> meters) {
        return meters.isPresent() ? OptionalDouble.of(unit().fromSi(meters.get())) : OptionalDouble.empty();
    }

    private OptionalDouble shown(OptionalDouble meters) {
        return meters.isPresent() ? OptionalDouble.of(unit().fromSi(meters.getAsDouble())) : meters;
    }

    private Branch stretch(Optional<Double> from, Optional<Double> to) {
        return new Branch().number("from", shown(from)).number("to", shown(to));
    }

    private Branch club(BagClub club) {
        return new Branch()
                .text("name", club.name())
                .count("shots", club.shots())
                .count("computed", club.computed())
                .count("flagged", club.flagged())
                .exclusions(club.exclusions())
                .estimate("carry", club.carry(), unit())
                .estimate("deviation", club.deviation(), unit())
                .number("next_shot_share", Gapping.NEXT_SHOT_SHARE)
                .branch(
                        "next_shot",
                        stretch(
                                club.nextShot().map(Interval::lower),
                                club.nextShot().map(Interval::upper)))
                .estimate("total", club.total(), unit())
                .branch(
                        "covers",
                        stretch(
                                club.covers().map(s -> s.from().meters()),
                                club.covers().map(s -> s.to().meters())));
    }

    private Branch gap(Gap gap) {
        return new Branch()
                .text("longer", gap.longer())
                .text("shorter", gap.shorter())
                .test("difference", gap.difference(), unit())
                .branch(
                        "together",
                        new Branch()
                                .number("lower", unit().fromSi(gap.together().lower()))
                                .number("upper", unit().fromSi(gap.together().upper()))
                                .number("level", gap.together().level()))
                .number("ordered", gap.ordered())
                .number("overlap", gap.overlap())
                .number("smaller", gap.smaller())
                .number("larger", gap.larger())
                .number("halved", shown(bag.halved(gap)))
                .branches(
                        "mends",
                        Branch.each(
                                gap.mends(),
                                mend -> new Branch()
                                        .text("club", mend.club())
                                        .word("means", mend.means())
                                        .estimate("change", mend.change(), BagWords.unit(mend, units))
                                        .count("shots", mend.shots())));
    }
}
