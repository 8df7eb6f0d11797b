package dev.teeward.fitting.linear;

/**
 * How the errors of coefficients are reckoned: from one common variance, or by a sandwich that allows every shot its own
 * (heteroscedasticity-consistent; White 1980, MacKinnon and White 1985, HC4 Cribari-Neto 2004).
 *
 * <p>With e the residuals, h the leverages, n shots and k coefficients the weights of the sandwich are those given below.
 * At 20 shots HC3 holds its level best among them (Long and Ervin 2000).
 *
 * <pre>{@code
 * LinearFit fit = LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(design, y);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum ErrorModel {
    /** One variance for all shots: the textbook errors. */
    CONSTANT,

    /** Weights e^2: too small in small samples. */
    HC0,

    /** Weights e^2 n / (n - k). */
    HC1,

    /** Weights e^2 / (1 - h). */
    HC2,

    /** Weights e^2 / (1 - h)^2, close to the jackknife. */
    HC3,

    /** Weights e^2 / (1 - h)^d with d the smaller of 4 and n h / k. */
    HC4;

    double weight(double residual, double leverage, int n, int k) {
        double square = residual * residual;
        return switch (this) {
            case CONSTANT, HC0 -> square;
            case HC1 -> square * n / (n - (double) k);
            case HC2 -> square / (1.0 - leverage);
            case HC3 -> square / ((1.0 - leverage) * (1.0 - leverage));
            case HC4 -> square / Math.pow(1.0 - leverage, Math.min(4.0, n * leverage / k));
        };
    }

    /** Whether a shot that the model fits whatever it is makes these errors undefined. */
    boolean dividesByRestOfLeverage() {
        return this == HC2 || this == HC3 || this == HC4;
    }
}
