package dev.teeward.fitting.report;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.Association;
import dev.teeward.fitting.compare.BuildDifference;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.ShotPairing;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.ShotFlag;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.MassUnit;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.TemperatureUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The tree of one result. */
final class ResultTree {
    private final HeadToHeadResult result;
    private final ScreenReport screening;
    private final SessionAir air;
    private final UnitSystem units;
    private final Optional<Explanation> explanation;

    ResultTree(
            HeadToHeadResult result,
            ScreenReport screening,
            SessionAir air,
            UnitSystem units,
            Optional<Explanation> explanation) {
        this.result = result;
        this.screening = screening;
        this.air = air;
        this.units = units;
        this.explanation = explanation;
    }

    Map<String, @Nullable Object> build() {
        return RoundingNoise.without(whole());
    }

    private Map<String, @Nullable Object> whole() {
        List<Branch> duplicates = DuplicateShots.of(result);
        return new Branch()
                .text("schema", ReportData.SCHEMA)
                .word("units", units)
                .number("level", result.level())
                .number("level_percent", 100.0 * result.level())
                .number("equivalence_level_percent", 100.0 * (2.0 * result.level() - 1.0))
                .branch("session", session(result.session()))
                .branch(
                        "clubs",
                        new Branch().branch("first", club(result.first())).branch("second", club(result.second())))
                .branches("build_differences", Branch.each(result.buildDifferences(), this::build))
                .word("order", result.order())
                .branch("pairing", pairing(result))
                .text("primary", result.primary().metric().key())
                .truth("primary_declared", result.primaryDeclared())
                .count("secondary_count", (int) result.metrics().stream()
                        .filter(c -> c.inFamily() && !c.primary())
                        .count())
                .branch("metrics", metrics())
                .branch("patterns", PatternBranch.patterns(result, units))
                .branch("strike", PatternBranch.strike(result, units))
                .branches("associations", Branch.each(result.associations(), this::association))
                .branch(
                        "explanation",
                        explanation
                                .map(e -> ExplanationBranch.of(result, e, units))
                                .orElse(null))
                .branch("plan", plan())
                .branch("screening", screening())
                .count("duplicates_count", duplicates.size())
                .branches("duplicates", duplicates)
                .branch(
                        "without_flagged",
                        result.withoutFlagged().map(this::withoutFlagged).orElse(null))
                .warnings(warnings())
                .toMap();
    }

    private Branch session(Session s) {
        Branch branch = new Branch()
                .text("hand", s.hand().map(Branch::word))
                .text("place", s.place())
                .text("date", s.date().map(Object::toString))
                .text("ball", s.ball())
                .texts("remarks", s.remarks())
                .count("shots", s.shots().size());
        quantity(branch, "aim_offset", s.aimOffset().map(a -> a.radians()), AngleUnit.DEGREE);
        return weather(branch, s, air).branches("parts", parts(s));
    }

    /** The sessions that were combined, each with its own air. */
    private List<Branch> parts(Session s) {
        List<Branch> branches = new ArrayList<>();
        for (int i = 0; i < s.parts().size(); i++) {
            int place = i;
            Session part = s.parts().get(i);
            Branch branch = new Branch()
                    .text("date", part.date().map(Object::toString))
                    .count("shots", (int) s.shots().shots().stream()
                            .filter(shot -> shot.part().orElse(-1) == place)
                            .count())
                    .count("pairs", (int) result.pairing().pairs().stream()
                            .filter(pair -> pair.first().part().orElse(-1) == place)
                            .count());
            branches.add(weather(branch, part, SessionAir.of(part)));
        }
        return branches;
    }

    private Branch weather(Branch branch, Session s, SessionAir air) {
        Unit length = units == UnitSystem.US ? LengthUnit.FOOT : LengthUnit.METER;
        quantity(branch, "elevation", s.elevation().map(e -> e.meters()), length);
        quantity(branch, "wind_speed", s.windSpeed().map(w -> w.metersPerSecond()), Metric.BALL_SPEED.unit(units));
        quantity(branch, "wind_from", s.windFrom().map(w -> w.radians()), AngleUnit.DEGREE);
        return branch.branch(
                "air",
                new Branch()
                        .text("description", air.description())
                        .branch(
                                "density",
                                new Branch()
                                        .number("value", air.atmosphere().density())
                                        .text("unit", "kg/m3"))
                        .quantity(
                                "temperature",
                                air.atmosphere().temperature().kelvins(),
                                units == UnitSystem.US ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS)
                        .quantity(
                                "station_pressure",
                                air.atmosphere().pressure().pascals(),
                                units == UnitSystem.US ? PressureUnit.INCH_OF_MERCURY : PressureUnit.HECTOPASCAL)
                        .number("humidity_percent", 100.0 * air.atmosphere().relativeHumidity())
                        .quantity(
                                "density_altitude",
                                air.atmosphere().densityAltitude().meters(),
                                length)
                        .warnings(air.warnings()));
    }

