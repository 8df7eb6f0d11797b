package dev.teeward.fitting.plan;

import dev.teeward.fitting.compare.SequentialTTest;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntPredicate;

/**
 * How many pairs settle a margin, with what chance, within the full swings that a fitter allows a golfer.
 *
 * <p>To settle means: clubs that differ by the margin are found different, and clubs that do not differ are shown to be
 * within the margin; both must have the wanted chance. Looking once, at the end: the power of the paired t test and of two
 * one-sided t tests, each at one minus the level. Looking after every pair by an always-valid interval ({@link PairByPair}): the share of simulated
 * sessions that have stopped rightly by then (4,000 sessions, standard error at most 0.8 %). Both are averaged over what is not
 * known of the spread ({@link SpreadGuess}). Looking after every pair costs pairs; which way is used has to be settled
 * beforehand.
 *
 * <p>The pairs within the cap are half of the swings less warming up and less a reserve for re-hits. Defaults: 60 full
 * swings, 8 of them to warm up, 4 in reserve, hence 24 pairs: common practice, no source. The cap is the fitter's judgement
 * of fatigue and safety. No plan exceeds it, and a running session keeps to it by counting every swing ({@link
 * PairByPair#withMostSwings}); where it makes the margin hopeless the plan says which margin is in reach.
 *
 * <pre>{@code
 * FittingPlan.Result r = FittingPlan.withDefaults().forMargin(5.0, SpreadGuess.ofPilot(6.0, 10));
 * r.atTheEnd().pairs();                         // for both answers with 80 % chance
 * r.mostPairs();                                // 24
 * r.atTheEnd().reachableMargin();               // what 24 pairs can settle
 * ShootingOrder.of("Alder", "Rowan").mirrored(r.mostPairs()); // in which order
 * }</pre>
 *
 * <p>Immutable and thread-safe; the same seed gives the same bits.
 */
public final class FittingPlan {
    /** Beyond so many pairs nobody plans. */
    static final int MOST = 200;

    private static final int RUNS = 4_000;
    private static final FittingPlan DEFAULTS = new FittingPlan(60, 8, 4, 0.8, 0.95, 20_261_129L);

    private final int swings;
    private final int warmUp;
    private final int spare;
    private final double chance;
    private final double level;
    private final long seed;

    private FittingPlan(int swings, int warmUp, int spare, double chance, double level, long seed) {
        this.swings = swings;
        this.warmUp = warmUp;
        this.spare = spare;
        this.chance = chance;
        this.level = level;
        this.seed = seed;
    }

    /**
     * One way of looking.
     *
     * @param pairs the smallest number that gives both answers with the wanted chance, or empty beyond 200; it may be more
     *     than the cap allows
     * @param findsDifference the chance that as many pairs as the cap allows find clubs different that differ by the margin
     * @param showsSame the chance that they show clubs that do not differ to be within the margin
     * @param reachableMargin the smallest margin that both answers have the wanted chance for within the cap, in the unit of
     *     the margin, or empty if it is more than 20 standard deviations
     */
    public record Design(OptionalInt pairs, double findsDifference, double showsSame, OptionalDouble reachableMargin) {}

    /**
     * A plan.
     *
     * @param margin the margin
     * @param spread what is known of the spread
     * @param mostPairs how many pairs the cap allows
     * @param atTheEnd if the answer is looked at once, after all pairs
     * @param afterEveryPair if it is looked at after every pair
     */
    public record Result(double margin, SpreadGuess spread, int mostPairs, Design atTheEnd, Design afterEveryPair) {
        /**
         * Whether a way of looking settles the margin within the cap with the wanted chance.
         *
         * @param design one of the two ways
         * @return false if the cap makes it hopeless
         */
        public boolean withinCap(Design design) {
            return design.pairs().isPresent() && design.pairs().getAsInt() <= mostPairs;
        }
    }

    /**
     * 60 swings with 8 to warm up and 4 in reserve, a chance of 80 %, level 95 %.
     *
     * @return the default plan
     */
    public static FittingPlan withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another cap on the full swings, warming up and re-hits included.
     *
     * @param most the cap, at most 400; at least 4 more than warming up and reserve
     * @return a changed copy
     * @throws IllegalArgumentException if the cap is out of range
     */
    public FittingPlan withMostSwings(int most) {
        return checked(most, warmUp, spare);
    }

    /**
     * With another number of swings to warm up.
     *
     * @param warming the swings before the first pair, at least 0
     * @return a changed copy
     * @throws IllegalArgumentException if the number is negative or leaves no 2 pairs
     */
    public FittingPlan withWarmUp(int warming) {
        return checked(swings, warming, spare);
    }

    /**
     * With another reserve for re-hits.
     *
     * @param reserve the swings kept, at least 0
     * @return a changed copy
     * @throws IllegalArgumentException if the number is negative or leaves no 2 pairs
     */
    public FittingPlan withReserve(int reserve) {
        return checked(swings, warmUp, reserve);
    }

    /** All three at once. */
    FittingPlan withSwings(int most, int warming, int reserve) {
        return checked(most, warming, reserve);
    }

    SwingCap cap() {
        return new SwingCap(mostPairs(), swings, warmUp, spare);
    }

    private FittingPlan checked(int most, int warming, int reserve) {
        if (warming < 0 || reserve < 0 || most > 2 * MOST || most - warming - reserve < 4) {
            throw new IllegalArgumentException("swings must be at most " + 2 * MOST
                    + " and leave 4 for two pairs after warming up and reserve, but were " + most + " with " + warming
                    + " to warm up and " + reserve + " in reserve");
        }
        return new FittingPlan(most, warming, reserve, chance, level, seed);
    }

