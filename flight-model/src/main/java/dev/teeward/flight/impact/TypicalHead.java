package dev.teeward.flight.impact;

import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;

/**
 * Club heads for a club that nobody measured, by type: what to start from, not what any club is.
 *
 * <table>
 * <caption>The constants and where they are from</caption>
 * <tr><th>constant</th><th>value</th><th>source</th></tr>
 * <tr><td>driver: mass, depth of the centre of mass, moments, bulge, restitution; roll assumed equal to the bulge, no source</td>
 *     <td>204 g; 42.3 mm; 5679, 4085, 2843 g cm2; 305 mm both; 0.83</td>
 *     <td>Proceedings (MDPI) 49(1):47, 2020, table 1; which moment belongs to which axis is inferred. The limit of the rules,
 *     0.822 + 0.008, is as high; distance tests imply about 0.80</td></tr>
 * <tr><td>fairway wood: mass, restitution, depth, moments, bulge and roll</td>
 *     <td>210 g + 3 g for each number above 3; 0.82; 25 mm; 2700, 1600, 2300 g cm2; 305 mm both</td>
 *     <td>common practice, no source</td></tr>
 * <tr><td>hybrid: the same, flat from sole to crown</td>
 *     <td>235 g + 5 g for each number above 3; 0.81; 18 mm; 2600, 1100, 2400 g cm2; bulge 400 mm</td>
 *     <td>common practice, no source</td></tr>
 * <tr><td>iron: mass</td><td>255 g for the 5-iron, 7.5 g a number</td>
 *     <td>about 5 to 7 g a club from a driver's 200 g to a wedge's 290 to 300 g: Cochran and Stobbs (1968), Penner (2003), both
 *     from memory</td></tr>
 * <tr><td>iron: restitution</td><td>0.79 for the 5-iron and longer, 0.78 for the 7-iron, 0.76 for the 9-iron, linear
 *     between</td><td>common practice, no source; that it falls off from woods to wedges too</td></tr>
 * <tr><td>iron, wedge: depth and moments</td><td>6 mm; 2600, 700, 2800 g cm2, flat face</td>
 *     <td>common practice, no source</td></tr>
 * <tr><td>wedge: mass, restitution</td><td>290 g and 0.75 at 46 deg of loft to 300 g and 0.73 at 56 deg and above, linear
 *     between</td><td>mass as for irons, from memory; restitution common practice, no source</td></tr>
 * <tr><td>friction, every head</td><td>0.4, dry and clean</td><td>from memory; a wet face has about 0.2</td></tr>
 * <tr><td>restitution along the face</td><td>driver 0, the ball leaves rolling; fairway wood 0.19; hybrid 0.16; iron 0.29;
 *     wedge 0.34 at 46 deg of loft to 0.20 at 56 deg and above, linear between</td>
 *     <td>calibrated on common-practice values, no source, see below, but for wedges of more than 46 deg: our guess; that it exists: Cross, from memory, and Proceedings (MDPI)
 *     49(1):27, 2020, abstract</td></tr>
 * </table>
 *
 * <p>A ball that only rolls leaves irons with a fifth to a quarter too little spin. So the restitution along the face is, for each
 * kind of head, the mean of what 14 typical shots ask for, not below 0: ball speed, launch angle and spin of them are common
 * practice recalled from memory, and so are club speed and attack angle; the loft is taken from launch and spin, as the dynamic
 * loft that they imply by themselves ({@link ImpliedDelivery}). That the launch angle then agrees says next to nothing: it went
 * into the loft. What is left, model less shot:
 *
 * <table>
 * <caption>Calibration, not validation</caption>
 * <tr><th>head</th><th>shots</th><th>ball speed [%]</th><th>launch angle [deg]</th><th>spin rate [%]</th></tr>
 * <tr><td>driver</td><td>3</td><td>-2.1, -1.6, -1.6</td><td>-0.3, -0.2, -0.1</td><td>+11.7, +9.3, +1.2</td></tr>
 * <tr><td>fairway wood</td><td>2</td><td>-2.1, -2.2</td><td>-0.3, +0.1</td><td>+6.9, -5.4</td></tr>
 * <tr><td>hybrid</td><td>1</td><td>-0.6</td><td>-0.0</td><td>-0.2</td></tr>
 * <tr><td>iron</td><td>6</td><td>+1.8, -1.2, +1.6, -1.1, -0.1, -3.7</td><td>-0.3, -0.2, +0.0, +0.1, +0.3, +0.0</td><td>+7.6, +2.5, +1.6, -2.0, -3.9, -4.1</td></tr>
 * <tr><td>wedge</td><td>2</td><td>-3.6, -4.7</td><td>-0.4, -0.5</td><td>+0.2, -0.0</td></tr>
 * </table>
 *
 * <p>A driver's spin stays too high, the more the steeper the attack: by 32 percent for a fast one (113 mph, attack -1.3
 * deg, 2,690 rpm, from memory) with the loft that launches it at 10.5 deg. Less spin than rolling gives is not to be had from a restitution; a strike above the centre, a
 * centre of mass below its normal, or a contact point that moves (Proceedings (MDPI) 49(1):47, 2020, abstract) lower it. No
 * typical shot is known for a wedge of more than 46 deg, and its 0.20 is a guess. Delivered with 10 deg less than their loft and
 * an attack of -5 deg, wedges of 46, 56, 60 and 64 deg start the ball 66, 61, 57 and 52 percent of the way from path to face;
 * measured were 61 to 83 percent, of which clubs the abstract does not say (Wood, Henrikson and Broadie 2018). A ball that only
 * rolls would start 62 and 58 percent of the way from the last two.
 *
 * <p>Moments are about the axis up the face, from heel to toe, and along the normal. What depends on restitution and friction
 * is better calibrated on the golfer's own shots.
 *
 * <pre>{@code
 * ClubHead six = TypicalHead.iron(6);
 * ClubHead lefty = TypicalHead.driver().toBuilder().handedness(Handedness.LEFT).build();
 * Impact impact = RigidImpact.standard().strike(delivery, six);
 * }</pre>
 *
 * <p>All are right-handed until told otherwise. Thread-safe; nothing here changes.
 */
