package dev.teeward.fitting.linear;

import dev.teeward.fitting.internal.LeastSquares;
import dev.teeward.fitting.internal.ShapleyValue;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The difference of two clubs' means split into what the swing explains and the rest, so that the parts add up exactly.
 *
 * <p>With the coefficients of y on club and covariates, mean(B) - mean(A) = tau + sum of beta_k (mean x_k(B) - mean x_k(A)):
 * an identity of least squares, whatever the order of the covariates (Gelbach 2016). tau is the direct effect of the club
 * at the same swing. The threefold split (Oaxaca 1973, Blinder 1973) lets the slopes differ between clubs and is fragile at
 * ten shots. Shapley's average over the orders of entry is given for comparison: entering one covariate at a time makes the
 * parts depend on the order.
 *
 * <p><b>Which one.</b> Shots that are not pairs: {@link #decompose} as it is, with HC3 errors (MacKinnon and White 1985), since
 * clubs may scatter differently and be hit unequally often; one common variance then calls equal clubs different far more
 * often than stated. Pairs, blocks or an order in which there may be drift: {@code decompose} with a base
 * ({@link #withBase}) that holds them, so that what the shots of a block share drops out. Complete pairs and nothing else:
 * {@link #decomposePairs}, which is the same with less to write. To leave pairs out of the model is to throw away why they
 * were hit.
 *
 * <p>With blocks the errors are those of one common variance within them unless {@link #withErrors} says otherwise: for
 * complete pairs the error of the difference is then that of the paired t test, whatever the clubs' spreads, whereas a
 * sandwich over single shots of pairs doubles the variance.
 *
 * <p>The intervals of the parts are by the delta method with the covariate means taken as random: var = beta^2 var(d) + d^2
 * var(beta), normal theory, t with the fit's degrees of freedom; they are approximate, more so below ten shots a club. A
 * covariate measured with noise explains too little. Beyond two or three covariates twenty shots cannot carry it.
 *
 * <pre>{@code
 * MeanDecomposition split = MeanDecomposition.withDefaults();
 * MeanDecomposition.Result r = split.decompose("Alder", club, Map.of("speed", speed), carry);
 * r.direct().estimate();                    // club, at the same speed
 * r.explained().get("speed").estimate();    // swing
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class MeanDecomposition {
    private static final String CLUB = "club";
    private static final int MOST_COVARIATES = 8;
    private static final MeanDecomposition DEFAULTS = new MeanDecomposition(0.95, RatioUnit.ONE, null, null);

    private final double level;
    private final Unit unit;
    private final @Nullable ErrorModel errors;
    private final @Nullable Design base;

    private MeanDecomposition(double level, Unit unit, @Nullable ErrorModel errors, @Nullable Design base) {
        this.level = level;
        this.unit = unit;
        this.errors = errors;
        this.base = base;
    }

    /**
     * What came out; all in the unit of the response, second club minus reference.
     *
     * @param difference the difference of the means, within the blocks and at the order of a base if there is one, whose
     *     parts follow
     * @param direct the part of the club at the same swing: the coefficient of the club
     * @param explained the part of each covariate; with the direct part they add up to the difference
     * @param threefold the split with slopes of each club's own, or empty if a club has too few shots for them or there is
     *     a base
     * @param shapley each covariate's part averaged over all orders of entry
     * @param fit the model behind the direct part
     * @param warnings what to know before using this
     */
    public record Result(
            Coefficient difference,
            Coefficient direct,
            Map<String, Coefficient> explained,
            Optional<Threefold> threefold,
            Map<String, Double> shapley,
            LinearFit fit,
            List<Warning> warnings) {
        /**
         * Copies the maps, in their order.
         *
         * @param difference the difference of the means, whose parts follow
         * @param direct the part of the club at the same swing: the coefficient of the club
         * @param explained the part of each covariate; with the direct part they add up to the difference
         * @param threefold the split with slopes of each club's own, or empty if a club has too few shots for them
         * @param shapley each covariate's part averaged over all orders of entry
         * @param fit the model behind the direct part
         * @param warnings what to know before using this
         */
        public Result {
            explained = Collections.unmodifiableMap(new LinkedHashMap<>(explained));
            shapley = Collections.unmodifiableMap(new LinkedHashMap<>(shapley));
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * The threefold split; its parts add up to the difference of the means.
     *
     * @param endowments the difference of the covariate means at the reference's slopes, for each covariate
     * @param coefficients the difference of slopes and intercepts at the reference's means
     * @param interaction the rest
     */
    public record Threefold(Map<String, Double> endowments, double coefficients, double interaction) {
        /**
         * Copies the map, in its order.
         *
         * @param endowments the difference of the covariate means at the reference's slopes, for each covariate
         * @param coefficients the difference of slopes and intercepts at the reference's means
         * @param interaction the rest
         */
        public Threefold {
            endowments = Collections.unmodifiableMap(new LinkedHashMap<>(endowments));
        }
    }

    /**
     * 95 %, a pure number, no base, HC3 errors unless there are blocks or pairs.
     *
     * @return the default procedure
     */
    public static MeanDecomposition withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public MeanDecomposition withLevel(double level) {
        LinearModel.withDefaults().withLevel(level);
        return new MeanDecomposition(level, unit, errors, base);
    }

    /**
     * With the unit of the response.
     *
     * @param unit the unit that the responses are in
     * @return a changed copy
     */
    public MeanDecomposition withUnit(Unit unit) {
        return new MeanDecomposition(level, Objects.requireNonNull(unit, "unit"), errors, base);
    }

    /**
     * With another way to reckon errors.
     *
     * @param errors the way; unless changed HC3, but one common variance within blocks or pairs
     * @return a changed copy
     */
    public MeanDecomposition withErrors(ErrorModel errors) {
        return new MeanDecomposition(level, unit, Objects.requireNonNull(errors, "errors"), base);
    }

    /**
     * With columns that stand in every model beside the club: the pair or block of each shot, its place in the order.
     *
     * <p>The parts then add up to the club's difference beside these columns, exactly: what they share with the covariates is
     * taken out of each. Its factors are the blocks. {@link #decomposePairs} has no use for it and refuses it.
     *
     * <pre>{@code
     * Design base = Design.of(20).withFactor("pair", "1", pair).withCentered("order", order);
     * MeanDecomposition.withDefaults().withBase(base).decompose("Alder", club, Map.of("speed", speed), carry);
     * }</pre>
     *
     * @param columns one row for each shot; no term named club or as a covariate
     * @return a changed copy
     */
    public MeanDecomposition withBase(Design columns) {
        return new MeanDecomposition(level, unit, errors, Objects.requireNonNull(columns, "columns"));
    }

    /**
     * Splits the difference.
     *
     * @param reference the club that the other is compared with
     * @param club the club of each shot; two different ones
     * @param covariates one to eight covariates by name, one finite number for each shot
     * @param y the response of each shot, finite
     * @return the parts
     * @throws IllegalArgumentException if there are not two clubs, no or more than eight covariates, lengths differ, a
     *     number is not finite, the base has another number of rows, or the shots are too few or the columns not independent
     */
    public Result decompose(String reference, String[] club, Map<String, double[]> covariates, double[] y) {
        checkNumber(covariates);
        if (base != null && base.rows() != y.length) {
            throw new IllegalArgumentException(
                    "the base must have one row for each of " + y.length + " shots, but had " + base.rows());
        }
        Design clubs = (base == null ? Design.of(y.length) : base).withFactor(CLUB, reference, club);
        List<String> levels = clubs.levels(CLUB);
        if (levels.size() != 2) {
            throw new IllegalArgumentException("club must name two clubs, but named " + levels);
        }
        String column = CLUB + "=" + levels.get(1);
        boolean blocks = base != null && base.hasFactor();
        Result split = split(clubs, column, covariates, y, blocks);
        List<Warning> warnings = new ArrayList<>(split.warnings());
        Optional<Threefold> threefold = base != null
                ? Optional.empty()
                : threefold(clubs, List.copyOf(covariates.keySet()), covariates, y, reference, club);
        if (threefold.isEmpty()) {
            warnings.add(Warning.of(
                    "no-threefold-split",
                    base != null
                            ? "slopes of each club's own beside blocks or an order do not add up to the difference"
                            : "the shots of one club cannot carry slopes of their own, so there is none"));
        }
        return new Result(
                split.difference(),
                split.direct(),
                split.explained(),
                threefold,
                split.shapley(),
                split.fit(),
                warnings);
    }

    /**
     * Splits the mean difference of pairs, in which what both shots of a pair share has dropped out.
     *
     * <p>The differences of y are fitted on the differences of the covariates: the intercept is the direct effect, at equal
     * covariates, as in the model of all shots with an effect of each pair; the parts add up exactly as there. Errors
     * are those of whole pairs, of one common variance unless changed: the whole difference has the t of the paired test. There
     * is no threefold split.
     *
     * @param covariates one to eight covariates by name, first minus second, one finite number for each pair
     * @param y the response, first minus second, of each pair, finite
     * @return the parts, first minus second
     * @throws IllegalArgumentException if there are no or more than eight covariates, lengths differ, a number is not finite,
     *     there is a base, or the pairs are too few or the covariates not independent
     */
    public Result decomposePairs(Map<String, double[]> covariates, double[] y) {
        checkNumber(covariates);
        if (base != null) {
            throw new IllegalArgumentException(
                    "differences within pairs take no base, but one was given; give the difference"
                            + " in the order as a covariate, or use decompose with the pairs in the base");
        }
        return split(Design.of(y.length), Design.INTERCEPT, covariates, y, true);
    }

    private static void checkNumber(Map<String, double[]> covariates) {
        if (covariates.isEmpty() || covariates.size() > MOST_COVARIATES) {
            throw new IllegalArgumentException("covariates must be 1 to " + MOST_COVARIATES + " in number, but were "
                    + covariates.size() + "; two or three chosen beforehand suit twenty shots");
        }
    }

    /** The split of one coefficient of a design without covariates. */
    private Result split(Design clubs, String column, Map<String, double[]> covariates, double[] y, boolean blocks) {
        ErrorModel usual = blocks ? ErrorModel.CONSTANT : ErrorModel.HC3;
        LinearModel model =
                LinearModel.withDefaults().withLevel(level).withUnit(unit).withErrors(errors == null ? usual : errors);
        List<String> names = List.copyOf(covariates.keySet());
        LinearFit full = model.fit(with(clubs, names, covariates), y);
        Coefficient direct = full.coefficient(column);
        Coefficient total = model.fit(clubs, y).coefficient(column);
        Map<String, Coefficient> explained = new LinkedHashMap<>();
        for (String name : names) {
            Coefficient slope = full.coefficient(name);
            Coefficient shift = model.fit(clubs, values(covariates, name)).coefficient(column);
            double beta = slope.estimate().value();
            double d = shift.estimate().value();
            double error = Math.hypot(
                    beta * shift.standardError().orElse(0.0),
                    d * slope.standardError().orElse(0.0));
            boolean known = slope.standardError().isPresent();
            explained.put(
                    name, Coefficient.of(name, beta * d, known ? error : 0.0, full.degreesOfFreedom(), level, unit));
        }
        return new Result(
                total,
                direct,
                explained,
                Optional.empty(),
                shapley(model, clubs, column, names, covariates, y),
                full,
                full.warnings());
    }

    private static Optional<Threefold> threefold(
            Design clubs,
            List<String> names,
            Map<String, double[]> covariates,
            double[] y,
            String reference,
            String[] club) {
        double[][] group = slopes(clubs, names, covariates, y, reference, club);
        if (group.length == 0) {
            return Optional.empty();
        }
        double[] first = group[0];
        double[] second = group[1];
        Map<String, Double> endowments = new LinkedHashMap<>();
        double coefficients = second[0] - first[0];
        double interaction = 0.0;
        for (int k = 0; k < names.size(); k++) {
            double[] x = values(covariates, names.get(k));
            double before = mean(x, club, reference, true);
            double shift = mean(x, club, reference, false) - before;
            endowments.put(names.get(k), shift * first[k + 1]);
            coefficients += before * (second[k + 1] - first[k + 1]);
            interaction += shift * (second[k + 1] - first[k + 1]);
        }
        return Optional.of(new Threefold(endowments, coefficients, interaction));
    }

    private static double[] values(Map<String, double[]> covariates, String name) {
        return Objects.requireNonNull(covariates.get(name), name);
    }

    private static Design with(Design design, List<String> names, Map<String, double[]> covariates) {
        Design changed = design;
        for (String name : names) {
            changed = changed.withCovariate(name, values(covariates, name));
        }
        return changed;
    }

    private static double mean(double[] x, String[] club, String reference, boolean own) {
        double sum = 0.0;
        int n = 0;
        for (int i = 0; i < x.length; i++) {
            if (club[i].equals(reference) == own) {
                sum += x[i];
                n++;
            }
        }
        return sum / n;
    }

    /** Intercept and slopes of the reference and of the other club; none if a club has too few shots. */
    private static double[][] slopes(
            Design clubs,
            List<String> names,
            Map<String, double[]> covariates,
            double[] y,
            String reference,
            String[] club) {
        double[][] found = new double[2][];
        for (int side = 0; side < 2; side++) {
            boolean own = side == 0;
            int[] rows = IntStream.range(0, clubs.rows())
                    .filter(i -> club[i].equals(reference) == own)
                    .toArray();
            double[][] columns = new double[names.size() + 1][];
            columns[0] = new double[rows.length];
            Arrays.fill(columns[0], 1.0);
            for (int k = 0; k < names.size(); k++) {
                columns[k + 1] = pick(values(covariates, names.get(k)), rows);
            }
            LeastSquares squares = rows.length < columns.length ? null : LeastSquares.of(columns);
            if (squares == null || squares.dependentColumn().isPresent()) {
                return new double[0][];
            }
            found[side] = squares.solve(pick(y, rows));
        }
        return found;
    }

    private static double[] pick(double[] x, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> x[i]).toArray();
    }

    private static Map<String, Double> shapley(
            LinearModel model,
            Design clubs,
            String column,
            List<String> names,
            Map<String, double[]> covariates,
            double[] y) {
        int k = names.size();
        // What a set of covariates is worth is how much of the club's coefficient it takes away.
        double[] worth = new double[1 << k];
        for (int set = 0; set < worth.length; set++) {
            Design design = clubs;
            for (int j = 0; j < k; j++) {
                if ((set >> j & 1) == 1) {
                    design = design.withCovariate(names.get(j), values(covariates, names.get(j)));
                }
            }
            worth[set] = -model.fit(design, y).coefficient(column).estimate().value();
        }
        double[] shares = ShapleyValue.of(worth);
        Map<String, Double> parts = new LinkedHashMap<>();
        for (int j = 0; j < k; j++) {
            parts.put(names.get(j), shares[j]);
        }
        return parts;
    }
}
