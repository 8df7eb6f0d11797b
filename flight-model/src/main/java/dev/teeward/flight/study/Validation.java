package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Compares aerodynamic models with observed flights: bias, root mean square and limits of agreement of every number observed,
 * over all flights, by group (class of club) and by band of carry.
 *
 * <p>A model is validated only by flights that it was not fitted to. {@link #leaveOneGroupOut} therefore fits a family anew
 * without each group and predicts that group. Agreement with the flights a model was calibrated on is calibration, and should be
 * called so.
 *
 * <p>Total and run are compared where the {@linkplain ObservedFlight#conditions() conditions} of a flight have a ground; they
 * judge aerodynamics, bounce and turf together, and no turf's numbers are validated. A calibration does not use them.
 *
 * <pre>{@code
 * ValidationResult r = Validation.withDefaults()
 *     .with("typical", TypicalAerodynamics.of()).with("Smits and Smith", SmitsSmith1994.of())
 *     .compare(flights);
 * r.markdown();
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the models and winds are.
 */
public final class Validation {
    private static final double BAND = 50.0 * 0.9144;

    /** What the parts of a result are called. */
    private static final Pattern RESERVED = Pattern.compile("all|carry \\d+-\\d+ yd");

    private final Map<String, AerodynamicModel> models;
    private final double level;
    private final double band;

    private Validation(Map<String, AerodynamicModel> models, double level, double band) {
        this.models = models;
        this.level = level;
        this.band = band;
    }

    /**
     * No model yet, intervals at 95 percent, bands of carry of 50 yd.
     *
     * @return the procedure
     */
    public static Validation withDefaults() {
        return new Validation(Map.of(), 0.95, BAND);
    }

    /**
     * A copy with one more model.
     *
     * @param name its name in the tables, not used yet
     * @param model the model
     * @return the copy
     * @throws IllegalArgumentException if the name is blank or used
     */
    public Validation with(String name, AerodynamicModel model) {
        if (name.isBlank() || models.containsKey(name)) {
            throw new IllegalArgumentException(
                    "a model's name must not be blank and must be used once, but was \"" + name + "\"");
        }
        Map<String, AerodynamicModel> more = new LinkedHashMap<>(models);
        more.put(name, Objects.requireNonNull(model, "model"));
        return new Validation(more, level, band);
    }

    /**
     * A copy with intervals at another level.
     *
     * @param value the level, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Validation withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new Validation(models, value, band);
    }

    /**
     * A copy with wider or narrower bands of carry.
     *
     * @param meters the width, positive [m]
     * @return the copy
     * @throws IllegalArgumentException if it is not positive and finite
     */
    public Validation withCarryBand(double meters) {
        if (!(meters > 0.0 && meters < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("width of a band must be positive and finite, but was " + meters + " m");
        }
        return new Validation(models, level, meters);
    }

    /**
     * Compares every model with the same flights. A flight that one of them does not land is left out for all, and total and run
     * where one of them does not tell the rest, because a model that fails at the hard flights would look good by the others.
     *
     * @param flights what was observed
     * @return the agreement of each
     * @throws IllegalArgumentException if there is no model, nothing was observed, a flight has a total or run and its conditions no
     *     ground, or a group is called as a part of the result is
     */
    public ValidationResult compare(List<ObservedFlight> flights) {
        if (models.isEmpty()) {
            throw new IllegalArgumentException("there is no model to compare; add one by with");
        }
        List<Difference> differences = new ArrayList<>();
        LeftOut without = new LeftOut();
        for (ObservedFlight seen : flights) {
            add(models, seen, differences, without);
        }
        return result(differences, without);
    }

    /**
     * Fits a family anew without each group of flights, and compares what it predicts for that group.
     *
     * @param name the name in the tables
     * @param family the models and their parameters
     * @param calibration how to fit
     * @param flights what was observed, in two groups or more
     * @return the agreement of predictions with flights that the fit had not seen; what a fit warned of stands in its warnings
     * @throws IllegalArgumentException if there are fewer than two groups, a flight has a total or run and its conditions no ground,
     *     or a group is called as a part of the result is
     * @throws IllegalStateException if a fit does not converge
     */
    public ValidationResult leaveOneGroupOut(
            String name, ParametricAerodynamics family, Calibration calibration, List<ObservedFlight> flights) {
        Set<String> groups = new LinkedHashSet<>();
        flights.forEach(seen -> groups.add(seen.group()));
        if (groups.size() < 2) {
            throw new IllegalArgumentException("leaving a group out needs two groups, but there is only " + groups);
        }
        List<Difference> differences = new ArrayList<>();
        LeftOut without = new LeftOut();
        for (String group : groups) {
            List<ObservedFlight> others =
                    flights.stream().filter(seen -> !seen.group().equals(group)).toList();
            CalibrationResult fit = calibration.fit(family, others);
            fit.warnings()
                    .forEach(w -> without.fits.add(Warning.of(w.code(), "without " + group + ": " + w.message())));
            flights.stream()
                    .filter(seen -> seen.group().equals(group))
                    .forEach(seen -> add(Map.of(name, fit.model()), seen, differences, without));
        }
        return result(differences, without);
    }

    private ValidationResult result(List<Difference> differences, LeftOut without) {
        if (differences.isEmpty()) {
            throw new IllegalArgumentException("nothing was observed that could be compared");
        }
        return ValidationResult.of(differences, without, level, band);
    }

    /** One flight by every model, or by none, so that all models are judged by the same flights. */
    private static void add(
            Map<String, AerodynamicModel> models, ObservedFlight seen, List<Difference> differences, LeftOut without) {
        FlightModel conditions = seen.conditions();
        if (conditions.ground().isEmpty() && seen.outputs().stream().anyMatch(FlightOutput::needsGround)) {
            throw new IllegalArgumentException("the flight \"" + seen.name()
                    + "\" has a total or run, but its conditions have no ground to roll on; give them one"
                    + " (FlightModel.withGround), or leave these out");
        }
        if (RESERVED.matcher(seen.group()).matches()) {
            throw new IllegalArgumentException("a group must not be called \"" + seen.group()
                    + "\", which names a part of the flights here; call it something else");
        }
        Map<String, Flight> flown = new LinkedHashMap<>();
        models.forEach((name, model) -> {
            try {
                flown.put(
                        name,
                        conditions
                                .withBall(conditions.ball().withAerodynamics(model))
                                .fly(seen.launch()));
            } catch (FlightException e) {
                without.noLanding.add(name + ": " + seen.name());
            }
        });
        if (flown.size() == models.size()) {
            compare(seen, flown, differences, without);
        }
    }

    private static void compare(
            ObservedFlight seen, Map<String, Flight> flown, List<Difference> differences, LeftOut without) {
        List<FlightOutput> known = new ArrayList<>(seen.outputs());
        flown.forEach((name, flight) -> {
            if (known.retainAll(seen.outputs().stream()
                    .filter(output -> output.knownOf(flight))
                    .toList())) {
                without.noRest.add(name + ": " + seen.name());
            }
        });
        flown.forEach((name, flight) -> {
            for (FlightOutput output : known) {
                double observed = seen.value(output).orElseThrow();
                differences.add(new Difference(
                        name,
                        seen.group(),
                        seen.value(FlightOutput.CARRY).orElse(flight.carry().meters()),
                        output,
                        output.of(flight) - observed,
                        observed));
            }
        });
    }

    /** What a model has no answer for, as model and flight, and what fits without a group warn of. */
    static final class LeftOut {
        final List<Warning> fits = new ArrayList<>();
        final List<String> noLanding = new ArrayList<>();
        final List<String> noRest = new ArrayList<>();
    }

    /** One number of one flight: model less observation, and the observation, in SI. */
    record Difference(
            String model, String group, double carry, FlightOutput output, double difference, double observed) {}
}
