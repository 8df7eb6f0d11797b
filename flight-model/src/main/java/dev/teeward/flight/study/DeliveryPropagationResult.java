package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.batch.FlightTable;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.batch.RowWarning;
import dev.teeward.flight.impact.Impact;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Launch, flight and rest of a delivery with their intervals, as {@link DeliveryPropagation} finds them.
 *
 * <pre>{@code
 * result.estimate(FlightOutput.CARRY).interval();   // [m]
 * result.atRest() + " of " + result.draws();        // 2000 of 2000
 * result.flight().total();                          // of the delivery itself, without errors
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class DeliveryPropagationResult {
    private final Impact impact;
    private final Flight flight;
    private final LaunchTable launches;
    private final FlightTable flights;
    private final int draws;
    private final int landed;
    private final int atRest;
    private final double level;
    private final List<Warning> warnings;

    /** The table of flights has totals if there is a ground; the reason is that of the first draw without a launch. */
    DeliveryPropagationResult(
            Impact impact,
            Flight flight,
            LaunchTable launches,
            FlightTable flights,
            int draws,
            double level,
            boolean ground,
            boolean turfKnown,
            Optional<String> reason) {
        this.impact = impact;
        this.flight = flight;
        this.launches = launches;
        this.flights = flights;
        this.draws = draws;
        this.level = level;
        landed = flights.landed();
        if (landed < 2) {
            throw new IllegalArgumentException("fewer than two of " + draws + " draws fly and land");
        }
        atRest = ground
                ? (int) Arrays.stream(flights.total()).filter(Double::isFinite).count()
                : 0;
        warnings = List.copyOf(warnings(ground, turfKnown, reason));
    }

    private List<Warning> warnings(boolean ground, boolean turfKnown, Optional<String> reason) {
        List<Warning> found = new ArrayList<>(impact.warnings());
        found.addAll(flight.warnings());
        for (RowWarning warning : RowWarning.values()) {
            int rows = flights.warned(warning);
            if (rows > 0 && flight.warnings().stream().noneMatch(w -> w.code().equals(warning.code()))) {
                found.add(Warning.of(
                        warning.code(),
                        "So warn the flights of " + rows + " of " + draws
                                + " draws, not that of the delivery itself."));
            }
        }
        if (landed < draws) {
            found.add(Warning.of(
                    "draws-without-a-flight",
                    (draws - landed) + " of " + draws + " draws have no launch or do not land, and are left out"
                            + reason.map(r -> "; the first: " + r).orElse("")));
        }
        if (ground && atRest < landed) {
            found.add(Warning.of(
                    "draws-without-rest",
                    (landed - atRest) + " of " + landed
                            + " balls that land have no known rest; total and run are those of the"
                            + " others, and their intervals hold nothing of these"));
        }
        if (ground && turfKnown) {
            found.add(TolerancePropagation.TURF_TAKEN_AS_KNOWN);
        }
        return found;
    }

    /**
     * A number of the flight, with its interval.
     *
     * @param output which
     * @return the median of the draws and the interval of the middle share of them, in the SI unit
     * @throws IllegalArgumentException if it {@linkplain FlightOutput#needsGround needs a ground} and fewer than two draws came to a
     *     known rest
     */
    public Estimate estimate(FlightOutput output) {
        if (output.needsGround() && atRest < 2) {
            throw output.noTotal();
        }
        double[] column = switch (output) {
            case CARRY -> flights.carry();
            case SIDE -> flights.side();
            case CURVE -> flights.curve();
            case APEX -> flights.apex();
            case DESCENT_ANGLE -> flights.descentAngle();
            case FLIGHT_TIME -> flights.flightTime();
            case LANDING_SPEED -> flights.landingSpeed();
            case TOTAL -> flights.total();
            case RUN -> flights.run();
        };
        return estimate(Arrays.stream(column).filter(Double::isFinite).toArray(), output.unit());
    }

    /**
     * A number of the launch, with its interval.
     *
     * @param quantity one of the five of the launch
     * @return the median of the draws and the interval of the middle share of them, in the {@linkplain ImpactQuantity#unit unit of
     *     the quantity}
     * @throws IllegalArgumentException if it is one of the delivery
     */
    public Estimate estimate(ImpactQuantity quantity) {
        double[] column = switch (quantity) {
            case BALL_SPEED -> launches.ballSpeed();
            case LAUNCH_ANGLE -> launches.launchAngle();
            case START_DIRECTION -> launches.startDirection();
            case SPIN_RATE -> launches.spinRate();
            case AXIS_TILT -> launches.axisTilt();
            default ->
                throw new IllegalArgumentException("quantity must be one of the launch, but was " + quantity.label()
                        + "; how well that is known was given");
        };
        if (column == null) {
            throw new IllegalStateException("the launches have no column " + quantity.label());
        }
        Unit unit = quantity.unit();
        return estimate(Arrays.stream(column).map(unit::fromSi).toArray(), unit);
    }

    private Estimate estimate(double[] drawn, Unit unit) {
        Arrays.sort(drawn);
        return Estimate.of(
                TolerancePropagation.quantile(drawn, 0.5),
                Interval.of(
                        TolerancePropagation.quantile(drawn, (1.0 - level) / 2.0),
                        TolerancePropagation.quantile(drawn, (1.0 + level) / 2.0),
                        level),
                unit);
    }

    /**
     * The impact of the delivery itself, without errors.
     *
     * @return the impact
     */
    public Impact impact() {
        return impact;
    }

    /**
     * The flight of the delivery itself, without errors.
     *
     * @return the flight
     */
    public Flight flight() {
        return flight;
    }

    /**
     * How many draws were made.
     *
     * @return the number
     */
    public int draws() {
        return draws;
    }

    /**
     * How many of them landed; the others are in no estimate of the flight.
     *
     * @return the number
     */
    public int landed() {
        return landed;
    }

    /**
     * How many of them came to a known rest.
     *
     * @return the number, 0 without a ground
     */
    public int atRest() {
        return atRest;
    }

    /**
     * What to know: {@code turf-taken-as-known}, {@code draws-without-a-flight}, {@code draws-without-rest}, what impact and flight
     * of the delivery itself warn of, and what flights of draws warn of beside that.
     *
     * @return the warnings, unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return landed + " of " + draws + " draws: carry " + estimate(FlightOutput.CARRY)
                + (atRest < 2 ? "" : ", total " + estimate(FlightOutput.TOTAL));
    }
}
