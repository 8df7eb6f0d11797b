package dev.teeward.fitting.plan;

import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import java.util.SplittableRandom;

/** Sessions of standard normal differences, drawn once, looked at after every pair for any margin. Confined to one thread. */
final class SimulatedSessions {
    private final double[][] noise;
    private final double[] sds;
    private final double[] critical;

    SimulatedSessions(SequentialTTest test, int runs, int pairs, SplittableRandom random, SpreadGuess spread) {
        noise = new double[runs][pairs];
        for (double[] run : noise) {
            for (int i = 0; i < pairs; i++) {
                run[i] = random.nextGaussian();
            }
        }
        sds = spread.draw(random, runs);
        for (int i = 0; i < runs; i++) {
            sds[i] *= spread.value();
        }
        critical = RunningLooks.criticals(test, pairs);
    }

    /** When the sessions stop rightly, if the clubs differ by the margin and if they do not differ. */
    Stops stops(double margin, int most) {
        return new Stops(stopped(margin, margin, most), stopped(0.0, margin, most));
    }

    /** The number of sessions that have stopped with the right answer by each number of pairs. */
    private int[] stopped(double difference, double margin, int most) {
        Verdict right = difference == 0.0 ? Verdict.PRACTICALLY_THE_SAME : Verdict.DIFFERENT;
        int[] count = new int[most + 1];
        for (int run = 0; run < noise.length; run++) {
            RunningLooks looks = new RunningLooks(critical, margin);
            for (int n = 1; n <= most; n++) {
                Verdict verdict =
                        looks.add(difference + sds[run] * noise[run][n - 1]).verdict();
                if (verdict != Verdict.UNDECIDED) {
                    boolean wrongSide = difference > 0.0 && looks.upper() < 0.0;
                    count[n] += verdict == right && !wrongSide ? 1 : 0;
                    break;
                }
            }
        }
        for (int n = 1; n <= most; n++) {
            count[n] += count[n - 1];
        }
        return count;
    }

    /** Shares of sessions that have stopped with the right answer. */
    final class Stops {
        private final int[] different;
        private final int[] same;

        private Stops(int[] different, int[] same) {
            this.different = different;
            this.same = same;
        }

        double findsDifference(int pairs) {
            return different[pairs] / (double) noise.length;
        }

        double showsSame(int pairs) {
            return same[pairs] / (double) noise.length;
        }

        double least(int pairs) {
            return Math.min(findsDifference(pairs), showsSame(pairs));
        }
    }
}
