package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import dev.teeward.quantity.LengthUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Trends, runs, serial dependence and looking after every pair, against R, NIST and closed forms. */
public class SequenceReferenceTest {
    private static final Evaluators ROWS = rows();

    /** The rows checked here. */
    public static Set<String> coveredKeys() {
        return ROWS.keys();
    }

    @TestFactory
    Stream<DynamicTest> rowsAreMet() {
        return ROWS.tests();
    }

    @Test
    void coversTheStatedRows() {
        assertEquals(55, coveredKeys().size());
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        double[] lew = ReferenceTable.column("strd_lew", "y");
        double[] synth = ReferenceTable.column("synth_blocks", "u");
        map.put("MK-nile/1", trend(ReferenceTable.column("r_nile", "flow"), RankMethod.NORMAL));
        map.put("MK-lew/1", trend(lew, RankMethod.NORMAL));
        map.put("MK-synth/1", trend(synth, RankMethod.NORMAL));
        map.put(
                "MK-ctrl/1",
                trend(ReferenceTable.column("r_plantgrowth", "weight", "group", "ctrl"), RankMethod.EXACT));
        RunsTest.Result runs = RunsTest.withDefaults().test(lew);
        map.put("RUNS-lew/1", runs.z().orElseThrow(), runs.pValue());
        map.put("RUNS-lew/2", runs.runs(), runs.above(), runs.notAbove(), runs.expected(), runs.deviation());
        SerialDependenceTest.Result serial = SerialDependenceTest.withDefaults().test(lew);
        map.put("LB-lew/1", serial.ljungBox().orElseThrow(), serial.ljungBoxP());
        map.put("VN-lew/1", serial.vonNeumann().orElseThrow());
        map.put(
                "VN-synth/1",
                SerialDependenceTest.withDefaults().test(synth).vonNeumann().orElseThrow());
        sequential(map);
        return map;
    }

    private static ToDoubleFunction<Row> trend(double[] y, RankMethod method) {
        MannKendallTest.Result r =
                MannKendallTest.withDefaults().withMethod(method).test(y);
        return row -> switch (row.quantity()) {
            case "S" -> r.slope().statistic().orElseThrow();
            case "var_S" -> r.varianceOfS();
            case "Z" -> r.z().orElseThrow();
            case "p", "p_exact" -> r.slope().pValue();
            case "tau_a", "tau" -> r.tau();
            case "sen_slope" -> r.slope().estimate().value();
            default -> Evaluators.unknown(row);
        };
    }

    private static void sequential(Evaluators map) {
        SequentialTTest test = SequentialTTest.withDefaults();
        for (int i = 1; i <= 12; i++) {
            map.put("SEQ-et/" + i, row -> {
                SequentialTTest own = test.withEffectVariance(Evaluators.number(row, "g="));
                int n = (int) Evaluators.number(row, "n=");
                return switch (row.quantity()) {
                    case "e_value" -> own.evidence(Evaluators.number(row, "t="), n);
                    case "tcrit_av" -> own.criticalT(n).orElse(Double.POSITIVE_INFINITY);
                    case "tcrit_fixed" -> own.fixedCriticalT(n);
                    default -> Evaluators.unknown(row);
                };
            });
        }
        for (int i = 11; i <= 12; i++) {
            map.correct(
                    "SEQ-et/" + i + " tcrit_fixed",
                    2.00957523712924,
                    "the t quantile by mpmath at 30 digits; SciPy 1.10.1's is good to nine digits only");
        }
        for (int i = 1; i <= 3; i++) {
            map.put(
                    "SEQ-cs/" + i,
                    row -> test.withEffectVariance(Evaluators.number(row, "rho2="))
                            .knownSpreadHalfWidth((int) Evaluators.number(row, "n="), 1.0));
        }
    }

    private static final double[] RISING = {1.0, 2.5, 2.0, 4.0, 5.5, 6.0, 6.5, 9.0};

