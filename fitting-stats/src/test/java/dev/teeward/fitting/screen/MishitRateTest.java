package dev.teeward.fitting.screen;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Whether flags of mishits are worth what they state: unequal spreads, and smash factors that are not normally spread. */
class MishitRateTest {
    private static final SessionScreen STRIKES = SessionScreen.withDefaults().withMetrics();

    private static double atMost(int replicates) {
        return 0.05 + 4.0 * Math.sqrt(0.05 * 0.95 / replicates);
    }

    private static ShotFlag only(Session session) {
        List<ShotFlag> flags = STRIKES.screen(session).flags();
        assertEquals(1, flags.size(), flags.toString());
        return flags.get(0);
    }

    /** Mean 4, so that the deviations are -3, -2, 0, 5 and half of them at a scale of 2. */
    @Test
    void standardizationByHand() {
        assertArrayEquals(
                new double[] {-1.5, -1.0, 0.0, 2.5}, MishitScreen.standardized(new double[] {1, 2, 4, 9}, 2.0), 1e-15);
        assertEquals(1.0, MishitScreen.factor(1, 6));
        assertEquals(1.25, MishitScreen.factor(2, 8));
        assertEquals(1.5, MishitScreen.factor(3, 6));
        assertEquals(OptionalDouble.empty(), MishitScreen.scale(new double[] {3, 3, 3, 3, 3, 3, 3, 9}));
    }

    /** 10 and 10 shots: 25.73 of the table for 20, times 1 + 2 / 10; 20 shots of one club: 25.73. */
    @Test
    void cutOffOfPooledClubsIsRaised() {
        Session good = UnequalClubs.strikes(10, 10, 1.0, 3L);
        Session planted = SimulatedSession.with(good, 4, Metric.STRIKE_TOE, 0.06);
        assertEquals(30.876, only(planted).cutOff(), 1e-12);
        List<Shot> one = planted.shots().stream()
                .map(shot -> Shot.builder("Alder")
                        .measured(Metric.STRIKE_TOE, shot.value(Metric.STRIKE_TOE))
                        .measured(Metric.STRIKE_UP, shot.value(Metric.STRIKE_UP))
                        .build())
                .toList();
        assertEquals(25.73, only(planted.withShots(ShotSet.of(one))).cutOff(), 1e-12);
    }

    /** A standardized reading has no scale, so that neither statistic nor flag can depend on the ratio of the spreads. */
    @Test
    void spreadOfTheOtherClubChangesNothing() {
        Session good = UnequalClubs.strikes(8, 12, 1.0, 3L);
        Session planted = SimulatedSession.with(good, 4, Metric.STRIKE_TOE, 0.06);
        double before = only(planted).statistic();
        for (double ratio : new double[] {0.25, 1.5, 3.0}) {
            List<Shot> shots = new ArrayList<>();
            for (Shot shot : planted.shots()) {
                double times = shot.club().equals("Alder") ? 1.0 : ratio;
                shots.add(shot.toBuilder()
                        .measured(Metric.STRIKE_TOE, times * shot.value(Metric.STRIKE_TOE))
                        .measured(Metric.STRIKE_UP, times * shot.value(Metric.STRIKE_UP))
                        .build());
            }
            assertEquals(
                    before, only(planted.withShots(ShotSet.of(shots))).statistic(), 1e-8 * before, "ratio " + ratio);
        }
    }

    /** Four standard errors of a binomial share. */
    @Test
    void unequalSpreadsRaiseNoMoreFlagsThanStated() {
        int replicates = 1_000;
        for (double ratio : new double[] {1.0, 2.0}) {
            double rate = UnequalClubs.rate(STRIKES, replicates, seed -> UnequalClubs.strikes(8, 8, ratio, seed));
            assertTrue(rate <= atMost(replicates) && rate > 0.01, "ratio " + ratio + ": " + rate);
        }
    }

    @Test
    void smashFactorsThatFallWithTheSquareOfTheStrikeKeepTheRate() {
        int replicates = 1_000;
        SessionScreen smash =
                SessionScreen.withDefaults().without(Metric.STRIKE_TOE).withMetrics(Metric.SMASH_FACTOR);
        double rate = UnequalClubs.rate(smash, replicates, seed -> UnequalClubs.quadraticSmash(10, seed));
        assertTrue(rate <= atMost(replicates) && rate > 0.01, "with strikes " + rate);

        // Without the strikes nothing can be taken out: the rate is far above 5 %, which the reason makes a condition.
        double blind = UnequalClubs.rate(smash, replicates, seed -> withoutStrikes(seed));
        assertTrue(blind > 0.10, "without strikes " + blind);
    }

