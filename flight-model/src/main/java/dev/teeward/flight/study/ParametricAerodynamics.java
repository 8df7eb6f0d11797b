package dev.teeward.flight.study;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * A family of aerodynamic models with named parameters: what a calibration fits.
 *
 * <p>The function should be smooth in its parameters within their bounds. A parameter may have a prior: what is believed of it
 * before the flights, as a normal distribution about its start. That is how a ball borrows from balls in general: see
 * {@link #ball}.
 *
 * <pre>{@code
 * ParametricAerodynamics form = ParametricAerodynamics.of(p -> new MyBall(p[0], p[1]))
 *     .with("drag", 0.25, 0.1, 0.6)      // name, start, lowest, highest
 *     .with("lift", 0.20, 0.0, 0.5);
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the function is.
 */
public final class ParametricAerodynamics {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9]*+(_[a-z0-9]++)*+");

    private static final double BALL_SPREAD = 0.03;

    /** One parameter. */
    record Parameter(String name, double start, double lowest, double highest, Optional<Double> spread) {}

    private final Function<double[], AerodynamicModel> models;
    private final List<Parameter> parameters;

    private ParametricAerodynamics(Function<double[], AerodynamicModel> models, List<Parameter> parameters) {
        this.models = Objects.requireNonNull(models, "models");
        this.parameters = List.copyOf(parameters);
    }

    /**
     * A family, as yet without parameters.
     *
     * @param models the model of given parameters, in the order in which they are added; it must copy the array if it keeps it
     * @return the family
     */
    public static ParametricAerodynamics of(Function<double[], AerodynamicModel> models) {
        return new ParametricAerodynamics(models, List.of());
    }

    /**
     * A ball whose drag and lift are constant multiples of another's: {@code drag_scale} and {@code lift_scale}, from 1, in
     * [0.5, 2]. Enough for a ball of one's own from few shots.
     *
     * @param base the model whose coefficients are multiplied
     * @return the family of two parameters, without priors
     */
    public static ParametricAerodynamics scaled(AerodynamicModel base) {
        Objects.requireNonNull(base, "base");
        return of(p -> new ScaledCoefficients(base, p[0], p[1]))
                .with("drag_scale", 1.0, 0.5, 2.0)
                .with("lift_scale", 1.0, 0.5, 2.0);
    }

    /**
     * A ball of one's own, borrowing from balls in general: {@link #scaled} typical coefficients, each factor believed to lie
     * within a standard deviation of 0.03 of 1.
     *
     * <p>That is the spread from ball to ball as far as it is published: 13 ball models differed by 18 m in carry at equal launch
     * (Lyu, Kensrud, Smith, Tosaya 2018, abstract). A range of 13 normal values is 3.336 standard deviations on average, hence
     * 5.4 m, and 0.03 of drag and of lift, taken as independent, give a drive 5.5 m. The same paper has the drag of those balls
     * differ by less than 0.05 above Re 1e5, which allows up to twice as much.
     *
     * @return the family of two parameters, with priors
     */
    public static ParametricAerodynamics ball() {
        return scaled(TypicalAerodynamics.of())
                .withPrior("drag_scale", BALL_SPREAD)
                .withPrior("lift_scale", BALL_SPREAD);
    }

    /**
     * A copy with one more parameter.
     *
     * @param name its name: lower-case words joined by underscores, not used yet
     * @param start where the search begins
     * @param lowest the lowest value it may take, not above the start
     * @param highest the highest, not below the start
     * @return the copy
     * @throws IllegalArgumentException if the name has another form or is used, or the numbers are not in this order
     */
    public ParametricAerodynamics with(String name, double start, double lowest, double highest) {
        if (!NAME.matcher(name).matches() || names().contains(name)) {
            throw new IllegalArgumentException(
                    "a parameter's name must be lower-case words joined by underscores, used once, but was \"" + name
                            + "\"");
        }
        if (!(lowest <= start && start <= highest && lowest < highest)
                || Double.isInfinite(lowest)
                || Double.isInfinite(highest)) {
            throw new IllegalArgumentException("parameter " + name
                    + " must satisfy lowest <= start <= highest with lowest < highest, all finite, but was " + lowest
                    + ", "
                    + start + ", " + highest);
        }
        List<Parameter> more = new ArrayList<>(parameters);
        more.add(new Parameter(name, start, lowest, highest, Optional.empty()));
        return new ParametricAerodynamics(models, more);
    }

    /**
     * A copy in which one parameter is believed, before the flights, to lie near its start: normal with the start as its mean.
     *
     * @param name the parameter
     * @param standardDeviation how near, positive: for a property of balls, the spread from ball to ball
     * @return the copy
     * @throws IllegalArgumentException if there is no such parameter or the standard deviation is not positive and finite
     */
    public ParametricAerodynamics withPrior(String name, double standardDeviation) {
        if (!(standardDeviation > 0.0 && standardDeviation < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "standardDeviation of the prior must be positive and finite, but was " + standardDeviation);
        }
        List<Parameter> changed = new ArrayList<>(parameters);
        int at = names().indexOf(name);
        if (at < 0) {
            throw new IllegalArgumentException("there is no parameter \"" + name + "\"; there are " + names());
        }
        Parameter old = parameters.get(at);
        changed.set(
                at,
                new Parameter(old.name(), old.start(), old.lowest(), old.highest(), Optional.of(standardDeviation)));
        return new ParametricAerodynamics(models, changed);
    }

    /**
     * The names of the parameters.
     *
     * @return the names in order, unmodifiable
     */
    public List<String> names() {
        return parameters.stream().map(Parameter::name).toList();
    }

    /**
     * The model of given parameters.
     *
     * @param values the parameters, in order
     * @return the model
     * @throws IllegalArgumentException if there are more or fewer values than parameters
     */
    public AerodynamicModel model(double... values) {
        if (values.length != parameters.size()) {
            throw new IllegalArgumentException(
                    "there are " + parameters.size() + " parameters " + names() + ", but " + values.length + " values");
        }
        return models.apply(values.clone());
    }

    /** The parameters, in order. */
    List<Parameter> parameters() {
        return parameters;
    }

    double[] start() {
        return parameters.stream().mapToDouble(Parameter::start).toArray();
    }

    /** Whether anything is believed beforehand. */
    boolean hasPrior() {
        return parameters.stream().anyMatch(p -> p.spread().isPresent());
    }

    /** Values moved onto the nearest bound where they lie outside. */
    double[] clipped(double[] values) {
        double[] inside = Arrays.copyOf(values, values.length);
        for (int j = 0; j < inside.length; j++) {
            Parameter p = parameters.get(j);
            inside[j] = Math.min(p.highest(), Math.max(p.lowest(), inside[j]));
        }
        return inside;
    }

    @Override
    public String toString() {
        return "parameters " + names();
    }
}
