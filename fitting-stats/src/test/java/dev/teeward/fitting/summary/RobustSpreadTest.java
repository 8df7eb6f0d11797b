package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Robust spreads and centres against R (stats, robustbase), and by simulation where R's rows end. */
public class RobustSpreadTest {
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
        assertEquals(18, coveredKeys().size());
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        List<String> groups = List.of("ctrl", "trt1", "trt2");
        for (int g = 0; g < 3; g++) {
            RobustSpread s = RobustSpread.of(ReferenceTable.column("r_plantgrowth", "weight", "group", groups.get(g)));
            String id = "ROB-plant/" + (g + 1) + " ";
            map.putRow(id + "mad_1.4826", row -> s.mad());
            map.putRow(id + "mad_raw", row -> s.rawMad());
            map.putRow(id + "Qn", row -> s.qn());
            map.putRow(id + "Sn", row -> s.sn());
            map.putRow(
                    id + "hampel_max_abs_z",
                    row -> Arrays.stream(s.hampelScores()).max().orElseThrow());
            map.putRow(id + "huberM_k1.5_mu", row -> s.huberCenter(1.5));
        }
        // R stops when a step is below 1e-6; the fixed points in decimal arithmetic of 28 digits (python3 decimal).
        String early = "R's iteration stops at steps of 1e-6, before the fixed point";
        map.correct("ROB-plant/2 huberM_k1.5_mu", 4.560086285714286, early);
        map.correct("ROB-plant/3 huberM_k1.5_mu", 5.489265071428571, early);
        return map;
    }

    /** The factors make Qn and Sn right on average for normal samples of other sizes: within 2 % in 4,000 samples. */
    @Test
    void factorsMakeSpreadsRightOnAverage() {
        Random random = new Random(12L);
        for (int n : new int[] {5, 8, 13, 20, 31}) {
            double qn = 0.0;
            double sn = 0.0;
            for (int r = 0; r < 4_000; r++) {
                double[] x = new double[n];
                Arrays.setAll(x, i -> random.nextGaussian());
                RobustSpread s = RobustSpread.of(x);
                qn += s.qn() / 4_000.0;
                sn += s.sn() / 4_000.0;
            }
            assertEquals(1.0, qn, 0.025, "Qn at " + n);
            assertEquals(1.0, sn, 0.025, "Sn at " + n);
        }
    }

    @Test
    void degenerateSamples() {
        RobustSpread flat = RobustSpread.of(3.0, 3.0, 3.0, 9.0);
        assertEquals(0.0, flat.mad());
        assertEquals(0.0, flat.sn());
        assertEquals(3.0, flat.huberCenter(1.5));
        assertEquals(0.0, Arrays.stream(flat.hampelScores()).max().orElseThrow());
        assertTrue(RobustSpread.of(1.0, 2.0).qn() > 0.0);
        assertThrows(IllegalArgumentException.class, () -> RobustSpread.of(1.0));
        assertThrows(IllegalArgumentException.class, () -> RobustSpread.of(new double[5_001]));
        assertThrows(IllegalArgumentException.class, () -> flat.huberCenter(0.0));
    }
}
