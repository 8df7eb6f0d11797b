package dev.teeward.fitting.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Planned looks against published tables and an independent quadrature, and the orders to hit clubs in. */
public class LooksReferenceTest {
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
        assertEquals(34, coveredKeys().size());
    }

    private static int last(String text) {
        return text.charAt(text.length() - 1) - '0';
    }

    private static double constant(GroupSequentialPlan.Shape shape, int looks) {
        List<GroupSequentialPlan.Look> all =
                GroupSequentialPlan.withDefaults().withShape(shape).equallySpaced(looks);
        return all.get(looks - 1).bound();
    }

    private static double spending(Row row, int looks) {
        return GroupSequentialPlan.withDefaults()
                .equallySpaced(looks)
                .get(last(row.quantity()) - 1)
                .bound();
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        for (int i = 1; i <= 4; i++) {
            int looks = i + 1;
            map.put(
                    "GS-const/" + i,
                    constant(GroupSequentialPlan.Shape.POCOCK, looks),
                    constant(GroupSequentialPlan.Shape.OBRIEN_FLEMING, looks));
            map.put("GS-spend/" + i, row -> spending(row, looks));
        }
        map.put("GS-const/5", row -> constant(GroupSequentialPlan.Shape.POCOCK, last(row.quantity())));
        map.put("GS-const/6", row -> constant(GroupSequentialPlan.Shape.OBRIEN_FLEMING, last(row.quantity())));
        map.put("GS-spend/5", row -> spending(row, 4));
        return map;
    }

    @Test
    void looksSpendTheWholeError() {
        GroupSequentialPlan plan = GroupSequentialPlan.withDefaults();
        List<GroupSequentialPlan.Look> looks = plan.afterShots(8, 12, 16);
        assertEquals(0.5, looks.get(0).share());
        assertEquals(0.05, looks.get(2).spent(), 1e-10);
        assertTrue(looks.get(0).nominalP() < 0.01 && looks.get(2).nominalP() > 0.03);
        GroupSequentialPlan.Look single = plan.withAlpha(0.1).equallySpaced(1).get(0);
        assertEquals(1.6448536269514722, single.bound(), 1e-10);
        // A look after one of a thousand shots spends nothing that could be told from 0.
        assertEquals(38.0, plan.afterShots(1, 1_000).get(0).bound());
        assertThrows(IllegalArgumentException.class, () -> plan.withAlpha(0.6));
        assertThrows(IllegalArgumentException.class, () -> plan.equallySpaced(0));
        assertThrows(IllegalArgumentException.class, () -> plan.afterShots(5, 5));
        assertThrows(IllegalArgumentException.class, () -> plan.afterShots());
        assertThrows(IllegalArgumentException.class, () -> plan.afterShots(0, 5));
    }

    @Test
    void mirroredOrdersCancelALinearDrift() {
        List<String> order = ShootingOrder.of("Alder", "Rowan").mirrored(10);
        assertEquals(List.of("Alder", "Rowan", "Rowan", "Alder"), order.subList(0, 4));
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < order.size(); i++) {
            places.merge(order.get(i), i, Integer::sum);
        }
        assertEquals(places.get("Alder"), places.get("Rowan"));
        assertThrows(IllegalArgumentException.class, () -> ShootingOrder.of("Alder"));
        assertThrows(IllegalArgumentException.class, () -> ShootingOrder.of("Alder", "Alder"));
        assertThrows(
                IllegalArgumentException.class, () -> ShootingOrder.of("a", "b").mirrored(0));
        assertThrows(
                IllegalArgumentException.class, () -> ShootingOrder.of("a", "b").rounds(10_000, 1L));
    }

    @Test
    void roundsHoldEveryClubOnceAndAreSeeded() {
        ShootingOrder clubs = ShootingOrder.of("a", "b", "c", "d", "e");
        List<String> order = clubs.rounds(6, 5L);
        for (int round = 0; round < 6; round++) {
            assertEquals(5, new TreeSet<>(order.subList(5 * round, 5 * round + 5)).size());
        }
        assertEquals(order, clubs.rounds(6, 5L));
        assertTrue(!order.equals(clubs.rounds(6, 6L)));
    }

    /** Williams designs: each club once in each place (twice for odd numbers), and after each other club equally often. */
    @Test
    void latinSquaresAreBalanced() {
        for (String[] clubs :
                new String[][] {{"a", "b"}, {"a", "b", "c"}, {"a", "b", "c", "d"}, {"a", "b", "c", "d", "e"}}) {
            List<List<String>> square = ShootingOrder.of(clubs).latinSquare();
            int k = clubs.length;
            int times = k % 2 == 0 ? 1 : 2;
            assertEquals(k * times, square.size());
            Map<String, Integer> after = new HashMap<>();
            for (int column = 0; column < k; column++) {
                Map<String, Integer> place = new HashMap<>();
                for (List<String> round : square) {
                    place.merge(round.get(column), 1, Integer::sum);
                    if (column > 0) {
                        after.merge(round.get(column - 1) + round.get(column), 1, Integer::sum);
                    }
                }
                assertEquals(Set.of(times), Set.copyOf(place.values()));
                assertEquals(k, place.size());
            }
            assertEquals(k * (k - 1), after.size());
            assertEquals(Set.of(times), Set.copyOf(after.values()));
        }
    }
}
