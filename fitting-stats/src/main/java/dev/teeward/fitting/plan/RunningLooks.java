package dev.teeward.fitting.plan;

import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.internal.Sample;
import java.util.Arrays;

/**
 * The always-valid interval of one run of differences, carried from pair to pair: what {@link SequentialTTest} gives, in a
 * step of a few operations, for the many runs of a simulation. Confined to one thread.
 */
final class RunningLooks {
    private final double[] critical;
    private final double margin;
    private int n;
    private double mean;
    private double squares;
    private double largest;
    private double smallestDifference = Double.POSITIVE_INFINITY;
    private double largestDifference = Double.NEGATIVE_INFINITY;
    private double lower = Double.NEGATIVE_INFINITY;
    private double upper = Double.POSITIVE_INFINITY;

    /** A run without pairs. */
    RunningLooks(double[] critical, double margin) {
        this.critical = critical;
        this.margin = margin;
    }

    /** A run that goes on where another stands. */
    RunningLooks(RunningLooks other) {
        this(other.critical, other.margin);
        n = other.n;
        mean = other.mean;
        squares = other.squares;
        largest = other.largest;
        smallestDifference = other.smallestDifference;
        largestDifference = other.largestDifference;
        lower = other.lower;
        upper = other.upper;
    }

    /** The critical t after 0, 1, ... pairs; infinite where no t is enough. */
    static double[] criticals(SequentialTTest test, int pairs) {
        double[] critical = new double[pairs + 1];
        Arrays.setAll(
                critical,
                k -> k < 2 ? Double.POSITIVE_INFINITY : test.criticalT(k).orElse(Double.POSITIVE_INFINITY));
        return critical;
    }

    /** One more pair of which the difference is known as it was drawn. */
    RunningLooks add(double difference) {
        return add(difference, 0.0);
    }

    /** One more pair; from then on the interval is cut with that of this look. */
    RunningLooks add(double first, double second) {
        n++;
        double difference = first - second;
        largest = Math.max(largest, Math.max(Math.abs(first), Math.abs(second)));
        smallestDifference = Math.min(smallestDifference, difference);
        largestDifference = Math.max(largestDifference, difference);
        double off = difference - mean;
        mean += off / n;
        squares += off * (difference - mean);
        double error = n > 1 ? standardDeviation() / Math.sqrt(n) : 0.0;
        if (error > 0.0 && critical[n] < Double.POSITIVE_INFINITY) {
            lower = Math.max(lower, mean - critical[n] * error);
            upper = Math.min(upper, mean + critical[n] * error);
        }
        return this;
    }

    int pairs() {
        return n;
    }

    double mean() {
        return mean;
    }

    /** 0 if the differences are equal but for the rounding of the numbers that they are differences of. */
    double standardDeviation() {
        boolean equal = largestDifference - smallestDifference <= Sample.tieTolerance(largest);
        return equal ? 0.0 : Math.sqrt(squares / (n - 1));
    }

    double lower() {
        return lower;
    }

    double upper() {
        return upper;
    }

    /** What the interval says about no difference and about the margin; nothing if looks exclude each other. */
    Verdict verdict() {
        if (lower > upper) {
            return Verdict.UNDECIDED;
        }
        if (lower > -margin && upper < margin) {
            return Verdict.PRACTICALLY_THE_SAME;
        }
        return lower > 0.0 || upper < 0.0 ? Verdict.DIFFERENT : Verdict.UNDECIDED;
    }
}
