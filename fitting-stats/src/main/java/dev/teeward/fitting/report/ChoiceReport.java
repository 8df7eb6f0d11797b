package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.choose.ClubChoice;
import dev.teeward.fitting.compare.PairwiseComparison;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A choice of a club as one page: the leader in words, the chance of being the best and the expected loss of each club as bars,
 * the carries as strips, and the differences as a table.
 *
 * <pre>{@code
 * ChoiceReport report = ChoiceReport.of(result).withUnits(UnitSystem.METRIC);
 * Files.writeString(path, report.html());
 * report.pictures().get(0).svg();   // the chances alone
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ChoiceReport {
    private static final int MOST_DRAWN = 300;

    private final ClubChoice.Result result;
    private final UnitSystem units;

    private ChoiceReport(ClubChoice.Result result, UnitSystem units) {
        this.result = result;
        this.units = units;
    }

    /**
     * The report of a choice, in yards.
     *
     * @param result the choice
     * @return the report
     */
    public static ChoiceReport of(ClubChoice.Result result) {
        return new ChoiceReport(Objects.requireNonNull(result, "result"), UnitSystem.US);
    }

    /**
     * The same report in other units.
     *
     * @param system the units
     * @return a changed copy
     */
    public ChoiceReport withUnits(UnitSystem system) {
        return new ChoiceReport(result, Objects.requireNonNull(system, "system"));
    }

    /**
     * The unit of the goal's numbers.
     *
     * @return yards or metres for a distance, else a pure number
     */
    public Unit unit() {
        return result.goal().unit() == RatioUnit.ONE ? RatioUnit.ONE : Metric.CARRY.unit(units);
    }

    private int decimals() {
        return unit() instanceof LengthUnit ? 1 : 3;
    }

    private String number(double si) {
        return NumberText.fixed(unit().fromSi(si), decimals());
    }

    private String symbol() {
        return unit().symbol().isEmpty() ? "" : " " + unit().symbol();
    }

    /**
     * The words: {@code in-short} and, if there are any, {@code warnings}.
     *
     * @return the sections in the order of reading, unmodifiable
     */
    public List<Section> sections() {
        ClubChoice.ClubResult leader = result.leader();
        boolean priced = result.clubs().stream().anyMatch(club -> club.price() > 0.0);
        List<String> said = new ArrayList<>();
        said.add("The goal is " + result.goal().words() + "; the "
                + (result.goal().smallestIsBest() ? "smallest" : "largest") + " mean is the best.");
        boolean tied = result.leaders().size() > 1;
        said.add((tied ? "The best mean is shared by " : "The best mean has ")
                + Subject.list(result.leaders().stream().map(ChoiceReport::name).toList())
                + (priced ? ", price counted: " : ": ") + number(leader.mean().value()) + symbol() + ".");
        if (result.goal().shares()) {
            said.add("For the comparison one ball on the green and one beside it were added to each club.");
        }
        List<ClubChoice.ClubResult> undecided = result.undecided();
        if (!undecided.isEmpty()) {
            said.add("The shots can't tell between "
                    + Subject.list(undecided.stream()
                            .map(club -> name(club) + " (" + percent(club.probability()) + " %)")
                            .toList())
                    + "; in brackets the probability that it is the best.");
        }
        if (leader.probability().isPresent()) {
            said.add((tied ? name(leader) : "It") + " is the best of the "
                    + result.clubs().size() + " with a probability of "
                    + BagWords.percent(leader.probability().getAsDouble()) + " %"
                    + leader.expectedLoss().stream()
                            .mapToObj(loss -> "; against the true best, picking it is expected to cost " + number(loss)
                                    + symbol())
                            .findFirst()
                            .orElse("")
                    + ".");
        } else {
            said.add("The shots do not tell how sure that is.");
        }
        leader.shrunk()
                .ifPresent(mean -> said.add("Less the luck of having come out first, " + number(mean.value()) + symbol()
                        + " are to be expected of " + (tied ? name(leader) : "it") + "."));
        return Stream.of(Sentences.section("in-short", "In short", said), Sentences.warnings(result.warnings()))
                .filter(section -> !section.sentences().isEmpty())
                .toList();
    }

    private static String name(ClubChoice.ClubResult club) {
        return VisibleText.line(club.name());
    }

    /**
     * The tables: {@code clubs} with a row for each club, and {@code differences} of each from the current one, or of all pairs if
     * there is no current one.
     *
     * @return both, unmodifiable
     */
    public List<Table> tables() {
        String in = symbol().isEmpty() ? "" : ", in" + symbol();
        String reach = result.goal().shares() ? "Interval" : "+-";
        List<List<String>> clubs = new ArrayList<>();
        for (ClubChoice.ClubResult club : result.clubs()) {
            clubs.add(List.of(
                    name(club),
                    Integer.toString(club.shots()),
                    number(club.mean().value()),
                    reach(club.mean().interval()),
                    club.shrunk().map(e -> number(e.value())).orElse("-"),
                    number(club.price()),
                    percent(club.probability()),
                    club.expectedLoss().isPresent() ? number(club.expectedLoss().getAsDouble()) : "-"));
        }
        PairwiseComparison.Result pairs = result.againstCurrent().orElse(result.pairs());
        List<List<String>> differences = pairs.pairs().stream()
                .map(pair -> List.of(
                        name(result.clubs().get(pair.first())) + " less "
                                + name(result.clubs().get(pair.second())),
                        number(pair.difference().value()),
                        reach(pair.difference().interval()),
                        pair.pValue() < 0.001 ? "<0.001" : NumberText.fixed(pair.pValue(), 3)))
                .toList();
        return List.of(
                Table.of(
                        "clubs",
                        "Each club by " + result.goal().words() + in
                                + ": mean and interval, mean to expect, what its price takes off, chance in % that it is the"
                                + " best, expected loss",
                        List.of("Club", "Shots", "Mean", reach, "To expect", "Price", "Best", "Loss"),
                        clubs),
                Table.of(
                        "differences",
                        "Differences of the means" + in + ", " + pairs.method(),
                        List.of("Clubs", "Difference", reach, "p"),
                        differences));
    }

    /** The interval of a share is wider on one side. */
    private String reach(Interval interval) {
        if (!interval.bounded()) {
            return "-";
        }
        return result.goal().shares()
                ? number(interval.lower()) + " to " + number(interval.upper())
                : number(interval.halfWidth());
    }

    private static String percent(OptionalDouble probability) {
        return probability.isPresent() ? BagWords.percent(probability.getAsDouble()) : "-";
    }

    /**
     * The pictures: {@code chances}, if the shots tell them, and {@code carries}, if there are any.
     *
     * @return the pictures, unmodifiable
     */
    public List<Picture> pictures() {
        return Stream.of(chances(), carries()).flatMap(Optional::stream).toList();
    }

    private Optional<Picture> chances() {
        List<ClubChoice.ClubResult> clubs = result.clubs().stream()
                .filter(club -> club.probability().isPresent())
                .toList();
        if (clubs.isEmpty()) {
            return Optional.empty();
        }
        String description = String.join(
                "; ",
                clubs.stream()
                        .map(club -> name(club) + ": " + percent(club.probability()) + " %" + loss(club))
                        .toList());
        double row = 36.0;
        SvgDrawing drawing = new SvgDrawing(
                "chances", "Chance of being the best, and expected loss", description + ".", row * clubs.size() + 4.0);
        for (int i = 0; i < clubs.size(); i++) {
            ClubChoice.ClubResult club = clubs.get(i);
            double top = row * i;
            double chance = club.probability().getAsDouble();
            drawing.text(
                    IntervalRows.LEFT,
                    top + 13.0,
                    "start",
                    ClubMark.shortened(name(club), 22),
                    "font-weight",
                    result.leaders().contains(club) ? "700" : "400");
            drawing.text(
                    IntervalRows.RIGHT,
                    top + 13.0,
                    "end",
                    percent(club.probability()) + "\u00a0%" + loss(club),
                    "font-size",
                    "11");
            double full = IntervalRows.RIGHT - IntervalRows.LEFT;
            drawing.rectangle(IntervalRows.LEFT, top + 19.0, full, 11.0, "fill", Palette.BAND, "stroke", Palette.SOFT);
            drawing.rectangle(
                    IntervalRows.LEFT, top + 19.0, full * chance, 11.0, "class", "chance", "fill", Palette.FIRST);
        }
        return Optional.of(drawing.finish());
    }

    private String loss(ClubChoice.ClubResult club) {
        return club.expectedLoss().isPresent()
                ? ", loss " + number(club.expectedLoss().getAsDouble()) + symbol()
                : "";
    }

    private Optional<Picture> carries() {
        Unit shown = Metric.CARRY.unit(units);
        List<IntervalRows.Row> rows = new ArrayList<>();
        for (ClubChoice.ClubResult club : result.clubs()) {
            club.carry().map(carry -> carry.convertTo(shown)).ifPresent(carry -> rows.add(row(club, carry, shown)));
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        IntervalRows strips = new IntervalRows(rows, "carry, " + shown.symbol(), OptionalDouble.empty());
        SvgDrawing drawing = new SvgDrawing(
                "carries",
                "Carries: every shot, mean and interval",
                "Mean carries in " + shown.symbol() + " with their intervals: " + strips.description() + "."
                        + result.clubs().stream()
                                .mapToInt(club -> club.carries().size())
                                .filter(shots -> shots > MOST_DRAWN)
                                .mapToObj(shots -> DrawnShots.thinning(MOST_DRAWN, shots))
                                .distinct()
                                .collect(Collectors.joining()),
                strips.height());
        strips.draw(drawing, 0.0);
        return Optional.of(drawing.finish());
    }

    private static IntervalRows.Row row(ClubChoice.ClubResult club, Estimate carry, Unit shown) {
        return new IntervalRows.Row(
                club.name(),
                IntervalRows.Kind.SINGLE,
                DrawnShots.thinned(club.carries(), MOST_DRAWN).stream()
                        .map(shown::fromSi)
                        .toList(),
                carry.value(),
                carry.interval());
    }

    /**
     * Words, pictures and tables as one page for a browser, which needs nothing outside itself; see {@link HtmlPage}.
     *
     * @return an HTML document
     */
    public String html() {
        return HtmlPage.of(
                "Which of " + result.clubs().size() + " clubs, by "
                        + result.goal().words(),
                "en",
                sections(),
                tables(),
                pictures());
    }
}
