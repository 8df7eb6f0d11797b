package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Origin;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.Completion;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Measures a bag: carry and total of each club, the gaps between neighbours, and the distances that no club covers.
 *
 * <p>The clubs are put in the order of their mean carries, excluded shots left out. For neighbours:
 *
 * <ul>
 *   <li>the <b>gap</b> is the difference of the means, longer minus shorter: by the paired t test on the pairs that
 *       {@link dev.teeward.fitting.compare.ShotPairing} finds (clubs hit in rounds), else by Welch's. Its interval holds by
 *       itself; beside it stands one that holds for all gaps together (Bonferroni: level {@code 1 - (1 - level) / gaps});
 *   <li>the probability that the gap is <b>smaller</b> or <b>larger</b> than wanted is that of the posterior of the difference of the
 *       means with the reference prior: the t of the pair differences, or the difference of two independent t (Behrens 1929,
 *       Fisher 1935);
 *   <li>the <b>overlap</b> is predictive: the probability that one shot to come with the longer club carries less than one to
 *       come with the shorter, each {@code mean + s sqrt(1 + 1/n) t} with n - 1 degrees of freedom, independent;
 *   <li>what would <b>mend</b> it: the change of loft, or gain of club speed, of either club that would make the estimate the
 *       wanted gap, all swings of that club struck and flown again by the impact and flight models, see {@link Mend}; and from 1.5 wanted
 *       gaps on a club between, see {@link Bag#halved}. It needs the
 *       club's head, from {@link #withHead} or a typical one by the loft written down in the session (driver below 13 deg, fairway wood
 *       below 20, hybrid below 23, irons by 4 deg from 25 deg for the 5-iron, wedge from 43: common practice, no source).
 * </ul>
 *
 * <p>A club <b>covers</b> a distance if at least a share of its shots to come (half unless changed) carries to within a
 * tolerance of it (7.5 yd unless changed; both common practice, no source), by the same predictive t. Full swings only: what a
 * golfer does between the distances of full swings is not in the shots. What no club covers is reckoned from the estimates;
 * {@link Bag#settled} tells whether a stretch is wider than its neighbours' carries are unsure.
 *
 * <p>The order itself is taken from the shots, so that a gap that is small against its interval tends to be shown too large; how sure
 * the order is, is said for each gap. Probabilities of single gaps are not adjusted for their number.
 *
 * <p><b>Warnings</b>, beside those of {@link SessionCompleter} for carries that it worked out: {@code club-left-out} (fewer than two
 * shots), {@code clubs-in-blocks}, {@code few-shots} (below five), {@code order-not-sure}, {@code carries-of-two-kinds},
 * {@code flagged-shots}, {@code covers-nothing}, {@code mend-not-told}, {@code typical-head}, {@code several-gaps}, {@code
 * qualified-builder}, {@code airs-differ} (by {@link UnevenAir}; {@link #withAir} is the mend), and those of {@link SameAir}.
 *
 * <pre>{@code
 * Bag bag = Gapping.withDefaults().withWanted(yards(12.0), yards(4.0)).measure(session);
 * bag.gaps().forEach(gap -> System.out.println(gap.longer() + ": " + gap.difference().estimate()));
 * bag.uncovered();
 * }</pre>
 *
 * <p>Immutable and thread-safe, if the plug-ins are.
 */
public final class Gapping {
    /** The share of single shots that {@link BagClub#nextShot()} holds: 0.8. */
    public static final double NEXT_SHOT_SHARE = 0.8;

    private static final int FEW = 5;
    private static final Gapping DEFAULTS = new Gapping(new Settings());

    private final Settings settings;

    /** All options; copied before one is changed. */
    private static final class Settings {
        private double level = 0.95;
        private List<String> clubs = List.of();
        private @Nullable Length wanted;
        private @Nullable Length tolerance;
        private Length coverTolerance = Length.ofYards(7.5);
        private double coverShare = 0.5;
        private FlightModel model = FlightModel.standard();
        private ImpactModel impact = RigidImpact.standard();
        private Map<String, ClubHead> heads = Map.of();
        private @Nullable SameAir air;

        private Settings() {}

        private Settings(Settings from) {
            level = from.level;
            clubs = from.clubs;
            wanted = from.wanted;
            tolerance = from.tolerance;
            coverTolerance = from.coverTolerance;
            coverShare = from.coverShare;
            model = from.model;
            impact = from.impact;
            heads = from.heads;
            air = from.air;
        }
    }

    private Gapping(Settings settings) {
        this.settings = settings;
    }

    /**
     * All clubs, 95 %, no gap wanted.
     *
     * @return the default procedure
     */
    public static Gapping withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level of the intervals.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public Gapping withLevel(double level) {
        Settings changed = new Settings(settings);
        changed.level = share("level", level);
        return new Gapping(changed);
    }

    /**
     * With some of the clubs only.
     *
     * @param names at least two different names, as in the shots
     * @return a changed copy
     * @throws IllegalArgumentException if there are fewer or one is given twice
     */
    public Gapping withClubs(String... names) {
        List<String> clubs = List.of(names);
        if (clubs.size() < 2 || new HashSet<>(clubs).size() < clubs.size()) {
            throw new IllegalArgumentException(
                    "clubs must be at least two different names, but were " + clubs + "; leave them out for all clubs");
        }
        Settings changed = new Settings(settings);
        changed.clubs = clubs;
        return new Gapping(changed);
    }

    /**
     * With a gap that is wanted between neighbours, settled before the shots are looked at.
     *
     * @param gap the gap, in (0, 100] m
     * @param within how far from it a gap may be, in [0, gap) m
     * @return a changed copy
     * @throws IllegalArgumentException if one lies outside
     */
    public Gapping withWanted(Length gap, Length within) {
        if (!(gap.meters() > 0.0 && gap.meters() <= 100.0)) {
            throw new IllegalArgumentException("the wanted gap must be in (0, 100] m (0-109 yd), but was "
                    + gap.meters() + " m (" + gap.yards() + " yd); it is the distance between neighbours, not a carry");
        }
        if (!(within.meters() >= 0.0 && within.meters() < gap.meters())) {
            throw new IllegalArgumentException("within must be at least 0 and below the wanted gap of " + gap.meters()
                    + " m (" + gap.yards() + " yd), but was " + within.meters() + " m (" + within.yards() + " yd)");
        }
        Settings changed = new Settings(settings);
        changed.wanted = gap;
        changed.tolerance = within;
        return new Gapping(changed);
    }

    /**
     * With another meaning of covering a distance.
     *
     * @param within how far from it a shot may carry, in (0, 100] m
     * @param share the share of shots that must, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if one lies outside
     */
    public Gapping withCover(Length within, double share) {
        if (!(within.meters() > 0.0 && within.meters() <= 100.0)) {
            throw new IllegalArgumentException("within must be in (0, 100] m (0-109 yd), but was " + within.meters()
                    + " m (" + within.yards() + " yd)");
        }
        Settings changed = new Settings(settings);
        changed.coverTolerance = within;
        changed.coverShare = share("share", share);
        return new Gapping(changed);
    }

    /**
     * With another flight model, for carries that were not measured and for what would mend a gap.
     *
     * @param model ball, landing elevation, gravity and ground; its air and wind are those of the session. With a ground the
     *     totals that were not measured are computed
     * @return a changed copy
     */
    public Gapping withFlightModel(FlightModel model) {
        Settings changed = new Settings(settings);
        changed.model = Objects.requireNonNull(model, "model");
        return new Gapping(changed);
    }

    /**
     * With another impact model, for what would mend a gap.
     *
     * @param impact the model
     * @return a changed copy
     */
    public Gapping withImpactModel(ImpactModel impact) {
        Settings changed = new Settings(settings);
        changed.impact = Objects.requireNonNull(impact, "impact");
        return new Gapping(changed);
    }

    /**
     * With the head of a club, in the place of the typical one for its loft.
     *
     * @param club the name of the club, as in the shots
     * @param head its head; its hand is replaced by the golfer's
     * @return a changed copy
     */
    public Gapping withHead(String club, ClubHead head) {
        Settings changed = new Settings(settings);
        Map<String, ClubHead> heads = new HashMap<>(settings.heads);
        heads.put(Objects.requireNonNull(club, "club"), Objects.requireNonNull(head, "head"));
        changed.heads = Map.copyOf(heads);
        return new Gapping(changed);
    }

    /**
     * With one air for all: every shot is first brought into it, so that clubs hit on different days or at different places can be
     * compared. Measured totals are left out then, since they hang on the turf of their place.
     *
     * @param air the air; its flight model is replaced by that of this procedure
     * @return a changed copy
     */
    public Gapping withAir(SameAir air) {
        Settings changed = new Settings(settings);
        changed.air = Objects.requireNonNull(air, "air").withoutIntervals();
        return new Gapping(changed);
    }

    private static double share(String name, double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException(name + " must be in (0, 1), but was " + value + "; 95 percent are 0.95");
        }
        return value;
    }

    /**
     * Measures the bag of a session; several sessions as one by {@link Session#combine}, then each shot counts in its own air
     * unless there is one {@linkplain #withAir for all}.
     *
     * @param session the session, with carries or with launches to compute them from
     * @return the bag
     * @throws IllegalArgumentException if fewer than two clubs have two used shots with a carry, if a chosen club was not hit or
     *     has fewer than two, if a head is given for a club that was not hit, or as {@link SessionCompleter#complete} does
     */
    public Bag measure(Session session) {
        List<Warning> warnings = new ArrayList<>();
        SessionCompleter completer = SessionCompleter.withDefaults().withFlightModel(settings.model);
        Completion completion = completer.complete(session);
        Session seen = settings.air == null
                ? completion.session()
                : completer
                        .complete(brought(completion.session(), settings.air, warnings))
                        .session();
        Session complete = seen.withShots(withCarry(seen.shots()));
        List<String> names = names(complete, warnings);
        UnevenAir.warning(complete, names).ifPresent(warnings::add);
        Map<String, Integer> flagged = flagged(seen, names, warnings);
        List<BagClub> clubs = new ArrayList<>();
        for (String name : names) {
            clubs.add(ClubMeasure.of(
                    name,
                    complete,
                    settings.level,
                    settings.coverTolerance.meters(),
                    settings.coverShare,
                    flagged.getOrDefault(name, 0)));
        }
        clubs.sort(Comparator.comparingDouble((BagClub club) -> club.carry().value())
                .reversed());
        Mender mender = new Mender(
                complete,
                heads(complete, names),
                settings.heads.keySet(),
                settings.impact,
                SessionFlights.of(complete, settings.model),
                clubs.get(0).name());
        List<Gap> gaps = new ArrayList<>();
        GapMeasure measure = new GapMeasure(complete.shots(), settings.level, clubs.size() - 1);
        for (int i = 1; i < clubs.size(); i++) {
            GapMeasure.Draft draft = measure.of(clubs.get(i - 1), clubs.get(i));
            gaps.add(
                    settings.wanted == null || settings.tolerance == null
                            ? draft.gap()
                            : draft.against(settings.wanted.meters(), settings.tolerance.meters(), mender));
        }
        warnings.addAll(measure.warnings());
        warnings.addAll(mender.warnings());
        if (clubs.stream().anyMatch(club -> club.computed() > 0)) {
            warnings.addAll(completion.warnings());
        }
        about(clubs, warnings);
        twoKinds(completion.session().shots(), names).ifPresent(warnings::add);
        return new Bag(
                clubs,
                gaps,
                Coverage.uncovered(clubs),
                settings.level,
                Optional.ofNullable(settings.wanted),
                Optional.ofNullable(settings.tolerance),
                settings.coverTolerance,
                settings.coverShare,
                method(gaps),
                warnings.stream().distinct().toList());
    }

    private Session brought(Session session, SameAir air, List<Warning> warnings) {
        SameAir.Result result = air.withFlightModel(settings.model).bring(session);
        warnings.addAll(result.warnings());
        return result.session();
    }

    /** A shot without a carry is a shot that does not count here, and breaks its pair. */
    private static ShotSet withCarry(ShotSet shots) {
        return ShotSet.of(shots.stream()
                .map(shot -> shot.used() && !shot.has(Metric.CARRY) ? shot.withExclusion("no carry") : shot)
                .toList());
    }

    private List<String> names(Session session, List<Warning> warnings) {
        List<String> hit = session.shots().clubs();
        settings.heads.keySet().stream()
                .filter(name -> !hit.contains(name))
                .findFirst()
                .ifPresent(name -> {
                    throw unknown(name, hit);
                });
        List<String> names = new ArrayList<>();
        for (String name : settings.clubs.isEmpty() ? hit : settings.clubs) {
            if (!hit.contains(name)) {
                throw unknown(name, hit);
            }
            int shots = session.shots().club(name).used().size();
            if (shots >= 2) {
                names.add(name);
                continue;
            }
            String why = name + " has " + (shots == 0 ? "no used shot" : "1 used shot") + " with a carry, and needs 2";
            if (!settings.clubs.isEmpty()) {
                throw new IllegalArgumentException(
                        why + "; a launch with ball speed, launch angle and spin rate would do");
            }
            warnings.add(Warning.of("club-left-out", why + ", so it is left out"));
        }
        if (names.size() < 2) {
            throw new IllegalArgumentException(
                    "a bag needs at least two clubs with two used shots with a carry each, but "
                            + (hit.isEmpty()
                                    ? "there are no shots"
                                    : "of " + String.join(", ", hit) + " "
                                            + (names.isEmpty() ? "none" : "only " + names.get(0)) + " has them"));
        }
        return names;
    }

    private static IllegalArgumentException unknown(String name, List<String> hit) {
        return new IllegalArgumentException(
                "the club \"" + name + "\" was not hit; the clubs are " + String.join(", ", hit));
    }

    private Map<String, ClubHead> heads(Session session, List<String> names) {
        Handedness hand = session.hand().orElse(Handedness.RIGHT);
        Map<String, ClubHead> heads = new HashMap<>();
        for (String name : names) {
            ClubHead own = settings.heads.get(name);
            Optional<ClubHead> head = own == null
                    ? session.club(name).flatMap(club -> HeadByLoft.of(club, hand))
                    : Optional.of(own.toBuilder().handedness(hand).build());
            head.ifPresent(found -> heads.put(name, found));
        }
        return heads;
    }

    private Map<String, Integer> flagged(Session session, List<String> names, List<Warning> warnings) {
        List<Shot> shots = session.shots().shots();
        Map<String, Integer> flagged = new HashMap<>();
        ScreenReport report = SessionScreen.withDefaults()
                .withFlightModel(settings.model)
                .forCarriesOf(session)
                .screen(session);
        report.flagged().forEach(index -> flagged.merge(shots.get(index).club(), 1, Integer::sum));
        flagged.keySet().retainAll(names);
        report.flaggedWarning(names).ifPresent(warnings::add);
        return flagged;
    }

    private static void about(List<BagClub> clubs, List<Warning> warnings) {
        List<String> few = clubs.stream()
                .filter(club -> club.shots() < FEW)
                .map(BagClub::name)
                .toList();
        if (!few.isEmpty()) {
            warnings.add(Warning.of(
                    "few-shots", "fewer than " + FEW + " shots with " + String.join(", ", few) + " say little"));
        }
        List<String> nothing = clubs.stream()
                .filter(club -> club.covers().isEmpty())
                .map(BagClub::name)
                .toList();
        if (!nothing.isEmpty()) {
            warnings.add(Warning.of(
                    "covers-nothing",
                    "the shots with " + String.join(", ", nothing) + " spread too widely to cover any distance"));
        }
    }

    /** As hit, since carries that were brought into other air are all computed. */
    private static Optional<Warning> twoKinds(ShotSet shots, List<String> names) {
        long kinds = shots.used().stream()
                .filter(shot -> names.contains(shot.club()))
                .flatMap(shot -> shot.reading(Metric.CARRY).stream())
                .map(reading -> reading.origin() == Origin.COMPUTED)
                .distinct()
                .count();
        return kinds < 2L
                ? Optional.empty()
                : Optional.of(
                        Warning.of(
                                "carries-of-two-kinds",
                                "some carries were measured and some computed from the launch, so part of a gap may be the model's"));
    }

    private String method(List<Gap> gaps) {
        long paired = gaps.stream()
                .filter(gap -> gap.difference().sampleSizes().size() == 1)
                .count();
        String tests = paired == gaps.size()
                ? "all gaps by the paired t test"
                : paired == 0L
                        ? "all gaps by Welch's t test"
                        : paired + " of " + gaps.size() + " gaps by the paired t test, the others by Welch's";
        return String.format(
                Locale.ROOT,
                "%s; intervals at %s %% each; probabilities of a gap"
                        + " from the posterior of its mean (reference prior), not adjusted for their number; overlap and cover"
                        + " from the predictive t of single shots",
                tests,
                Double.toString(Math.rint(1e5 * settings.level) / 1e3).replaceAll("\\.0$", ""));
    }
}
