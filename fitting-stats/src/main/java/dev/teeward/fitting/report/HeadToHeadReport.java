package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Explanation;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A head-to-head result in words and tables.
 *
 * <p>A direction (longer, farther right, tighter, more closed) is named only if the interval leaves out zero, or one for a
 * ratio; "practically the same" is said only if the equivalence test says so. Names and notes of the session are text from
 * outside: they are put on one line without the characters that do not show (a warning then says so), names of more than 48 characters
 * lose their middle on pages but not in the data, and nothing of them is ever interpreted.
 *
 * <p>The verdict of the result stands as it is, also from a few pairs, where it leans wholly on the shots scattering as normal
 * ones do. The words do not hide it and do not let it stand alone: below six pairs, or shots of a club, the first sentence says
 * "only"; a difference that the exact test does not bear out is said to "look" different; and where no arrangement of so few
 * shots could reach the level (the sign-flip test of n pairs has no two-sided p below 2 / 2<sup>n</sup>) the second sentence
 * says not to decide on it.
 *
 * <pre>{@code
 * HeadToHeadReport report = HeadToHeadReport.of(result).withUnits(UnitSystem.METRIC);
 * System.out.print(report.text());
 * report.data().number("/metrics/carry/difference/value");
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HeadToHeadReport {
    private final HeadToHeadResult result;
    private final UnitSystem units;
    private final @Nullable Explanation explanation;
    private volatile @Nullable ReportData data; // worked out when first asked for
    private volatile @Nullable List<Section> sections; // put together when first asked for

    private HeadToHeadReport(HeadToHeadResult result, UnitSystem units, @Nullable Explanation explanation) {
        this.result = result;
        this.units = units;
        this.explanation = explanation;
    }

    /**
     * A report in yards, feet and miles per hour.
     *
     * @param result the result
     * @return the report
     */
    public static HeadToHeadReport of(HeadToHeadResult result) {
        return new HeadToHeadReport(Objects.requireNonNull(result, "result"), UnitSystem.US, null);
    }

    /**
     * The same report in other units.
     *
     * @param system the units
     * @return a changed copy
     */
    public HeadToHeadReport withUnits(UnitSystem system) {
        return Objects.requireNonNull(system, "system") == units
                ? this
                : new HeadToHeadReport(result, system, explanation);
    }

    /**
     * The same report with a section on club or swing.
     *
     * @param why what {@link dev.teeward.fitting.explain.Explain} says of the same result
     * @return a changed copy
     * @throws IllegalArgumentException if another result was explained; the same shots compared once more are another result
     */
    public HeadToHeadReport withExplanation(Explanation why) {
        if (why.result() != result) {
            throw new IllegalArgumentException("explanation must be of the result of this report, "
                    + pair(result) + ", but was of another, " + pair(why.result())
                    + "; give what Explain says of HeadToHeadReport.result()");
        }
        return new HeadToHeadReport(result, units, why);
    }

    private static String pair(HeadToHeadResult of) {
        return NumberText.line(of.first().name() + " against " + of.second().name() + " in "
                + of.primary().metric().label());
    }

    /**
     * What is said about club or swing.
     *
     * @return the explanation, or empty if none was given
     */
    public Optional<Explanation> explanation() {
        return Optional.ofNullable(explanation);
    }

    /**
     * The units of all numbers.
     *
     * @return the units
     */
    public UnitSystem units() {
        return units;
    }

    /**
     * What the report is about.
     *
     * @return the result
     */
    public HeadToHeadResult result() {
        return result;
    }

    /**
     * Every number, in the units of the report.
     *
     * @return the numbers
     */
    public ReportData data() {
        ReportData known = data;
        if (known == null) {
            known = ReportData.of(result, units, explanation());
            data = known;
        }
        return known;
    }

    /**
     * The words: {@code in-short}, {@code tested}, {@code differs}, {@code same}, {@code patterns}, {@code swings},
     * {@code explained} (only with an explanation), {@code companions}, {@code undecided}, {@code flagged}, {@code ratings} (only if there are any), {@code method},
     * {@code warnings} (only if there are any).
     *
     * @return the sections in the order of reading, each with at least one sentence, unmodifiable
     */
    public List<Section> sections() {
        List<Section> known = sections;
        if (known == null) {
            known = together();
            sections = known;
        }
        return known;
    }

    private List<Section> together() {
        Subject subject = subject();
        VerdictWords verdicts = new VerdictWords(subject);
        SwingWords swings = new SwingWords(subject);
        MethodWords methods = new MethodWords(subject);
        Stream<Section> explained = explanation().map(why -> new ExplainedWords(subject, why).section()).stream();
        Stream<Section> before = Stream.of(
                new Answer(subject).section(),
                new TestedWords(subject).section(),
                verdicts.differs(),
                verdicts.same(),
                new PatternWords(subject).section(),
                swings.swings());
        Stream<Section> after = Stream.of(
                new CompanionWords(subject).section(),
                verdicts.undecided(),
                new FlagWords(subject).section(),
                swings.ratings(),
                methods.methods(),
                methods.warnings());
        return Stream.concat(before, Stream.concat(explained, after))
                .filter(section -> !section.sentences().isEmpty())
                .toList();
    }

    /**
     * The tables: {@code means}, {@code plan} if there is one for what is undecided, {@code spreads}, {@code tests}, and
     * {@code patterns} if there is a landing pattern.
     *
     * @return the tables in the order of reading, unmodifiable
     */
    public List<Table> tables() {
        return new ReportTables(subject()).all();
    }

    /**
     * The words and the tables as a page for a terminal, to be written in UTF-8.
     *
     * @return text without control characters, the report's own words in ASCII, names and notes in letters of any script;
     *     lines of at most 96 columns (a wide East Asian letter takes two) ending in a line feed
     */
    public String text() {
        return text(StandardCharsets.UTF_8);
    }

    /**
     * The same page in the letters of a charset, for a terminal that cannot show all. Letters that the charset lacks lose
     * their accents or become question marks; the names of the clubs stay different, if need be by "(first)" or "(second)"
     * behind them.
     *
     * @param charset what the page will be encoded in
     * @return text that the charset can encode
     */
    public String text(Charset charset) {
        ShownNames names = ShownNames.of(data());
        return TextPage.of(
                names.first() + " and " + names.second() + " compared",
                sections(),
                tables(),
                Letters.of(charset, names));
    }

    private Subject subject() {
        return new Subject(result, units, data());
    }

    /**
     * The pictures.
     *
     * @return landings, flights, strikes, with an explanation the shares of the inputs, and a strip of shots for each stage,
     *     those for which there are readings, unmodifiable
     */
    public List<Picture> pictures() {
        DrawnShots shots = DrawnShots.of(result);
        return Stream.concat(
                        Stream.of(
                                        LandingPicture.of(shots, units),
                                        FlightPicture.of(shots, units),
                                        FacePicture.of(shots, units),
                                        explanation().flatMap(why -> SharesPicture.of(shots, why, units)))
                                .flatMap(Optional::stream),
                        StripPicture.all(shots, units).stream())
                .toList();
    }

    /**
     * Words, tables and pictures as one page for a browser, which needs nothing outside itself; see {@link HtmlPage}.
     *
     * @return an HTML document
     */
    public String html() {
        ShownNames names = ShownNames.of(data());
        return HtmlPage.of(
                VisibleText.line(result.first().name()) + " against "
                        + VisibleText.line(result.second().name()),
                names.first() + " against " + names.second(),
                "en",
                sections(),
                tables(),
                pictures());
    }
}
