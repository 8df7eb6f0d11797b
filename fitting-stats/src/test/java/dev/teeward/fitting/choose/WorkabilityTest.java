package dev.teeward.fitting.choose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Repeatability and answer, by hand with quantiles from tables. */
class WorkabilityTest {
    private static final Workability WORK = Workability.withDefaults();

    private static Shot shot(String intent, double curve) {
        Shot.Builder shot = Shot.builder("Alder")
                .measured(Metric.START_DIRECTION, 0.01 * curve)
                .measured(Metric.CURVE, curve)
                .measured(Metric.SIDE, 2.0 * curve);
        return (intent.isEmpty() ? shot : shot.other("intent", intent)).build();
    }

    private static ShotSet shots(double scale, String... intents) {
        List<Shot> all = new ArrayList<>();
        for (String intent : intents) {
            double middle = intent.equals("draw") ? -5.0 : intent.equals("fade") ? 4.0 : 0.0;
            for (double off : new double[] {-1.0, 0.0, 1.0}) {
                all.add(shot(intent, scale * (middle + off)));
            }
        }
        return ShotSet.of(all);
    }

    /** Each intent has variance 1 with 2 degrees of freedom: pooled sd 1 at 6; chi-square 14.449 and 1.2373 (tables). */
    @Test
    void repeats() {
        Workability.Result r = WORK.describe(shots(1.0, "draw", "straight", "fade"), Handedness.RIGHT);
        Estimate curve = r.curve().orElseThrow();
        assertEquals(1.0, curve.value(), 1e-12);
        assertEquals(Math.sqrt(6.0 / 14.449), curve.interval().lower(), 1e-4);
        assertEquals(Math.sqrt(6.0 / 1.2373), curve.interval().upper(), 1e-3);
        assertEquals(0.01, r.start().orElseThrow().value(), 1e-12);
        assertEquals(2.0, r.landing().orElseThrow().value(), 1e-12);
        assertEquals(3, r.shots().size());
    }

    /** 9 m; Welch with 4 degrees of freedom: 2.7764 (tables) times sqrt(2/3); g = 9 (1 - 3 / 15) nearly, J(4) = 0.7979. */
    @Test
    void answersForBothHands() {
        Workability.Result right = WORK.describe(shots(1.0, "draw", "fade"), Handedness.RIGHT);
        Estimate answer = right.answer().orElseThrow().estimate();
        assertEquals(9.0, answer.value(), 1e-12);
        assertEquals(9.0 - 2.7764 * Math.sqrt(2.0 / 3.0), answer.interval().lower(), 1e-3);
        assertEquals(
                9.0 * 0.7979, right.answerInSpreads().orElseThrow().estimate().value(), 2e-3);
        Workability.Result left = WORK.describe(shots(-1.0, "draw", "fade"), Handedness.LEFT);
        assertEquals(9.0, left.answer().orElseThrow().estimate().value(), 1e-12);
        assertEquals(
                -9.0,
                WORK.describe(shots(1.0, "draw", "fade"), Handedness.LEFT)
                        .answer()
                        .orElseThrow()
                        .estimate()
                        .value(),
                1e-12);
    }

    /** Twice the curves: 9 m more, variance (4 + 4 + 1 + 1) / 3, df 100 / 9 / ((16 + 16 + 1 + 1) / 18); F(4, 4) 9.6045 (tables). */
    @Test
    void oneClubAgainstAnother() {
        Workability.Result large = WORK.describe(shots(2.0, "draw", "fade"), Handedness.RIGHT);
        Workability.Result small = WORK.describe(shots(1.0, "draw", "fade"), Handedness.RIGHT);
        Estimate more = large.answersMoreThan(small).orElseThrow();
        assertEquals(9.0, more.value(), 1e-12);
        double df = 100.0 / 9.0 / (34.0 / 18.0);
        // t at 5 and 6 degrees of freedom: 2.5706 and 2.4469 (tables); df is 5.88.
        assertTrue(df > 5.0 && df < 6.0);
        double reach = more.interval().halfWidth() / Math.sqrt(10.0 / 3.0);
        assertTrue(reach > 2.4469 && reach < 2.5706, "quantile " + reach);
        Estimate ratio = large.spreadAgainst(small).orElseThrow();
        assertEquals(2.0, ratio.value(), 1e-12);
        assertEquals(2.0 / Math.sqrt(9.6045), ratio.interval().lower(), 1e-4);
        assertEquals(2.0 * Math.sqrt(9.6045), ratio.interval().upper(), 1e-3);
    }

    @Test
    void whatIsNotTaggedIsNotGuessed() {
        List<Shot> mixed = new ArrayList<>(shots(1.0, "draw", "fade").shots());
        mixed.add(shot("", 3.0));
        Workability.Result r = WORK.describe(ShotSet.of(mixed), Handedness.RIGHT);
        assertEquals(1, r.leftOut());
        Workability.Result plain = WORK.describe(ShotSet.of(shot("", 1.0), shot("", 2.0)), Handedness.RIGHT);
        assertEquals(2, plain.shots().get(Workability.Intent.STRAIGHT).size());
        assertTrue(plain.answer().isEmpty() && plain.answerInSpreads().isEmpty());
        assertTrue(plain.answersMoreThan(r).isEmpty());
        assertTrue(plain.curve().isPresent());
        Workability.Result none = WORK.describe(ShotSet.of(), Handedness.RIGHT);
        assertTrue(none.curve().isEmpty() && none.spreadAgainst(r).isEmpty());
        assertThrows(
                IllegalArgumentException.class, () -> WORK.describe(ShotSet.of(shot("hook", 1.0)), Handedness.RIGHT));
        ShotSet named = ShotSet.of(Shot.builder("Alder")
                .measured(Metric.START_DIRECTION, 0.0)
                .measured(Metric.CURVE, 1.0)
                .measured(Metric.SIDE, 0.0)
                .other("shape", "Draw")
                .build());
        assertEquals(
                1,
                WORK.withColumn("shape")
                        .describe(named, Handedness.RIGHT)
                        .shots()
                        .get(Workability.Intent.DRAW)
                        .size());
    }
}
