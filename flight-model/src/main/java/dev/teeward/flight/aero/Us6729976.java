package dev.teeward.flight.aero;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The table of US patent 6,729,976: seven states of one ball, one line through the plane of Reynolds number and spin ratio.
 *
 * <p>A ball of 1.68 in and 1.62 oz. The table gives the magnitude M of the force coefficient and its angle above the drag, so
 * {@code Cd = M cos, Cl = M sin}. Quoted from memory (fairly surely; the states at Re 105,000 and 89,000 least surely); an eighth, at
 * Re 69,000 and S 0.284, is not remembered.
 *
 * <p>Reynolds number times spin ratio is nearly the same, 18,700 to 19,700, in all of them: one spin of about 3,000 rpm at
 * falling speed, a drive through its flight. So the table cannot tell what is due to Reynolds number and what to spin ratio,
 * and it is not made into a model of both here. Whoever wants to fly it says on which of the two drag and lift are to
 * depend:
 *
 * <pre>{@code
 * AerodynamicModel drive = AerodynamicModel.combining(
 *     Us6729976.dragByReynoldsNumber(), Us6729976.liftBySpinRatio());
 * Us6729976.rows().get(2).drag(); // 0.2206
 * }</pre>
 *
 * <p>Between the states each is a monotone cubic (Fritsch and Butland 1984), beyond the ends it stays. The domain of each is the rectangle around
 * the line, Re 8.9e4 to 2.3e5 and S 0.085 to 0.211: of that rectangle only its diagonal was measured, which no warning can
 * tell apart. Thread-safe; nothing here changes.
 */
public final class Us6729976 {
    private static final List<Row> ROWS = List.of(
            new Row(89e3, 0.211, 0.375, 43.0),
            new Row(105e3, 0.178, 0.344, 42.0),
            new Row(133e3, 0.142, 0.311, 41.0),
            new Row(158e3, 0.122, 0.291, 40.0),
            new Row(184e3, 0.106, 0.280, 38.0),
            new Row(207e3, 0.095, 0.271, 36.0),
            new Row(230e3, 0.085, 0.265, 33.0));
    private static final ModelDomain DOMAIN = ModelDomain.of(89e3, 230e3, 0.085, 0.211);

    private Us6729976() {}

    /**
     * One state of the table. Immutable and thread-safe.
     *
     * @param reynoldsNumber the Reynolds number
     * @param spinRatio the spin ratio
     * @param magnitude the magnitude of the coefficient of the whole force, the median of the table's range
     * @param angleDegrees its angle above the drag, the median of the table's range [deg]
     */
    public record Row(double reynoldsNumber, double spinRatio, double magnitude, double angleDegrees) {
        /**
         * The drag coefficient.
         *
         * @return magnitude times the cosine
         */
        public double drag() {
            return magnitude * StrictMath.cos(angleDegrees * Math.PI / 180.0);
        }

        /**
         * The lift coefficient.
         *
         * @return magnitude times the sine
         */
        public double lift() {
            return magnitude * StrictMath.sin(angleDegrees * Math.PI / 180.0);
        }
    }

    /**
     * The states of the table.
     *
     * @return seven rows, by rising Reynolds number
     */
    public static List<Row> rows() {
        return ROWS;
    }

    /**
     * The table's drag, taken to depend on Reynolds number alone.
     *
     * @return the law
     */
    public static DragLaw dragByReynoldsNumber() {
        return new Line(true, Row::drag, "drag by Reynolds number");
    }

    /**
     * The table's drag, taken to depend on spin ratio alone.
     *
     * @return the law
     */
    public static DragLaw dragBySpinRatio() {
        return new Line(false, Row::drag, "drag by spin ratio");
    }

    /**
     * The table's lift, taken to depend on Reynolds number alone.
     *
     * @return the law
     */
    public static LiftLaw liftByReynoldsNumber() {
        return new Line(true, Row::lift, "lift by Reynolds number");
    }

    /**
     * The table's lift, taken to depend on spin ratio alone.
     *
     * @return the law
     */
    public static LiftLaw liftBySpinRatio() {
        return new Line(false, Row::lift, "lift by spin ratio");
    }

    /** A coefficient along the line, read off by one of its two coordinates. */
    private static final class Line implements DragLaw, LiftLaw {
        private final boolean byReynolds;
        private final String what;
        private final CoefficientSurface surface;

        Line(boolean byReynolds, ToDoubleFunction<Row> coefficient, String what) {
            this.byReynolds = byReynolds;
            this.what = what;
            int n = ROWS.size();
            double[] x = new double[n];
            double[] twice = new double[2 * n];
            for (int i = 0; i < n; i++) {
                Row row = ROWS.get(byReynolds ? i : n - 1 - i);
                x[i] = byReynolds ? row.reynoldsNumber() : row.spinRatio();
                twice[2 * i] = coefficient.applyAsDouble(row);
                twice[2 * i + 1] = twice[2 * i];
            }
            surface = new CoefficientSurface(x, new double[] {0.0, 1.0}, twice);
        }

        private double at(double re, double s) {
            return surface.at(byReynolds ? re : s, 0.0);
        }

        @Override
        public double dragCoefficient(double re, double s) {
            return at(re, s);
        }

        @Override
        public double liftCoefficient(double re, double s) {
            return at(re, s);
        }

        /** The curvature jumps at the rows. */
        @Override
        public boolean smooth() {
            return false;
        }

        @Override
        public ModelDomain domain() {
            return DOMAIN;
        }

        @Override
        public String reference() {
            return "US 6,729,976, table 1, medians (from memory), " + what + ": one line through Re and S";
        }
    }
}
