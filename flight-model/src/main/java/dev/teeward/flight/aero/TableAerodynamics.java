package dev.teeward.flight.aero;

import java.io.IOException;
import java.io.Reader;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A ball measured in a wind tunnel: drag and lift on a grid of Reynolds number and spin ratio.
 *
 * <p>Between the nodes each coefficient is a bicubic surface: continuous with its gradient; through every value of the table;
 * never outside the four values around it; and rising (falling) along an axis within a cell if both edges of the cell along
 * that axis rise (fall). So it has no bumps or dips that the table does not have, and a true peak between two nodes is cut
 * off. Along a grid line it is the monotone cubic of Fritsch and Butland (1984), with flatter slopes where the conditions
 * across the lines ask for it (Carlson and Fritsch 1985 give the conditions for two dimensions; the sufficient ones used here
 * are those of Bernstein's form). Sampled from {@link TypicalAerodynamics} on 10 by 8 nodes over its domain, drag comes
 * within 0.0025 and lift within 0.001 everywhere, and both within 0.0003 on average.
 *
 * <p>The curvature of the surface jumps from cell to cell, so the table is not {@linkplain #smooth() smooth}, and flights take
 * about seven times the steps of a formula. Landings are as near as with formulas: over 10,000 random launches by tables of 8 by 7
 * nodes within 0.006 mm, and over 10,000 more in wind profiles and on slopes within 0.042 mm of Hipparchus' DormandPrince853 at
 * tolerance 1e-11.
 *
 * <p><b>Outside the grid</b> each state takes the coefficients of the nearest point of the grid's rectangle, which is
 * {@link #domain()}: a flight that goes there says so.
 *
 * <p><b>File.</b> Comma-separated, the heading naming four columns in any order, one row a grid point in any order:
 *
 * <pre>
 * # reference: invented example
 * reynolds_number,spin_ratio,drag_coefficient,lift_coefficient
 * 80000,0.1,0.27,0.16
 * 80000,0.3,0.31,0.27
 * 200000,0.1,0.24,0.15
 * 200000,0.3,0.28,0.24
 * </pre>
 *
 * <p>Reynolds numbers are plain, not in units of 1e5: a table whose greatest is below 1,000 is refused. Every Reynolds number
 * must come with every spin ratio, once. Lines that start with # and empty lines are skipped, but
 * for the reference.
 *
 * <pre>{@code
 * AerodynamicModel ball = TableAerodynamics.read(Files.newBufferedReader(path), "tunnel.csv")
 *     .withSpread(CoefficientSpread.of(0.02, 0.03));
 * FlightModel model = FlightModel.of(Ball.of(ball));
 * }</pre>
 *
 * <p>Only {@code + - * /} are used: the same bits on every virtual machine. Immutable and thread-safe.
 */
public final class TableAerodynamics implements AerodynamicModel, Serializable {
    private static final long serialVersionUID = 1L;

    private static final double LEAST_GREATEST = 1e3;

    /** The Reynolds numbers, rising. */
    private final double[] re;

    /** The spin ratios, rising. */
    private final double[] s;

    /** The drag coefficients, by Reynolds number, then spin ratio. */
    private final double[] drag;

    /** The lift coefficients, by Reynolds number, then spin ratio. */
    private final double[] lift;

    /** Where the numbers come from. */
    private final String reference;

    /** The slope of the decay moment. */
    private final double momentSlope;

    /** The spread from ball to ball, or null. */
    private final @Nullable CoefficientSpread spread;

    private final transient CoefficientSurface dragSurface;
    private final transient CoefficientSurface liftSurface;
    private final transient ModelDomain domain;

    private TableAerodynamics(
            double[] re,
            double[] s,
            double[] drag,
            double[] lift,
            String reference,
            double momentSlope,
            @Nullable CoefficientSpread spread) {
        this.re = re;
        this.s = s;
        this.drag = drag;
        this.lift = lift;
        this.reference = reference;
        this.momentSlope = momentSlope;
        this.spread = spread;
        this.dragSurface = new CoefficientSurface(re, s, drag);
        this.liftSurface = new CoefficientSurface(re, s, lift);
        this.domain = ModelDomain.of(re[0], re[re.length - 1], s[0], s[s.length - 1]);
    }

    /**
     * A table.
     *
     * @param re the Reynolds numbers, rising, at least two, in [0, 1e7] and the last at least 1e3, as plain numbers (not in units
     *     of 1e5)
     * @param s the spin ratios, rising, at least two, in [0, 10]
     * @param drag the drag coefficients, a row for each Reynolds number, in [0, 5]
     * @param lift the lift coefficients, a row for each Reynolds number, in [-5, 5]
     * @return the model
     * @throws IllegalArgumentException if an axis does not rise, a row has another length than there are spin ratios, or a
     *     number lies outside its range; it names the grid point
     */
    public static TableAerodynamics of(double[] re, double[] s, double[][] drag, double[][] lift) {
        return new TableAerodynamics(
                reynolds(axis("re", re, 1e7)),
                axis("s", s, 10.0),
                grid("drag", re, s, drag, 0.0, 5.0),
                grid("lift", re, s, lift, -5.0, 5.0),
                "table of drag and lift, origin not stated",
                0.010,
                null);
    }

    /**
     * A table with the values of another model at the nodes of a grid.
     *
     * @param model the model
     * @param re the Reynolds numbers, rising, at least two, in [0, 1e7] and the last at least 1e3
     * @param s the spin ratios, rising, at least two, in [0, 10]
     * @return the table; its reference says what it was sampled from
     * @throws IllegalArgumentException if an axis does not rise or a number lies outside its range
     */
    public static TableAerodynamics sampling(AerodynamicModel model, double[] re, double[] s) {
        double[][] drag = new double[re.length][s.length];
        double[][] lift = new double[re.length][s.length];
        for (int i = 0; i < re.length; i++) {
            for (int j = 0; j < s.length; j++) {
                drag[i][j] = model.dragCoefficient(re[i], s[j]);
                lift[i][j] = model.liftCoefficient(re[i], s[j]);
            }
        }
        return of(re, s, drag, lift)
                .withReference("sampled from: " + model.reference())
                .withMomentSlope(model.momentSlope());
    }

    /**
     * Reads a table from a file of the form above.
     *
     * @param reader where the text comes from; it is read to its end and not closed
     * @param name what errors call the file
     * @return the model
     * @throws IOException if reading fails
     * @throws IllegalArgumentException if the text is not such a table; it names file and line, or the grid point that is
     *     missing
     */
    public static TableAerodynamics read(Reader reader, String name) throws IOException {
        return CoefficientCsv.read(reader, name);
    }

    /**
     * Writes the table in the form that {@link #read(Reader, String)} takes; what is read back is equal but for decay and
     * spread, which the file does not hold.
     *
     * @param out where the text goes
     * @throws IOException if writing fails
     */
    public void writeTo(Appendable out) throws IOException {
        CoefficientCsv.write(this, out);
    }

    /**
     * A copy that says where its numbers come from.
     *
     * @param value who measured which ball, when and where, in one line
     * @return the copy
     * @throws IllegalArgumentException if it is blank or more than one line
     */
    public TableAerodynamics withReference(String value) {
        if (value.isBlank() || value.lines().count() != 1) {
            throw new IllegalArgumentException("reference must be one line of text, but was \"" + value + "\"");
        }
        return new TableAerodynamics(re, s, drag, lift, value.strip(), momentSlope, spread);
    }

    /**
     * A copy with another decay of the spin.
     *
     * @param value the slope of the decay moment, in [0, 1]; see {@link AerodynamicModel#momentSlope()}
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public TableAerodynamics withMomentSlope(double value) {
        if (!(value >= 0.0 && value <= 1.0)) {
            throw new IllegalArgumentException(
                    "momentSlope must be in [0, 1], but was " + value + "; the usual value is 0.010");
        }
        return new TableAerodynamics(re, s, drag, lift, reference, value, spread);
    }

    /**
     * A copy that says how much balls of this kind differ.
     *
     * @param value the relative spread of drag and lift
     * @return the copy
     */
    public TableAerodynamics withSpread(CoefficientSpread value) {
        return new TableAerodynamics(
                re, s, drag, lift, reference, momentSlope, Objects.requireNonNull(value, "spread"));
    }

    /**
     * The Reynolds numbers of the grid.
     *
     * @return a copy, rising
     */
    public double[] reynoldsNumbers() {
        return re.clone();
    }

    /**
     * The spin ratios of the grid.
     *
     * @return a copy, rising
     */
    public double[] spinRatios() {
        return s.clone();
    }

    @Override
    public double dragCoefficient(double reynolds, double ratio) {
        return dragSurface.at(reynolds, ratio);
    }

    @Override
    public double liftCoefficient(double reynolds, double ratio) {
        return liftSurface.at(reynolds, ratio);
    }

    @Override
    public double momentSlope() {
        return momentSlope;
    }

    @Override
    public ModelDomain domain() {
        return domain;
    }

    @Override
    public Optional<CoefficientSpread> spread() {
        return Optional.ofNullable(spread);
    }

    @Override
    public String reference() {
        return reference;
    }

    private static double[] axis(String name, double[] nodes, double most) {
        if (nodes.length < 2) {
            throw new IllegalArgumentException(
                    name + " must have at least 2 nodes, but had " + nodes.length + "; a single line is not a table");
        }
        for (int i = 0; i < nodes.length; i++) {
            boolean rising = i == 0 || nodes[i] > nodes[i - 1];
            if (!(nodes[i] >= 0.0 && nodes[i] <= most && rising)) {
                throw new IllegalArgumentException(name + " must rise strictly within [0, " + most + "], but node " + i
                        + " was " + nodes[i] + (i == 0 ? "" : " after " + nodes[i - 1]));
            }
        }
        return nodes.clone();
    }

    /** Refuses numbers that no golf ball in flight has, however slow: one of 1 m/s has a Reynolds number of some 3,000. */
    private static double[] reynolds(double[] nodes) {
        double greatest = nodes[nodes.length - 1];
        if (greatest < LEAST_GREATEST) {
            throw new IllegalArgumentException(
                    "the greatest Reynolds number must be in [" + LEAST_GREATEST + ", 1.0E7], but was " + greatest
                            + "; in units of 1e5? Give the plain numbers, as 80000 for 0.8e5");
        }
        return nodes;
    }

    private static double[] grid(String name, double[] re, double[] s, double[][] rows, double low, double high) {
        if (rows.length != re.length) {
            throw new IllegalArgumentException(name + " must have a row for each of the " + re.length
                    + " Reynolds numbers, but had " + rows.length);
        }
        double[] grid = new double[re.length * s.length];
        for (int i = 0; i < re.length; i++) {
            if (rows[i].length != s.length) {
                throw new IllegalArgumentException(name + " at Re " + re[i] + " must have a value for each of the "
                        + s.length + " spin ratios, but had " + rows[i].length);
            }
            for (int j = 0; j < s.length; j++) {
                if (!(rows[i][j] >= low && rows[i][j] <= high)) {
                    throw new IllegalArgumentException(name + " at Re " + re[i] + " and S " + s[j] + " must be in ["
                            + low + ", " + high + "], but was " + rows[i][j]);
                }
                grid[i * s.length + j] = rows[i][j];
            }
        }
        return grid;
    }

    double drag(int i, int j) {
        return drag[i * s.length + j];
    }

    double lift(int i, int j) {
        return lift[i * s.length + j];
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof TableAerodynamics that
                && Arrays.equals(re, that.re)
                && Arrays.equals(s, that.s)
                && Arrays.equals(drag, that.drag)
                && Arrays.equals(lift, that.lift)
                && reference.equals(that.reference)
                && Double.compare(momentSlope, that.momentSlope) == 0
                && Objects.equals(spread, that.spread);
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                Arrays.hashCode(re),
                Arrays.hashCode(s),
                Arrays.hashCode(drag),
                Arrays.hashCode(lift),
                reference,
                momentSlope,
                spread);
    }

    @Override
    public String toString() {
        return re.length + " by " + s.length + " nodes, " + domain + ": " + reference;
    }

    /**
     * Works the surfaces out again when the table is read back.
     *
     * @return an equal table
     */
    private Object readResolve() {
        return new TableAerodynamics(re, s, drag, lift, reference, momentSlope, spread);
    }
}
