package dev.teeward.flight;

/**
 * How near to the exact solution of the equations of flight a computed landing must come.
 *
 * <p>The promise is the largest horizontal distance between the computed landing and that of a reference integration at tolerance
 * 1e-11, held by tests over random launches of 10 to 100 m/s, -5 to 70 deg up, 0 to 12,000 rpm, axis tilts up to 60 deg, in
 * uniform winds up to 20 m/s, to ground up to 50 m higher or lower. Where a ball comes down at less than 3 deg the landing is
 * ill-conditioned, and the time of the landing times the rate of fall is held instead. It is an error of arithmetic alone: what
 * the coefficients and the launch are worth is another matter, and a thousand times larger.
 *
 * <pre>{@code
 * FlightModel quick = FlightModel.standard().withAccuracy(Accuracy.MILLIMETER);
 * Accuracy.MILLIMETER.landingErrorMeters(); // 0.001
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum Accuracy {
    /**
     * 0.5 mm if the aerodynamic model is {@linkplain dev.teeward.flight.aero.AerodynamicModel#smooth() smooth} (0.1 mm for 20 to 80
     * m/s, 5 to 45 deg up and ground up to 10 m higher or lower), 0.1 mm if it is not, by many short steps. The default.
     */
    STANDARD(5e-4, 1e-4),

    /**
     * 0.1 mm, with kinks too; for a smooth model some nine tenths of the steps of the default. A ball that comes down at less than
     * 10 deg flies twice, the second time by shorter steps.
     */
    TENTH_MILLIMETER(1e-4, 1e-4),

    /**
     * 1 mm, with kinks too; for a smooth model less than six tenths of the steps of the default. A ball that comes down at less
     * than 10 deg flies twice, the second time by shorter steps.
     */
    MILLIMETER(1e-3, 1e-3);

    private final double smooth;
    private final double kinked;

    Accuracy(double smooth, double kinked) {
        this.smooth = smooth;
        this.kinked = kinked;
    }

    /**
     * The promise for smooth coefficients.
     *
     * @return the largest error of the landing position [m]
     */
    public double landingErrorMeters() {
        return smooth;
    }

    /**
     * The promise for coefficients with kinks, such as a table between whose rows one interpolates in straight lines.
     *
     * @return the largest error of the landing position [m]
     */
    public double landingErrorWithKinksMeters() {
        return kinked;
    }
}
