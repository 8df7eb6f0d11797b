package dev.teeward.flight.study;

import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightException;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.quantity.Length;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;

/**
 * Flies a launch by any integrator of Hipparchus, through the same force sum as the library: a referee for its integrator,
 * step rule and landing search, not for its physics.
 *
 * <p>The default is Dormand and Prince 8(5,3) with absolute and relative tolerance 1e-12 and steps of at most 0.1 s, whose
 * landings agree with those of other integrators to about 1e-9 m. Landing and apex are found by the event detection of
 * Hipparchus. Over ground with a terrain the ball lands on the terrain; bounce and roll are the library's own, from that landing.
 * A flight takes about half a millisecond, a hundred times as long as {@link FlightModel#fly}.
 *
 * <pre>{@code
 * ReferenceFlight.Result referee = ReferenceFlight.with(() -> new GraggBulirschStoerIntegrator(1e-9, 0.1, 1e-11, 1e-11))
 *     .fly(FlightModel.standard(), launch);
 * referee.carry().meters();
 * referee.error().millimeters();   // how far the library's landing lies from it
 * }</pre>
 *
 * <p>Integrators are mutable, hence the supplier: each flight gets a new one. Immutable, and thread-safe if the supplier, the
 * wind and the aerodynamic model are.
 */
public final class ReferenceFlight {
    private static final ReferenceFlight DEFAULT =
            new ReferenceFlight(() -> new DormandPrince853Integrator(1e-10, 0.1, 1e-12, 1e-12));

    private final Supplier<? extends ODEIntegrator> integrators;

    private ReferenceFlight(Supplier<? extends ODEIntegrator> integrators) {
        this.integrators = Objects.requireNonNull(integrators, "integrators");
    }

    /**
     * Reference flights by Dormand and Prince 8(5,3) at tolerance 1e-12.
     *
     * @return the procedure
     */
    public static ReferenceFlight withDefaults() {
        return DEFAULT;
    }

    /**
     * Reference flights by an integrator of one's own.
     *
     * @param integrators gives a new integrator for every flight, without event detectors
     * @return the procedure
     */
    public static ReferenceFlight with(Supplier<? extends ODEIntegrator> integrators) {
        return new ReferenceFlight(integrators);
    }

    /**
     * Flies one ball both ways.
     *
     * @param model ball, air, wind, and landing elevation or ground
     * @param launch how it starts
     * @return the reference flight, and the library's beside it
     * @throws FlightException if the library's flight has no landing
     * @throws IllegalStateException if the integrator gives up, or finds no landing where the library found one; the message
     *     says which
     */
    public Result fly(FlightModel model, LaunchConditions launch) {
        Flight flight = model.fly(launch);
        Motion motion = new Motion(model, launch);
        ODEState start = new ODEState(0.0, motion.launch());
        if (flight.flightTimeSeconds() <= 0.0) {
            return new Result(flight, 0.0, motion.launch(), 0.0, 0.0, 0, rest(model, motion, motion.launch()));
        }
        DownwardCrossing landing = model.ground()
                .flatMap(Ground::terrain)
                .map(DownwardCrossing::landing)
                .orElseGet(
                        () -> DownwardCrossing.landing(model.landingElevation().meters()));
        DownwardCrossing apex = DownwardCrossing.apex();
        ODEIntegrator integrator = integrators.get();
        integrator.addEventDetector(landing);
        integrator.addEventDetector(apex);
        ODEStateAndDerivative end;
        try {
            end = integrator.integrate(motion, start, 1.1 * flight.flightTimeSeconds() + 1.0);
        } catch (MathRuntimeException e) {
            throw new IllegalStateException(
                    integrator.getName() + " gave up on the flight: " + e.getMessage() + "; try a shorter least step",
                    e);
        }
        if (!landing.found()) {
            throw new IllegalStateException(integrator.getName() + " found no landing within " + end.getTime()
                    + " s, where the library lands after " + flight.flightTimeSeconds() + " s");
        }
        @Nullable ODEStateAndDerivative top = apex.highest();
        return new Result(
                flight,
                end.getTime(),
                end.getPrimaryState(),
                top == null ? 0.0 : top.getTime(),
                top == null ? 0.0 : top.getPrimaryState()[FlightEquations.Y],
                integrator.getEvaluations(),
                rest(model, motion, end.getPrimaryState()));
    }

