package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Against R 4.2.2 (lm; HC3 written out), by explain-reference.R beside the resources: computed, from invented shots. */
class TotalAndDirectTest {
    private static final double[][] SPEED = {
        {86.1, 85.4, 86.9, 87.2, 85.9, 86.3, 85.1, 86.8, 86.0, 85.7, 86.6, 86.2},
        {85.6, 85.9, 86.0, 86.5, 86.4, 85.8, 85.3, 86.1, 86.3, 85.0, 86.9, 85.5}
    };
    private static final double[][] ATTACK = {
        {-3.1, -4.0, -2.8, -3.5, -4.4, -3.0, -3.7, -2.9, -4.1, -3.3, -3.6, -2.6},
        {-3.6, -3.2, -3.3, -4.1, -3.9, -3.4, -2.7, -3.8, -3.5, -4.2, -3.0, -3.9}
    };
    private static final double[][] CARRY = {
        {150.2, 147.9, 153.6, 152.8, 148.1, 151.7, 147.3, 152.9, 148.8, 149.0, 151.0, 152.2},
        {146.8, 148.5, 148.2, 148.0, 148.9, 147.6, 148.1, 147.7, 149.2, 143.9, 152.0, 145.1}
    };

    /** What the numbers are called does not matter to the model: speeds count as m/s, angles as hundredths of a radian. */
    private static Session session() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            for (int k = 0; k < 2; k++) {
                int club = (i + k) % 2;
                shots.add(Shot.builder(club == 0 ? "Alder" : "Rowan")
                        .number(shots.size() + 1)
                        .measured(Metric.CLUB_SPEED, SPEED[club][i])
                        .measured(Metric.ATTACK_ANGLE, 0.01 * ATTACK[club][i])
                        .measured(Metric.CARRY, CARRY[club][i])
                        .build());
            }
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    private static HeadToHead procedure() {
        return HeadToHead.withDefaults().withClubs("Alder", "Rowan").withPrimary(Metric.CARRY);
    }

    @Test
    void pairsAreThoseOfTheModelWithAnEffectOfEachPair() {
        TotalAndDirect.Result r = TotalAndDirect.withDefaults()
                .explain(procedure().compare(session()), Metric.CARRY)
                .orElseThrow();
        assertTrue(r.paired());
        assertEquals(List.of(12), r.sampleSizes());
        assertEquals(2.625, r.total().estimate().value(), 1e-12);
        assertEquals(1.72319368232672, r.direct().estimate().value(), 1e-12);
        assertEquals(0.186307537724268, r.direct().standardError().orElseThrow(), 1e-12);
        assertEquals(9.0, r.direct().degreesOfFreedom());
        assertEquals(0.605984169519191, part(r, Metric.CLUB_SPEED), 1e-12);
        assertEquals(0.295822148154106, part(r, Metric.ATTACK_ANGLE), 1e-12);
        assertEquals(6.28504176589323, r.varianceInflation().get(Metric.CLUB_SPEED), 1e-11);
        assertTrue(r.warnings().stream().anyMatch(w -> w.code().equals("few-to-adjust")));
        assertTrue(r.method().contains("one common variance") && r.method().contains("within pairs"));
    }

    @Test
    void withoutPairsThoseOfTheModelOfAllShots() {
        TotalAndDirect.Result r = TotalAndDirect.withDefaults()
                .explain(procedure().withoutPairing().compare(session()), Metric.CARRY)
                .orElseThrow();
        assertFalse(r.paired());
        assertEquals(1.72357343202025, r.direct().estimate().value(), 1e-12);
        assertTrue(r.method().contains("HC3"));
        assertEquals(0.194611317108716, r.direct().standardError().orElseThrow(), 1e-12);
        assertEquals(0.644747240821753, part(r, Metric.CLUB_SPEED), 1e-12);
        assertEquals(0.256679327158025, part(r, Metric.ATTACK_ANGLE), 1e-12);
    }

    private static double part(TotalAndDirect.Result r, Metric metric) {
        return r.explained().get(metric).estimate().value();
    }

