package dev.teeward.flight;

import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.FlightPath;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The whole path of a flight, at any time between launch and landing.
 *
 * <p>Between the steps of the integrator the path is the quintic through position, velocity and acceleration at both ends.
 * Over 10,000 random flights the positions are within 0.1 mm, the velocities within 1 mm/s and the spin within 0.001 percent of
 * a reference integration at tolerance 1e-11.
 *
 * <pre>{@code
 * Trajectory path = flight.trajectory();
 * path.at(1.5).height().feet();
 * path.crossingDistance(yards(100.0)).map(p -> p.height().feet()); // over the tree at 100 yd?
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Trajectory {
    /** The most points a sampling may have. */
    private static final int MOST_POINTS = 1_000_000;

    private final FlightPath path;

    Trajectory(FlightPath path) {
        this.path = path;
    }

    /**
     * The duration from launch to landing.
     *
     * @return the duration [s]
     */
    public double durationSeconds() {
        return path.endTime();
    }

    /**
     * The ball at a time.
     *
     * @param seconds the time since the launch, in [0, duration] [s]
     * @return where it is, how fast it moves and spins
     * @throws IllegalArgumentException if the time lies before the launch or after the landing
     */
    public Point at(double seconds) {
        if (!(seconds >= 0.0 && seconds <= path.endTime())) {
            throw new IllegalArgumentException(
                    "seconds must be in [0, " + path.endTime() + "] s, from launch to landing, but was " + seconds);
        }
        return point(seconds);
    }

    /**
     * Points evenly spaced in time, launch and landing included.
     *
     * @param points how many, in [2, 1000000]
     * @return the points, in order of time
     * @throws IllegalArgumentException if the number lies outside
     */
    public List<Point> evenly(int points) {
        if (points < 2 || points > MOST_POINTS) {
            throw new IllegalArgumentException("points must be in [2, " + MOST_POINTS + "], but was " + points);
        }
        double[] times = new double[points];
        for (int i = 0; i < points; i++) {
            times[i] = i == points - 1 ? path.endTime() : path.endTime() * i / (points - 1);
        }
        return points(times);
    }

    /**
     * Points at every multiple of an interval, from the launch on, and the landing.
     *
     * @param seconds the interval, above 0 and long enough for at most 1,000,000 points [s]
     * @return the points, in order of time; the last interval is usually shorter
     * @throws IllegalArgumentException if the interval is not positive or too short
     */
    public List<Point> every(double seconds) {
        if (!(seconds > 0.0 && path.endTime() / seconds < MOST_POINTS)) {
            throw new IllegalArgumentException("seconds must be above " + path.endTime() / MOST_POINTS
                    + " s, which makes " + MOST_POINTS + " points, but was " + seconds);
        }
        int before = multiplesBeforeLanding(seconds);
        double[] times = new double[before + 1];
        for (int i = 0; i < before; i++) {
            times[i] = i * seconds;
        }
        times[before] = path.endTime();
        return points(times);
    }

    /**
     * The positions at every multiple of an interval, from the launch on, and at the landing, in columns: what {@link #every} gives,
     * to the last bit, without an object for each point.
     *
     * @param seconds the interval, above 0 [s]
     * @param downrange receives the distances along the target line [m]
     * @param height receives the heights above the start [m]
     * @param side receives the distances from the target line, right positive [m]
     * @return how many points there are
     * @throws IllegalArgumentException if the interval is not positive, or a column is shorter than there are points
     */
    public int sampleInto(double seconds, double[] downrange, double[] height, double[] side) {
        int room = Math.min(downrange.length, Math.min(height.length, side.length));
        if (!(seconds > 0.0 && path.endTime() / seconds < Math.min(room, MOST_POINTS))) {
            throw new IllegalArgumentException("the columns must have room for every " + seconds + " s of "
                    + path.endTime() + " s and the landing, but the shortest has " + room + " rows");
        }
        int before = multiplesBeforeLanding(seconds);
        if (before >= room) {
            throw new IllegalArgumentException(
                    "the columns must have at least " + (before + 1) + " rows, but the shortest has " + room);
        }
        path.positions(seconds, before, downrange, height, side);
        return before + 1;
    }

    /**
     * The ball where it first is a distance towards the target, flying forwards or blown back.
     *
     * @param downrange the distance along the target line, negative behind the start
     * @return the ball there; empty if it lands before
     */
    public Optional<Point> crossingDistance(Length downrange) {
        return crossing(1.0, 0.0, downrange);
    }

    /**
     * The ball where it first meets a vertical plane: a net, a row of trees, the edge of a fairway.
     *
     * @param distance the distance of the plane from the start
     * @param bearing the bearing in which that distance is measured, at right angles to the plane; 0 towards the target, 90
     *     deg to the right, so that {@code (yards(15), degrees(90))} is the edge 15 yd right of the target line
     * @return the ball there; empty if it lands before
     */
    public Optional<Point> crossingPlane(Length distance, Angle bearing) {
        return crossing(StrictMath.cos(bearing.radians()), StrictMath.sin(bearing.radians()), distance);
    }

    private int multiplesBeforeLanding(double seconds) {
        int before = (int) Math.ceil(path.endTime() / seconds);
        // The quotient is rounded: the last multiple may fall on the landing or just short of it.
        while (before > 0 && (before - 1) * seconds >= path.endTime()) {
            before--;
        }
        return before;
    }

    private Optional<Point> crossing(double alongX, double alongZ, Length distance) {
        var time = path.crossing(alongX, alongZ, distance.meters());
        return time.isPresent() ? Optional.of(point(time.getAsDouble())) : Optional.empty();
    }

    private List<Point> points(double[] times) {
        double[] states = new double[times.length * FlightEquations.STATE];
        path.at(times, states);
        List<Point> points = new ArrayList<>(times.length);
        for (int i = 0; i < times.length; i++) {
            points.add(new Point(times[i], states, i * FlightEquations.STATE));
        }
        return points;
    }

    private Point point(double seconds) {
        return Point.of(path, seconds);
    }

    /**
     * The ball at one time of its flight.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Point implements Serializable {
        private static final long serialVersionUID = 1L;

        /** Time since the launch [s]. */
        private final double time;

        /** Velocity towards the target [m/s]. */
        private final double vx;

        /** Upward velocity [m/s]. */
        private final double vy;

        /** Velocity to the right [m/s]. */
        private final double vz;

        /** Spin rate [rad/s]. */
        private final double spin;

        /** Distance towards the target [m]. */
        private final double x;

        /** Height above the start [m]. */
        private final double y;

        /** Distance to the right of the target line [m]. */
        private final double z;

        private Point(double time, double[] states, int at) {
            this.time = time;
            vx = states[at + FlightEquations.VX];
            vy = states[at + FlightEquations.VY];
            vz = states[at + FlightEquations.VZ];
            spin = states[at + FlightEquations.SPIN];
            x = states[at + FlightEquations.X];
            y = states[at + FlightEquations.Y];
            z = states[at + FlightEquations.Z];
        }

        static Point of(FlightPath path, double seconds) {
            double[] state = new double[FlightEquations.STATE];
            path.at(seconds, state);
            return new Point(seconds, state, 0);
        }

        /**
         * The time since the launch.
         *
         * @return the time [s]
         */
        public double timeSeconds() {
            return time;
        }

        /**
         * The distance along the target line.
         *
         * @return the distance, negative behind the start
         */
        public Length downrange() {
            return Length.ofMeters(x);
        }

        /**
         * The height above the start.
         *
         * @return the height
         */
        public Length height() {
            return Length.ofMeters(y);
        }

        /**
         * The distance from the target line.
         *
         * @return the distance, right positive
         */
        public Length side() {
            return Length.ofMeters(z);
        }

        /**
         * The horizontal distance from the start.
         *
         * @return the distance, not negative
         */
        public Length distance() {
            return Length.ofMeters(Math.sqrt(x * x + z * z));
        }

        /**
         * The speed over the ground.
         *
         * @return the speed
         */
        public Speed speed() {
            return Speed.ofMetersPerSecond(Math.sqrt(vx * vx + vy * vy + vz * vz));
        }

        /**
         * The velocity along the target line.
         *
         * @return the component, negative when the ball comes back
         */
        public Speed velocityDownrange() {
            return Speed.ofMetersPerSecond(vx);
        }

        /**
         * The vertical velocity.
         *
         * @return the component, up positive
         */
        public Speed velocityUp() {
            return Speed.ofMetersPerSecond(vy);
        }

        /**
         * The velocity across the target line.
         *
         * @return the component, right positive
         */
        public Speed velocityRight() {
            return Speed.ofMetersPerSecond(vz);
        }

        /**
         * The angle of the velocity above the horizontal.
         *
         * @return the angle, in [-90, 90] deg, negative on the way down
         */
        public Angle climbAngle() {
            return Angle.ofRadians(StrictMath.atan2(vy, Math.sqrt(vx * vx + vz * vz)));
        }

        /**
         * The bearing of the velocity.
         *
         * @return the angle, right of the target positive, in [-180, 180] deg; 0 if the ball moves straight up or down
         */
        public Angle direction() {
            return Angle.ofRadians(StrictMath.atan2(vz, vx));
        }

        /**
         * The spin rate.
         *
         * @return the rate
         */
        public SpinRate spinRate() {
            return SpinRate.ofRadiansPerSecond(spin);
        }

        /** Time, position and velocity, in SI. */
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%.3f s, %.2f m downrange, %.2f m high, %.2f m to the right, at %.2f m/s, spin %.0f rpm",
                    time,
                    x,
                    y,
                    z,
                    speed().metersPerSecond(),
                    spinRate().rpm());
        }
    }
}
