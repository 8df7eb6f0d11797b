package dev.teeward.flight.study;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;

/**
 * Standard deviations and correlations of the errors of several inputs, and the principal axes of all of them.
 *
 * @param <K> the inputs
 */
final class CorrelatedErrors<K extends Enum<K>> {
    /** A correlation matrix may have an eigenvalue as negative as this by rounding. */
    private static final double ROUNDING = 1e-10;

    private final Class<K> kind;
    private final Function<K, String> name;
    private final Map<K, Double> deviations;

    /** By unordered pairs. */
    private final Map<Set<K>, Double> correlations;

    private CorrelatedErrors(
            Class<K> kind, Function<K, String> name, Map<K, Double> deviations, Map<Set<K>, Double> correlations) {
        this.kind = kind;
        this.name = name;
        this.deviations = deviations;
        this.correlations = correlations;
    }

    static <K extends Enum<K>> CorrelatedErrors<K> none(Class<K> kind, Function<K, String> name) {
        return new CorrelatedErrors<>(kind, name, Map.of(), Map.of());
    }

    /** A copy with the standard deviation of one input, which the caller has checked. */
    CorrelatedErrors<K> with(K input, double standardDeviation) {
        Map<K, Double> changed = new EnumMap<>(kind);
        changed.putAll(deviations);
        changed.put(input, standardDeviation);
        return new CorrelatedErrors<>(kind, name, changed, correlations);
    }

    CorrelatedErrors<K> withCorrelation(K one, K other, double correlation) {
        String first = name.apply(one);
        String second = name.apply(other);
        if (one.equals(other)) {
            throw new IllegalArgumentException("the correlation of " + first + " with itself is 1");
        }
        if (!deviations.containsKey(one) || !deviations.containsKey(other)) {
            throw new IllegalArgumentException("give the tolerance of " + (deviations.containsKey(one) ? second : first)
                    + " before its correlation with another input");
        }
        if (!(Math.abs(correlation) <= 1.0)) {
            throw new IllegalArgumentException("correlation must be in [-1, 1], but was " + correlation);
        }
        Map<Set<K>, Double> changed = new LinkedHashMap<>(correlations);
        changed.put(Set.of(one, other), correlation);
        CorrelatedErrors<K> copy = new CorrelatedErrors<>(kind, name, deviations, changed);
        double least = copy.least();
        if (least < -ROUNDING) {
            throw new IllegalArgumentException("a correlation of " + correlation + " between " + first + " and "
                    + second + " is impossible beside the others: the matrix has the eigenvalue " + least);
        }
        return copy;
    }

    /** The inputs with a tolerance, in their declared order. */
    Set<K> inputs() {
        return Collections.unmodifiableSet(deviations.keySet());
    }

    double standardDeviation(K input) {
        return Objects.requireNonNullElse(deviations.get(input), 0.0);
    }

    /** The principal axes of the errors: columns of one standard deviation each, rows in the order of the inputs. */
    double[][] axes() {
        int n = deviations.size();
        double[][] columns = new double[n][n];
        if (n == 0) {
            return columns;
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(matrix());
        for (int k = 0; k < n; k++) {
            double size = Math.sqrt(Math.max(0.0, eigen.getEigenvalue(k)));
            int i = 0;
            for (double deviation : deviations.values()) {
                columns[k][i] = size * eigen.getEigenvector(k).getEntry(i) * deviation;
                i++;
            }
        }
        return columns;
    }

    private double least() {
        double least = 0.0;
        for (double value : new EigenDecompositionSymmetric(matrix()).getEigenvalues()) {
            least = Math.min(least, value);
        }
        return least;
    }

    private RealMatrix matrix() {
        RealMatrix matrix = new Array2DRowRealMatrix(deviations.size(), deviations.size());
        int i = 0;
        for (K one : deviations.keySet()) {
            int j = 0;
            for (K other : deviations.keySet()) {
                double r =
                        one.equals(other) ? 1.0 : Objects.requireNonNullElse(correlations.get(Set.of(one, other)), 0.0);
                matrix.setEntry(i, j, r);
                j++;
            }
            i++;
        }
        return matrix;
    }

    @Override
    public String toString() {
        return "standard deviations " + deviations + ", correlations " + correlations;
    }
}
