package dev.teeward.flight.study;

/**
 * A number that a flight begins with: of the launch, the air, the wind, the ball or the place.
 *
 * <p>Each has a key, an SI unit, a natural scale and the range in which it may lie. The scales are round sizes of a full
 * shot: a change by a whole scale is a large change.
 *
 * <pre>{@code
 * sensitivity.derivative(FlightOutput.CARRY, FlightInput.BALL_SPEED);   // m per m/s
 * FlightInput.BALL_SPEED.unit();                                        // m/s
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum FlightInput {
    /** Ball speed at launch [m/s]. */
    BALL_SPEED("ball_speed", "m/s", 50.0, 0.0, 110.0),
    /** Launch angle, up positive [rad]. */
    LAUNCH_ANGLE("launch_angle", "rad", 0.3, -Math.PI / 2.0, Math.PI / 2.0),
    /** Start direction, right positive [rad]. */
    START_DIRECTION("start_direction", "rad", 0.3, -Math.PI / 2.0, Math.PI / 2.0),
    /** Spin rate at launch [rad/s]. */
    SPIN_RATE("spin_rate", "rad/s", 500.0, 0.0, 2_094.0),
    /** Tilt of the spin axis, curving right positive [rad]. */
    AXIS_TILT("axis_tilt", "rad", 0.3, -Math.PI, Math.PI),
    /** Temperature of the air at constant pressure and relative humidity; there if the atmosphere is given [K]. */
    TEMPERATURE("temperature", "K", 20.0, 213.15, 333.15),
    /** Station pressure; there if the atmosphere is given [Pa]. */
    PRESSURE("pressure", "Pa", 1e4, 3e4, 1.08e5),
    /** Relative humidity; there if the atmosphere is given [1]. */
    HUMIDITY("humidity", "1", 0.5, 0.0, 1.0),
    /** Density of the air, its viscosity kept [kg/m3]. */
    AIR_DENSITY("air_density", "kg/m3", 1.2, 0.0, 10.0),
    /** Dynamic viscosity of the air [Pa s]. */
    AIR_VISCOSITY("air_viscosity", "Pa s", 1.8e-5, 1e-6, 1e-4),
    /** A steady wind towards the target, added to what blows already [m/s]. */
    WIND_ALONG("wind_along", "m/s", 5.0, -50.0, 50.0),
    /** A steady wind towards the right, added to what blows already [m/s]. */
    WIND_RIGHT("wind_right", "m/s", 5.0, -50.0, 50.0),
    /** Mass of the ball, its inertia factor kept [kg]. */
    BALL_MASS("ball_mass", "kg", 0.045, 0.020, 0.100),
    /** Diameter of the ball, its mass and inertia factor kept [m]. */
    BALL_DIAMETER("ball_diameter", "m", 0.042, 0.030, 0.060),
    /** Moment of inertia of the ball over m r^2 [1]. */
    INERTIA_FACTOR("inertia_factor", "1", 0.4, 0.2, 2.0 / 3.0),
    /** A factor on the drag coefficient, 1 as it is [1]. */
    DRAG_SCALE("drag_scale", "1", 1.0, 0.0, 10.0),
    /** A factor on the lift coefficient, 1 as it is [1]. */
    LIFT_SCALE("lift_scale", "1", 1.0, -10.0, 10.0),
    /** Elevation of the landing above the start [m]. */
    LANDING_ELEVATION("landing_elevation", "m", 10.0, -1000.0, 1000.0),
    /** Acceleration of free fall [m/s2]. */
    GRAVITY("gravity", "m/s2", 9.8, 1.0, 30.0);

    private final String key;
    private final String unit;
    private final double scale;
    private final double lowest;
    private final double highest;

    FlightInput(String key, String unit, double scale, double lowest, double highest) {
        this.key = key;
        this.unit = unit;
        this.scale = scale;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * The name in files and tables.
     *
     * @return lower-case words joined by underscores
     */
    public String key() {
        return key;
    }

    /**
     * The symbol of its SI unit; density and viscosity have no {@link dev.teeward.quantity.Unit}.
     *
     * @return the symbol, {@code 1} for a pure number
     */
    public String unit() {
        return unit;
    }

    /**
     * A large change of it.
     *
     * @return the scale, in the SI unit
     */
    public double scale() {
        return scale;
    }

    /** The lower end of its range, in the SI unit. */
    double lowest() {
        return lowest;
    }

    /** The upper end of its range, in the SI unit. */
    double highest() {
        return highest;
    }
}
