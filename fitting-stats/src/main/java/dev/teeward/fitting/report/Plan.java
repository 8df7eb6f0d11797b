package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.plan.EquivalenceShotsNeeded;
import dev.teeward.fitting.plan.PairsNeeded;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How many pairs, or shots with each club, settle a metric: enough both to find a difference as large as the margin and to
 * show that clubs that do not differ are practically the same (only the former at levels other than 95 %). With the range that comes from knowing the spread only from
 * the shots so far.
 *
 * @param paired whether pairs are counted
 * @param now how many there are
 * @param low how many are needed at the lower end of the interval of the spread; empty beyond what anybody hits
 * @param central how many are needed at the spread found
 * @param high how many are needed at the upper end
 */
record Plan(boolean paired, int now, OptionalInt low, OptionalInt central, OptionalInt high) {
    static final double POWER = 0.8;
    private static final double PLANNED_LEVEL = 0.95;
    private static final double WIDEST = 15.0;

    /** Empty without a margin, without spread, or if the question would be settled but for the others asked. */
    static Optional<Plan> of(MetricComparison c, double level) {
        int now = c.paired() ? c.pairs() : Math.min(c.firstValues().length, c.secondValues().length);
        double sd = c.paired() ? c.differenceSd() : c.differenceSd() / Math.sqrt(2.0);
        if (c.margin().isEmpty() || !(sd > 0.0) || now < 2 || PlanWords.settledAlone(c, level)) {
            return Optional.empty();
        }
        double margin = c.margin().getAsDouble();
        double df = c.paired() ? now - 1.0 : 2.0 * (now - 1.0);
        double tail = 0.5 * (1.0 - level);
        double least = sd * Math.sqrt(df / Distributions.chiSquareQuantile(1.0 - tail, df));
        double most = sd * Math.sqrt(df / Distributions.chiSquareQuantile(tail, df));
        return Optional.of(new Plan(
                c.paired(),
                now,
                needed(c.paired(), margin, least, level),
                needed(c.paired(), margin, sd, level),
                needed(c.paired(), margin, most, level)));
    }

    private static OptionalInt needed(boolean paired, double margin, double sd, double level) {
        if (!(sd < WIDEST * margin) || !(sd > 1e-9 * margin)) {
            return sd < margin ? OptionalInt.of(2) : OptionalInt.empty();
        }
        PairsNeeded all = PairsNeeded.withDefaults().withPower(POWER).withAlpha(1.0 - level);
        PairsNeeded difference = paired ? all : all.unpaired();
        if (countsEquivalence(level)) {
            EquivalenceShotsNeeded same = EquivalenceShotsNeeded.withDefaults().withPower(POWER);
            int shots = (paired ? same : same.unpaired()).forMargin(margin, sd);
            // Mostly enough for the difference too, and asking is much quicker than searching.
            if (difference.power(shots, margin, sd) >= POWER) {
                return OptionalInt.of(shots);
            }
        }
        return OptionalInt.of(difference.forDifference(margin, sd).shots());
    }

    /** Whether the number is also enough to show that clubs are the same; that is planned at one level only. */
    static boolean countsEquivalence(double level) {
        return Math.abs(level - PLANNED_LEVEL) < 1e-9;
    }

    Branch branch() {
        return new Branch()
                .truth("paired", paired)
                .count("now", now)
                .branch("needed", three(0))
                .branch("more", three(now));
    }

    private Branch three(int have) {
        Branch branch = new Branch();
        put(branch, "low", low, have);
        put(branch, "central", central, have);
        put(branch, "high", high, have);
        return branch;
    }

    private static void put(Branch branch, String name, OptionalInt number, int have) {
        if (number.isPresent()) {
            branch.count(name, Math.max(0, number.getAsInt() - have));
        } else {
            branch.nothing(name);
        }
    }
}
