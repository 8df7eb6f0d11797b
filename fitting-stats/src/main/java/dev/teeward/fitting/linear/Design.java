package dev.teeward.fitting.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * The columns of a linear model, by name: an intercept, covariates, factors (one column for each level but the reference)
 * and the interaction of a factor with a covariate.
 *
 * <p>A factor's column is named {@code factor=level} and holds the difference of that level to the reference; blocks, clubs
 * and golfers are factors. Centre a covariate ({@link #withCentered}) when it interacts with a factor, so that the factor's
 * coefficient is the difference at the mean of the covariate.
 *
 * <pre>{@code
 * Design design = Design.of(20).withFactor("club", "Alder", club).withFactor("block", "1", block)
 *         .withCentered("order", order);
 * design.names(); // intercept, club=Rowan, block=2, ..., order
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Design {
    /** The name of the first column. */
    public static final String INTERCEPT = "intercept";

    private final int rows;
    private final List<Term> terms;

    private Design(int rows, List<Term> terms) {
        this.rows = rows;
        this.terms = List.copyOf(terms);
    }

    /** One named group of columns, with what a marginal mean puts in the place of each. */
    private record Term(
            String name, List<String> levels, List<String> names, List<double[]> columns, List<Double> means) {
        boolean factor() {
            return !levels.isEmpty();
        }
    }

    /**
     * A design of the intercept alone.
     *
     * @param rows the number of shots, at least 1
     * @return the design
     * @throws IllegalArgumentException if there is no row
     */
    public static Design of(int rows) {
        if (rows < 1) {
            throw new IllegalArgumentException("rows must be at least 1, but was " + rows);
        }
        double[] ones = new double[rows];
        Arrays.fill(ones, 1.0);
        return new Design(
                rows, List.of(new Term(INTERCEPT, List.of(), List.of(INTERCEPT), List.of(ones), List.of(1.0))));
    }

    /**
     * With a covariate as it is.
     *
     * @param name its name, not used yet
     * @param x one finite number for each row
     * @return a changed copy
     * @throws IllegalArgumentException if the name is taken or blank, or the numbers are not as many as rows or not finite
     */
    public Design withCovariate(String name, double... x) {
        return withColumn(name, checked(name, x));
    }

    /**
     * With a covariate less its mean.
     *
     * @param name its name, not used yet
     * @param x one finite number for each row
     * @return a changed copy
     * @throws IllegalArgumentException if the name is taken or blank, or the numbers are not as many as rows or not finite
     */
    public Design withCentered(String name, double... x) {
        double[] column = checked(name, x);
        double mean = mean(column);
        Arrays.setAll(column, i -> column[i] - mean);
        return withColumn(name, column);
    }

    private Design withColumn(String name, double[] column) {
        return with(new Term(name, List.of(), List.of(name), List.of(column), List.of(mean(column))));
    }

    /**
     * With a factor.
     *
     * @param name its name, not used yet
     * @param reference the level that the others are compared with
     * @param labels one level for each row; the reference among them, and another
     * @return a changed copy
     * @throws IllegalArgumentException if the name is taken or blank, the labels are not as many as rows, the reference is
     *     not among them or no other level is
     */
    public Design withFactor(String name, String reference, String... labels) {
        checkName(name);
        if (labels.length != rows) {
            throw new IllegalArgumentException(
                    name + " must have one label for each of " + rows + " rows, but had " + labels.length);
        }
        LinkedHashSet<String> levels = new LinkedHashSet<>(List.of(reference));
        levels.addAll(Arrays.asList(labels));
        if (!Arrays.asList(labels).contains(reference) || levels.size() < 2) {
            throw new IllegalArgumentException("the factor " + name + " needs its reference " + reference
                    + " and another level among its labels, but had " + new LinkedHashSet<>(Arrays.asList(labels)));
        }
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        List<String> kept = List.copyOf(levels);
        for (String level : kept.subList(1, kept.size())) {
            names.add(name + "=" + level);
            columns.add(Arrays.stream(labels)
                    .mapToDouble(l -> l.equals(level) ? 1.0 : 0.0)
                    .toArray());
        }
        return with(new Term(name, kept, names, columns, Collections.nCopies(names.size(), 1.0 / kept.size())));
    }

    /**
     * With the interaction of a factor and a covariate: a slope of its own for each level but the reference.
     *
     * @param factor the name of a factor of this design
     * @param covariate the name of a covariate of this design
     * @return a changed copy, with columns named {@code factor=level:covariate}
     * @throws IllegalArgumentException if there is no such factor or covariate
     */
    public Design withInteraction(String factor, String covariate) {
        Term levels = term(factor);
        Term slope = term(covariate);
        if (!levels.factor() || slope.factor() || slope.columns().size() != 1) {
            throw new IllegalArgumentException(
                    "an interaction needs a factor and a covariate, but got " + factor + " and " + covariate);
        }
        double[] x = slope.columns().get(0);
        List<String> names =
                levels.names().stream().map(n -> n + ":" + covariate).toList();
        List<double[]> columns = levels.columns().stream()
                .map(c -> IntStream.range(0, rows).mapToDouble(i -> c[i] * x[i]).toArray())
                .toList();
        return with(new Term(
                factor + ":" + covariate,
                List.of(),
                names,
                columns,
                levels.means().stream().map(m -> m * slope.means().get(0)).toList()));
    }

    private Design with(Term term) {
        List<Term> more = new ArrayList<>(terms);
        more.add(term);
        return new Design(rows, more);
    }

    private void checkName(String name) {
        if (name.isBlank() || terms.stream().anyMatch(t -> t.name().equals(name))) {
            throw new IllegalArgumentException("the name of a term must be new and not blank, but was \"" + name
                    + "\"; used so far: " + terms.stream().map(Term::name).toList());
        }
    }

    private double[] checked(String name, double[] x) {
        checkName(name);
        if (x.length != rows) {
            throw new IllegalArgumentException(
                    name + " must have one number for each of " + rows + " rows, but had " + x.length);
        }
        for (int i = 0; i < rows; i++) {
            if (!Double.isFinite(x[i])) {
                throw new IllegalArgumentException(
                        name + "[" + i + "] must be finite, but was " + x[i] + "; leave shots without it out");
            }
        }
        return x.clone();
    }

    private static double mean(double[] x) {
        double sum = 0.0;
        for (double v : x) {
            sum += v / x.length;
        }
        double rest = 0.0;
        for (double v : x) {
            rest += v - sum;
        }
        return sum + rest / x.length;
    }

    private Term term(String name) {
        return terms.stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no term " + name + " in this design; there are "
                        + terms.stream().map(Term::name).toList()));
    }

    /**
     * The number of rows.
     *
     * @return how many shots
     */
    public int rows() {
        return rows;
    }

    /**
     * The names of the columns.
     *
     * @return the names, the intercept first
     */
    public List<String> names() {
        return terms.stream().flatMap(t -> t.names().stream()).toList();
    }

    /**
     * The levels of a factor.
     *
     * @param factor the name of a factor of this design
     * @return its levels, the reference first
     * @throws IllegalArgumentException if there is no such factor
     */
    public List<String> levels(String factor) {
        Term term = term(Objects.requireNonNull(factor, "factor"));
        if (!term.factor()) {
            throw new IllegalArgumentException(factor + " is not a factor");
        }
        return term.levels();
    }

    /** Whether a column stands for a block, a club or a golfer. */
    boolean hasFactor() {
        return terms.stream().anyMatch(Term::factor);
    }

    double[][] columns() {
        return terms.stream().flatMap(t -> t.columns().stream()).toArray(double[][]::new);
    }

    /** The weights of the coefficients in the mean at one level of a factor, everything else at its mean. */
    double[] marginalWeights(String factor, String level) {
        List<String> levels = levels(factor);
        List<Double> weights = new ArrayList<>();
        for (Term term : terms) {
            int colon = term.name().indexOf(factor + ":");
            boolean interaction = colon == 0 && !term.factor();
            for (int j = 0; j < term.names().size(); j++) {
                boolean own = levels.indexOf(level) == j + 1;
                if (term.name().equals(factor)) {
                    weights.add(own ? 1.0 : 0.0);
                } else if (interaction) {
                    weights.add(own ? term.means().get(j) * levels.size() : 0.0);
                } else {
                    weights.add(term.means().get(j));
                }
            }
        }
        return weights.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
