package dev.teeward.flight.internal;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;

/**
 * The forces on a ball in flight: the only place where they are summed.
 *
 * <pre>
 * a        = -g y + (rho A V^2 / (2 m)) (-Cd u/V + Cl (w x u)/V),  u = v - wind(height),  V = sqrt(u.u + 1e-12 m2/s2)
 * domega/dt = -(rho A D cm r / (2 I)) V omega
 * Re       = rho V D / mu,  S = r omega / V
 * </pre>
 *
 * <p>w is the unit vector of the spin axis, which keeps its direction. The lift is not renormalised when w is no longer
 * perpendicular to u. The 1e-12 under the root, a speed of 1e-6 m/s, keeps a ball at rest from dividing by zero without a
 * branch. The spin law is the decay moment {@code 1/2 rho A V^2 D cm S} written out with {@code S = r omega / V}.
 *
 * <p>The scalar and the lane form do the same operations in the same order, so that they agree bit for bit. Only
 * {@code + - * /} and {@code sqrt} are used here.
 *
 * <p>Immutable and thread-safe, as far as the wind and the aerodynamic model are.
 */
public final class FlightEquations {
    /** Index of the velocity towards the target in a state [m/s]; in rates, of its derivative [m/s2]. */
    public static final int VX = 0;

    /** Index of the upward velocity [m/s]. */
    public static final int VY = 1;

    /** Index of the velocity to the right [m/s]. */
    public static final int VZ = 2;

    /** Index of the spin rate [rad/s]. */
    public static final int SPIN = 3;

    /** Index of the height above the start [m]. */
    public static final int Y = 4;

    /** Index of the distance towards the target [m]. */
    public static final int X = 5;

    /** Index of the distance to the right [m]. */
    public static final int Z = 6;

    /** Numbers in a state. */
    public static final int STATE = 7;

    /** Index, in the rates only, of the speed relative to the air [m/s]; the step rule wants it. */
    public static final int AIR_SPEED = 7;

    /** Numbers in the rates. */
    public static final int RATES = 8;

    private static final double SPEED_FLOOR_SQUARED = 1e-12;

    private final AerodynamicModel aerodynamics;
    private final Wind wind;
    private final double gravity;
    private final double radius;
    private final double mass;
    private final double diameter;
    private final double inertia;
    private final double momentSlope;
    private final double forceScale;
    private final double reynoldsScale;
    private final double spinDecay;

    /**
     * The equations of one ball in one air.
     *
     * @param aerodynamics the coefficients of the ball
     * @param mass its mass [kg]
     * @param diameter its diameter [m]
     * @param inertia its moment of inertia [kg m2]
     * @param density the density of the air; 0 is a vacuum [kg/m3]
     * @param viscosity the dynamic viscosity of the air [Pa s]
     * @param wind the wind
     * @param gravity the acceleration of free fall [m/s2]
     */
    public FlightEquations(
            AerodynamicModel aerodynamics,
            double mass,
            double diameter,
            double inertia,
            double density,
            double viscosity,
            Wind wind,
            double gravity) {
        this.aerodynamics = aerodynamics;
        this.wind = wind;
        this.gravity = gravity;
        this.mass = mass;
        this.diameter = diameter;
        this.inertia = inertia;
        momentSlope = aerodynamics.momentSlope();
        radius = diameter / 2.0;
        forceScale = forceScale(density);
        reynoldsScale = reynoldsScale(density, viscosity);
        spinDecay = spinDecay(density);
    }

    private double forceScale(double density) {
        return density * area() / (2.0 * mass);
    }

    private double reynoldsScale(double density, double viscosity) {
        return density * diameter / viscosity;
    }

    private double spinDecay(double density) {
        return density * area() * diameter * momentSlope * radius / (2.0 * inertia);
    }

    private double area() {
        return Math.PI * diameter * diameter / 4.0;
    }

    /**
     * Whether the coefficients of the ball have no kinks.
     *
     * @return what the aerodynamic model says
     */
    public boolean smooth() {
        return aerodynamics.smooth();
    }

    /**
     * Whether the wind follows a profile, with heights at which its curvature jumps. A wind of the user's own is taken to be
     * smooth.
     *
     * @return true for a {@link WindProfile}
     */
    public boolean windVaries() {
        return wind instanceof WindProfile;
    }

    /**
     * The radius of the ball.
     *
     * @return the radius [m]
     */
    public double radius() {
        return radius;
    }

    /**
     * The Reynolds number at a speed relative to the air.
     *
     * @param airSpeed the speed [m/s]
     * @return the Reynolds number on the diameter
     */
    public double reynolds(double airSpeed) {
        return reynoldsScale * airSpeed;
    }

