package dev.teeward.fitting.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.compare.BootstrapReferenceTest;
import dev.teeward.fitting.compare.ComparisonReferenceTest;
import dev.teeward.fitting.compare.SequenceReferenceTest;
import dev.teeward.fitting.compare.SeveralClubsReferenceTest;
import dev.teeward.fitting.internal.MonteCarloPTest;
import dev.teeward.fitting.linear.LinearReferenceTest;
import dev.teeward.fitting.plan.LooksReferenceTest;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import dev.teeward.fitting.summary.PatternReferenceTest;
import dev.teeward.fitting.summary.RobustSpreadTest;
import dev.teeward.fitting.summary.ScreenSummaryReferenceTest;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every row of expected.csv is checked by one of the data-driven tests, stands here with the reason why not, or only hands
 * back a parameter of its own case, which nothing can fail: 1,464 checked, 8 left out, 16 echoes.
 */
class ReferenceCoverageTest {
    /** Rows without a test, by the part of the id before the slash. */
    private static final Map<String, String> LEFT_OUT = Map.of(
            "AB-perm",
            "Ansari-Bradley: for two clubs' spreads there are Brown-Forsythe, two permutation tests and the ratio's"
                    + " interval; this one needs equal medians, which clubs do not have",
            "KS-plant",
            "Kolmogorov-Smirnov: whether two distributions differ in any way is no question of a fitting, and at ten"
                    + " shots it finds less than the tests of centre and spread",
            "SW",
            "Shapiro-Wilk: at ten shots a test of normality finds little, and choosing a method by its outcome spoils"
                    + " the level; exact and robust methods stand beside the normal ones instead");

    private static Set<String> checked() {
        return Stream.of(
                        ComparisonReferenceTest.coveredKeys(),
                        ScreenSummaryReferenceTest.coveredKeys(),
                        LinearReferenceTest.coveredKeys(),
                        SeveralClubsReferenceTest.coveredKeys(),
                        BootstrapReferenceTest.coveredKeys(),
                        PatternReferenceTest.coveredKeys(),
                        SequenceReferenceTest.coveredKeys(),
                        LooksReferenceTest.coveredKeys(),
                        RobustSpreadTest.coveredKeys(),
                        MonteCarloPTest.coveredKeys())
                .flatMap(Set::stream)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String prefix(Row row) {
        return row.id().replaceAll("/.*", "");
    }

    @Test
    void everyRowIsCheckedOrNamed() {
        List<Row> all = ReferenceTable.rows(id -> true);
        Set<String> checked = checked();
        Set<String> echoes = ComparisonReferenceTest.echoKeys();
        List<String> neither = all.stream()
                .filter(row -> !checked.contains(row.key())
                        && !echoes.contains(row.key())
                        && !LEFT_OUT.containsKey(prefix(row)))
                .map(Row::key)
                .toList();
        assertEquals(List.of(), neither);
        List<String> both = all.stream()
                .filter(row -> checked.contains(row.key()) && LEFT_OUT.containsKey(prefix(row)))
                .map(Row::key)
                .toList();
        assertEquals(List.of(), both);
        assertEquals(1_488, all.size());
        assertEquals(
                8, all.stream().filter(row -> LEFT_OUT.containsKey(prefix(row))).count());
        assertEquals(1_464, checked.size());
        assertEquals(16, echoes.size());
        assertTrue(Collections.disjoint(checked, echoes));
        assertTrue(all.stream().map(Row::key).collect(Collectors.toSet()).containsAll(checked));
    }

    @Test
    void keysAreUnique() {
        Map<String, Integer> counts = new TreeMap<>();
        ReferenceTable.rows(id -> true).forEach(row -> counts.merge(row.key(), 1, Integer::sum));
        assertEquals(1_488, counts.size());
    }
}
