package dev.teeward.fitting.explain;

import dev.teeward.fitting.internal.LeastSquares;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A number of a flight as a polynomial of third degree in its inputs, near launches that were flown: the sum of b z(i) z(j) z(k)
 * over i &lt;= j &lt;= k, with z(0) = 1 and the others the inputs in units of their range.
 *
 * <p>Of such a polynomial Shapley's shares have a closed form. With m the middle of both launches and h their difference, an
 * input that stands once beside two others has the slope b (m m + h h / 12), once beside a square b (m m + h h / 4), as a square
 * itself 2 b m m, and as a cube b (3 m m + h h / 4); its share is h times the sum of its slopes. They follow from A = m + h/2, B = m -
 * h/2 and the chances of Shapley's orders, one half for an input and one third for two to come before a third, and add up.
 */
final class CubicFlight {
    private final Design design;
    private final double[] beta;

    private CubicFlight(Design design, double[] beta) {
        this.design = design;
        this.beta = beta;
    }

    /** Launches, of which the inputs that are always the same have no slope. */
    static final class Design {
        private final double[] center;
        private final double[] scale;
        private final int[] moving;
        private final LeastSquares squares;

        private Design(double[] center, double[] scale, int[] moving, LeastSquares squares) {
            this.center = center;
            this.scale = scale;
            this.moving = moving;
            this.squares = squares;
        }

        CubicFlight fit(double[] worths) {
            return new CubicFlight(this, squares.solve(worths));
        }
    }

    /** How many launches determine one of so many inputs, less than which there is no polynomial. */
    static int terms(int inputs) {
        return (inputs + 1) * (inputs + 2) * (inputs + 3) / 6;
    }

    /** From the inputs, by input and launch; nothing if they do not determine a polynomial. */
    static Optional<Design> design(double[][] inputs) {
        int k = inputs.length;
        double[] center = new double[k];
        double[] scale = new double[k];
        for (int j = 0; j < k; j++) {
            double low = Arrays.stream(inputs[j]).min().orElse(0.0);
            double high = Arrays.stream(inputs[j]).max().orElse(0.0);
            center[j] = 0.5 * (low + high);
            scale[j] = 0.5 * (high - low);
        }
        int[] moving = IntStream.range(0, k).filter(j -> scale[j] > 0.0).toArray();
        int m = moving.length;
        int rows = inputs[0].length;
        double[][] columns = new double[terms(m)][rows];
        if (columns.length > rows) {
            return Optional.empty();
        }
        double[] z = new double[m + 1];
        z[0] = 1.0;
        for (int r = 0; r < rows; r++) {
            for (int i = 0; i < m; i++) {
                z[i + 1] = (inputs[moving[i]][r] - center[moving[i]]) / scale[moving[i]];
            }
            int next = 0;
            for (int i = 0; i <= m; i++) {
                for (int j = i; j <= m; j++) {
                    for (int l = j; l <= m; l++) {
                        columns[next++][r] = z[i] * z[j] * z[l];
                    }
                }
            }
        }
        LeastSquares squares = LeastSquares.of(columns);
        return squares.dependentColumn().isPresent()
                ? Optional.empty()
                : Optional.of(new Design(center, scale, moving, squares));
    }

    /** Shapley's share of each input, over its difference between two launches. */
    double[] slopes(double[] first, double[] second) {
        int n = design.moving.length + 1;
        double[] m = new double[n];
        double[] h = new double[n];
        m[0] = 1.0;
        for (int i = 1; i < n; i++) {
            int input = design.moving[i - 1];
            m[i] = (0.5 * (first[input] + second[input]) - design.center[input]) / design.scale[input];
            h[i] = (first[input] - second[input]) / design.scale[input];
        }
        double[] sum = new double[n];
        int next = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                for (int k = j; k < n; k++) {
                    double b = beta[next++];
                    if (i == k) {
                        sum[i] += b * (3.0 * m[i] * m[i] + 0.25 * h[i] * h[i]);
                    } else if (i == j || j == k) {
                        int single = i == j ? k : i;
                        sum[j] += 2.0 * b * m[j] * m[single];
                        sum[single] += b * (m[j] * m[j] + 0.25 * h[j] * h[j]);
                    } else {
                        sum[i] += b * (m[j] * m[k] + h[j] * h[k] / 12.0);
                        sum[j] += b * (m[i] * m[k] + h[i] * h[k] / 12.0);
                        sum[k] += b * (m[i] * m[j] + h[i] * h[j] / 12.0);
                    }
                }
            }
        }
        double[] slopes = new double[design.center.length];
        for (int i = 1; i < n; i++) {
            slopes[design.moving[i - 1]] = sum[i] / design.scale[design.moving[i - 1]];
        }
        return slopes;
    }

    /**
     * By how much the slope of a part of an input, split within its share by Owen, is that of the whole: the part is exchanged
     * before and after the rest of the input, a cube b so giving b (3 m m + 3/4 (whole - part)^2 + part^2 / 4).
     */
    double bend(int input, double whole, double part) {
        int at = Arrays.binarySearch(design.moving, input);
        if (at < 0) {
            return 0.0;
        }
        double scale = design.scale[input];
        double rest = whole - part;
        return cube(at + 1)
                * (0.75 * rest * rest + 0.25 * part * part - 0.25 * whole * whole)
                / (scale * scale * scale);
    }

    private double cube(int index) {
        int n = design.moving.length + 1;
        int next = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                for (int k = j; k < n; k++) {
                    if (i == index && k == index) {
                        return beta[next];
                    }
                    next++;
                }
            }
        }
        throw new IllegalArgumentException("there is no input " + index);
    }
}