    /**
     * The rates of one flight.
     *
     * @param state the state; only the first five numbers are read
     * @param axis the unit vector of the spin axis: x, y, z
     * @param rates receives the derivative of the state, in the order of the state, and the speed relative to the air
     * @param at where in {@code rates} the first of the eight numbers goes
     */
    public void rates(double[] state, double[] axis, double[] rates, int at) {
        double height = state[Y];
        double spin = state[SPIN];
        double ux = state[VX] - wind.alongTarget(height);
        double uy = state[VY];
        double uz = state[VZ] - wind.towardsRight(height);
        double speed = Math.sqrt(ux * ux + uy * uy + uz * uz + SPEED_FLOOR_SQUARED);
        double re = reynoldsScale * speed;
        double s = radius * spin / speed;
        double drag = forceScale * speed * aerodynamics.dragCoefficient(re, s);
        double lift = forceScale * speed * aerodynamics.liftCoefficient(re, s);
        rates[at + VX] = lift * (axis[1] * uz - axis[2] * uy) - drag * ux;
        rates[at + VY] = lift * (axis[2] * ux - axis[0] * uz) - drag * uy - gravity;
        rates[at + VZ] = lift * (axis[0] * uy - axis[1] * ux) - drag * uz;
        rates[at + SPIN] = -(spinDecay * speed * spin);
        rates[at + Y] = uy;
        rates[at + X] = state[VX];
        rates[at + Z] = state[VZ];
        rates[at + AIR_SPEED] = speed;
    }

    /**
     * Puts a lane into the air of these equations.
     *
     * @param lanes the block
     * @param lane the lane
     */
    public void air(Lanes lanes, int lane) {
        lanes.block[Lanes.FORCE_AT + lane] = forceScale;
        lanes.block[Lanes.REYNOLDS_AT + lane] = reynoldsScale;
        lanes.block[Lanes.DECAY_AT + lane] = spinDecay;
    }

    /**
     * Puts a lane into air of its own.
     *
     * @param lanes the block
     * @param lane the lane
     * @param density the density of the air [kg/m3]
     * @param viscosity the dynamic viscosity of the air [Pa s]
     */
    public void air(Lanes lanes, int lane, double density, double viscosity) {
        lanes.block[Lanes.FORCE_AT + lane] = forceScale(density);
        lanes.block[Lanes.REYNOLDS_AT + lane] = reynoldsScale(density, viscosity);
        lanes.block[Lanes.DECAY_AT + lane] = spinDecay(density);
    }

    /**
     * The rates of a block of flights, {@link Lanes#WIDTH} side by side. The loops are many and short because the compiler
     * of the virtual machine vectorises only such.
     *
     * @param lanes holds the first five numbers of every state, every axis, and the air of every lane, and receives every
     *     derivative of the velocity and the spin, and every speed relative to the air
     */
    public void rates(Lanes lanes) {
        double[] b = lanes.block;
        if (!lanes.ownWind) {
            System.arraycopy(b, Lanes.STATE_AT + Y * Lanes.STRIDE, lanes.height, 0, Lanes.WIDTH);
            wind.velocities(lanes.height, lanes.along, lanes.right);
        }
        relativeVelocity(b, lanes.along, lanes.right);
        airSpeed(b);
        numbers(b, lanes.re, lanes.s, radius);
        aerodynamics.coefficients(lanes.re, lanes.s, lanes.drag, lanes.lift);
        coefficients(b, lanes.drag, lanes.lift);
        accelerationX(b);
        accelerationY(b);
        accelerationZ(b);
    }