    private static void quantity(Branch branch, String name, Optional<Double> si, Unit shown) {
        if (si.isPresent()) {
            branch.quantity(name, si.get(), shown);
        } else {
            branch.nothing(name);
        }
    }

    private Branch club(ClubShots c) {
        Branch ratings = new Branch();
        for (Rating rating : Rating.values()) {
            ratings.branch(
                    Branch.word(rating),
                    c.rating(rating)
                            .map(r -> MetricBranch.summary(r, RatioUnit.ONE))
                            .orElse(null));
        }
        return new Branch()
                .text("name", c.name())
                .branch("build", c.build().map(this::build).orElse(null))
                .count("used", c.used().size())
                .count("excluded", c.excluded().size())
                .exclusions(c.exclusions())
                .branch("ratings", ratings);
    }

    private Branch build(Club club) {
        Branch branch = new Branch();
        quantity(branch, "loft", club.loft().map(a -> a.radians()), AngleUnit.DEGREE);
        quantity(branch, "lie", club.lie().map(a -> a.radians()), AngleUnit.DEGREE);
        quantity(
                branch,
                "length",
                club.length().map(l -> l.meters()),
                units == UnitSystem.US ? LengthUnit.INCH : LengthUnit.CENTIMETER);
        quantity(branch, "head_mass", club.headMass().map(m -> m.kilograms()), MassUnit.GRAM);
        return branch.text("shaft", club.shaft());
    }

    private Branch build(BuildDifference d) {
        return new Branch()
                .word("property", d.property())
                .text("first", d.firstText())
                .text("second", d.secondText());
    }

    private static Branch pairing(HeadToHeadResult r) {
        ShotPairing p = r.pairing();
        return new Branch()
                .word("source", p.source())
                .count("pairs", p.pairs().size())
                .truth("enough", p.enough())
                .count("unpaired", p.unpaired().size())
                .whole("without_partner", withoutPartner(r))
                .count("broken_count", p.broken().size())
                .branches(
                        "broken",
                        Branch.each(
                                p.broken(),
                                b -> new Branch()
                                        .text("id", b.id())
                                        .word("kind", b.kind())
                                        .text("reason", b.reason())));
    }