public final class TypicalHead {
    private static final double GRAM_SQUARE_CENTIMETER = 1e-7;

    /** Along the face, for each kind of head: calibrated on common-practice values, no source. */
    private static final double FAIRWAY_WOOD_ALONG = 0.19;

    private static final double HYBRID_ALONG = 0.16;
    private static final double IRON_ALONG = 0.29;
    private static final double WEDGE_ALONG = 0.34;

    /** From 56 deg of loft on: our guess, no source. */
    private static final double LOFTED_WEDGE_ALONG = 0.20;

    private TypicalHead() {}

    /**
     * A driver.
     *
     * @return the head
     */
    public static ClubHead driver() {
        return head(204.0, 0.83, 42.3, 5679.0, 4085.0, 2843.0)
                .bulgeRadius(Length.ofMillimeters(305.0))
                .rollRadius(Length.ofMillimeters(305.0))
                .build();
    }

    /**
     * A fairway wood.
     *
     * @param number its number, in [2, 11]
     * @return the head
     * @throws IllegalArgumentException if the number lies outside
     */
    public static ClubHead fairwayWood(int number) {
        Allowed.number("number", number, 2.0, 11.0, "fairway woods are numbered 3, 5, 7, ...");
        return head(210.0 + 3.0 * (number - 3), 0.82, 25.0, 2700.0, 1600.0, 2300.0)
                .tangentialRestitution(FAIRWAY_WOOD_ALONG)
                .bulgeRadius(Length.ofMillimeters(305.0))
                .rollRadius(Length.ofMillimeters(305.0))
                .build();
    }

    /**
     * A hybrid.
     *
     * @param number its number, in [1, 8]
     * @return the head
     * @throws IllegalArgumentException if the number lies outside
     */
    public static ClubHead hybrid(int number) {
        Allowed.number("number", number, 1.0, 8.0, "hybrids are numbered like the irons that they replace");
        return head(235.0 + 5.0 * (number - 3), 0.81, 18.0, 2600.0, 1100.0, 2400.0)
                .tangentialRestitution(HYBRID_ALONG)
                .bulgeRadius(Length.ofMillimeters(400.0))
                .build();
    }

    /**
     * An iron.
     *
     * @param number its number, in [1, 9]
     * @return the head
     * @throws IllegalArgumentException if the number lies outside
     */
    public static ClubHead iron(int number) {
        Allowed.number("number", number, 1.0, 9.0, "for a wedge use TypicalHead.wedge");
        double restitution =
                number <= 5 ? 0.79 : number <= 7 ? 0.79 - 0.005 * (number - 5) : 0.78 - 0.01 * (number - 7);
        return head(255.0 + 7.5 * (number - 5), restitution, 6.0, 2600.0, 700.0, 2800.0)
                .tangentialRestitution(IRON_ALONG)
                .build();
    }

    /**
     * A wedge.
     *
     * @param loftDegrees the loft that is stamped on it, in [40, 66] [deg]
     * @return the head
     * @throws IllegalArgumentException if the loft lies outside
     */
    public static ClubHead wedge(double loftDegrees) {
        Allowed.number("loftDegrees", loftDegrees, 40.0, 66.0, "wedges have about 44 to 64 deg");
        double share = Math.min(1.0, Math.max(0.0, (loftDegrees - 46.0) / 10.0));
        return head(290.0 + 10.0 * share, 0.75 - 0.02 * share, 6.0, 2600.0, 700.0, 2800.0)
                .tangentialRestitution(WEDGE_ALONG + share * (LOFTED_WEDGE_ALONG - WEDGE_ALONG))
                .build();
    }

    private static ClubHead.Builder head(
            double grams, double restitution, double depthMillimeters, double up, double across, double normal) {
        return ClubHead.builder()
                .mass(Mass.ofGrams(grams))
                .restitution(restitution)
                .handedness(Handedness.RIGHT)
                .massCenterDepth(Length.ofMillimeters(depthMillimeters))
                .inertia(up * GRAM_SQUARE_CENTIMETER, across * GRAM_SQUARE_CENTIMETER, normal * GRAM_SQUARE_CENTIMETER);
    }
}