    private static void relativeVelocity(double[] b, double[] along, double[] right) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            b[Lanes.UX_AT + i] = b[Lanes.STATE_AT + VX * Lanes.STRIDE + i] - along[i];
        }
        for (int i = 0; i < Lanes.WIDTH; i++) {
            b[Lanes.UZ_AT + i] = b[Lanes.STATE_AT + VZ * Lanes.STRIDE + i] - right[i];
        }
    }

    private static void airSpeed(double[] b) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double ux = b[Lanes.UX_AT + i];
            double uy = b[Lanes.UY_AT + i];
            double uz = b[Lanes.UZ_AT + i];
            b[Lanes.SPEED_AT + i] = Math.sqrt(ux * ux + uy * uy + uz * uz + SPEED_FLOOR_SQUARED);
        }
    }

    private static void numbers(double[] b, double[] re, double[] s, double r) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double speed = b[Lanes.SPEED_AT + i];
            double spin = b[Lanes.STATE_AT + SPIN * Lanes.STRIDE + i];
            re[i] = b[Lanes.REYNOLDS_AT + i] * speed;
            s[i] = r * spin / speed;
        }
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double turned = b[Lanes.DECAY_AT + i] * b[Lanes.SPEED_AT + i];
            b[Lanes.RATES_AT + SPIN * Lanes.STRIDE + i] = -(turned * b[Lanes.STATE_AT + SPIN * Lanes.STRIDE + i]);
        }
    }

    private static void coefficients(double[] b, double[] drag, double[] lift) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double factor = b[Lanes.FORCE_AT + i] * b[Lanes.SPEED_AT + i];
            b[Lanes.DRAG_AT + i] = factor * drag[i];
            b[Lanes.LIFT_AT + i] = factor * lift[i];
        }
    }

    private static void accelerationX(double[] b) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double turn = b[Lanes.AXIS_AT + Lanes.STRIDE + i] * b[Lanes.UZ_AT + i]
                    - b[Lanes.AXIS_AT + 2 * Lanes.STRIDE + i] * b[Lanes.UY_AT + i];
            b[Lanes.RATES_AT + VX * Lanes.STRIDE + i] =
                    b[Lanes.LIFT_AT + i] * turn - b[Lanes.DRAG_AT + i] * b[Lanes.UX_AT + i];
        }
    }

    private void accelerationY(double[] b) {
        double g = gravity;
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double turn = b[Lanes.AXIS_AT + 2 * Lanes.STRIDE + i] * b[Lanes.UX_AT + i]
                    - b[Lanes.AXIS_AT + i] * b[Lanes.UZ_AT + i];
            b[Lanes.RATES_AT + VY * Lanes.STRIDE + i] =
                    b[Lanes.LIFT_AT + i] * turn - b[Lanes.DRAG_AT + i] * b[Lanes.UY_AT + i] - g;
        }
    }

    private static void accelerationZ(double[] b) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double turn = b[Lanes.AXIS_AT + i] * b[Lanes.UY_AT + i]
                    - b[Lanes.AXIS_AT + Lanes.STRIDE + i] * b[Lanes.UX_AT + i];
            b[Lanes.RATES_AT + VZ * Lanes.STRIDE + i] =
                    b[Lanes.LIFT_AT + i] * turn - b[Lanes.DRAG_AT + i] * b[Lanes.UZ_AT + i];
        }
    }

    /**
     * The work space of one block of flights: component by component, one lane beside the other, in one array with constant
     * offsets. The stride is not a power of two, so that components do not fall on the same cache lines.
     *
     * <p>Every lane must hold finite numbers, used or not. Mutable; one for each thread.
     */
    public static final class Lanes {
        /** Flights in a block. */
        public static final int WIDTH = 128;

        /** From a component to the next. */
        public static final int STRIDE = WIDTH + 8;

        /** Where the states begin: {@code vx, vy, vz, spin, y, x, z}; the force sum does not read the last two. */
        public static final int STATE_AT = 0;

        /** Where the spin axes begin: {@code x, y, z}. */
        public static final int AXIS_AT = 7 * STRIDE;

        /** Where the derivatives of {@code vx, vy, vz, spin} begin. */
        public static final int RATES_AT = 10 * STRIDE;

        /** Where the speeds relative to the air begin. */
        public static final int SPEED_AT = 14 * STRIDE;

        /** Where what turns speed into a Reynolds number begins. */
        static final int REYNOLDS_AT = 15 * STRIDE;

        private static final int FORCE_AT = 16 * STRIDE;
        private static final int DECAY_AT = 17 * STRIDE;
        private static final int UX_AT = 18 * STRIDE;
        private static final int UY_AT = STATE_AT + VY * STRIDE;
        private static final int UZ_AT = 19 * STRIDE;
        private static final int DRAG_AT = 20 * STRIDE;
        private static final int LIFT_AT = 21 * STRIDE;

        /** Where the room begins that the force sum leaves to others. */
        static final int FREE_AT = 22 * STRIDE;

        private final double[] block;
        private final double[] height = new double[WIDTH];
        private final double[] along = new double[WIDTH];
        private final double[] right = new double[WIDTH];
        private final double[] re = new double[WIDTH];
        private final double[] s = new double[WIDTH];
        private final double[] drag = new double[WIDTH];
        private final double[] lift = new double[WIDTH];
        private boolean ownWind;

        /** A block of flights at rest in a vacuum. */
        public Lanes() {
            this(0);
        }

        /** A block with room for more components behind those of the force sum. */
        Lanes(int more) {
            block = new double[FREE_AT + more * STRIDE];
        }

        /**
         * The numbers, to read and to write at the offsets above.
         *
         * @return the array itself, not a copy
         */
        public double[] block() {
            return block;
        }

        /** Whether every lane has a steady wind of its own instead of that of the equations. */
        void ownWind(boolean own) {
            ownWind = own;
        }

        /** Whether the wind of no lane depends on its height. */
        boolean ownWind() {
            return ownWind;
        }

        /** The steady wind of a lane [m/s]. */
        void wind(int lane, double alongTarget, double towardsRight) {
            along[lane] = alongTarget;
            right[lane] = towardsRight;
        }

        /** The last wind towards the target in a lane [m/s]. */
        double alongTarget(int lane) {
            return along[lane];
        }

        /** The last wind towards the right in a lane [m/s]. */
        double towardsRight(int lane) {
            return right[lane];
        }

        /** The last Reynolds numbers; the array itself. */
        double[] reynolds() {
            return re;
        }

        /** The last spin ratios; the array itself. */
        double[] spinRatios() {
            return s;
        }
    }
}
