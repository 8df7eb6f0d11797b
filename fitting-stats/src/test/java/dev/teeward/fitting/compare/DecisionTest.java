package dev.teeward.fitting.compare;

import static dev.teeward.fitting.compare.InventedSession.A;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** What is called different, the same, or clear, where an adjustment or a second condition changes the answer. */
class DecisionTest {
    /** Angles without a derived third: each pair is the mean plus or minus half a difference. */
    private static final List<Metric> METRICS = List.of(
            Metric.CARRY,
            Metric.APEX,
            Metric.LAUNCH_ANGLE,
            Metric.SPIN_RATE,
            Metric.ATTACK_ANGLE,
            Metric.DESCENT_ANGLE);

    private static final double[] SCATTER = {-1.5, 0.5, 1.0, -0.5, 1.5, -1.0, 0.25, -0.25};

    /** Eight pairs; the differences of metric i are shift[i] + SCATTER, in the scale of that metric. */
    private static Session session(double... shift) {
        double[] scale = {1.0, 0.5, 0.01, 5.0, 0.01, 0.01};
        double[] level = {150.0, 25.0, 0.3, 600.0, -0.07, 0.8};
        List<Shot> shots = new ArrayList<>();
        for (int pair = 0; pair < 8; pair++) {
            for (int k = 0; k < 2; k++) {
                boolean alder = (pair + k) % 2 == 0;
                Shot.Builder shot = Shot.builder(alder ? A : InventedSession.B).number(2 * pair + k + 1);
                for (int i = 0; i < METRICS.size(); i++) {
                    double half = 0.5 * scale[i] * (shift[i] + SCATTER[pair]);
                    shot.measured(METRICS.get(i), level[i] + (alder ? half : -half));
                }
                shots.add(shot.build());
            }
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /**
     * Standard deviation of SCATTER: sqrt(7.125 / 7) = 1.00889, so t = 1.05 sqrt(8) / 1.00889 = 2.944 with 7 degrees of
     * freedom, p between 0.02 (t = 2.998) and 0.025 (t = 2.841; Student's table); times five by Holm it is above 0.1.
     */
    @Test
    void aSecondaryMetricIsCalledDifferentByHolmOnly() {
        PracticalMargins none = PracticalMargins.none();
        HeadToHeadResult r = HeadToHead.withDefaults()
                .withPrimary(Metric.CARRY)
                .withMargins(none)
                .compare(session(1.05, 1.05, 0.0, 0.0, 0.0, 0.0));
        MetricComparison apex = r.find(Metric.APEX).orElseThrow();
        assertEquals(r.primary().difference().pValue(), apex.difference().pValue(), 1e-9);
        assertTrue(apex.difference().pValue() > 0.02 && apex.difference().pValue() < 0.025);
        assertTrue(apex.adjustedP() > 0.1);
        assertEquals(Verdict.UNDECIDED, apex.verdict().verdict());
        assertEquals(Verdict.DIFFERENT, r.primary().verdict().verdict());
        assertTrue(apex.adjustedEquivalenceP().isEmpty());
    }

    /** A margin of 1.05 scales about no difference at all gives each one-sided test the t above: p about 0.011, by Holm 0.05. */
    @Test
    void aSecondaryMetricIsCalledTheSameByHolmOnly() {
        HeadToHead procedure = HeadToHead.withDefaults()
                .withPrimary(Metric.CARRY)
                .withMargins(PracticalMargins.none()
                        .with(Metric.CARRY, 1.05)
                        .with(Metric.APEX, 1.05 * 0.5)
                        .with(Metric.LAUNCH_ANGLE, 0.0105)
                        .with(Metric.SPIN_RATE, 1.05 * 5.0)
                        .with(Metric.ATTACK_ANGLE, 0.0105)
                        .with(Metric.DESCENT_ANGLE, 0.0105));
        HeadToHeadResult r = procedure.compare(session(0.0, 0.0, 0.0, 0.0, 0.0, 0.0));
        assertEquals(Verdict.PRACTICALLY_THE_SAME, r.primary().verdict().verdict());
        for (MetricComparison m : r.metrics()) {
            double raw = m.equivalence().orElseThrow().pValue();
            assertTrue(m.equivalence().orElseThrow().equivalent());
            assertTrue(raw > 0.01 && raw < 0.0125, m + " " + raw);
            assertFalse(m.equivalence().orElseThrow().combined().warns("margin-not-declared"));
            if (!m.primary()) {
                assertEquals(5.0 * raw, m.adjustedEquivalenceP().orElseThrow(), 1e-9);
                assertEquals(Verdict.UNDECIDED, m.verdict().verdict());
            }
        }
        HeadToHeadResult common = HeadToHead.withDefaults().compare(session(0.0, 0.0, 0.0, 0.0, 0.0, 0.0));
        assertTrue(common.find(Metric.APEX)
                .orElseThrow()
                .equivalence()
                .orElseThrow()
                .combined()
                .warns("margin-not-declared"));
    }

    /** Without a difference of the face there is a slope, and yet nothing goes with anything. */
    @Test
    void aSureSlopeAloneIsNotClear() {
        HeadToHeadResult r =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(InventedSession.full(8, 14, 0.0, 0.0));
        List<Association> sure = r.associations().stream()
                .filter(a -> a.adjustedP() < 1e-4 && a.part().interval().contains(0.0))
                .toList();
        assertFalse(sure.isEmpty());
        sure.forEach(a -> assertFalse(a.clear(), a.toString()));
    }

    /** Holm 1979 by hand within one outcome: sorted p times what is left, never falling. */
    @Test
    void slopesAreAdjustedWithinTheirOutcome() {
        HeadToHeadResult r =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(InventedSession.full(3, 9, 1.0, 0.0));
        List<Association> curve = new ArrayList<>(r.associations().stream()
                .filter(a -> a.outcome() == Metric.CURVE)
                .toList());
        curve.sort(Comparator.comparingDouble(a -> a.slope().pValue()));
        assertTrue(curve.size() >= 4);
        double largest = 0.0;
        for (int i = 0; i < curve.size(); i++) {
            largest = Math.min(
                    1.0,
                    Math.max(largest, (curve.size() - i) * curve.get(i).slope().pValue()));
            assertEquals(largest, curve.get(i).adjustedP(), 1e-12);
        }
    }

    /** Club and pair effects leave the regression of the differences within pairs, here by Commons Math 3. */
    @Test
    void slopesOfPairsLeaveOutWhatPairsShare() {
        HeadToHeadResult r =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(InventedSession.full(12, 10, 1.0, 0.0));
        Association a = r.associations().stream()
                .filter(x -> x.outcome() == Metric.CARRY && x.candidate() == Metric.BALL_SPEED)
                .findFirst()
                .orElseThrow();
        SimpleRegression fit = new SimpleRegression();
        r.pairing()
                .pairs()
                .forEach(p -> fit.addData(
                        p.first().value(Metric.BALL_SPEED) - p.second().value(Metric.BALL_SPEED),
                        p.first().value(Metric.CARRY) - p.second().value(Metric.CARRY)));
        assertEquals(fit.getSlope(), a.slope().estimate().value(), 1e-9);
        assertEquals(fit.getSignificance(), a.slope().pValue(), 1e-9);
        assertEquals(List.of(8.0), a.slope().degreesOfFreedom());
        assertEquals(20, a.shots());
    }

    /** A ball speed far too low is a mishit by its own test, but not when the ball speed decides. */
    @Test
    void theMetricThatDecidesDoesNotChooseShots() {
        Session session = InventedSession.full(4, 12, 0.0, 0.0);
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        Shot slow = shots.get(5).toBuilder().measured(Metric.BALL_SPEED, 44.0).build();
        shots.set(5, slow);
        Session one = session.withShots(ShotSet.of(shots));
        HeadToHeadResult speed =
                HeadToHead.withDefaults().withPrimary(Metric.BALL_SPEED).compare(one);
        assertTrue(speed.screening().flags().stream()
                .noneMatch(flag -> flag.metrics().equals(List.of(Metric.BALL_SPEED))));
        HeadToHeadResult carry =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(one);
        assertTrue(carry.screening().flagged().contains(5));
        HeadToHeadResult rest = carry.withoutFlagged().orElseThrow();
        assertTrue(rest.warnings().stream().map(Warning::code).anyMatch("selected-after-looking"::equals));
        assertFalse(carry.warnings().stream().map(Warning::code).anyMatch("selected-after-looking"::equals));
    }
}
