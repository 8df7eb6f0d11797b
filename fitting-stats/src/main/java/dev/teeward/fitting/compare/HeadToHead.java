package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.ComparisonException.Reason;
import dev.teeward.fitting.complete.Completion;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import dev.teeward.fitting.screen.WarmUp;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Two clubs of a session compared, metric by metric, with the landing patterns and what goes with their differences.
 *
 * <p>Pairs are compared when there are enough of them ({@link ShotPairing#enough()}), all used shots otherwise. One metric,
 * declared beforehand, decides. The others are called different only by Holm's adjustment of their p over all of them, and
 * practically the same only by Holm's adjustment within one of two families: the metrics with a declared margin, which are
 * questions asked beforehand, and those with a margin of common practice. If no metric is declared it is the carry, or the
 * first available of ball speed, side, start direction and club speed, or else the first of the shot; a warning says so. A
 * declared margin of a metric that cannot be compared has the warning {@code margin-not-used}. Metrics of which
 * the flight model worked out every reading are functions of the launch: they are compared, but adjusted among themselves, so
 * that they do not weaken what was measured ({@link MetricComparison#inFamily()}). What follows from measured readings by
 * definition, such as the smash factor, counts as measured. Clubs that were not hit in the same air, of sessions that were
 * {@linkplain Session#combine combined}, have the warning {@code airs-differ} ({@link UnevenAir}): then a difference of flight
 * is partly the air's, and {@link dev.teeward.fitting.complete.SameAir} is the mend.
 *
 * <pre>{@code
 * HeadToHeadResult r = HeadToHead.withDefaults().withClubs("Alder", "Rowan")
 *         .withPrimary(Metric.CARRY).withMargin(Metric.CARRY, yards(4.0).meters()).compare(session);
 * r.primary().difference().estimate(); // Alder minus Rowan, metres
 * }</pre>
 *
 * <p>The result depends on the session only: shots appended one by one give the same as the whole file. Immutable and
 * thread-safe.
 */
public final class HeadToHead {
    private static final List<Metric> CHOICE =
            List.of(Metric.CARRY, Metric.BALL_SPEED, Metric.SIDE, Metric.START_DIRECTION, Metric.CLUB_SPEED);
    /** From here on metrics are worked out side by side. */
    private static final int MANY = 1_000;

    private static final HeadToHead DEFAULTS =
            new HeadToHead(null, null, PracticalMargins.defaults(), 0.95, null, true, WarmUp.ofFirst(0));

    private final @Nullable List<String> clubs;
    private final @Nullable Metric primary;
    private final PracticalMargins margins;
    private final double level;
    private final @Nullable Length target;
    private final boolean pairing;
    private final WarmUp warmUp;

    private HeadToHead(
            @Nullable List<String> clubs,
            @Nullable Metric primary,
            PracticalMargins margins,
            double level,
            @Nullable Length target,
            boolean pairing,
            WarmUp warmUp) {
        this.clubs = clubs;
        this.primary = primary;
        this.margins = margins;
        this.level = level;
        this.target = target;
        this.pairing = pairing;
        this.warmUp = warmUp;
    }

    /**
     * The two clubs of the session in the order of their first shots, no primary metric declared, default margins, 95 %.
     *
     * @return the default procedure
     */
    public static HeadToHead withDefaults() {
        return DEFAULTS;
    }

    /**
     * With two clubs chosen.
     *
     * @param first the club that comes first in every difference, by its name
     * @param second the club that is subtracted
     * @return a changed copy
     * @throws IllegalArgumentException if both names are equal
     */
    public HeadToHead withClubs(String first, String second) {
        if (Objects.requireNonNull(first, "first").equals(Objects.requireNonNull(second, "second"))) {
            throw new IllegalArgumentException("two clubs are needed, but both were \"" + first + "\"");
        }
        return new HeadToHead(List.of(first, second), primary, margins, level, target, pairing, warmUp);
    }

    /**
     * With the metric that decides declared.
     *
     * @param metric the metric, chosen before the shots are looked at
     * @return a changed copy
     */
    public HeadToHead withPrimary(Metric metric) {
        return new HeadToHead(clubs, Objects.requireNonNull(metric, "metric"), margins, level, target, pairing, warmUp);
    }

    /**
     * With the margin of a metric declared.
     *
     * @param metric which
     * @param si the largest difference that does not matter [SI unit of the metric]
     * @return a changed copy
     * @throws ComparisonException if the margin is not above 0, not finite, or absurdly large
     */
    public HeadToHead withMargin(Metric metric, double si) {
        return withMargins(margins.with(metric, si));
    }

    /**
     * With other margins.
     *
     * @param other the margins
     * @return a changed copy
     */
    public HeadToHead withMargins(PracticalMargins other) {
        return new HeadToHead(clubs, primary, Objects.requireNonNull(other, "other"), level, target, pairing, warmUp);
    }

    /**
     * With another level of all intervals. A difference is called, and each side of the equivalence tested, at 1 minus it.
     *
     * @param newLevel the level, in [0.8, 0.999]: below, "practically the same" would rest on next to nothing
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in [0.8, 0.999]
     */
    public HeadToHead withLevel(double newLevel) {
        if (!(newLevel >= 0.8 && newLevel <= 0.999)) {
            throw new IllegalArgumentException(
                    "level must be in [0.8, 0.999], but was " + newLevel + "; for 95 percent use 0.95");
        }
        return new HeadToHead(clubs, primary, margins, newLevel, target, pairing, warmUp);
    }

    /**
     * With a target for the landing patterns, on the target line.
     *
     * @param distance the distance of the target
     * @return a changed copy
     */
    public HeadToHead withTarget(Length distance) {
        return new HeadToHead(
                clubs, primary, margins, level, Objects.requireNonNull(distance, "distance"), pairing, warmUp);
    }

    /**
     * Without pairs: all used shots are compared as two samples.
     *
     * @return a changed copy
     */
    public HeadToHead withoutPairing() {
        return new HeadToHead(clubs, primary, margins, level, target, false, warmUp);
    }

    /**
     * With the first shots of each club declared as warming up: they are excluded with that reason before anything else, and
     * counted among what every metric left out.
     *
     * @param shots how many with each club, fixed before hitting; 0 unless changed
     * @return a changed copy
     * @throws IllegalArgumentException if the number is negative
     */
    public HeadToHead withWarmUp(int shots) {
        return new HeadToHead(clubs, primary, margins, level, target, pairing, WarmUp.ofFirst(shots));
    }

    /**
     * Completes the session, screens it and compares, with and without the flagged shots. The screen does not test the
     * primary metric on its own. Even so the answer without the flagged shots was selected after looking: it has the warning
     * {@code selected-after-looking} and is no second answer of equal rank.
     *
     * @param hit the session
     * @return the result
     * @throws ComparisonException if the session cannot be compared as asked; its message is one line for people
     */
    public HeadToHeadResult compare(Session hit) {
        Session session = warmUp.exclude(hit);
        List<String> names = chosen(session.shots());
        checkEnough(session.shots(), names);
        Completion completion = SessionCompleter.withDefaults().complete(session);
        HeadToHeadResult.Parts all = parts(completion.session(), names, true);
        HeadToHead same = alike(all);
        ScreenReport screening = screen(same.primary).screen(completion.session());
        boolean flagged = screening.flags().stream()
                .anyMatch(
                        flag -> flag.shot().used() && names.contains(flag.shot().club()));
        if (!flagged) {
            return new HeadToHeadResult(completion, screening, all, null);
        }
        try {
            HeadToHeadResult.Parts rest = same.parts(screening.flaggedExcluded(), names, false)
                    .with(Warning.of(
                            "selected-after-looking",
                            "shots were left out because of their own readings, so p and intervals of this"
                                    + " answer are too confident; the answer with all shots is the one to rely on"));
            return new HeadToHeadResult(
                    completion, screening, all, new HeadToHeadResult(completion, screening, rest, null));
        } catch (ComparisonException tooFew) {
            Warning warning = Warning.of(
                    "too-few-without-flagged",
                    "without the flagged shots there is no comparison: " + tooFew.getMessage());
            return new HeadToHeadResult(completion, screening, all.with(warning), null);
        }
    }

    /** Shots must not be chosen by the metric that decides, nor by its ratio to the club speed or the other way round. */
    private static SessionScreen screen(@Nullable Metric decides) {
        SessionScreen screen = SessionScreen.withDefaults();
        return decides == Metric.BALL_SPEED || decides == Metric.SMASH_FACTOR ? screen.withMetrics() : screen;
    }

    /** The same with the primary metric of a result, so that both answers are about one question. */
    private HeadToHead alike(HeadToHeadResult.Parts parts) {
        Metric decides = parts.metrics().stream()
                .filter(MetricComparison::primary)
                .findFirst()
                .orElseThrow()
                .metric();
        return withPrimary(decides);
    }

    private List<String> chosen(ShotSet shots) {
        List<String> hit = shots.clubs();
        if (hit.isEmpty()) {
            throw new ComparisonException(Reason.NO_SHOTS, "the session has no shots");
        }
        if (shots.used().isEmpty()) {
            throw new ComparisonException(
                    Reason.ALL_EXCLUDED, "all " + shots.size() + " shots of the session are excluded");
        }
        String names = String.join(", ", hit);
        if (clubs != null) {
            for (String club : clubs) {
                if (!hit.contains(club)) {
                    throw new ComparisonException(
                            Reason.UNKNOWN_CLUB, "no shot was hit with \"" + club + "\"; the session has " + names);
                }
            }
            return clubs;
        }
        if (hit.size() == 1) {
            throw new ComparisonException(
                    Reason.ONE_CLUB, "only one club was hit, " + names + "; a comparison needs two");
        }
        if (hit.size() > 2) {
            throw new ComparisonException(
                    Reason.CLUBS_NOT_CHOSEN, "the session has " + hit.size() + " clubs; choose two of " + names);
        }
        return hit;
    }

    private HeadToHeadResult.Parts parts(Session session, List<String> names, boolean whole) {
        ClubShots first = new ClubShots(names.get(0), session, level, target);
        ClubShots second = new ClubShots(names.get(1), session, level, target);
        checkEnough(session.shots(), names);
        ShotPairing pairs = pairing
                ? ShotPairing.of(session.shots(), first.name(), second.name())
                : ShotPairing.none(session.shots(), first.name(), second.name());
        List<MetricComparison> metrics =
                metrics(new UsedShots(session.shots(), first, second, pairs), first, second, whole);
        List<BuildDifference> builds = first.build().isPresent()
                        && second.build().isPresent()
                ? BuildDifference.between(first.build().get(), second.build().get())
                : List.of();
        return new HeadToHeadResult.Parts(
                session,
                first,
                second,
                pairs,
                metrics,
                primary != null,
                level,
                builds,
                PatternSpread.compare(first, second, pairs, level),
                warnings(session, first, second, pairs, metrics, builds));
    }

    private static void checkEnough(ShotSet shots, List<String> names) {
        for (String name : names) {
            ShotSet all = shots.club(name);
            int used = all.used().size();
            if (used < 2) {
                int excluded = all.size() - used;
                throw new ComparisonException(
                        Reason.TOO_FEW_SHOTS,
                        name + " has " + (used == 1 ? "only one used shot" : "no used shot")
                                + (excluded == 0 ? "" : " (" + excluded + " excluded)")
                                + "; each club needs at least two");
            }
        }
    }

    private List<MetricComparison> metrics(UsedShots used, ClubShots first, ClubShots second, boolean whole) {
        // Each metric is a pure function of its own numbers, so the number of threads does not change a bit.
        boolean many = used.size() > MANY;
        List<Metric> present = used.metrics().stream()
                .sorted(Comparator.comparing(Metric::group).thenComparing(Comparator.naturalOrder()))
                .toList();
        List<MetricSamples> samples = (many ? present.parallelStream() : present.stream())
                .map(used::samples)
                .filter(MetricSamples::comparable)
                .toList();
        if (samples.isEmpty()) {
            throw new ComparisonException(
                    Reason.NO_METRIC_IN_COMMON,
                    "no metric was measured at least twice with both " + first.name() + " and " + second.name());
        }
        Metric decides = decides(samples, first, second);
        List<MetricTests> tests = (many ? samples.parallelStream() : samples.stream())
                .map(s -> MetricTests.of(
                        s, level, margins.of(s.metric()), margins.declared(s.metric()), s.metric() == decides))
                .map(made -> whole ? made.whole() : made)
                .toList();
        double[] adjusted = new double[samples.size()];
        double[] alike = new double[samples.size()];
        // What was measured is asked together; what was only worked out must not make those questions harder.
        for (boolean computed : new boolean[] {false, true}) {
            List<Integer> family = IntStream.range(0, samples.size())
                    .filter(i -> samples.get(i).metric() != decides
                            && MetricComparison.workedOut(samples.get(i)) == computed)
                    .boxed()
                    .toList();
            adjustDifference(tests, family, adjusted);
            for (boolean declared : new boolean[] {true, false}) {
                adjustEquivalence(
                        tests,
                        family.stream()
                                .filter(i -> margins.declared(samples.get(i).metric()) == declared)
                                .toList(),
                        alike);
            }
        }
        List<MetricComparison> comparisons = new ArrayList<>();
        for (int i = 0; i < samples.size(); i++) {
            boolean primaryOne = samples.get(i).metric() == decides;
            double p = primaryOne ? tests.get(i).difference().pValue() : adjusted[i];
            OptionalDouble own = equivalence(tests.get(i));
            OptionalDouble same = primaryOne || own.isEmpty() ? own : OptionalDouble.of(alike[i]);
            comparisons.add(new MetricComparison(samples.get(i), tests.get(i), primaryOne, p, same, margins, level));
        }
        return comparisons;
    }

    private static void adjustDifference(List<MetricTests> tests, List<Integer> family, double[] adjusted) {
        double[] p = PValueAdjustment.HOLM.adjust(family.stream()
                .mapToDouble(i -> tests.get(i).difference().pValue())
                .toArray());
        for (int k = 0; k < p.length; k++) {
            adjusted[family.get(k)] = p[k];
        }
    }

    /**
     * Holm over the equivalence tests of one family: those with a declared margin are questions asked beforehand and are
     * adjusted among themselves, the others, with a margin of common practice, among themselves.
     */
    private static void adjustEquivalence(List<MetricTests> tests, List<Integer> family, double[] adjusted) {
        List<Integer> tested = family.stream()
                .filter(i -> tests.get(i).equivalence().isPresent())
                .toList();
        double[] p = PValueAdjustment.HOLM.adjust(tested.stream()
                .mapToDouble(i -> equivalence(tests.get(i)).orElseThrow())
                .toArray());
        for (int k = 0; k < p.length; k++) {
            adjusted[tested.get(k)] = p[k];
        }
    }

    private static OptionalDouble equivalence(MetricTests tests) {
        return tests.equivalence().stream().mapToDouble(TostTest.Result::pValue).findFirst();
    }

    private Metric decides(List<MetricSamples> samples, ClubShots first, ClubShots second) {
        List<Metric> available = samples.stream().map(MetricSamples::metric).toList();
        Metric wanted = primary;
        if (wanted == null) {
            return CHOICE.stream().filter(available::contains).findFirst().orElse(available.get(0));
        }
        if (!available.contains(wanted)) {
            String names = String.join(", ", available.stream().map(Metric::key).toList());
            throw new ComparisonException(
                    Reason.PRIMARY_NOT_AVAILABLE,
                    "the primary metric " + wanted.key() + " has "
                            + first.used().with(wanted).size() + " numbers with " + first.name() + " and "
                            + second.used().with(wanted).size() + " with " + second.name()
                            + ", but needs two with each; there are " + names);
        }
        return wanted;
    }

    private List<Warning> warnings(
            Session session,
            ClubShots first,
            ClubShots second,
            ShotPairing pairs,
            List<MetricComparison> metrics,
            List<BuildDifference> builds) {
        List<Warning> warnings = new ArrayList<>();
        UnevenAir.warning(session, List.of(first.name(), second.name())).ifPresent(warnings::add);
        MetricComparison decides =
                metrics.stream().filter(MetricComparison::primary).findFirst().orElseThrow();
        if (primary == null) {
            warnings.add(Warning.of(
                    "primary-not-declared",
                    "no primary metric was declared beforehand, so "
                            + decides.metric().label() + " was taken"));
        }
        if (decides.margin().isPresent() && !decides.marginDeclared()) {
            warnings.add(Warning.of(
                    "margin-not-declared",
                    "no margin was declared for " + decides.metric().label() + ", so a common one was taken"));
        }
        for (Metric metric : margins.toMap().keySet()) {
            if (margins.declared(metric) && metrics.stream().noneMatch(m -> m.metric() == metric)) {
                warnings.add(Warning.of(
                        "margin-not-used",
                        "the margin declared for " + metric.label()
                                + " was not used, because there are not two numbers of it with each club"));
            }
        }
        // The order of the shots that decide: those of the pairs, or all used ones.
        ShotSet judged =
                decides.paired() ? ShotSet.of(pairs.paired()) : session.shots().used();
        int[] order = new int[judged.size()];
        int count = 0;
        for (Shot shot : judged) {
            boolean ofFirst = shot.club().equals(first.name());
            if (ofFirst || shot.club().equals(second.name())) {
                order[count++] = ofFirst ? 0 : 1;
            }
        }
        warnings.addAll(ShotOrder.of(Arrays.copyOf(order, count)).warnings());
        warnings.addAll(pairing ? warnings(pairs) : List.of());
        for (BuildDifference build : builds) {
            warnings.add(Warning.of(
                    "builds-differ",
                    "the clubs differ in " + build.property().label() + ": " + build.firstText() + " against "
                            + build.secondText()));
        }
        return warnings;
    }

    private static List<Warning> warnings(ShotPairing pairs) {
        List<Warning> warnings = new ArrayList<>();
        long surplus = pairs.source() == ShotPairing.Source.ORDER
                ? pairs.broken().stream()
                        .filter(pair -> pair.kind() == BrokenPair.Kind.SURPLUS)
                        .count()
                : 0;
        long broken = pairs.broken().size() - surplus;
        if (broken > 0) {
            warnings.add(Warning.of(
                    "broken-pairs",
                    broken + " of " + (broken + pairs.pairs().size())
                            + " pairs are broken; their used shots stay in the summaries, not in the paired tests"));
        }
        if (surplus > 0) {
            warnings.add(Warning.of(
                    "surplus-shots",
                    surplus + (surplus == 1 ? " shot was" : " shots were")
                            + " followed by another with the same club and left over between the pairs; exclude what"
                            + " was hit again, or name the pairs"));
        }
        if (pairs.source() == ShotPairing.Source.NONE) {
            if (pairs.order() != ShotOrderKind.BLOCKED) {
                warnings.add(Warning.of(
                        "no-pairs",
                        "the clubs were not hit in turn and no pairs are named, so all shots were compared without"
                                + " pairing"));
            }
            return warnings;
        }
        if (!pairs.unpaired().isEmpty()) {
            warnings.add(Warning.of(
                    "shots-without-pair",
                    pairs.unpaired().size() + " used shots belong to no pair; they stay in the summaries, not in the"
                            + " paired tests"));
        }
        if (!pairs.enough()) {
            warnings.add(Warning.of(
                    "too-few-pairs",
                    "fewer than half of the shots are in complete pairs, so all shots were compared without pairing"));
        }
        return warnings;
    }
}
