package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What whole comparisons of made-up sessions promise: false alarms of the primary metric and of all others together, and
 * the coverage of the intervals that only exist here. Bounds: the nominal rate, three binomial standard errors, and what
 * the documentation admits.
 */
@Tag("sweep")
class HeadToHeadSweepTest {
    private static double share(String what, int sessions, Predicate<SplittableRandom> event) {
        SplittableRandom random = new SplittableRandom(what.hashCode());
        int count = 0;
        for (int i = 0; i < sessions; i++) {
            count += event.test(random.split()) ? 1 : 0;
        }
        double share = (double) count / sessions;
        System.err.printf(Locale.ROOT, "SWEEP %s: %.4f of %d%n", what, share, sessions);
        return share;
    }

    /** Both clubs alike: 8 pairs, compared as pairs and as two samples; three standard errors of 5 % at 2,000 are 1.5 points. */
    @Test
    void alikeClubsRaiseFewAlarms() {
        for (boolean paired : new boolean[] {true, false}) {
            HeadToHead procedure = HeadToHead.withDefaults().withPrimary(Metric.CARRY);
            HeadToHead asked = paired ? procedure : procedure.withoutPairing();
            int[] others = new int[1];
            int sessions = paired ? 2_000 : 500;
            double primary = share((paired ? "primary, paired" : "primary, two samples"), sessions, random -> {
                HeadToHeadResult r = asked.compare(InventedSession.full(random.nextLong(), 8, 0.0, 0.0));
                others[0] += r.metrics().stream().anyMatch(m -> !m.primary() && m.adjustedP() <= 0.05) ? 1 : 0;
                return r.primary().difference().pValue() <= 0.05;
            });
            double family = (double) others[0] / sessions;
            System.err.printf(Locale.ROOT, "SWEEP any other by Holm: %.4f of %d%n", family, sessions);
            double error = Math.sqrt(0.05 * 0.95 / sessions);
            // the shots of a pair share something, so that two samples are too careful
            assertTrue(primary <= 0.05 + 3.0 * error && (!paired || primary >= 0.05 - 3.0 * error), "" + primary);
            assertTrue(family <= 0.05 + 3.0 * error, "" + family);
        }
    }

    /** Carry and side of both clubs; the carries of a pair share a part. */
    private static double[][][] landing(
            SplittableRandom random, int pairs, double wider, double length, double together) {
        double[][][] points = new double[2][2][pairs];
        for (int i = 0; i < pairs; i++) {
            double common = together * random.nextGaussian();
            for (int club = 0; club < 2; club++) {
                double own = Math.sqrt(1.0 - together * together) * random.nextGaussian();
                double factor = club == 0 ? wider : 1.0;
                points[club][0][i] = 150.0 + factor * length * (own + common);
                points[club][1][i] = factor * 3.0 * random.nextGaussian();
            }
        }
        return points;
    }

    /** Ratio of the patterns: round and three times as long as wide, alike and 1.5 times as wide, 10 and 20 pairs. */
    @Test
    void ratioOfPatternsIsCovered() {
        for (int pairs : new int[] {10, 20}) {
            for (double length : new double[] {3.0, 9.0}) {
                for (double wider : new double[] {1.0, 1.5}) {
                    for (boolean paired : new boolean[] {true, false}) {
                        String what = "pattern ratio, " + pairs + " pairs, length " + length + ", wider " + wider
                                + (paired ? ", paired" : ", two samples");
                        double covered = share(what, 5_000, random -> {
                            double[][][] points = landing(random, pairs, wider, length, paired ? 0.6 : 0.0);
                            return PatternSpread.ratio(points[0], points[1], paired, 0.95)
                                    .estimate()
                                    .interval()
                                    .contains(wider);
                        });
                        assertTrue(covered >= 0.92 && covered <= 0.975, what + ": " + covered);
                    }
                }
            }
        }
    }

    /** The part of a difference that goes with a candidate: slope and difference as put in. */
    @Test
    void partIsCovered() {
        for (double slope : new double[] {0.0, 1.0}) {
            for (double difference : new double[] {0.0, 1.0}) {
                String what = "part, slope " + slope + ", difference " + difference;
                double covered = share(what, 5_000, random -> {
                    double[][] data = new double[4][10];
                    for (int i = 0; i < 10; i++) {
                        data[0][i] = difference + random.nextGaussian();
                        data[1][i] = random.nextGaussian();
                        data[2][i] = slope * data[0][i] + random.nextGaussian();
                        data[3][i] = slope * data[1][i] + random.nextGaussian();
                    }
                    TestResult b = AssociationSearch.slope(data[0], data[1], data[2], data[3], 0.95);
                    TestResult d = WelchTTest.withDefaults().test(data[0], data[1]);
                    return AssociationSearch.part(b, d, Metric.CARRY.siUnit(), 0.95)
                            .interval()
                            .contains(slope * difference);
                });
                assertTrue(covered >= 0.94, what + ": " + covered);
            }
        }
    }
}
