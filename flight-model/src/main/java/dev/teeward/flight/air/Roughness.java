package dev.teeward.flight.air;

import dev.teeward.quantity.Length;

/**
 * How rough the country upwind is, as the roughness length of the Davenport-Wieringa classes.
 *
 * <p>The class describes a few hundred metres upwind, not the turf under the ball. Source: A. G. Davenport (1960), revised
 * by J. Wieringa (1992), in the values of the WMO code list.
 *
 * <pre>{@code
 * Roughness.OPEN.length(); // 0.03 m
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum Roughness {
    /** Open sea or a large lake, 0.0002 m. */
    SEA(0.0002),

    /** Featureless land without vegetation to speak of, such as a beach or snow, 0.005 m. */
    SMOOTH(0.005),

    /** Flat open grass with few isolated obstacles, such as an airport, 0.03 m. */
    OPEN(0.03),

    /** Low crops or plants and occasional obstacles, 0.1 m. */
    ROUGHLY_OPEN(0.1),

    /** High crops, scattered obstacles, 0.25 m. */
    ROUGH(0.25),

    /** Parkland with bushes and many obstacles, 0.5 m. */
    VERY_ROUGH(0.5),

    /** Forest or suburb, 1 m. */
    CLOSED(1.0),

    /** City centres and irregular forests with clearings, 2 m; the class is "2 m or more". */
    CHAOTIC(2.0);

    private final double meters;

    Roughness(double meters) {
        this.meters = meters;
    }

    /**
     * The roughness length z0, the height at which the logarithmic profile reaches zero.
     *
     * @return the length
     */
    public Length length() {
        return Length.ofMeters(meters);
    }

    /**
     * The exponent of the power law that has the logarithmic law's slope at 10 m: {@code 1 / ln(10 / z0)}.
     *
     * <p>0.17 over open grass, where 1/7 = 0.143 is the usual round number. The two laws then agree near 10 m; at 30 m the power
     * law is 1.6 percent higher over open grass and 9 percent over forest.
     *
     * @return the exponent for {@link WindProfile#powerLaw}, in [0.09, 0.5]; for {@link #CHAOTIC} the formula gives 0.62, and 0.5, the
     *     largest that the law takes, is returned
     */
    public double powerLawExponent() {
        return Math.min(0.5, 1.0 / StrictMath.log(10.0 / meters));
    }
}
