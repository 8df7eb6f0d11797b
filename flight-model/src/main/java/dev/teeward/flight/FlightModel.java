package dev.teeward.flight;

import dev.teeward.flight.aero.ModelDomain;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.air.Gravity;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.FlightIntegrator;
import dev.teeward.flight.internal.FlightPath;
import dev.teeward.flight.internal.StepRule;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Flies a ball: a ball, the air and wind it flies through, and the elevation it comes down on.
 *
 * <p>Gravity, drag, lift, wind and spin decay are integrated with a Runge-Kutta pair of orders 6 and 5. By default the landing
 * point is within 0.1 mm of a reference integration at tolerance 1e-11 for launches of 20 to 80 m/s, 5 to 45 deg up, over
 * ground up to 10 m higher or lower or on sloping or rolling {@linkplain Ground#withTerrain terrain}: over 10,000 random
 * launches in uniform wind up to 11 m/s, and over 1,000 each in three {@linkplain dev.teeward.flight.air.WindProfile wind
 * profiles}. {@link Accuracy} says what holds beyond that range, 0.5 mm by default, and by another choice. A wind profile, or
 * a table with kinks or cells between which its curvature jumps, takes ten to thirteen times the steps of the typical ball in
 * uniform wind, both at once seventeen to twenty times, those taken back included; a table comes as near, in a wind profile
 * and on a slope too. A wind of one's own with kinks has not been measured. With an aerodynamic model and a wind that use only
 * {@code + - * /} and {@code sqrt}, a flight has the same bits on every Java virtual machine.
 *
 * <p>Not modelled: the change of air density within one flight, a spin axis that turns, vertical wind, the curvature and the
 * rotation of the earth.
 *
 * <pre>{@code
 * FlightModel model = FlightModel.standard().withWind(Wind.from(degrees(30.0), mph(8.0)));
 * Flight flight = model.fly(launch);
 * flight.carry().yards();
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the wind and the aerodynamic model are: one model may fly any number of balls at once.
 */
public final class FlightModel {
    private static final FlightModel STANDARD = of(Ball.standard());

    private final Ball ball;
    private final AirState air;
    private final Wind wind;
    private final Length landingElevation;
    private final double gravity;
    private final Accuracy accuracy;
    private final @Nullable Ground ground;
    private final FlightEquations equations;
    private final FlightIntegrator integrator;

    private FlightModel(
            Ball ball,
            AirState air,
            Wind wind,
            Length landingElevation,
            double gravity,
            Accuracy accuracy,
            @Nullable Ground ground) {
        this.ball = Objects.requireNonNull(ball, "ball");
        this.air = Objects.requireNonNull(air, "air");
        this.wind = Objects.requireNonNull(wind, "wind");
        this.landingElevation = Objects.requireNonNull(landingElevation, "landingElevation");
        this.gravity = gravity;
        this.accuracy = Objects.requireNonNull(accuracy, "accuracy");
        this.ground = ground;
        if (!(Math.abs(landingElevation.meters()) <= 1000.0)) {
            throw new IllegalArgumentException(
                    "landingElevation must be in [-1000, 1000] m (-3281 to 3281 ft), but was " + landingElevation);
        }
        if (!(gravity >= 1.0 && gravity <= 30.0)) {
            throw new IllegalArgumentException(
                    "gravity must be in [1, 30] m/s2 (3.3-98.4 ft/s2), but was " + gravity + "; on earth 9.78 to 9.83");
        }
        equations = new FlightEquations(
                ball.aerodynamics(),
                ball.mass().kilograms(),
                ball.diameter().meters(),
                ball.momentOfInertia(),
                air.density(),
                air.dynamicViscosity(),
                wind,
                gravity);
        StepRule rule = StepRule.valueOf(accuracy.name());
        Terrain terrain = ground == null ? null : ground.terrain().orElse(null);
        if (terrain == null) {
            integrator = new FlightIntegrator(equations, landingElevation.meters(), rule);
            return;
        }
        if (landingElevation.meters() != 0.0) {
            throw new IllegalArgumentException("landingElevation must be 0 over ground with a terrain, but was "
                    + landingElevation + "; the terrain has the elevations");
        }
        double start = terrain.elevation(0.0, 0.0);
        if (!(start <= 0.0)) {
            throw new IllegalArgumentException("terrain must not lie above the ball at the start, but has an elevation"
                    + " of " + start + " m there; elevations are counted from the ball");
        }
        integrator = new FlightIntegrator(equations, terrain, rule);
    }

    /**
     * Flights of a {@linkplain Ball#standard() standard ball} in standard air at sea level (ISO 2533), calm, over level
     * ground.
     *
     * @return the model
     */
    public static FlightModel standard() {
        return STANDARD;
    }

    /**
     * Flights of a ball in standard air at sea level (ISO 2533), calm, over level ground.
     *
     * @param ball the ball
     * @return the model
     */
    public static FlightModel of(Ball ball) {
        return new FlightModel(
                ball,
                Atmosphere.seaLevel().state(),
                Wind.calm(),
                Length.ofMeters(0.0),
                Gravity.STANDARD,
                Accuracy.STANDARD,
                null);
    }

    /**
     * A copy with another ball.
     *
     * @param value the ball
     * @return the copy
     */
    public FlightModel withBall(Ball value) {
        return new FlightModel(value, air, wind, landingElevation, gravity, accuracy, ground);
    }

    /**
     * A copy in the air of a place and day.
     *
     * @param value the air at the ball, the same for the whole flight
     * @return the copy
     */
    public FlightModel withAir(Atmosphere value) {
        return withAir(value.state());
    }

    /**
     * A copy in air of a known density and viscosity.
     *
     * @param value density and viscosity, the same for the whole flight
     * @return the copy
     */
    public FlightModel withAir(AirState value) {
        return new FlightModel(ball, value, wind, landingElevation, gravity, accuracy, ground);
    }

    /**
     * A copy with another wind.
     *
     * @param value the wind
     * @return the copy
     */
    public FlightModel withWind(Wind value) {
        return new FlightModel(ball, air, value, landingElevation, gravity, accuracy, ground);
    }

    /**
     * A copy that lands higher or lower.
     *
     * @param value the elevation of the landing above that of the start, negative for lower ground, in [-1000, 1000] m
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public FlightModel withLandingElevation(Length value) {
        return new FlightModel(ball, air, wind, value, gravity, accuracy, ground);
    }

    /**
     * A copy under another gravity.
     *
     * @param metersPerSecondSquared the acceleration of free fall, in [1, 30] [m/s2]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public FlightModel withGravity(double metersPerSecondSquared) {
        return new FlightModel(ball, air, wind, landingElevation, metersPerSecondSquared, accuracy, ground);
    }

    /**
     * A copy of another accuracy.
     *
     * @param value how near to the exact landing a flight must come
     * @return the copy
     */
    public FlightModel withAccuracy(Accuracy value) {
        return new FlightModel(ball, air, wind, landingElevation, gravity, value, ground);
    }

    /**
     * The accuracy.
     *
     * @return how near to the exact landing a flight comes
     */
    public Accuracy accuracy() {
        return accuracy;
    }

    /**
     * A copy over ground on which the ball bounces and rolls: its flights have a total. They land on the terrain of the ground if it has
     * one, else at the landing elevation, on level ground.
     *
     * @param value the ground
     * @return the copy
     * @throws IllegalArgumentException if the ground has a terrain and this model a landing elevation other than 0, or if
     *     the terrain lies above the ball at the start
     */
    public FlightModel withGround(Ground value) {
        return new FlightModel(
                ball, air, wind, landingElevation, gravity, accuracy, Objects.requireNonNull(value, "ground"));
    }

    /**
     * The ball.
     *
     * @return the ball
     */
    public Ball ball() {
        return ball;
    }

    /**
     * The air.
     *
     * @return density and viscosity
     */
    public AirState air() {
        return air;
    }

    /**
     * The wind.
     *
     * @return the wind
     */
    public Wind wind() {
        return wind;
    }

    /**
     * The elevation of the landing above that of the start.
     *
     * @return the elevation, negative for lower ground
     */
    public Length landingElevation() {
        return landingElevation;
    }

    /**
     * The ground.
     *
     * @return the ground; empty if flights end with the landing
     */
    public Optional<Ground> ground() {
        return Optional.ofNullable(ground);
    }

    /**
     * The acceleration of free fall.
     *
     * @return the acceleration [m/s2]
     */
    public double gravity() {
        return gravity;
    }

    /**
     * Flies one ball.
     *
     * <p>The ball lands when it comes down to the landing elevation, having been at or above it. On level ground a ball that
     * does not rise lands at once, with a carry of 0 and a warning. Towards higher ground it passes through whatever lies
     * between and must rise above the elevation first. Over a terrain it lands where it first comes down to the surface.
     *
     * <p>If the aerodynamic model states its domain, a flight that leaves it carries the warning {@code
     * reynolds-outside-model} or {@code spin-ratio-outside-model}, and one launched where reverse lift has been measured, at
     * Re 5e4 to 7.5e4 and S 0.07 to 0.29, the warning {@code reverse-lift-possible}.
     *
     * @param launch how it starts
     * @return the flight; every number in it is finite
     * @throws FlightException if it does not come to the landing elevation, stays in the air for more than 300 s, or meets
     *     forces that are not finite
     */
    public Flight fly(LaunchConditions launch) {
        LaunchVectors start = LaunchVectors.of(launch);
        FlightPath path = integrator.fly(start.state(), start.axis());
        switch (path.ending()) {
            case LANDED, LANDED_AT_ONCE -> {}
            case ELEVATION_NOT_REACHED -> throw failure(FlightException.Reason.ELEVATION_NOT_REACHED, path);
            case DID_NOT_COME_DOWN -> throw failure(FlightException.Reason.DID_NOT_COME_DOWN, path);
            case DID_NOT_CONVERGE -> throw failure(FlightException.Reason.DID_NOT_CONVERGE, path);
        }
        RollOut rollOut = ground == null ? null : rollOut(ground, path, start.axis());
        return new Flight(launch, path, () -> warnings(path, rollOut), rollOut);
    }

    private List<Warning> warnings(FlightPath path, @Nullable RollOut rollOut) {
        List<Warning> warnings = new ArrayList<>(0);
        if (path.ending() == FlightPath.Ending.LANDED_AT_ONCE) {
            warnings.add(Warning.of(
                    "lands-at-once",
                    "the ball starts on the landing elevation and does not rise above it: there is no flight"));
        } else {
            ModelDomain domain = ball.aerodynamics().domain();
            if (air.density() > 0.0 && !domain.equals(ModelDomain.unbounded())) {
                DomainCheck.add(path, equations, domain, warnings);
                DomainCheck.addReverseLift(path, equations, warnings);
            }
        }
        if (rollOut != null) {
            warnings.addAll(rollOut.warnings());
        }
        return List.copyOf(warnings);
    }

    private RollOut rollOut(Ground under, FlightPath path, double[] axis) {
        double[] landing = new double[FlightEquations.STATE];
        path.at(path.endTime(), landing);
        double spin = landing[FlightEquations.SPIN];
        return under.run(
                new double[] {landing[FlightEquations.X], landing[FlightEquations.Y], landing[FlightEquations.Z]},
                new double[] {landing[FlightEquations.VX], landing[FlightEquations.VY], landing[FlightEquations.VZ]},
                new double[] {spin * axis[0], spin * axis[1], spin * axis[2]},
                ball.diameter().meters() / 2.0,
                ball.inertiaFactor(),
                gravity);
    }

    @Override
    public String toString() {
        return ball + "; " + air + "; landing elevation " + landingElevation + "; gravity " + gravity + " m/s2"
                + (ground == null ? "" : "; " + ground);
    }

    private FlightException failure(FlightException.Reason reason, FlightPath path) {
        return new FlightException(
                reason,
                landingElevation,
                Trajectory.Point.of(path, path.endTime()),
                Length.ofMeters(path.apexHeight()));
    }
}
