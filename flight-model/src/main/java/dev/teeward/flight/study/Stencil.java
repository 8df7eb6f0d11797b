package dev.teeward.flight.study;

import java.util.function.DoubleFunction;

/**
 * First derivatives of several functions of one variable at once, by differences of fourth order.
 *
 * <p>Inside its range: {@code (f(-2h) - 8 f(-h) + 8 f(h) - f(2h)) / 12h}, which is one step of Richardson's extrapolation from
 * the central differences with h and 2h. At an end of the range the five points lie on one side:
 * {@code (-25 f(0) + 48 f(h) - 36 f(2h) + 16 f(3h) - 3 f(4h)) / 12h}. The formulas are classical (Abramowitz and Stegun 1964,
 * table 25.2; from memory).
 *
 * <p>The doubt is the distance from a formula of second order over fewer of the same points, or the jump of the derivative at
 * the centre where that is more, {@code |2 A(h) - A(2h)|} with {@code A(h) = (f(h) - 2 f(0) + f(-h))/h}. For a smooth function
 * it is far larger than the error.
 */
final class Stencil {
    private final double[] derivatives;
    private final double[] doubts;

    private Stencil(double[] derivatives, double[] doubts) {
        this.derivatives = derivatives;
        this.doubts = doubts;
    }

    static Stencil at(double x, double h, double lowest, double highest, DoubleFunction<double[]> functions) {
        if (x - 2.0 * h > lowest && x + 2.0 * h < highest) {
            double[] a = functions.apply(x - 2.0 * h);
            double[] b = functions.apply(x - h);
            double[] centre = functions.apply(x);
            double[] c = functions.apply(x + h);
            double[] d = functions.apply(x + 2.0 * h);
            double[] derivatives = new double[a.length];
            double[] doubts = new double[a.length];
            for (int i = 0; i < a.length; i++) {
                derivatives[i] = (8.0 * (c[i] - b[i]) - (d[i] - a[i])) / (12.0 * h);
                double near = (c[i] - 2.0 * centre[i] + b[i]) / h;
                double far = (d[i] - 2.0 * centre[i] + a[i]) / (2.0 * h);
                doubts[i] = Math.max(
                        Math.abs(derivatives[i] - (c[i] - b[i]) / (2.0 * h)), Math.abs(2.0 * near - far) / 2.0);
            }
            return new Stencil(derivatives, doubts);
        }
        double step = x - 2.0 * h > lowest ? -h : h;
        double[][] f = new double[5][];
        for (int k = 0; k < 5; k++) {
            f[k] = functions.apply(x + k * step);
        }
        double[] derivatives = new double[f[0].length];
        double[] doubts = new double[f[0].length];
        for (int i = 0; i < derivatives.length; i++) {
            derivatives[i] = (-25.0 * f[0][i] + 48.0 * f[1][i] - 36.0 * f[2][i] + 16.0 * f[3][i] - 3.0 * f[4][i])
                    / (12.0 * step);
            doubts[i] = Math.abs(derivatives[i] - (-3.0 * f[0][i] + 4.0 * f[1][i] - f[2][i]) / (2.0 * step));
        }
        return new Stencil(derivatives, doubts);
    }

    double derivative(int function) {
        return derivatives[function];
    }

    double doubt(int function) {
        return doubts[function];
    }
}
