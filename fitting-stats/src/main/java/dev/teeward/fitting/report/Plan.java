package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.plan.EquivalenceShotsNeeded;
import dev.teeward.fitting.plan.PairsNeeded;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How many pairs, or shots with each club, settle a metric: enough both to find a difference as large as the margin and to
 * show that clubs that do not differ are practically the same. With the range that comes from knowing the spread only from
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
    private static final double WIDEST = 15.0;

    /** Empty without a margin or without spread. */
    static Optional<Plan> of(MetricComparison c, double level) {
        int now = c.paired() ? c.pairs() : Math.min(c.firstValues().length, c.secondValues().length);
        double sd = c.paired() ? c.differenceSd() : c.differenceSd() / Math.sqrt(2.0);
        if (c.margin().isEmpty() || !(sd > 0.0) || now < 2) {
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
        PairsNeeded difference = PairsNeeded.withDefaults().withPower(POWER).withAlpha(1.0 - level);
        int needed = (paired ? difference : difference.unpaired())
                .forDifference(margin, sd)
                .shots();
        EquivalenceShotsNeeded same = EquivalenceShotsNeeded.withDefaults().withPower(POWER);
        return OptionalInt.of(Math.max(needed, (paired ? same : same.unpaired()).forMargin(margin, sd)));
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
