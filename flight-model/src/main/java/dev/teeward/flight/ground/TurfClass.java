package dev.teeward.flight.ground;

import dev.teeward.quantity.Length;

/**
 * Kinds of turf, to begin with.
 *
 * <p>The fairway is that of Penner 2002, from memory. The speed of the greens is a reading of a {@link Stimpmeter}; they bounce
 * as the fairway does, for want of a source. Every other number is common practice, no source: firmer turf bounces higher and gives way less, longer grass
 * rolls less.
 *
 * <pre>{@code
 * Ground ground = Ground.of(TurfClass.FIRM_FAIRWAY);
 * TurfClass.GREEN.turf().rollingResistance();   // 0.0784: 10 ft
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public enum TurfClass {
    /** A fairway: friction 0.40, rolling resistance 0.131 (Penner 2002, from memory). */
    FAIRWAY(0.40, 0.131, 1.0, 1.0),

    /** A dry fairway: restitution x 1.25, tilt x 0.75, rolling resistance 0.10 (common practice, no source). */
    FIRM_FAIRWAY(0.40, 0.10, 1.25, 0.75),

    /** A wet fairway: restitution x 0.7, tilt x 1.2, rolling resistance 0.20 (common practice, no source). */
    SOFT_FAIRWAY(0.40, 0.20, 0.7, 1.2),

    /** Grass of some 5 cm: restitution x 0.6, tilt x 1.2, rolling resistance 0.5 (common practice, no source). */
    ROUGH(0.50, 0.50, 0.6, 1.2),

    /** A green of 10 ft that bounces as the fairway (common practice, no source). */
    GREEN(0.40, resistance(10.0), 1.0, 1.0),

    /** A firm green of 12 ft: restitution x 1.25, tilt x 0.75 (common practice, no source). */
    FIRM_GREEN(0.40, resistance(12.0), 1.25, 0.75),

    /** A soft green of 8.5 ft: restitution x 0.7, tilt x 1.2 (common practice, no source). */
    SOFT_GREEN(0.40, resistance(8.5), 0.7, 1.2);

    private final double friction;
    private final double rollingResistance;
    private final double restitutionFactor;
    private final double tiltFactor;

    TurfClass(double friction, double rollingResistance, double restitutionFactor, double tiltFactor) {
        this.friction = friction;
        this.rollingResistance = rollingResistance;
        this.restitutionFactor = restitutionFactor;
        this.tiltFactor = tiltFactor;
    }

    private static double resistance(double stimpFeet) {
        return Stimpmeter.rollingResistance(Length.ofFeet(stimpFeet));
    }

    /**
     * The numbers of this class.
     *
     * @return the turf
     */
    public Turf turf() {
        return Turf.of(friction, rollingResistance)
                .withRestitutionFactor(restitutionFactor)
                .withTiltFactor(tiltFactor);
    }
}