    private static Session withoutStrikes(long seed) {
        Session session = UnequalClubs.quadraticSmash(10, seed);
        return session.withShots(ShotSet.of(session.shots().stream()
                .map(s -> s.without(Metric.STRIKE_TOE).without(Metric.STRIKE_UP))
                .toList()));
    }

    @Test
    void weakSmashOfACentralStrikeIsFlaggedAndThatOfAFarStrikeExplained() {
        Session good = UnequalClubs.quadraticSmash(10, 4L);
        double speed = good.shots().shots().get(6).value(Metric.CLUB_SPEED);
        SessionScreen smash =
                SessionScreen.withDefaults().without(Metric.STRIKE_TOE).withMetrics(Metric.SMASH_FACTOR);
        Session central = SimulatedSession.with(good, 6, Metric.BALL_SPEED, 1.30 * speed);
        central = SimulatedSession.with(central, 6, Metric.STRIKE_TOE, 0.0);
        central = SimulatedSession.with(central, 6, Metric.STRIKE_UP, 0.0);
        List<ShotFlag> flags = smash.screen(central).flags();
        assertEquals(List.of(6), flags.stream().map(ShotFlag::index).toList());
        assertTrue(flags.get(0).reason().contains("smash factor 1.300 (after what its strike explains)"));
        assertTrue(
                flags.get(0).reason().endsWith("if normally spread"),
                flags.get(0).reason());

        // 1.39 - 0.012 (18 / 6)^2 = 1.282 is even weaker, and what such a strike gives.
        Session far = SimulatedSession.with(good, 6, Metric.BALL_SPEED, 1.282 * speed);
        far = SimulatedSession.with(far, 6, Metric.STRIKE_TOE, 0.018);
        far = SimulatedSession.with(far, 6, Metric.STRIKE_UP, 0.0);
        assertEquals(List.of(), smash.screen(far).flags());
    }

    /** The fastest ball is no mishit, and what cannot be told is said without what was measured. */
    @Test
    void aFastBallMayBeMisreadAndASlowOneMishit() {
        Session good = UnequalClubs.quadraticSmash(10, 4L);
        SessionScreen speed = SessionScreen.withDefaults().withMetrics(Metric.BALL_SPEED);
        double usual = good.shots().shots().get(6).value(Metric.BALL_SPEED);
        for (double times : new double[] {0.7, 1.4}) {
            Session session = SimulatedSession.with(good, 6, Metric.BALL_SPEED, times * usual);
            session = session.withShots(ShotSet.of(session.shots().stream()
                    .map(s -> s.without(Metric.CLUB_SPEED).without(Metric.STRIKE_TOE))
                    .toList()));
            ScreenReport report = speed.screen(session);
            assertEquals(
                    List.of(6), report.flags().stream().map(ShotFlag::index).toList());
            ShotFlag flag = report.flags().get(0);
            assertEquals(times < 1.0 ? ShotFlag.Kind.MISHIT : ShotFlag.Kind.MISREAD, flag.kind());
            assertEquals(times > 1.0, flag.reason().endsWith("on the fast side"), flag.reason());
            assertEquals(
                    times > 1.0,
                    report.warnings().stream().anyMatch(w -> w.code().equals("mishits-not-screened")));
        }
    }

    @Test
    void whatIsLeftOutRaisesNoFlag() {
        Session good = UnequalClubs.quadraticSmash(10, 4L);
        Session slow = SimulatedSession.with(good, 6, Metric.BALL_SPEED, 30.0);
        assertEquals(2, SessionScreen.withDefaults().screen(slow).flags().size());
        for (Metric metric : List.of(Metric.BALL_SPEED, Metric.SMASH_FACTOR)) {
            ScreenReport report = SessionScreen.withDefaults()
                    .without(metric)
                    .withMetrics(Metric.SMASH_FACTOR, Metric.BALL_SPEED)
                    .screen(slow);
            assertEquals(List.of(), report.flags());
            assertEquals(0.05, report.falseAlarmRate(), 1e-15); // the strikes are left
        }
        assertEquals(
                "mishits-not-screened",
                SessionScreen.withDefaults()
                        .without(Metric.STRIKE_UP)
                        .without(Metric.LAUNCH_ANGLE)
                        .screen(good)
                        .warnings()
                        .get(0)
                        .code());
    }
}
