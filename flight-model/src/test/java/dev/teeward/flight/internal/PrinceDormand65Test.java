package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.air.Wind;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The tableau against Butcher's order conditions, {@code sum b_i Phi_i(t) = 1/gamma(t)} for every rooted tree t: Butcher
 * (1963), as in Hairer, Norsett and Wanner, Solving Ordinary Differential Equations I, section II.2.
 */
class PrinceDormand65Test {
    /** Sums of eight products of numbers up to 50, rounded: far below any error in a coefficient. */
    private static final double ROUNDING = 1e-13;

    /** A rooted tree: its branches. */
    private record Tree(List<Tree> branches) {
        int order() {
            return 1 + branches.stream().mapToInt(Tree::order).sum();
        }

        double density() {
            return branches.stream().mapToDouble(Tree::density).reduce(order(), (a, b) -> a * b);
        }

        double[] elementaryWeights() {
            double[] product = new double[PrinceDormand65.STAGES];
            java.util.Arrays.fill(product, 1.0);
            for (Tree branch : branches) {
                double[] inner = branch.elementaryWeights();
                for (int i = 0; i < product.length; i++) {
                    double[] row = PrinceDormand65.weights(i);
                    double sum = 0.0;
                    for (int j = 0; j < row.length; j++) {
                        sum += row[j] * inner[j];
                    }
                    product[i] *= sum;
                }
            }
            return product;
        }
    }

    /** All trees with a number of vertices, each once: a tree is a list of smaller ones in an order of their listing. */
    private static List<Tree> trees(int order) {
        List<List<Tree>> known = new ArrayList<>();
        known.add(List.of());
        for (int n = 1; n <= order; n++) {
            List<Tree> smaller = new ArrayList<>();
            known.forEach(smaller::addAll);
            List<Tree> found = new ArrayList<>();
            forest(n - 1, 0, smaller, new ArrayList<>(), found);
            known.add(found);
        }
        return known.get(order);
    }

    private static void forest(int left, int from, List<Tree> pool, List<Tree> chosen, List<Tree> found) {
        if (left == 0) {
            found.add(new Tree(List.copyOf(chosen)));
            return;
        }
        for (int i = from; i < pool.size(); i++) {
            if (pool.get(i).order() <= left) {
                chosen.add(pool.get(i));
                forest(left - pool.get(i).order(), i, pool, chosen, found);
                chosen.remove(chosen.size() - 1);
            }
        }
    }

    private static double defect(double[] b, Tree tree) {
        double[] weights = tree.elementaryWeights();
        double sum = -1.0 / tree.density();
        for (int i = 0; i < b.length; i++) {
            sum += b[i] * weights[i];
        }
        return Math.abs(sum);
    }

    private static double worst(double[] b, int order) {
        return Collections.max(
                trees(order).stream().map(tree -> defect(b, tree)).toList());
    }

    @Test
    void theTreesAreAllThere() {
        // 1, 1, 2, 4, 9, 20, 48: OEIS A000081.
        List<Integer> counts = new ArrayList<>();
        for (int order = 1; order <= 7; order++) {
            counts.add(trees(order).size());
        }
        assertEquals(List.of(1, 1, 2, 4, 9, 20, 48), counts);
    }

    @Test
    void theResultMeetsEveryConditionOfOrderSixAndNotOfSeven() {
        for (int order = 1; order <= 6; order++) {
            assertTrue(worst(PrinceDormand65.sixth(), order) < ROUNDING, "order " + order);
        }
        assertTrue(worst(PrinceDormand65.sixth(), 7) > 1e-6);
    }

    @Test
    void theEmbeddedResultMeetsEveryConditionOfOrderFiveAndNotOfSix() {
        for (int order = 1; order <= 5; order++) {
            assertTrue(worst(PrinceDormand65.fifth(), order) < ROUNDING, "order " + order);
        }
        assertTrue(worst(PrinceDormand65.fifth(), 6) > 1e-6);
    }

    @Test
    void theNodesAreTheSumsOfTheRows() {
        for (int i = 0; i < PrinceDormand65.STAGES; i++) {
            double sum = 0.0;
            for (double weight : PrinceDormand65.weights(i)) {
                sum += weight;
            }
            assertEquals(PrinceDormand65.nodes()[i], sum, ROUNDING);
        }
    }

    /** Two seconds of a drive in steps of 2/8, 2/16, 2/32 s against 2/512 s: the error falls by 2^6 at each halving. */
    @Test
    void theMeasuredOrderOfConvergenceIsSix() {
        double[] fine = march(512);
        double coarse = distance(march(8), fine);
        double middle = distance(march(16), fine);
        double close = distance(march(32), fine);
        double first = Math.log(coarse / middle) / Math.log(2.0);
        double second = Math.log(middle / close) / Math.log(2.0);
        assertTrue(first > 5.5 && first < 7.5, "order " + first);
        assertTrue(second > 5.5 && second < 7.0, "order " + second);
    }

    private static double[] march(int steps) {
        FlightEquations equations = new FlightEquations(
                new RationalAerodynamics(), 0.04593, 0.04267, 8.363e-6, 1.225, 1.79e-5, Wind.calm(), 9.80665);
        PrinceDormand65 scheme = new PrinceDormand65();
        double[] axis = {0.0, -0.1, Math.sqrt(0.99)};
        double[] state = {70.0, 14.0, 1.0, 280.0, 0.0, 0.0, 0.0};
        double[] k = new double[PrinceDormand65.STAGES * FlightEquations.RATES];
        for (int i = 0; i < steps; i++) {
            double[] next = new double[FlightEquations.STATE];
            equations.rates(state, axis, k, 0);
            scheme.step(equations, axis, state, k, 2.0 / steps, next);
            state = next;
        }
        return state;
    }

    private static double distance(double[] a, double[] b) {
        double sum = 0.0;
        for (int c = 0; c < a.length; c++) {
            sum += (a[c] - b[c]) * (a[c] - b[c]);
        }
        return Math.sqrt(sum);
    }
}
