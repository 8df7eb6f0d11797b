package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.LeastSquares;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.Objects;

/**
 * Least squares on a named design: y = X beta + error (Gauss; analysis of covariance Fisher 1932).
 *
 * <p>Coefficients by QR; errors from one common variance s^2 (X'X)^-1, or by a sandwich
 * ({@link ErrorModel}); t with n - k degrees of freedom in both cases. With complete pairs the coefficient of the club in a
 * model with the pairs as blocks is the paired difference, with the same t and p as the paired t test.
 *
 * <pre>{@code
 * Design design = Design.of(carry.length).withFactor("club", "Alder", club).withCentered("speed", speed);
 * LinearFit fit = LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(design, carry);
 * fit.coefficient("club=Rowan").estimate();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class LinearModel {
    private static final LinearModel DEFAULTS = new LinearModel(0.95, ErrorModel.CONSTANT, RatioUnit.ONE);

    private final double level;
    private final ErrorModel errors;
    private final Unit unit;

    private LinearModel(double level, ErrorModel errors, Unit unit) {
        this.level = level;
        this.errors = errors;
        this.unit = unit;
    }

    /**
     * 95 %, one common variance, a pure number.
     *
     * @return the default procedure
     */
    public static LinearModel withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public LinearModel withLevel(double level) {
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in (0, 1), but was " + level + "; for 95 percent use 0.95");
        }
        return new LinearModel(level, errors, unit);
    }

    /**
     * With another way to reckon errors.
     *
     * @param errors the way; one common variance unless changed
     * @return a changed copy
     */
    public LinearModel withErrors(ErrorModel errors) {
        return new LinearModel(level, Objects.requireNonNull(errors, "errors"), unit);
    }

    /**
     * With the unit of the response.
     *
     * @param unit the unit that the responses are in, carried through to the estimates
     * @return a changed copy
     */
    public LinearModel withUnit(Unit unit) {
        return new LinearModel(level, errors, Objects.requireNonNull(unit, "unit"));
    }

    /**
     * Fits.
     *
     * @param design the columns
     * @param y the response, one finite number for each row
     * @return the fit
     * @throws IllegalArgumentException if the numbers are not as many as rows or not finite, there are fewer rows than
     *     columns, or a column is a combination of those before it
     */
    public LinearFit fit(Design design, double... y) {
        return new LinearFit(design, factor(design, y), y.clone(), level, errors, unit);
    }

    /** Checks and factors. */
    static LeastSquares factor(Design design, double[] y) {
        checkResponse(design, y);
        int k = design.names().size();
        if (design.rows() < k) {
            throw new IllegalArgumentException("a model of " + k
                    + " coefficients needs at least as many shots, but had " + design.rows() + "; leave terms out");
        }
        LeastSquares squares = LeastSquares.of(design.columns());
        squares.dependentColumn().ifPresent(j -> {
            throw new IllegalArgumentException("the column " + design.names().get(j)
                    + " is a combination of those before it (" + design.names().subList(0, j) + "); leave one out");
        });
        return squares;
    }

    static void checkResponse(Design design, double[] y) {
        if (y.length != design.rows()) {
            throw new IllegalArgumentException(
                    "y must have one number for each of " + design.rows() + " rows, but had " + y.length);
        }
        for (int i = 0; i < y.length; i++) {
            if (!Double.isFinite(y[i])) {
                throw new IllegalArgumentException(
                        "y[" + i + "] must be finite, but was " + y[i] + "; leave shots without it out");
            }
        }
    }
}