    /** p of all 5,040 orders of seven shots by counting; the slope's limits hold it at the stated level. */
    @Test
    void exactTrendCountsOrders() {
        double[] y = {3.0, 1.0, 4.0, 2.0, 6.0, 5.0, 7.0};
        MannKendallTest.Result r = MannKendallTest.withDefaults().test(y);
        assertEquals(13.0, r.slope().statistic().orElseThrow());
        // Orders of seven with at most 4 inversions, by the Mahonian numbers 1, 6, 20, 49, 98 (OEIS A008302).
        assertEquals(2.0 * (1 + 6 + 20 + 49 + 98) / 5040.0, r.slope().pValue(), 1e-12);
        assertTrue(r.slope().method().endsWith("exact"));
        MannKendallTest.Result up =
                MannKendallTest.withDefaults().withUnit(LengthUnit.YARD).test(RISING);
        assertTrue(up.slope().estimate().interval().lower() > 0.5
                && up.slope().estimate().interval().upper() < 1.7);
        assertEquals(up.slope().significant(), !up.slope().estimate().interval().contains(0.0));
        TestResult shifted =
                MannKendallTest.withDefaults().withNullValue(1.0).test(RISING).slope();
        assertTrue(shifted.pValue() > 0.5);
        MannKendallTest.Result tied = MannKendallTest.withDefaults().test(1.0, 1.0, 2.0, 2.0, 3.0);
        assertTrue(tied.slope().method().contains("tie"));
        assertTrue(MannKendallTest.withDefaults().test(5.0, 5.0, 5.0).slope().warns("no-spread"));
        assertTrue(MannKendallTest.withDefaults().test(5.0, 6.0).slope().warns("too-few-shots"));
        MannKendallTest exact = MannKendallTest.withDefaults().withMethod(RankMethod.EXACT);
        assertThrows(IllegalArgumentException.class, () -> exact.test(1.0, 1.0, 2.0));
        assertThrows(IllegalArgumentException.class, () -> exact.test(1.0));
        assertThrows(IllegalArgumentException.class, () -> exact.test(new double[2_001]));
    }

    /** Coverage of the slope's limits over 600 seeded sessions of ten shots with a slope: at least 95 % but for chance. */
    @Test
    void slopeLimitsHold() {
        Random random = new Random(6L);
        int held = 0;
        for (int s = 0; s < 600; s++) {
            double[] y = IntStream.range(0, 10)
                    .mapToDouble(i -> 0.3 * i + random.nextGaussian())
                    .toArray();
            held += MannKendallTest.withDefaults()
                            .test(y)
                            .slope()
                            .estimate()
                            .interval()
                            .contains(0.3)
                    ? 1
                    : 0;
        }
        // Three standard deviations of a binomial at 95 %: 16. The exact level at ten shots is 95.4 % or more.
        assertTrue(held >= 570 - 16, "held " + held);
        assertTrue(held <= 597, "held " + held);
    }

    /** Two above and two below: 6 arrangements, of which 2 have two runs, 2 three and 2 four. */
    @Test
    void exactRunsCountArrangements() {
        RunsTest.Result two =
                RunsTest.withDefaults().withAlternative(Alternative.LESS).test(1.0, 2.0, 3.0, 4.0);
        assertEquals(2, two.runs());
        assertEquals(2.0 / 6.0, two.pValue(), 1e-12);
        assertEquals(1.0, RunsTest.withDefaults().test(1.0, 3.0, 4.0, 2.0).pValue());
        RunsTest.Result four =
                RunsTest.withDefaults().withAlternative(Alternative.GREATER).test(1.0, 3.0, 2.0, 4.0);
        assertEquals(2.0 / 6.0, four.pValue(), 1e-12);
        RunsTest.Result normal =
                RunsTest.withDefaults().withMethod(RankMethod.NORMAL).test(RISING);
        assertEquals(RunsTest.withDefaults().test(RISING).pValue(), normal.pValue(), 0.05);
        assertEquals(
                "no-spread",
                RunsTest.withDefaults().test(4.0, 4.0).warnings().get(0).code());
        assertThrows(
                IllegalArgumentException.class,
                () -> RunsTest.withDefaults().withMethod(RankMethod.EXACT).test(new double[61]));
    }

    @Test
    void serialDependenceThatCannotBeJudged() {
        SerialDependenceTest test = SerialDependenceTest.withDefaults();
        assertEquals("too-few-shots", test.test(1.0, 2.0).warnings().get(0).code());
        assertEquals("no-spread", test.test(1.0, 1.0, 1.0).warnings().get(0).code());
        assertTrue(test.test(RISING).vonNeumannP() < 0.05);
        assertTrue(test.test(RISING).lagOne().orElseThrow() > 0.0);
    }