    /** Those of the result, and whether the session holds text that pages do not show as it is. */
    private List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>(result.warnings());
        HiddenText.warning(result.session()).ifPresent(warnings::add);
        return warnings;
    }

    private Branch metric(MetricComparison c) {
        Unit unit = c.metric().unit(units);
        double[] first = c.paired() ? c.pairedFirst() : c.firstValues();
        double[] second = c.paired() ? c.pairedSecond() : c.secondValues();
        return MetricBranch.of(c, units)
                .branch(
                        "compared",
                        new Branch()
                                .truth("paired", c.paired())
                                .count("first_shots", first.length)
                                .count("second_shots", second.length)
                                .quantity("first_mean", mean(first), unit)
                                .quantity("second_mean", mean(second), unit));
    }

    private static double mean(double[] values) {
        return DoubleStream.of(values).average().orElseThrow();
    }

    /** The used shots that the paired test of the primary metric leaves out. */
    private static List<Integer> withoutPartner(HeadToHeadResult r) {
        Metric primary = r.primary().metric();
        if (!r.primary().paired()) {
            return List.of();
        }
        Stream<Shot> alone = Stream.concat(
                r.pairing().unpaired().stream(), r.pairing().broken().stream().flatMap(pair -> pair.shots().stream()));
        // A partner that has no reading of the metric is no partner for it.
        Stream<Shot> halves = r.pairing().pairs().stream()
                .filter(pair -> !(pair.first().has(primary) && pair.second().has(primary)))
                .flatMap(pair -> Stream.of(pair.first(), pair.second()));
        return Stream.concat(alone, halves)
                .filter(shot -> shot.used() && shot.has(primary))
                .map(Shot::number)
                .sorted()
                .toList();
    }

    private Branch metrics() {
        Branch branch = new Branch();
        result.metrics().forEach(c -> branch.branch(c.metric().key(), metric(c)));
        return branch;
    }

    /** The words need few of them. */
    private Branch metricsLater(HeadToHeadResult r) {
        Branch branch = new Branch();
        r.metrics().forEach(c -> branch.later(c.metric().key(), () -> metric(c)));
        return branch;
    }

    private Branch association(Association a) {
        Unit out = a.outcome().unit(units);
        Unit along = a.candidate().unit(units);
        String per = out.symbol() + (along.symbol().isEmpty() ? "" : " per " + along.symbol());
        return new Branch()
                .text("outcome", a.outcome().key())
                .text("candidate", a.candidate().key())
                .scaled("slope", a.slope(), out.fromSi(1.0) * along.toSi(1.0), per.strip())
                .test("outcome_difference", a.outcomeDifference(), out)
                .test("candidate_difference", a.candidateDifference(), along)
                .branch(
                        "part",
                        Branch.of(a.part(), out)
                                .numbers(
                                        "df",
                                        a.partDegreesOfFreedom().stream()
                                                .boxed()
                                                .toList())
                                .whole("n", List.of(a.shots()))
                                .text("method", a.partMethod()))
                .number("adjusted_p", a.adjustedP())
                .truth("clear", a.clear())
                .count("shots", a.shots())
                .warnings(a.warnings());
    }

    private Branch plan() {
        Branch metrics = new Branch();
        for (MetricComparison c : result.metrics()) {
            if (c.primary() || (c.inFamily() && c.verdict().verdict() == Verdict.UNDECIDED)) {
                metrics.branch(
                        c.metric().key(),
                        Plan.of(c, result.level()).map(Plan::branch).orElse(null));
            }
        }
        return new Branch()
                .number("power_percent", 100.0 * Plan.POWER)
                .truth("counts_equivalence", Plan.countsEquivalence(result.level()))
                .branch("metrics", metrics);
    }

    private Branch screening() {
        List<ShotFlag> flags = screening.flags().stream().filter(this::compared).toList();
        return new Branch()
                .number("false_alarm_bound_percent", 100.0 * screening.falseAlarmRate())
                .count("flagged", (int)
                        flags.stream().map(ShotFlag::index).distinct().count())
                .branches("flags", Branch.each(flags, ResultTree::flag))
                .warnings(screening.warnings());
    }

    private boolean compared(ShotFlag flag) {
        Shot shot = flag.shot();
        return shot.used()
                && (shot.club().equals(result.first().name())
                        || shot.club().equals(result.second().name()));
    }

    private static Branch flag(ShotFlag f) {
        Branch branch = new Branch()
                .count("shot", f.shot().number())
                .count("index", f.index())
                .text("club", f.shot().club())
                .word("kind", f.kind())
                .texts("metrics", f.metrics().stream().map(Metric::key).toList())
                .text("reason", f.reason())
                .text("method", f.method())
                .number("statistic", f.statistic())
                .number("cut_off", f.cutOff());
        return branch.number("test_false_alarm_percent", percent(f.testFalseAlarmRate()))
                .number("family_false_alarm_percent", percent(f.falseAlarmRate()));
    }

    private static OptionalDouble percent(OptionalDouble rate) {
        return rate.isPresent() ? OptionalDouble.of(100.0 * rate.getAsDouble()) : rate;
    }

    private Branch withoutFlagged(HeadToHeadResult other) {
        return new Branch()
                .branch(
                        "used",
                        new Branch()
                                .count("first", other.first().used().size())
                                .count("second", other.second().used().size()))
                .count("pairs", other.pairing().pairs().size())
                .branch("metrics", metricsLater(other))
                .branches(
                        "changed",
                        Branch.each(
                                result.changedVerdicts(),
                                c -> new Branch()
                                        .text("metric", c.metric().key())
                                        .word("with", c.with())
                                        .word("without", c.without())))
                .later("patterns", () -> PatternBranch.patterns(other, units))
                .warnings(other.warnings());
    }
}
