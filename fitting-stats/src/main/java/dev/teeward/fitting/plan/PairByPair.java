package dev.teeward.fitting.plan;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.ShotPairing;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.internal.Data;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;

/**
 * A session of two clubs that may be looked at after every pair: settled, keep going, or will not settle.
 *
 * <p>Settled: the always-valid interval of the mean difference ({@link SequentialTTest}) leaves out 0 (the clubs differ) or
 * lies inside the margin (practically the same). Whatever the true difference and however often one looks, the chance that
 * the interval ever misses it is at most one minus the level, and so is the chance of a wrong answer. Margin, metric
 * and level are settled before the first pair.
 *
 * <p><b>Blocks.</b> Pairs settle something only if they were hit one after the other: in AAAA..BBBB the pairs that a file names
 * have half a session of warming up and tiring between their shots. If at least two whole pairs of a session file, and more than
 * a quarter of all (a judgement, without a source), have a shot of another pair between their two, nothing is called settled,
 * nothing is predicted, and there is the warning {@code clubs-in-blocks}.
 *
 * <p>Not settled: 1,000 continuations are drawn from what the pairs so far leave open (mean and spread with reference prior,
 * the predictive t of Geisser 1993) and looked at after every pair. If fewer than a tenth of them are settled by the largest
 * number of pairs allowed, the advice is to stop, from the fifth pair on. Giving up never makes a wrong answer.
 *
 * <p><b>Re-hits.</b> A re-hit replaces a shot of the pair in play and keeps the pair whole; a complete pair is never changed,
 * so that nobody hits again because of a result. What is thrown away (a slip, a noise, a ball the device lost) is said
 * beforehand, in the same words for both clubs, and before its reading is looked at; {@link #reHit} records it.
 * If one club was hit again so much more often that chance would do it in 5 % of sessions at most (binomial, two-sided), there is
 * the warning {@code one-sided-re-hits}. Pairs taken out of a session file after their readings were seen void the promise of
 * the interval, so they are told of ({@code pairs-dropped}).
 *
 * <pre>{@code
 * PairByPair session = PairByPair.withinMargin(5.0).withUnit(LengthUnit.YARD).withMostPairs(24);
 * session = session.append(152.0, 149.5);
 * session.standing().advice(); // KEEP_GOING
 * }</pre>
 *
 * <p>Immutable and thread-safe; the same pairs and seed give the same bits.
 */
public final class PairByPair {
    /** From so many pairs on a session may be given up. */
    private static final int FEWEST_TO_GIVE_UP = 5;

    private static final double LEAST_CHANCE = 0.1;

    private static final int FEWEST_APART = 2;
    private static final int MOST_APART_ONE_IN = 4;

    private final double margin;
    private final double level;
    private final Unit unit;
    private final SwingCap cap;
    private final long seed;
    private final List<Pair> pairs;
    private final OptionalDouble openFirst;
    private final OptionalDouble openSecond;
    private final List<ReHit> reHits;
    private final Lost lost;

    /** The readings of a whole pair: what rounding made of their difference is seen by their size only. */
    private record Pair(double first, double second) {
        double difference() {
            return first - second;
        }
    }

    /**
     * Of session files: swings that made no pair and were not hit again, swings that warmed up, pairs taken out, and whole pairs
     * with a shot of another one between their two.
     */
    private record Lost(int others, int warmed, int pairs, int apart) {}

    private PairByPair(
            double margin,
            double level,
            Unit unit,
            SwingCap cap,
            long seed,
            List<Pair> pairs,
            OptionalDouble openFirst,
            OptionalDouble openSecond,
            List<ReHit> reHits,
            Lost lost) {
        this.margin = margin;
        this.level = level;
        this.unit = unit;
        this.cap = cap;
        this.seed = seed;
        this.pairs = List.copyOf(pairs);
        this.openFirst = openFirst;
        this.openSecond = openSecond;
        this.reHits = List.copyOf(reHits);
        this.lost = lost;
    }

    /**
     * A session without pairs; 95 %, a pure number, the cap on full swings of a default {@link FittingPlan}.
     *
     * @param margin the largest difference that does not matter, finite and above 0
     * @return the session
     * @throws IllegalArgumentException if the margin is out of range
     */
    public static PairByPair withinMargin(double margin) {
        return new PairByPair(
                checkMargin(margin),
                0.95,
                RatioUnit.ONE,
                FittingPlan.withDefaults().cap(),
                20_261_129L,
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of(),
                new Lost(0, 0, 0, 0));
    }

