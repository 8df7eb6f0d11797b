package dev.teeward.fitting.choose;

import dev.teeward.fitting.compare.PairwiseComparison;
import dev.teeward.fitting.internal.WilsonInterval;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import java.util.Arrays;
import java.util.List;

/** Shares of balls: their interval, what is compared instead of them, and the ends of a difference. */
final class BallCounts {
    private BallCounts() {}

    /** The share as counted, of numbers 0 and 1. */
    static Estimate share(double[] scores, double level) {
        return WilsonInterval.share(
                (int) Arrays.stream(scores).filter(score -> score > 0.5).count(), scores.length, level);
    }

    /** One hit and one miss more (Agresti and Caffo 2000). */
    static double[] withOneOfEach(double[] scores) {
        double[] all = Arrays.copyOf(scores, scores.length + 2);
        all[scores.length] = 1.0;
        return all;
    }

    /** Two shares differ by 1 at most, beside what their prices do. */
    static PairwiseComparison.Result cut(PairwiseComparison.Result result, double[] prices) {
        List<PairwiseComparison.Pair> pairs = result.pairs().stream()
                .map(pair -> {
                    double apart = prices[pair.first()] - prices[pair.second()];
                    Interval wide = pair.difference().interval();
                    Interval cut = Interval.of(
                            Math.max(wide.lower(), apart - 1.0), Math.min(wide.upper(), apart + 1.0), wide.level());
                    return new PairwiseComparison.Pair(
                            pair.first(),
                            pair.second(),
                            Estimate.of(
                                    pair.difference().value(),
                                    cut,
                                    pair.difference().unit()),
                            pair.t(),
                            pair.degreesOfFreedom(),
                            pair.pValue());
                })
                .toList();
        return new PairwiseComparison.Result(result.method(), pairs, result.counts(), result.warnings());
    }
}