    private static Optional<RollOut.Point> rest(FlightModel model, Motion motion, double[] landing) {
        return model.ground()
                .map(ground -> motion.rollOut(ground, landing))
                .filter(RollOut::restKnown)
                .filter(RollOut::atRest)
                .map(RollOut::rest);
    }

    /**
     * A reference flight, and how far the library's lies from it.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final Flight flight;
        private final double time;
        private final double[] end;
        private final double apexTime;
        private final double apex;
        private final int evaluations;
        private final Optional<RollOut.Point> rest;

        private Result(
                Flight flight,
                double time,
                double[] end,
                double apexTime,
                double apex,
                int evaluations,
                Optional<RollOut.Point> rest) {
            this.flight = flight;
            this.time = time;
            this.end = end;
            this.apexTime = apexTime;
            this.apex = apex;
            this.evaluations = evaluations;
            this.rest = rest;
        }

        /**
         * The library's flight of the same launch.
         *
         * @return the flight
         */
        public Flight flight() {
            return flight;
        }

        /**
         * Whether the reference flight has a number.
         *
         * @param output which
         * @return false for total and run without a ground, or where the bounce model has no answer
         */
        public boolean has(FlightOutput output) {
            return !output.needsGround() || rest.isPresent();
        }

        /**
         * A number of the reference flight.
         *
         * @param output which
         * @return its value, in SI
         * @throws IllegalArgumentException if the flight does not {@linkplain #has have} it
         */
        public double value(FlightOutput output) {
            double x = end[FlightEquations.X];
            double z = end[FlightEquations.Z];
            double vx = end[FlightEquations.VX];
            double vy = end[FlightEquations.VY];
            double vz = end[FlightEquations.VZ];
            return switch (output) {
                case CARRY -> Math.sqrt(x * x + z * z);
                case SIDE -> z;
                case CURVE -> {
                    double bearing = flight.launch().startDirection().radians();
                    yield z * StrictMath.cos(bearing) - x * StrictMath.sin(bearing);
                }
                case APEX -> apex;
                case DESCENT_ANGLE -> StrictMath.atan2(-vy, Math.sqrt(vx * vx + vz * vz));
                case FLIGHT_TIME -> time;
                case LANDING_SPEED -> Math.sqrt(vx * vx + vy * vy + vz * vz);
                case TOTAL -> rest.orElseThrow(output::noTotal).distance().meters();
                case RUN -> rest.orElseThrow(output::noTotal).distance().meters() - Math.sqrt(x * x + z * z);
            };
        }

        /**
         * The library's number less this one.
         *
         * @param output which
         * @return the error, in SI
         * @throws IllegalArgumentException if the flight does not {@linkplain #has have} it
         */
        public double error(FlightOutput output) {
            return output.of(flight) - value(output);
        }

        /**
         * The horizontal distance between the library's landing and this one.
         *
         * @return the distance, not negative
         */
        public Length error() {
            double dx = flight.landing().downrange().meters() - end[FlightEquations.X];
            double dz = flight.landing().side().meters() - end[FlightEquations.Z];
            return Length.ofMeters(Math.sqrt(dx * dx + dz * dz));
        }

        /**
         * The horizontal distance from the start to the landing.
         *
         * @return the carry
         */
        public Length carry() {
            return Length.ofMeters(value(FlightOutput.CARRY));
        }

        /**
         * The offset of the landing from the target line.
         *
         * @return the side, right positive
         */
        public Length side() {
            return Length.ofMeters(value(FlightOutput.SIDE));
        }

        /**
         * The greatest height above the start.
         *
         * @return the apex, not negative
         */
        public Length apex() {
            return Length.ofMeters(apex);
        }

        /**
         * When the ball is highest.
         *
         * @return the time since the launch [s]
         */
        public double apexTimeSeconds() {
            return apexTime;
        }

        /**
         * How often the forces were asked for.
         *
         * @return the evaluations of the integrator
         */
        public int evaluations() {
            return evaluations;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "carry %.9f m, side %.9f m, after %.9f s; the library lands %.3g mm beside it",
                    value(FlightOutput.CARRY),
                    value(FlightOutput.SIDE),
                    time,
                    error().millimeters());
        }
    }
}