    static double checkMargin(double margin) {
        if (!(margin > 0.0 && margin < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("margin must be finite and above 0, but was " + margin
                    + "; it is the largest difference that does not matter");
        }
        return margin;
    }

    static double checkedLevel(double level) {
        if (!(level >= 0.8 && level <= 0.999)) {
            throw new IllegalArgumentException("level must be in [0.8, 0.999], but was " + level + "; 95 % is 0.95");
        }
        return level;
    }

    /**
     * With another level.
     *
     * @param wanted the level, in [0.8, 0.999]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     * @throws IllegalStateException if there is a shot already
     */
    public PairByPair withLevel(double wanted) {
        requireNoShot("level");
        return new PairByPair(
                margin, checkedLevel(wanted), unit, cap, seed, pairs, openFirst, openSecond, reHits, lost);
    }

    /**
     * With the unit of the numbers.
     *
     * @param other the unit
     * @return a changed copy
     */
    public PairByPair withUnit(Unit other) {
        Objects.requireNonNull(other, "unit");
        return new PairByPair(margin, level, other, cap, seed, pairs, openFirst, openSecond, reHits, lost);
    }

    /**
     * With a largest number of pairs, however many swings they take; it may be changed while the session runs.
     *
     * @param most how many pairs are allowed, in [2, 200]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     */
    public PairByPair withMostPairs(int most) {
        if (most < 2 || most > FittingPlan.MOST) {
            throw new IllegalArgumentException("most pairs must be in [2, " + FittingPlan.MOST + "], but were " + most);
        }
        return with(SwingCap.ofPairs(most));
    }

    /**
     * With a cap on the full swings instead of the pairs: every swing of the session counts, and those without a pair beyond
     * the reserve are taken from the pairs, also while the session runs.
     *
     * @param most the cap, all included, at most 400; at least 4 more than warming up and reserve
     * @param warmUp the swings that warm up, at least 0; more if a session file has more shots excluded as
     *     {@link dev.teeward.fitting.screen.WarmUp#REASON}
     * @param reserve the swings kept for re-hits, at least 0
     * @return a changed copy
     * @throws IllegalArgumentException if the numbers are out of range
     */
    public PairByPair withMostSwings(int most, int warmUp, int reserve) {
        return with(FittingPlan.withDefaults().withSwings(most, warmUp, reserve).cap());
    }

    private PairByPair with(SwingCap other) {
        return new PairByPair(margin, level, unit, other, seed, pairs, openFirst, openSecond, reHits, lost);
    }

    /**
     * With another seed of the continuations.
     *
     * @param other the seed
     * @return a changed copy
     */
    public PairByPair withSeed(long other) {
        return new PairByPair(margin, level, unit, cap, other, pairs, openFirst, openSecond, reHits, lost);
    }

    private void requireNoShot(String what) {
        if (!pairs.isEmpty() || openFirst.isPresent() || openSecond.isPresent()) {
            throw new IllegalStateException("the " + what + " must be settled before the first shot");
        }
    }

    /**
     * One more whole pair.
     *
     * @param first with the first club, finite
     * @param second with the second club, finite
     * @return the session with it
     * @throws IllegalArgumentException if a number is not finite
     * @throws IllegalStateException if another pair waits for its second shot
     */
    public PairByPair append(double first, double second) {
        Data.check("pair", new double[] {first, second}, 2);
        if (openFirst.isPresent() || openSecond.isPresent()) {
            throw new IllegalStateException("a pair waits for its second shot; hit it first");
        }
        List<Pair> more = new ArrayList<>(pairs);
        more.add(new Pair(first, second));
        return with(more, OptionalDouble.empty(), OptionalDouble.empty(), reHits);
    }

    /**
     * The shots of a session file, in order: whole pairs whose shots have the metric are appended ({@link ShotPairing}), in the
     * order in which they became whole; an
     * excluded shot whose pair has a used shot with the same club, or is the pair in play, is a re-hit; the pair in play
     * stays open. All other shots with either club count as swings. Where an excluded shot was not hit again its pair is taken
     * out, and there is the warning {@code pairs-dropped}.
     *
     * @param shots all shots in the order of hitting, used and excluded
     * @param first the name of the first club
     * @param second the name of the second club
     * @param metric which metric decides
     * @return the session with them
     * @throws IllegalArgumentException if the names are equal
     * @throws IllegalStateException if another pair waits for its second shot
     */
    public PairByPair appendAll(ShotSet shots, String first, String second, Metric metric) {
        SwungShots swung = new SwungShots(shots, first, second, metric);
        PairByPair session = this;
        for (ShotPair pair : swung.whole()) {
            session = session.append(pair.first().value(metric), pair.second().value(metric));
        }
        for (Shot shot : swung.thrown()) {
            session = session.reHit(swung.side(shot), shot.exclusion().orElseThrow());
        }
        if (swung.open().isPresent()) {
            Shot open = swung.open().get();
            session = session.shot(swung.side(open), open.value(metric));
        }
        return new PairByPair(
                margin,
                level,
                unit,
                cap,
                seed,
                session.pairs,
                session.openFirst,
                session.openSecond,
                session.reHits,
                new Lost(
                        lost.others() + swung.others(),
                        lost.warmed() + swung.warmed(),
                        lost.pairs() + swung.dropped(),
                        lost.apart() + swung.apart()));
    }

    /**
     * One more shot: it opens a pair, or completes the one in play. Either club may begin.
     *
     * @param side with which club
     * @param value the reading, finite
     * @return the session with it
     * @throws IllegalArgumentException if the number is not finite
     * @throws IllegalStateException if the pair in play has a shot with this club
     */
    public PairByPair shot(ReHit.Side side, double value) {
        Data.check("shot", new double[] {value}, 1);
        boolean first = side == ReHit.Side.FIRST;
        if ((first ? openFirst : openSecond).isPresent()) {
            throw new IllegalStateException(
                    "the pair in play has a shot with this club; take the other club, or say reHit first");
        }
        OptionalDouble other = first ? openSecond : openFirst;
        if (other.isPresent()) {
            double partner = other.getAsDouble();
            PairByPair closed = with(pairs, OptionalDouble.empty(), OptionalDouble.empty(), reHits);
            return first ? closed.append(value, partner) : closed.append(partner, value);
        }
        OptionalDouble open = OptionalDouble.of(value);
        return first ? with(pairs, open, openSecond, reHits) : with(pairs, openFirst, open, reHits);
    }

    /**
     * A shot of the pair in play thrown away, to be hit again: the one that opened it, or one that was struck and not entered.
     *
     * @param side with which club
     * @param reason why, one line; the same words for both clubs
     * @return the session without that shot
     * @throws IllegalArgumentException if the reason is blank
     */
    public PairByPair reHit(ReHit.Side side, String reason) {
        List<ReHit> more = new ArrayList<>(reHits);
        more.add(new ReHit(Objects.requireNonNull(side, "side"), reason, pairs.size()));
        return side == ReHit.Side.FIRST
                ? with(pairs, OptionalDouble.empty(), openSecond, more)
                : with(pairs, openFirst, OptionalDouble.empty(), more);
    }

    private PairByPair with(List<Pair> d, OptionalDouble first, OptionalDouble second, List<ReHit> hits) {
        return new PairByPair(margin, level, unit, cap, seed, d, first, second, hits, lost);
    }

    /**
     * The whole pairs.
     *
     * @return how many there are
     */
    public int pairs() {
        return pairs.size();
    }

    /**
     * The swings so far, without warming up: whole pairs, an open shot, re-hits, and the shots of session files that made no
     * pair.
     *
     * @return how many there were
     */
    public int swings() {
        return 2 * pairs.size() + open() + reHits.size() + lost.others();
    }

    private int open() {
        return openFirst.isPresent() || openSecond.isPresent() ? 1 : 0;
    }

    /**
     * The pairs that the cap allows after the swings so far.
     *
     * @return how many there may be in all, those that were hit included
     */
    public int mostPairs() {
        return cap.pairs(pairs.size(), open(), reHits.size() + lost.others(), lost.warmed());
    }

    /**
     * The shots that were thrown away.
     *
     * @return the re-hits in order, unmodifiable
     */
    public List<ReHit> reHits() {
        return reHits;
    }

    /**
     * The differences of the whole pairs.
     *
     * @return first minus second, in order
     */
    public double[] differences() {
        return readings(Pair::difference);
    }

    /**
     * The spread of the whole pairs, to plan another session by.
     *
     * @return the standard deviation of the differences; empty with fewer than two pairs, or if all differences are equal but
     *     for rounding
     */
    public Optional<SpreadGuess> spread() {
        RunningLooks run = new RunningLooks(new double[pairs.size() + 1], margin);
        pairs.forEach(pair -> run.add(pair.first(), pair.second()));
        return pairs.size() > 1 && run.standardDeviation() > 0.0
                ? Optional.of(SpreadGuess.ofPilot(run.standardDeviation(), pairs.size()))
                : Optional.empty();
    }

    /**
     * What was known after a pair.
     *
     * @param pairs how many pairs there were
     * @param mean the mean difference
     * @param interval the always-valid interval, without ends as long as nothing can be told or if the limits of different looks
     *     exclude each other
     */
    public record Look(int pairs, double mean, Interval interval) {}

    /**
     * What was known after each pair.
     *
     * @return a look for each whole pair, in order, unmodifiable
     */
    public List<Look> looks() {
        SequentialTTest test = SequentialTTest.withDefaults().withLevel(level);
        RunningLooks run = new RunningLooks(RunningLooks.criticals(test, pairs.size()), margin);
        List<Look> looks = new ArrayList<>();
        for (Pair pair : pairs) {
            run.add(pair.first(), pair.second());
            boolean told = run.lower() <= run.upper() && run.lower() > Double.NEGATIVE_INFINITY;
            looks.add(new Look(
                    run.pairs(),
                    run.mean(),
                    told ? Interval.of(run.lower(), run.upper(), level) : Interval.unbounded(level)));
        }
        return List.copyOf(looks);
    }

    /**
     * The margin.
     *
     * @return the largest difference that does not matter
     */
    public double margin() {
        return margin;
    }

    private double[] readings(ToDoubleFunction<Pair> of) {
        return pairs.stream().mapToDouble(of).toArray();
    }

    /**
     * Where the session stands.
     *
     * @return the advice, the interval, and what to expect of more pairs
     */
    public Standing standing() {
        SequentialTTest test = SequentialTTest.withDefaults().withLevel(level).withUnit(unit);
        double[] critical = RunningLooks.criticals(test, Math.max(pairs.size(), mostPairs()));
        RunningLooks run = new RunningLooks(critical, margin);
        int settledAt = 0;
        for (Pair pair : pairs) {
            run.add(pair.first(), pair.second());
            if (settledAt == 0 && run.verdict() != Verdict.UNDECIDED) {
                settledAt = run.pairs();
            }
        }
        OptionalInt settledAfter = settledAt == 0 ? OptionalInt.empty() : OptionalInt.of(settledAt);
        List<Warning> warnings = new ArrayList<>();
        Optional<SequentialTTest.Result> look = pairs.isEmpty()
                ? Optional.empty()
                : Optional.of(test.testPairs(readings(Pair::first), readings(Pair::second)));
        look.ifPresent(seen -> warnings.addAll(seen.warnings()));
        oneSided().ifPresent(warnings::add);
        if (lost.pairs() > 0) {
            warnings.add(Warning.of(
                    "pairs-dropped",
                    "pairs taken out by excluded shots that were not hit again: " + lost.pairs()
                            + "; if their readings were seen, the interval no longer holds"));
        }
        int allowed = Math.max(0, mostPairs() - pairs.size());
        if (inBlocks(pairs.size())) {
            warnings.add(Warning.of(
                    "clubs-in-blocks",
                    "the clubs were hit in blocks (other shots lie between the two of " + lost.apart() + " of "
                            + pairs.size()
                            + " pairs), so warming up or tiring cannot be told from the club and nothing is"
                            + " settled; hit them in turn, as ABBA"));
            return new Standing(
                    inBlocks(pairs.size() + allowed) ? Standing.Advice.WILL_NOT_SETTLE : Standing.Advice.KEEP_GOING,
                    Verdict.UNDECIDED,
                    look,
                    OptionalInt.empty(),
                    Optional.empty(),
                    warnings);
        }
        Verdict verdict = run.verdict();
        if (verdict != Verdict.UNDECIDED) {
            return new Standing(Standing.Advice.SETTLED, verdict, look, settledAfter, Optional.empty(), warnings);
        }
        Optional<Standing.Prediction> prediction = Continuations.predict(run, allowed, seed);
        boolean hopeless = allowed == 0
                || (pairs.size() >= FEWEST_TO_GIVE_UP
                        && prediction.filter(p -> p.chance() < LEAST_CHANCE).isPresent());
        return new Standing(
                hopeless ? Standing.Advice.WILL_NOT_SETTLE : Standing.Advice.KEEP_GOING,
                verdict,
                look,
                settledAfter,
                prediction,
                warnings);
    }

    /** Whether too many pairs are apart if there are so many in all. */
    private boolean inBlocks(int all) {
        return lost.apart() >= FEWEST_APART && MOST_APART_ONE_IN * lost.apart() > all;
    }

    private Optional<Warning> oneSided() {
        int n = reHits.size();
        int first = (int)
                reHits.stream().filter(hit -> hit.side() == ReHit.Side.FIRST).count();
        int fewer = Math.min(first, n - first);
        double term = Math.pow(0.5, n);
        double tail = 0.0;
        for (int k = 0; k <= fewer; k++) {
            tail += term;
            term *= (n - k) / (k + 1.0);
        }
        if (2.0 * tail > 0.05) {
            return Optional.empty();
        }
        return Optional.of(Warning.of(
                "one-sided-re-hits",
                "one club was hit again " + Math.max(first, n - first) + " times and the other " + fewer
                        + ", so the re-hits may have made a difference"));
    }

    /** The number of pairs, the margin and the cap. */
    @Override
    public String toString() {
        return pairs.size() + " of at most " + mostPairs() + " pairs, margin " + margin;
    }
}