    /** Looking after every pair up to thirty: at most 5 % false alarms, and the interval holds at every look. */
    @Test
    void lookingAfterEveryPairStaysRight() {
        Random random = new Random(11L);
        SequentialTTest test = SequentialTTest.withDefaults();
        int alarms = 0;
        int missed = 0;
        int sessions = 400;
        for (int s = 0; s < sessions; s++) {
            double[] x = new double[20];
            Arrays.setAll(x, i -> 0.7 + random.nextGaussian());
            double[] y = new double[20];
            Arrays.fill(y, 0.7);
            SequentialTTest.Result r = test.testPairs(x, y);
            alarms += r.pValue() <= 0.05 ? 1 : 0;
            missed += r.difference().interval().contains(0.0) ? 0 : 1;
        }
        // 5 % of 400 is 20; the method is cautious (2.1 % simulated in 3 to 30 looks).
        assertTrue(alarms <= 20, "alarms " + alarms);
        assertEquals(alarms, missed);
    }

    /** Shots written to 0.1 that all differ by 1.1 differ in the last bit as doubles, which is no measure of error. */
    @Test
    void alwaysValidResultsTakeRoundingForNoSpread() {
        double[] x = {150.3, 149.2, 151.7, 148.4, 152.6, 150.9};
        double[] y = {149.2, 148.1, 150.6, 147.3, 151.5, 149.8};
        SequentialTTest.Result flat = SequentialTTest.withDefaults().testPairs(x, y);
        assertEquals(1.0, flat.pValue());
        assertFalse(flat.difference().interval().bounded());
        assertTrue(flat.warnings().stream().anyMatch(w -> w.code().equals("no-spread")));
        double[] longer = {150.3, 149.2, 151.7, 148.4, 152.6, 146.0, 155.0, 144.0, 153.0, 148.0};
        double[] other = {149.2, 148.1, 150.6, 147.3, 151.5, 150.0, 150.0, 150.0, 150.0, 150.0};
        SequentialTTest.Result r = SequentialTTest.withDefaults().testPairs(longer, other);
        assertEquals(List.of(1.0, 1.0, 1.0, 1.0), r.evidence().subList(0, 4));
        assertTrue(r.difference().interval().contains(r.difference().value()), r.toString());
        assertTrue(r.pValue() > 0.5, r.toString());
    }

    @Test
    void alwaysValidResultsOfFewPairs() {
        SequentialTTest test = SequentialTTest.withDefaults().withUnit(LengthUnit.YARD);
        assertEquals(
                "too-few-shots",
                test.testPairs(new double[] {1.0}, new double[] {2.0})
                        .warnings()
                        .get(0)
                        .code());
        SequentialTTest.Result flat = test.testPairs(new double[] {2.0, 3.0}, new double[] {1.0, 2.0});
        assertEquals("no-spread", flat.warnings().get(0).code());
        assertEquals(1.0, flat.pValue());
        assertFalse(flat.difference().interval().bounded());
        double[] x = {5.0, 5.5, 4.8, 5.2, 5.1, 4.9, 5.3, 5.0};
        SequentialTTest.Result clear = test.withLevel(0.9).testPairs(x, new double[8]);
        assertTrue(clear.pValue() < 0.01 && clear.difference().interval().lower() > 3.0);
        assertEquals(7, clear.evidence().size());
        double[] turned = {
            5.0, 5.01, 4.99, 5.0, 5.01, 4.99, 5.0, 5.01, -900.0, -901.0, -900.5, -900.2, -900.0, -900.0, -900.0, -900.0,
            -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0, -900.0
        };
        assertTrue(test.testPairs(turned, new double[turned.length]).warnings().stream()
                .anyMatch(w -> w.code().equals("empty-interval")));
        assertThrows(IllegalArgumentException.class, () -> test.withEffectVariance(0.0));
        assertThrows(IllegalArgumentException.class, () -> test.evidence(Double.NaN, 5));
        assertThrows(IllegalArgumentException.class, () -> test.fixedCriticalT(1));
        assertThrows(IllegalArgumentException.class, () -> test.knownSpreadHalfWidth(5, 0.0));
    }
}
