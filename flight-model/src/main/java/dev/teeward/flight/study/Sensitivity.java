package dev.teeward.flight.study;

import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How much each number of a flight changes with each number it begins with: all first derivatives.
 *
 * <p>The method is differences of fourth order (central, one-sided at the end of a range) with a step of 1/500 of the
 * {@linkplain FlightInput#scale() scale} of the input, over {@linkplain ReferenceFlight reference flights} at tolerance 1e-12.
 * The library's own flight, exact to 0.01 mm, would not do: its last step ends anywhere beyond the landing, and the jumps of
 * its error of some micrometres, divided by so small a step, show. Measured against derivatives by automatic differentiation
 * through a second writing of the equations, over 300 random launches of the typical ball in wind, up and down: within 4e-7 of the
 * derivative, or of 1/1000 of its natural scale (output scale over input scale) where that is more. One result takes about 90
 * flights, some 50 ms.
 *
 * <p>Derivatives to temperature, pressure and humidity need the {@linkplain #withAtmosphere atmosphere}. They are those of the
 * density and viscosity alone: that a warm ball and a warm club rebound better is not modelled. Where the coefficients or the
 * wind have kinks, or an output turns (the carry at the best launch angle has derivative 0 and is still right), the result
 * warns: {@code derivative-not-smooth}.
 *
 * <pre>{@code
 * Sensitivity.Result s = Sensitivity.of(FlightModel.standard()).withAtmosphere(air).at(launch);
 * s.derivative(FlightOutput.CARRY, FlightInput.BALL_SPEED);                                  // m per m/s
 * s.derivative(FlightOutput.CARRY, LengthUnit.YARD, FlightInput.BALL_SPEED, SpeedUnit.MILE_PER_HOUR);
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the wind and the aerodynamic model are.
 */
public final class Sensitivity {
    /** The step of the differences, in scales of the input. */
    private static final double STEP = 2e-3;

    /** Two orders of differences that disagree by more than this share say that the function is not smooth. */
    private static final double ROUGH = 0.02;

    private final FlightModel model;
    private final @Nullable Atmosphere atmosphere;
    private final ReferenceFlight flights;

    private Sensitivity(FlightModel model, @Nullable Atmosphere atmosphere, ReferenceFlight flights) {
        this.model = Objects.requireNonNull(model, "model");
        this.atmosphere = atmosphere;
        this.flights = Objects.requireNonNull(flights, "flights");
    }

    /**
     * Sensitivities of a model, with its density and viscosity for the air.
     *
     * @param model ball, air, wind and place
     * @return the procedure
     */
    public static Sensitivity of(FlightModel model) {
        return new Sensitivity(model, null, ReferenceFlight.withDefaults());
    }

    /**
     * A copy in the air of a place and day, which replaces that of the model and gives derivatives to temperature, pressure
     * and humidity too.
     *
     * @param air the atmosphere
     * @return the copy
     */
    public Sensitivity withAtmosphere(Atmosphere air) {
        return new Sensitivity(model, Objects.requireNonNull(air, "air"), flights);
    }

    /**
     * A copy that flies by another integrator; its tolerance limits the derivatives, and should be about 1e-12.
     *
     * @param reference the flights
     * @return the copy
     */
    public Sensitivity withReference(ReferenceFlight reference) {
        return new Sensitivity(model, atmosphere, reference);
    }

    /**
     * The derivatives at a launch.
     *
     * @param launch how the ball starts
     * @return every derivative
     * @throws FlightException if the flight, or one beside it, has no landing
     * @throws IllegalArgumentException if the ball does not rise, so that there is no flight
     */
    public Result at(LaunchConditions launch) {
        Situation situation = Situation.of(model, atmosphere, launch);
        double[] values = outputs(situation);
        if (!(values[FlightOutput.FLIGHT_TIME.place()] > 0.0)) {
            throw new IllegalArgumentException(
                    "the launch must rise above the landing elevation, but the ball lands at once: " + launch);
        }
        Map<FlightInput, Stencil> columns = new EnumMap<>(FlightInput.class);
        for (FlightInput input : FlightInput.values()) {
            if (situation.has(input)) {
                columns.put(
                        input,
                        Stencil.at(
                                situation.value(input),
                                STEP * input.scale(),
                                input.lowest(),
                                input.highest(),
                                si -> outputs(situation.with(input, si))));
            }
        }
        return new Result(situation, values, columns);
    }

    private double[] outputs(Situation situation) {
        ReferenceFlight.Result flight = flights.fly(situation.model(), situation.launch());
        FlightOutput[] all = FlightOutput.values();
        double[] values = new double[all.length];
        for (FlightOutput output : all) {
            values[output.place()] = flight.value(output);
        }
        return values;
    }

    /**
     * The derivatives at one launch.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final Situation situation;
        private final double[] values;
        private final Map<FlightInput, Stencil> columns;
        private final List<Warning> warnings;

        private Result(Situation situation, double[] values, Map<FlightInput, Stencil> columns) {
            this.situation = situation;
            this.values = values;
            this.columns = columns;
            this.warnings = warnings(columns);
        }

        /** The launch and what it flies in. */
        Situation situation() {
            return situation;
        }

        /**
         * The inputs there are derivatives to.
         *
         * @return the inputs, unmodifiable; temperature, pressure and humidity only if the atmosphere was given
         */
        public Set<FlightInput> inputs() {
            return Collections.unmodifiableSet(columns.keySet());
        }

        /**
         * A number of the flight itself.
         *
         * @param output which
         * @return its value, in SI
         */
        public double value(FlightOutput output) {
            return values[output.place()];
        }

        /**
         * A derivative.
         *
         * @param output the number that changes
         * @param input the number that it changes with
         * @return the derivative, SI unit of the output per SI unit of the input
         * @throws IllegalArgumentException if the input needs the atmosphere and that was not given
         */
        public double derivative(FlightOutput output, FlightInput input) {
            return column(input).derivative(output.place());
        }

        /**
         * A derivative in units of one's own, such as yards per mile an hour or feet per degree Fahrenheit.
         *
         * @param output the number that changes
         * @param outputUnit the unit wanted for it
         * @param input the number that it changes with
         * @param inputUnit the unit wanted for that; a difference of one degree, for temperatures
         * @return the derivative
         * @throws IllegalArgumentException if a unit is of another dimension, or the input needs the atmosphere
         */
        public double derivative(FlightOutput output, Unit outputUnit, FlightInput input, Unit inputUnit) {
            if (!outputUnit.siUnit().equals(output.unit())) {
                throw new IllegalArgumentException(
                        "outputUnit must measure what " + output.key() + " is, but was " + outputUnit.symbol());
            }
            String si = inputUnit.siUnit().symbol();
            if (!input.unit().equals(si.isEmpty() ? "1" : si)) {
                throw new IllegalArgumentException(
                        "inputUnit must measure what " + input.key() + " is, but was " + inputUnit.symbol());
            }
            return outputUnit.fromSi(derivative(output, input)) * (inputUnit.toSi(1.0) - inputUnit.toSi(0.0));
        }

        /**
         * What to know: {@code derivative-not-smooth} where differences of two orders disagree by more than 2 percent.
         *
         * @return the warnings, unmodifiable, usually none
         */
        public List<Warning> warnings() {
            return warnings;
        }

        private Stencil column(FlightInput input) {
            Stencil column = columns.get(input);
            if (column == null) {
                throw new IllegalArgumentException("there is no derivative to " + input.key()
                        + ", because the atmosphere was not given; use withAtmosphere");
            }
            return column;
        }

        private static List<Warning> warnings(Map<FlightInput, Stencil> columns) {
            List<Warning> found = new ArrayList<>(0);
            columns.forEach((input, column) -> {
                for (FlightOutput output : FlightOutput.values()) {
                    double natural = output.scale() / input.scale();
                    double size = Math.max(Math.abs(column.derivative(output.place())), natural);
                    if (column.doubt(output.place()) > ROUGH * size) {
                        found.add(Warning.of(
                                "derivative-not-smooth",
                                String.format(
                                        Locale.ROOT,
                                        "the derivative of %s to %s is uncertain by up to %.2g %s per %s: the flight has a"
                                                + " kink there",
                                        output.key(),
                                        input.key(),
                                        column.doubt(output.place()),
                                        output.unit().symbol(),
                                        input.unit())));
                    }
                }
            });
            return List.copyOf(found);
        }

        @Override
        public String toString() {
            return columns.size() + " inputs, at " + situation.launch();
        }
    }
}