    /**
     * With another chance wanted for either answer.
     *
     * @param wanted the chance, in [0.5, 0.99]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     */
    public FittingPlan withChance(double wanted) {
        if (!(wanted >= 0.5 && wanted <= 0.99)) {
            throw new IllegalArgumentException("chance must be in [0.5, 0.99], but was " + wanted + "; 80 % is 0.8");
        }
        return new FittingPlan(swings, warmUp, spare, wanted, level, seed);
    }

    /**
     * The chance wanted for either answer.
     *
     * @return the chance, in [0.5, 0.99]
     */
    public double chance() {
        return chance;
    }

    /**
     * With another level of the intervals.
     *
     * @param wanted the level, in [0.8, 0.999]
     * @return a changed copy
     * @throws IllegalArgumentException if it lies outside
     */
    public FittingPlan withLevel(double wanted) {
        return new FittingPlan(swings, warmUp, spare, chance, PairByPair.checkedLevel(wanted), seed);
    }

    /**
     * With another seed of the simulated sessions.
     *
     * @param other the seed
     * @return a changed copy
     */
    public FittingPlan withSeed(long other) {
        return new FittingPlan(swings, warmUp, spare, chance, level, other);
    }

    /**
     * How many pairs the cap allows.
     *
     * @return half of the swings that remain after warming up and reserve, at least 2
     */
    public int mostPairs() {
        return (swings - warmUp - spare) / 2;
    }

    /**
     * Plans.
     *
     * @param margin the largest difference that does not matter, finite and above 0
     * @param spread the standard deviation of the differences within pairs, in the unit of the margin
     * @return the pairs, chances and margins of both ways of looking
     * @throws IllegalArgumentException if the margin is out of range
     */
    public Result forMargin(double margin, SpreadGuess spread) {
        PairByPair.checkMargin(margin);
        int cap = mostPairs();
        OptionalInt fixed = smallest(n -> Math.min(found(n, margin, spread), same(n, margin, spread)) >= chance);
        double[] limit = reach(m -> Math.min(found(cap, m, spread), same(cap, m, spread)), spread);
        Design atTheEnd = new Design(fixed, found(cap, margin, spread), same(cap, margin, spread), optional(limit));
        SimulatedSessions sessions = sessions(spread);
        SimulatedSessions.Stops stops = sessions.stops(margin, MOST);
        OptionalInt every = smallest(n -> stops.least(n) >= chance);
        Design afterEveryPair = new Design(
                every,
                stops.findsDifference(cap),
                stops.showsSame(cap),
                optional(reach(m -> sessions.stops(m, cap).least(cap), spread)));
        return new Result(margin, spread, cap, atTheEnd, afterEveryPair);
    }

    /**
     * The chances of a number of pairs: of either way of looking the smaller of finding clubs different that differ by the margin,
     * and of showing those to be within it that do not differ.
     *
     * @param pairs the number of pairs
     * @param atTheEnd if the answer is looked at once, after all of them
     * @param afterEveryPair if it is looked at after every pair
     */
    public record Chance(int pairs, double atTheEnd, double afterEveryPair) {}

    /**
     * How the chances grow with the pairs; those of the cap are those of {@link #forMargin}.
     *
     * @param margin the largest difference that does not matter, finite and above 0
     * @param spread the standard deviation of the differences within pairs, in the unit of the margin
     * @return from 2 pairs on a quarter beyond the cap, and on until both ways have the wanted chance, 200 pairs at most;
     *     unmodifiable
     * @throws IllegalArgumentException if the margin is out of range
     */
    public List<Chance> chances(double margin, SpreadGuess spread) {
        PairByPair.checkMargin(margin);
        SimulatedSessions.Stops stops = sessions(spread).stops(margin, MOST);
        List<Chance> chances = new ArrayList<>();
        boolean enough = false;
        for (int n = 2; n <= MOST && !(enough && n > 1.25 * mostPairs()); n++) {
            Chance next = new Chance(n, Math.min(found(n, margin, spread), same(n, margin, spread)), stops.least(n));
            enough = Math.min(next.atTheEnd(), next.afterEveryPair()) >= chance;
            chances.add(next);
        }
        return List.copyOf(chances);
    }

    private SimulatedSessions sessions(SpreadGuess spread) {
        return new SimulatedSessions(
                SequentialTTest.withDefaults().withLevel(level),
                RUNS,
                Math.max(mostPairs(), MOST),
                new SplittableRandom(seed),
                spread);
    }

    private double found(int n, double margin, SpreadGuess spread) {
        PairsNeeded test = PairsNeeded.withDefaults().withPower(0.999_9).withAlpha(1.0 - level);
        return spread.expectation(sd -> test.power(n, margin, sd));
    }

    private double same(int n, double margin, SpreadGuess spread) {
        EquivalenceShotsNeeded test = EquivalenceShotsNeeded.withDefaults().withAlpha(1.0 - level);
        return spread.expectation(sd -> test.power(n, 0.0, margin, sd));
    }

    private static OptionalInt smallest(IntPredicate enough) {
        if (!enough.test(MOST)) {
            return OptionalInt.empty();
        }
        int low = 1;
        int high = MOST;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (enough.test(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return OptionalInt.of(high);
    }

    /** The margin at which the chance is the wanted one, to a thousandth; empty beyond 20 standard deviations. */
    private double[] reach(DoubleUnaryOperator least, SpreadGuess spread) {
        double low = 0.0;
        double high = 20.0 * spread.value();
        if (least.applyAsDouble(high) < chance) {
            return new double[0];
        }
        while (high - low > 1e-3 * high) {
            double middle = low > 0.0 ? 0.5 * (low + high) : 0.25 * high;
            if (least.applyAsDouble(middle) >= chance) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return new double[] {high};
    }

    private static OptionalDouble optional(double[] found) {
        return found.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(found[0]);
    }
}
