package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.compare.SequentialTTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.internal.Distributions;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Simulated sessions that are looked at after every pair and stop at the first answer: how often the answer is wrong, and what
 * the advice to stop is worth. 10,000 sessions a cell, so that a true 5 % is seen as at most 5.9 % (four standard errors).
 */
@Tag("sweep")
class StoppingSweepTest {
    private static final int SESSIONS = 10_000;
    private static final int PAIRS = 40;
    private static final double[] CRITICAL = RunningLooks.criticals(SequentialTTest.withDefaults(), PAIRS);

    private static double[] outcome(double difference, double margin) {
        SplittableRandom random = new SplittableRandom(11);
        double different = 0.0;
        double same = 0.0;
        double otherWay = 0.0;
        double pairs = 0.0;
        for (int i = 0; i < SESSIONS; i++) {
            RunningLooks run = new RunningLooks(CRITICAL, margin);
            while (run.pairs() < PAIRS && run.verdict() == Verdict.UNDECIDED) {
                run.add(difference + random.nextGaussian());
            }
            different += run.verdict() == Verdict.DIFFERENT ? 1 : 0;
            same += run.verdict() == Verdict.PRACTICALLY_THE_SAME ? 1 : 0;
            otherWay += run.verdict() == Verdict.DIFFERENT && run.upper() < 0.0 ? 1 : 0;
            pairs += run.pairs();
        }
        System.out.printf(
                java.util.Locale.ROOT,
                "difference %.2f margin %.2f sd: different %.3f, same %.3f, other way %.4f, mean pairs %.1f%n",
                difference,
                margin,
                different / SESSIONS,
                same / SESSIONS,
                otherWay / SESSIONS,
                pairs / SESSIONS);
        return new double[] {different / SESSIONS, same / SESSIONS, otherWay / SESSIONS};
    }

    @Test
    void wrongAnswersStayBelowFivePercent() {
        for (double margin : new double[] {0.5, 0.8, 1.0, 1.5}) {
            assertTrue(outcome(0.0, margin)[0] <= 0.05);
            assertTrue(outcome(margin, margin)[1] <= 0.05);
            double[] half = outcome(0.5 * margin, margin);
            assertTrue(half[2] <= 0.05);
            assertTrue(outcome(1.5 * margin, margin)[1] <= 0.05);
        }
    }

    /** The control: the ordinary t test looked at after every pair is wrong far more often, so the check can fail. */
    @Test
    void anOrdinaryTestLookedAtAfterEveryPairIsNotEnough() {
        double[] ordinary = new double[PAIRS + 1];
        for (int n = 2; n <= PAIRS; n++) {
            ordinary[n] = Distributions.tQuantile(0.975, n - 1.0);
        }
        SplittableRandom random = new SplittableRandom(12);
        int wrong = 0;
        for (int i = 0; i < SESSIONS; i++) {
            RunningLooks run = new RunningLooks(ordinary, 1e-9);
            boolean found = false;
            for (int n = 1; n <= PAIRS && !found; n++) {
                run.add(random.nextGaussian());
                found = run.verdict() == Verdict.DIFFERENT;
            }
            wrong += found ? 1 : 0;
        }
        assertTrue(wrong > 0.1 * SESSIONS, "wrong " + wrong);
    }

    /**
     * The chance told after eight pairs is what happens, where mean and spread really come from a wide prior: means uniform
     * over +-4 standard deviations. 2,000 sessions: standard error at most 1.1 %, and the flat prior has edges; 4 points.
     */
    @Test
    void predictedChancesComeTrue() {
        SplittableRandom random = new SplittableRandom(13);
        double told = 0.0;
        double happened = 0.0;
        int asked = 0;
        int givenUp = 0;
        int givenUpWrongly = 0;
        for (int i = 0; i < 6_000; i++) {
            double sd = Math.exp(random.nextDouble(-0.7, 0.7));
            double difference = random.nextDouble(-4.0, 4.0);
            RunningLooks run = new RunningLooks(CRITICAL, 0.8);
            while (run.pairs() < 8 && run.verdict() == Verdict.UNDECIDED) {
                run.add(difference + sd * random.nextGaussian());
            }
            if (run.verdict() != Verdict.UNDECIDED) {
                continue;
            }
            Standing.Prediction p = Continuations.predict(run, 16, i).orElseThrow();
            while (run.pairs() < 24 && run.verdict() == Verdict.UNDECIDED) {
                run.add(difference + sd * random.nextGaussian());
            }
            boolean settled = run.verdict() != Verdict.UNDECIDED;
            asked++;
            told += p.chance();
            happened += settled ? 1 : 0;
            givenUp += p.chance() < 0.1 ? 1 : 0;
            givenUpWrongly += p.chance() < 0.1 && settled ? 1 : 0;
        }
        System.out.printf(
                java.util.Locale.ROOT,
                "asked %d: told %.3f, happened %.3f; given up %d, of which would have settled %d%n",
                asked,
                told / asked,
                happened / asked,
                givenUp,
                givenUpWrongly);
        assertTrue(asked > 1_000);
        assertEquals(happened / asked, told / asked, 0.04);
        assertTrue(givenUpWrongly <= 0.15 * givenUp, givenUpWrongly + " of " + givenUp);
    }
}
