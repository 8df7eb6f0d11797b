package dev.teeward.fitting.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.reference.Evaluators;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The p of random arrangements, (b + 1) / (m + 1) (Phipson and Smyth 2010), and constants of robust spreads. */
public class MonteCarloPTest {
    private static final Evaluators ROWS = rows();

    /** The rows checked here. */
    public static Set<String> coveredKeys() {
        return ROWS.keys();
    }

    @TestFactory
    Stream<DynamicTest> rowsAreMet() {
        return ROWS.tests();
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        ArrangementCounts counts = new ArrangementCounts(false, 0);
        counts.add(987, 0, 987, 0);
        counts.add(12, 12, 0, 12);
        map.put("PERM-mcp/1", counts.twoSided());
        // The row is a Monte Carlo p of stated counts, a ratio of integers.
        map.loosen("PERM-mcp/1 p", 1e-15);
        map.putRow(
                "ROB-factors/1 Qn_scale_const_inf",
                row -> 1.0 / (Math.sqrt(2.0) * Distributions.normalQuantile(5.0 / 8.0)));
        return map;
    }

    @Test
    void exactCountsAreShares() {
        ArrangementCounts counts = new ArrangementCounts(true, 0);
        counts.add(1_000, 13, 990, 26);
        assertEquals(0.013, counts.greater(), 1e-15);
        assertEquals(0.99, counts.less(), 1e-15);
        assertEquals(0.026, counts.twoSided(), 1e-15);
        assertEquals(1_000, counts.arrangements());
    }
}
