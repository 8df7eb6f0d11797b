package dev.teeward.fitting.choose;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.compare.PairwiseComparison;
import dev.teeward.fitting.compare.ProbabilityOfBest;
import dev.teeward.fitting.compare.ShotOrderKind;
import dev.teeward.fitting.compare.ShotPairing;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.complete.SessionCompleter;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.screen.SessionScreen;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Which of several clubs serves a goal best, how sure that is, and what it costs to be wrong.
 *
 * <p>For each club the mean of the goal over its used shots, the probability that its true mean is the best and the loss to
 * expect from picking it ({@link ProbabilityOfBest}); the mean shrunk towards the others ({@link ShrunkMeans}), each club with the
 * variance of its own shots, s^2 / n on n - 1 degrees of freedom, since clubs are not equally even; all pairs by Games and Howell
 * (1976), and each club against the current one by Welch's test, adjusted after Sidak
 * ({@link PairwiseComparison.Method#WELCH_SIDAK}): neither takes the clubs to scatter alike.
 *
 * <p>A price counts as so much of the goal as the user says one unit of money is worth, taken off the club's mean. Goals that
 * count balls (holding a green) get one hit and one miss added to each club before means are compared (Agresti and Caffo 2000),
 * so that ten of ten is not taken for certain; the share itself is the one counted, with Wilson's interval (1927), and the limits of a
 * difference end where no two shares can be farther apart. Shares are not shrunk: clubs that cannot reach the green hold no ball
 * because of their length, which says nothing about the clubs that can, so all clubs are not a sample of one kind.
 *
 * <p>The shrunk intervals at 95 % held 0.94 to 0.98 of the true means, and at least 0.93 of those of the club held least often:
 * simulated, 600 sessions each, 3 and 10 shots; two, four or ten clubs, as even as each other or the last 2.5 times less even; true means
 * equal or spread by half of to five times the smaller spread of shots.
 *
 * <p>Shots are taken as independent; clubs hit in rounds are compared a little too cautiously. Excluded shots do not count.
 *
 * <p>Warnings, beside those of {@link ProbabilityOfBest}: {@code shots-left-out}, {@code shares-not-shrunk}, {@code clubs-in-blocks}
 * (a drift cannot be told from the club), {@code few-shots-for-spread} (a goal of {@link Goal#tightness} and a club with fewer than
 * eight shots, or than half of the most: the distances of few shots from their own middle hang together, so equal clubs are called
 * different at 95 % in some 12 % of sessions of 4 and 20 shots, 8 % of 6 and 12, 7 % of 6 and 6, 5 to 6 % of 10 and 10 or 12 and 24;
 * simulated), {@code flagged-shots} (by {@link SessionScreen#forCarriesOf}; they count all the same), {@code airs-differ} (by
 * {@link UnevenAir}; {@link #withAir} is the mend), and those of {@link SameAir} if there is one air for all.
 *
 * <pre>{@code
 * ClubChoice.Result r = ClubChoice.withGoal(Goal.distance()).withCurrentClub("Alder").choose(session);
 * r.leader().name();
 * r.leader().expectedLoss(); // metres
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ClubChoice {
    private static final int FEWEST_FOR_SPREAD = 8;
    private static final double TOGETHER = 0.95;

    /** Means this close in proportion to the numbers are one: nothing but rounding is between them. */
    private static final double SAME = 1e-12;

    private final Goal goal;
    private final @Nullable String current;
    private final Map<String, Double> prices;
    private final double worth;
    private final double level;
    private final @Nullable SameAir air;

    private ClubChoice(
            Goal goal,
            @Nullable String current,
            Map<String, Double> prices,
            double worth,
            double level,
            @Nullable SameAir air) {
        this.goal = goal;
        this.current = current;
        this.prices = prices;
        this.worth = worth;
        this.level = level;
        this.air = air;
    }

    /**
     * One club.
     *
     * @param name its name
     * @param shots how many shots count
     * @param leftOut how many used shots lack what the goal needs
     * @param mean the mean of the goal with its t interval, a share of balls with Wilson's; price and added balls not counted
     * @param price what its price takes off, in the unit of the goal; 0 without one
     * @param probability that it is the best, price counted, or empty if the shots do not tell
     * @param expectedLoss how far it is expected to be from the best, price counted, or empty
     * @param shrunk what to expect of it, price not counted, or empty if its shots do not tell or the goal counts balls
     * @param carries the carries of its used shots in the order of hitting, whatever the goal; measured, computed, or brought into
     *     one air [m]
     * @param carry their mean with its t interval [m], or empty if there are none
     */
    public record ClubResult(
            String name,
            int shots,
            int leftOut,
            Estimate mean,
            double price,
            OptionalDouble probability,
            OptionalDouble expectedLoss,
            Optional<Estimate> shrunk,
            List<Double> carries,
            Optional<Estimate> carry) {
        /**
         * Copies the list.
         *
         * @param name its name
         * @param shots how many shots count
         * @param leftOut how many used shots lack what the goal needs
         * @param mean the mean of the goal
         * @param price what its price takes off
         * @param probability that it is the best
         * @param expectedLoss how far it is expected to be from the best
         * @param shrunk what to expect of it
         * @param carries the carries of its used shots [m]
         * @param carry their mean [m]
         */
        public ClubResult {
            carries = List.copyOf(carries);
        }
    }

    /**
     * What was found.
     *
     * @param goal the goal
     * @param clubs the clubs in the order in which they were first hit, the current one first
     * @param leaders the one with the best mean, or all that share it; price counted, and where balls are counted also the two
     *     balls added
     * @param pairs all clubs against all, indices and counts those of {@link #clubs}; price counted, and in the counts also
     *     the two balls added where balls are counted
     * @param againstCurrent each against the current one, or empty if none was named
     * @param warnings what to know before using this
     */
    public record Result(
            Goal goal,
            List<ClubResult> clubs,
            List<ClubResult> leaders,
            PairwiseComparison.Result pairs,
            Optional<PairwiseComparison.Result> againstCurrent,
            List<Warning> warnings) {
        /**
         * Copies the lists.
         *
         * @param goal the goal
         * @param clubs the clubs
         * @param leaders the one with the best mean, or all that share it
         * @param pairs all clubs against all
         * @param againstCurrent each against the current one
         * @param warnings what to know before using this
         */
        public Result {
            clubs = List.copyOf(clubs);
            leaders = List.copyOf(leaders);
            warnings = List.copyOf(warnings);
        }

        /**
         * The club with the best mean.
         *
         * @return the first of {@link #leaders}
         */
        public ClubResult leader() {
            return leaders.get(0);
        }

        /**
         * The clubs between which the shots cannot tell: the likeliest ones, as few as hold the best with a probability of 0.95
         * together.
         *
         * @return them, likeliest first; none if one is the best with a probability of 0.8, or the shots do not tell
         */
        public List<ClubResult> undecided() {
            List<ClubResult> likeliest = clubs.stream()
                    .filter(club -> club.probability().isPresent())
                    .sorted(Comparator.comparingDouble(
                            club -> -club.probability().orElse(0.0)))
                    .toList();
            boolean clear = warnings.stream().noneMatch(w -> w.code().equals("no-clear-winner"));
            double together = 0.0;
            int count = 0;
            while (!clear && together < TOGETHER && count < likeliest.size()) {
                together += likeliest.get(count).probability().orElse(0.0);
                count++;
            }
            return likeliest.subList(0, count);
        }
    }

    /**
     * By a goal, without a current club or prices, 95 %.
     *
     * @param goal what is wanted, settled before the shots
     * @return the procedure
     */
    public static ClubChoice withGoal(Goal goal) {
        return new ClubChoice(Objects.requireNonNull(goal, "goal"), null, Map.of(), 0.0, 0.95, null);
    }

    /**
     * With the club the golfer plays now.
     *
     * @param name its name
     * @return a changed copy
     */
    public ClubChoice withCurrentClub(String name) {
        return new ClubChoice(goal, Objects.requireNonNull(name, "name"), prices, worth, level, air);
    }

    /**
     * With the price of a club.
     *
     * @param name its name
     * @param price in any money, finite and at least 0
     * @return a changed copy
     * @throws IllegalArgumentException if the price is out of range
     */
    public ClubChoice withPrice(String name, double price) {
        if (!(price >= 0.0 && price < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("price must be finite and at least 0, but was " + price);
        }
        Map<String, Double> all = new LinkedHashMap<>(prices);
        all.put(Objects.requireNonNull(name, "name"), price);
        return new ClubChoice(goal, current, Map.copyOf(all), worth, level, air);
    }

    /**
     * With the worth of money.
     *
     * @param amount how much of the goal one unit of money is worth, finite and at least 0 [SI unit of the goal]
     * @return a changed copy
     * @throws IllegalArgumentException if the amount is out of range
     */
    public ClubChoice withWorthOfMoney(double amount) {
        if (!(amount >= 0.0 && amount < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the worth of money must be finite and at least 0, but was " + amount);
        }
        return new ClubChoice(goal, current, prices, amount, level, air);
    }

    /**
     * With another level of all intervals.
     *
     * @param wanted the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public ClubChoice withLevel(double wanted) {
        return new ClubChoice(goal, current, prices, worth, Data.checkLevel(wanted), air);
    }

    /**
     * With one air for all: every shot is first brought into it, so that clubs hit on different days or at different places can be
     * compared.
     *
     * @param sameAir the air
     * @return a changed copy
     */
    public ClubChoice withAir(SameAir sameAir) {
        return new ClubChoice(
                goal,
                current,
                prices,
                worth,
                level,
                Objects.requireNonNull(sameAir, "sameAir").withoutIntervals());
    }

    /**
     * Compares the clubs of a session.
     *
     * @param session a session with at least two clubs; what is missing of flights is computed. One that was {@linkplain
     *     Session#combine combined} counts each shot in its own air unless there is one {@linkplain #withAir for all}
     * @return the clubs, the leader and the pairs
     * @throws IllegalArgumentException if there are fewer than two clubs, a club named is not in the session, or a club has no
     *     shot with what the goal needs
     */
    public Result choose(Session session) {
        List<Warning> brought = new ArrayList<>();
        Session seen = air == null ? session : brought(session, air, brought);
        Session complete = SessionCompleter.withDefaults().complete(seen).session();
        List<String> names = names(complete);
        double[][] scores = new double[names.size()][];
        double[][] compared = new double[names.size()][];
        int[] used = new int[names.size()];
        for (int k = 0; k < names.size(); k++) {
            List<Shot> shots = complete.shots().used().club(names.get(k)).shots();
            used[k] = shots.size();
            scores[k] = goal.scores(complete, shots);
            if (scores[k].length == 0) {
                throw new IllegalArgumentException("no shot with " + names.get(k) + " has what is needed for "
                        + goal.words() + "; carry and side are needed, and with a turf the launch");
            }
            compared[k] = compared(scores[k], price(names.get(k)));
        }
        ProbabilityOfBest.Result best = ProbabilityOfBest.withDefaults()
                .withSmallestBest(goal.smallestIsBest())
                .test(compared);
        List<Optional<Estimate>> shrunk = goal.shares()
                ? names.stream().map(name -> Optional.<Estimate>empty()).toList()
                : ExpectedMeans.of(scores, level, goal.unit());
        List<ClubResult> clubs = new ArrayList<>();
        for (int k = 0; k < names.size(); k++) {
            double price = price(names.get(k));
            boolean told = !best.clubs().isEmpty();
            double[] carries = complete.shots().used().club(names.get(k)).values(Metric.CARRY);
            SampleSummary summary = SampleSummary.withDefaults().withLevel(level);
            clubs.add(new ClubResult(
                    names.get(k),
                    scores[k].length,
                    used[k] - scores[k].length,
                    goal.shares()
                            ? BallCounts.share(scores[k], level)
                            : summary.withUnit(goal.unit()).summarize(scores[k]).mean(),
                    Math.abs(price),
                    told ? OptionalDouble.of(best.clubs().get(k).probability()) : OptionalDouble.empty(),
                    told ? best.clubs().get(k).expectedLoss() : OptionalDouble.empty(),
                    shrunk.get(k),
                    Arrays.stream(carries).boxed().toList(),
                    carries.length == 0
                            ? Optional.empty()
                            : Optional.of(summary.withUnit(LengthUnit.METER)
                                    .summarize(carries)
                                    .mean())));
        }
        PairwiseComparison pairwise =
                PairwiseComparison.withDefaults().withLevel(level).withUnit(goal.unit());
        List<Warning> warnings = new ArrayList<>(brought);
        warnings.addAll(best.warnings());
        UnevenAir.warning(complete, names).ifPresent(warnings::add);
        if (clubs.stream().anyMatch(club -> club.leftOut() > 0)) {
            warnings.add(Warning.of("shots-left-out", "shots that lack what the goal needs were left out"));
        }
        if (goal.shares()) {
            warnings.add(Warning.of(
                    "shares-not-shrunk",
                    "shares of balls are not drawn towards each other, since clubs that cannot reach would draw those that"
                            + " can; the share that came out first owes something to luck"));
        }
        blocks(complete, names).ifPresent(warnings::add);
        fewForSpread(clubs).ifPresent(warnings::add);
        SessionScreen.withDefaults()
                .forCarriesOf(complete)
                .screen(complete)
                .flaggedWarning(names)
                .ifPresent(warnings::add);
        return new Result(
                goal,
                clubs,
                leaders(compared).stream().map(clubs::get).toList(),
                within(pairwise.test(compared), names),
                current == null
                        ? Optional.empty()
                        : Optional.of(within(
                                pairwise.withMethod(PairwiseComparison.Method.WELCH_SIDAK)
                                        .test(compared),
                                names)),
                warnings);
    }

    private static Session brought(Session session, SameAir air, List<Warning> warnings) {
        SameAir.Result result = air.bring(session);
        warnings.addAll(result.warnings());
        return result.session();
    }

    private Optional<Warning> fewForSpread(List<ClubResult> clubs) {
        int fewest = clubs.stream().mapToInt(ClubResult::shots).min().orElseThrow();
        int most = clubs.stream().mapToInt(ClubResult::shots).max().orElseThrow();
        return goal.ofSpread() && (fewest < FEWEST_FOR_SPREAD || 2 * fewest < most)
                ? Optional.of(Warning.of(
                        "few-shots-for-spread",
                        "a club has only " + fewest + " shots and another " + most
                                + ", so clubs that are equally tight are called different more often than they should be; hit"
                                + " at least " + FEWEST_FOR_SPREAD + " with each, and about as many with all"))
                : Optional.empty();
    }

    private static Optional<Warning> blocks(Session session, List<String> names) {
        List<String> blocked = new ArrayList<>();
        for (int one = 0; one < names.size(); one++) {
            for (int other = one + 1; other < names.size(); other++) {
                ShotPairing pairing = ShotPairing.of(session.shots(), names.get(one), names.get(other));
                if (pairing.order() == ShotOrderKind.BLOCKED) {
                    blocked.add(names.get(one) + " and " + names.get(other));
                }
            }
        }
        return blocked.isEmpty()
                ? Optional.empty()
                : Optional.of(Warning.of(
                        "clubs-in-blocks",
                        "each club was hit in one go (" + String.join("; ", blocked)
                                + "), so warming up or tiring cannot be told from the club; hit the clubs in rounds"));
    }

    private List<String> names(Session session) {
        List<String> names = new ArrayList<>(session.shots().used().clubs());
        List<String> named = new ArrayList<>(prices.keySet());
        if (current != null) {
            named.add(current);
        }
        for (String name : named) {
            if (!names.contains(name)) {
                throw new IllegalArgumentException(
                        "no used shot was hit with \"" + name + "\"; the session has " + String.join(", ", names));
            }
        }
        if (names.size() < 2) {
            throw new IllegalArgumentException(
                    "a choice needs at least two clubs, but the session has " + String.join(", ", names));
        }
        names.sort(Comparator.comparing(name -> !name.equals(current)));
        return names;
    }

    /** What a price adds to a number of the goal: less if large is good. */
    private double price(String name) {
        double off = worth * prices.getOrDefault(name, 0.0);
        return goal.smallestIsBest() ? off : 0.0 - off;
    }

    private double[] compared(double[] scores, double price) {
        double[] all = goal.shares() ? BallCounts.withOneOfEach(scores) : scores.clone();
        Arrays.setAll(all, i -> all[i] + price);
        return all;
    }

    private PairwiseComparison.Result within(PairwiseComparison.Result pairs, List<String> names) {
        return goal.shares()
                ? BallCounts.cut(pairs, names.stream().mapToDouble(this::price).toArray())
                : pairs;
    }

    private List<Integer> leaders(double[][] compared) {
        double sign = goal.smallestIsBest() ? -1.0 : 1.0;
        double[] means = Arrays.stream(compared)
                .mapToDouble(numbers -> sign * Sample.of("shots", numbers).mean())
                .toArray();
        double size = Arrays.stream(compared)
                .flatMapToDouble(Arrays::stream)
                .map(Math::abs)
                .max()
                .orElseThrow();
        double best = Arrays.stream(means).max().orElseThrow();
        return IntStream.range(0, means.length)
                .filter(k -> best - means[k] <= SAME * size)
                .boxed()
                .toList();
    }
}
