package dev.teeward.fitting.internal;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A difference of two clubs at equal covariates that are read with known errors, by moments (Fuller 1987, section 2.2).
 *
 * <p>Immutable and thread-safe.
 *
 * @param value the difference, first minus second
 * @param error its standard error; not a number where a shot fits whatever it is
 * @param degreesOfFreedom those of the error, 1 or more
 */
public record CorrectedDifference(double value, double error, double degreesOfFreedom) {
    /** Below this share of the readings' variance nothing certain is left of a covariate. */
    private static final double NOTHING = 1e-9;

    /**
     * Works it out.
     *
     * @param covariates by covariate and row
     * @param errors the standard deviation of the error of one reading of each covariate
     * @param y the response, by row
     * @param split the first row of the second club; of pairs all rows are differences, and it is their number
     * @param readingsInRow the readings that a row holds: 2 of pairs, 1 of shots
     * @param least the reliability below which there is no answer
     * @return the difference, or empty if no degree of freedom is left or the reliability is too small
     */
    public static Optional<CorrectedDifference> of(
            double[][] covariates, double[] errors, double[] y, int split, double readingsInRow, double least) {
        int k = covariates.length;
        int second = y.length - split;
        int freedom = y.length - (second > 0 ? 2 : 1);
        int left = freedom - k;
        if (left < 1) {
            return Optional.empty();
        }
        double[][] x = new double[k][];
        RealVector apart = new ArrayRealVector(k);
        RealMatrix noise = new Array2DRowRealMatrix(k, k);
        for (int j = 0; j < k; j++) {
            // In units of its own scatter, since radians and m/s stand side by side.
            double[] within = centered(covariates[j], split);
            double scale = Math.sqrt(product(within, within) / freedom);
            if (!(scale > 0.0)) {
                return Optional.empty();
            }
            x[j] = Arrays.stream(within).map(v -> v / scale).toArray();
            apart.setEntry(j, difference(covariates[j], split) / scale);
            noise.setEntry(j, j, readingsInRow * errors[j] * errors[j] / (scale * scale));
        }
        double[] rest = centered(y, split);
        RealMatrix readings = new Array2DRowRealMatrix(k, k);
        RealVector common = new ArrayRealVector(k);
        for (int j = 0; j < k; j++) {
            for (int i = 0; i < k; i++) {
                readings.setEntry(i, j, product(x[i], x[j]) / freedom);
            }
            common.setEntry(j, product(x[j], rest) / freedom);
        }
        EigenDecompositionSymmetric read = new EigenDecompositionSymmetric(readings);
        if (!(Arrays.stream(read.getEigenvalues()).min().orElse(0.0) > NOTHING)) {
            return Optional.empty();
        }
        RealMatrix precision = read.getSolver().getInverse();
        double reliability = reliability(precision, noise);
        if (!(reliability > NOTHING) || reliability < least) {
            return Optional.empty();
        }
        RealMatrix inverse = new EigenDecompositionSymmetric(readings.subtract(noise))
                .getSolver()
                .getInverse();
        RealVector slopes = inverse.operate(common);
        for (int i = 0; i < rest.length; i++) {
            rest[i] -= slopes.dotProduct(row(x, i));
        }
        RealVector drawn = noise.operate(slopes);
        RealVector pull = inverse.operate(apart);
        double error;
        if (second > 0) {
            error = sandwich(x, rest, split, pull, pull.dotProduct(drawn) / rest.length, precision);
        } else {
            double variance = product(rest, rest) / left;
            // A var(v) + A S var(v) A = A M A var(v), since A (M - S) = 1.
            double slope = variance * pull.dotProduct(readings.operate(pull)) + Math.pow(pull.dotProduct(drawn), 2.0);
            error = Math.sqrt(variance / split + slope / freedom);
        }
        double value = difference(y, split) - slopes.dotProduct(apart);
        return Optional.of(new CorrectedDifference(value, error, left));
    }

    /** Not a number where a shot fits whatever it is, as the only one of its club does. */
    private static double sandwich(
            double[][] x, double[] rest, int split, RealVector pull, double shared, RealMatrix precision) {
        int freedom = rest.length - 2;
        double sum = 0.0;
        for (int i = 0; i < rest.length; i++) {
            RealVector here = row(x, i);
            double own = i < split ? 1.0 / split : -1.0 / (rest.length - split);
            double leverage = Math.abs(own) + here.dotProduct(precision.operate(here)) / freedom;
            if (leverage > 1.0 - NOTHING) {
                return Double.NaN;
            }
            double g = (own - pull.dotProduct(here) / freedom) * rest[i] / (1.0 - leverage) - shared;
            sum += g * g;
        }
        return Math.sqrt(sum);
    }

    /** The least share of the variance of a combination of the readings that is not error; S is diagonal, in units of M. */
    private static double reliability(RealMatrix precision, RealMatrix noise) {
        int k = noise.getRowDimension();
        RealMatrix share = new Array2DRowRealMatrix(k, k);
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                share.setEntry(i, j, Math.sqrt(noise.getEntry(i, i) * noise.getEntry(j, j)) * precision.getEntry(i, j));
            }
        }
        double[] roots = new EigenDecompositionSymmetric(share).getEigenvalues();
        return 1.0 - Arrays.stream(roots).max().orElse(0.0);
    }

    private static RealVector row(double[][] x, int i) {
        return new ArrayRealVector(
                Arrays.stream(x).mapToDouble(column -> column[i]).toArray());
    }

    private static double mean(double[] values, int from, int to) {
        return Arrays.stream(values, from, to).average().orElse(0.0);
    }

    private static double difference(double[] values, int split) {
        return mean(values, 0, split) - mean(values, split, values.length);
    }

    private static double[] centered(double[] values, int split) {
        double one = mean(values, 0, split);
        double two = mean(values, split, values.length);
        double[] rest = new double[values.length];
        Arrays.setAll(rest, i -> values[i] - (i < split ? one : two));
        return rest;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0.0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
