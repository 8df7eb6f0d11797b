package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Interval;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Circles and ellipses that are huge beside the spread of the shots: a border far away, or one that is nearly a line. */
class LargeTargetTest {
    private static final int N = 10;

    /** A regular polygon of shots about (150, 0): mean and covariance spread^2 I to the last digits. */
    private static double[][] shots(double spread) {
        double[][] shots = new double[2][N];
        double radius = spread * Math.sqrt(2.0 * (N - 1.0) / N);
        for (int i = 0; i < N; i++) {
            shots[0][i] = 150.0 + radius * Math.cos(2.0 * Math.PI * i / N);
            shots[1][i] = radius * Math.sin(2.0 * Math.PI * i / N);
        }
        return shots;
    }

    private static HoldProbability.Result hold(TargetRegion region) {
        double[][] shots = shots(0.3);
        return HoldProbability.withDefaults().withDraws(99).estimate(region, shots[0], shots[1]);
    }

    @Test
    void aBorderFarAwayIsCertainty() {
        for (TargetRegion region : new TargetRegion[] {
            TargetRegion.circle(150.0, 0.0, 1e3),
            TargetRegion.circle(1e3, 1e3, 1e6),
            TargetRegion.ellipse(0.0, 0.0, 1e7, 200.0, 0.0)
        }) {
            HoldProbability.Result r = hold(region);
            assertEquals(1.0, r.plugIn().orElseThrow(), 0.0);
            // The t has tails of its own: (1 + 1333^2 / 9.9)^-4 at the nearest, the edges of the ellipse.
            assertEquals(1.0, r.probability().orElseThrow().value(), 1e-9);
            assertTrue(r.probability().orElseThrow().interval().lower() > 1.0 - 1e-9);
        }
        HoldProbability.Result outside = hold(TargetRegion.circle(2e6, 0.0, 1e6));
        assertEquals(0.0, outside.plugIn().orElseThrow(), 0.0);
        assertEquals(0.0, outside.probability().orElseThrow().value(), 1e-9);
    }

    /**
     * A circle so large that its border near the shots is a line, d from the mean: the normal gives Phi(d / s), the predictive
     * Student's t with n - 2 degrees of freedom at d / (s sqrt((n + 1) (n - 1) / (n (n - 2)))). The curve takes away less than
     * s^2 / (2 R) of the distance.
     */
    @Test
    void aBorderNearbyOfAHugeCircleIsALine() {
        double scale = 0.3 * Math.sqrt((N + 1.0) * (N - 1.0) / (N * (N - 2.0)));
        for (double radius : new double[] {1e4, 1e6, 1e8}) {
            for (double d : new double[] {-0.6, -0.1, 0.0, 0.3, 1.2}) {
                HoldProbability.Result r = hold(TargetRegion.circle(150.0 + d - radius, 0.0, radius));
                double tolerance = 1e-7 + 3.0 / radius;
                String what = radius + " at " + d;
                assertEquals(
                        NormalDistribution.of(0.0, 0.3).cumulativeProbability(d),
                        r.plugIn().orElseThrow(),
                        tolerance,
                        what);
                double predictive = TDistribution.of(N - 2.0).cumulativeProbability(d / scale);
                assertEquals(predictive, r.probability().orElseThrow().value(), tolerance, what);
                Interval interval = r.probability().orElseThrow().interval();
                double[] ends = halfPlane(d);
                assertEquals(ends[0], interval.lower(), 1e-4, what);
                assertEquals(ends[1], interval.upper(), 1e-4, what);
            }
        }
    }

    /** The interval for a polygon that is the half-plane, from the same draws. */
    private static double[] halfPlane(double d) {
        double x = 150.0 + d;
        Interval interval = hold(TargetRegion.polygon(
                        new double[] {x, x, -1e5, -1e5}, new double[] {-1e5, 1e5, 1e5, -1e5}))
                .probability()
                .orElseThrow()
                .interval();
        return new double[] {interval.lower(), interval.upper()};
    }
}