    @Test
    void thePartsAddUpExactly() {
        for (HeadToHead how : List.of(procedure(), procedure().withoutPairing())) {
            for (long seed = 1; seed <= 4; seed++) {
                HeadToHeadResult result = how.compare(InventedSwings.of(seed, 9).session());
                for (Metric outcome : List.of(Metric.CARRY, Metric.CURVE, Metric.SIDE, Metric.BALL_SPEED)) {
                    TotalAndDirect.Result r = TotalAndDirect.withDefaults()
                            .explain(result, outcome)
                            .orElseThrow();
                    double sum = r.direct().estimate().value();
                    for (Metric covariate : r.covariates()) {
                        sum += part(r, covariate);
                    }
                    assertEquals(r.total().estimate().value(), sum, 1e-11);
                }
            }
        }
    }

    @Test
    void covariatesAreChosenBeforehand() {
        TotalAndDirect other = TotalAndDirect.withDefaults().withCovariates(Metric.CARRY, Metric.CLUB_SPEED);
        assertEquals(List.of(Metric.CLUB_SPEED), other.covariates(Metric.CARRY));
        assertEquals(
                List.of(Metric.CLUB_SPEED),
                other.explain(procedure().compare(session()), Metric.CARRY)
                        .orElseThrow()
                        .covariates());
        assertThrows(IllegalArgumentException.class, () -> other.withCovariates(Metric.CARRY));
        assertThrows(IllegalArgumentException.class, () -> other.withCovariates(Metric.CARRY, Metric.CARRY));
        assertThrows(
                IllegalArgumentException.class,
                () -> other.withCovariates(
                        Metric.CARRY, Metric.CLUB_SPEED, Metric.ATTACK_ANGLE, Metric.CLUB_PATH, Metric.FACE_ANGLE));
        assertThrows(
                IllegalArgumentException.class,
                () -> other.withCovariates(Metric.CARRY, Metric.CLUB_SPEED, Metric.CLUB_SPEED));
    }

    @Test
    void warnsOfWhatTheClubMayHaveMovedAndOfWhatWasNotMeasured() {
        HeadToHeadResult result = procedure()
                .compare(InventedSwings.of(4, 12)
                        .more(Metric.CLUB_SPEED, 1.5)
                        .without(Metric.ATTACK_ANGLE)
                        .session());
        TotalAndDirect.Result r =
                TotalAndDirect.withDefaults().explain(result, Metric.CARRY).orElseThrow();
        assertEquals(List.of(Metric.CLUB_SPEED), r.covariates());
        List<String> codes = r.warnings().stream().map(w -> w.code()).toList();
        assertTrue(codes.contains("covariate-moved") && codes.contains("covariate-not-measured"), codes.toString());
    }

    /** The bias does not go with the number of pairs, so the warning must not either. */
    @Test
    void errorOfReadingIsWarnedOfWhateverTheNumberOfPairs() {
        for (int pairs : new int[] {12, 30}) {
            HeadToHeadResult result = procedure()
                    .compare(InventedSwings.of(4, pairs)
                            .more(Metric.CLUB_SPEED, 1.5)
                            .session());
            TotalAndDirect.Result r =
                    TotalAndDirect.withDefaults().explain(result, Metric.CARRY).orElseThrow();
            assertTrue(
                    r.warnings().stream()
                            .anyMatch(w -> w.code().equals("covariate-moved")
                                    && w.message().contains("read with error")),
                    pairs + " pairs: " + r.warnings());
        }
    }

    @Test
    void isAbsentWhereItCannotBeCarried() {
        TotalAndDirect t = TotalAndDirect.withDefaults();
        assertTrue(t.explain(procedure().compare(InventedSwings.of(4, 5).session()), Metric.CARRY)
                .isEmpty());
        assertTrue(t.explain(procedure().compare(InventedSwings.of(4, 6).session()), Metric.CARRY)
                .isPresent());
        HeadToHeadResult still = procedure()
                .compare(InventedSwings.of(4, 12)
                        .input(Metric.CLUB_SPEED, 38.0, 0.0, 0.0)
                        .session());
        assertTrue(t.explain(still, Metric.CARRY).isEmpty());
        assertTrue(t.explain(still, Metric.FLIGHT_TIME).isEmpty());
    }
}
