package dev.teeward.flight;

import dev.teeward.flight.ground.RollOut;
import dev.teeward.flight.internal.FlightPath;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A flight from launch to landing, as {@link FlightModel#fly} computes it.
 *
 * <p>Side, curve and directions are right positive, for both hands. The numbers are those of the ball coming down at the
 * landing elevation or on the terrain of the model; bounce and roll come after, in {@link #total()} and {@link #rollOut()}, if
 * the model was given a ground.
 *
 * <pre>{@code
 * Flight flight = model.fly(launch);
 * flight.carry().yards();
 * flight.curve().yards();  // of the side, what the ball curved; the rest is the start direction
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Flight {
    private final LaunchConditions launch;
    private final FlightPath path;
    private final Trajectory.Point landing;
    private final Supplier<List<Warning>> warnings;
    private final @Nullable RollOut rollOut;

    /** The warnings are worded only when someone asks: most flights are flown for their numbers. */
    Flight(LaunchConditions launch, FlightPath path, Supplier<List<Warning>> warnings, @Nullable RollOut rollOut) {
        this.launch = launch;
        this.path = path;
        this.warnings = warnings;
        this.rollOut = rollOut;
        landing = Trajectory.Point.of(path, path.endTime());
    }

    /**
     * The launch this flight began with.
     *
     * @return the launch conditions
     */
    public LaunchConditions launch() {
        return launch;
    }

    /**
     * The horizontal distance from the start to the landing.
     *
     * @return the carry, not negative
     */
    public Length carry() {
        return landing.distance();
    }

    /**
     * The distance of the landing from the target line.
     *
     * @return the offset, right positive
     */
    public Length side() {
        return landing.side();
    }

    /**
     * The distance of the landing from the vertical plane of the start direction.
     *
     * @return the offset, right positive; also for a launch straight up, whose plane its start direction still names
     */
    public Length curve() {
        double bearing = launch.startDirection().radians();
        return Length.ofMeters(landing.side().meters() * StrictMath.cos(bearing)
                - landing.downrange().meters() * StrictMath.sin(bearing));
    }

    /**
     * The greatest height.
     *
     * @return the height above the start, not negative
     */
    public Length apex() {
        return Length.ofMeters(path.apexHeight());
    }

    /**
     * The horizontal distance from the start to the point below the apex.
     *
     * @return the distance, not negative
     */
    public Length apexDistance() {
        return Trajectory.Point.of(path, path.apexTime()).distance();
    }

    /**
     * When the ball is highest.
     *
     * @return the time since the launch [s]
     */
    public double apexTimeSeconds() {
        return path.apexTime();
    }

    /**
     * The time from launch to landing.
     *
     * @return the time [s]
     */
    public double flightTimeSeconds() {
        return path.endTime();
    }

    /**
     * The angle below the horizontal at which the ball comes down.
     *
     * @return the angle, down positive, in [0, 90] deg up to rounding
     */
    public Angle descentAngle() {
        return Angle.ofRadians(-landing.climbAngle().radians());
    }

    /**
     * The speed at landing.
     *
     * @return the speed over the ground
     */
    public Speed landingSpeed() {
        return landing.speed();
    }

    /**
     * The spin rate at landing.
     *
     * @return the rate
     */
    public SpinRate landingSpin() {
        return landing.spinRate();
    }

    /**
     * The bearing of the velocity at launch.
     *
     * @return the angle, right of the target positive
     */
    public Angle startDirection() {
        return launch.startDirection();
    }

    /**
     * The bearing of the velocity at landing.
     *
     * @return the angle, right of the target positive, in [-180, 180] deg; 0 if the ball falls straight down
     */
    public Angle landingDirection() {
        return landing.direction();
    }

    /**
     * The ball at landing.
     *
     * @return its position, velocity and spin
     */
    public Trajectory.Point landing() {
        return landing;
    }

    /**
     * The horizontal distance from the start to where the ball stops, in a straight line, as the carry is to where it lands.
     *
     * <p>It is below the carry for a ball that spins or rolls back, and is {@link #carry} plus {@link #run} by definition of the latter.
     *
     * @return the total, not negative; empty unless the model was given a ground, and where the ball stops is known: not with
     *     the {@linkplain #warnings() warnings} {@code bounce-outside-model} and {@code does-not-stop}
     */
    public Optional<Length> total() {
        return rollOut()
                .filter(RollOut::restKnown)
                .filter(RollOut::atRest)
                .map(run -> run.rest().distance());
    }

    /**
     * The total less the carry.
     *
     * @return the run, negative when the ball ends nearer the start than it landed; empty where the total is
     */
    public Optional<Length> run() {
        return total().map(total -> Length.ofMeters(total.meters() - carry().meters()));
    }

    /**
     * What the ball does after the landing.
     *
     * @return bounces, skid, roll and rest; empty unless the model was given a ground
     */
    public Optional<RollOut> rollOut() {
        return Optional.ofNullable(rollOut);
    }

    /**
     * The whole path.
     *
     * @return the ball at any time of the flight
     */
    public Trajectory trajectory() {
        return new Trajectory(path);
    }

    /**
     * What to know of this result.
     *
     * <ul>
     *   <li>{@code lands-at-once}: the ball starts on the landing elevation and does not rise, so there is no flight;
     *   <li>{@code reynolds-outside-model}, {@code spin-ratio-outside-model}: the flight left the range in which the
     *       aerodynamic model was measured or calibrated; the message says how far and for what share of the time, judged at
     *       the ends of the integrator's steps;
     *   <li>{@code bounce-extrapolated}: the ball lands faster or flatter than the bounce model covers, so that the total is a
     *       guess;
     *   <li>{@code bounce-outside-model}: by far, or it comes down so flat that it does not bounce and yet faster than 10 m/s
     *       along the ground: where it stops is not known, and there is no total;
     *   <li>{@code does-not-stop}: the ball still moves 60 s after landing, because the ground is too steep for its turf or the
     *       ball has not lost its speed yet (the warning says which), and there is no total.
     * </ul>
     *
     * @return the warnings, unmodifiable, usually none
     */
    public List<Warning> warnings() {
        return warnings.get();
    }

    @Override
    public String toString() {
        return "carry " + carry() + ", side " + side() + ", apex " + apex() + ", " + path.endTime() + " s";
    }
}
