package dev.teeward.examples;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Unit;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/**
 * What is put into the demo session, so that the answer can be held against it. All of it is invented.
 *
 * <p>A left-handed golfer fades the ball: the path goes to the right of the target (out-to-in for a left-hander), the face
 * points left of the path, the ball curves left. Both clubs are built alike and swung alike, but with Rowan the face is
 * less open to the path. The golfer is a steady one, so that twelve pairs and the margins that the program takes by itself are
 * enough. One shot is a mishit, in one the spin is misread, both are noted and neither is excluded.
 */
final class DemoTruth {
    /** The first club. */
    static final String ALDER = "Alder";

    /** The second club. */
    static final String ROWAN = "Rowan";

    /** The golfer's hand. */
    static final Handedness HAND = Handedness.LEFT;

    /** Pairs of one shot with each club: Alder first in odd pairs, Rowan first in even ones. */
    static final int PAIRS = 12;

    /** All shots. */
    static final int SHOTS = 2 * PAIRS;

    /** The number of the shot struck low and far towards the toe; with Rowan, in pair 5. */
    static final int MISHIT_SHOT = 10;

    /** The number of the shot whose spin was read as half of what it was; with Alder, in pair 9. */
    static final int MISREAD_SHOT = 17;

    /** Where the mishit was struck, towards the toe and up [mm]. */
    static final double MISHIT_TOE = 23.0;

    /** Where the mishit was struck, upwards [mm]. */
    static final double MISHIT_UP = -11.0;

    /** Swings farther than this from the mean, in standard deviations, do not occur: the one wild swing is the mishit. */
    static final double LARGEST_DEVIATE = 2.0;

    private static final Map<Metric, Swing> SWING = swing();
    private static final Map<Metric, Double> MARGINS = margins();

    private DemoTruth() {}

    /** Means and shot-to-shot standard deviation in the unit, the latter before {@link #LARGEST_DEVIATE} cuts it by 12 %. */
    private record Swing(Unit unit, double alder, double rowan, double deviation) {}

    private static Map<Metric, Swing> swing() {
        Map<Metric, Swing> swing = new EnumMap<>(Metric.class);
        swing.put(Metric.CLUB_SPEED, new Swing(SpeedUnit.MILE_PER_HOUR, 79.0, 79.0, 0.5));
        swing.put(Metric.ATTACK_ANGLE, new Swing(AngleUnit.DEGREE, -3.6, -3.6, 0.6));
        swing.put(Metric.CLUB_PATH, new Swing(AngleUnit.DEGREE, 3.0, 3.0, 1.0));
        swing.put(Metric.FACE_ANGLE, new Swing(AngleUnit.DEGREE, -0.8, 1.0, 1.0));
        swing.put(Metric.FACE_TO_PATH, new Swing(AngleUnit.DEGREE, -3.8, -2.0, Math.sqrt(0.5)));
        swing.put(Metric.DYNAMIC_LOFT, new Swing(AngleUnit.DEGREE, 21.5, 21.5, 0.6));
        swing.put(Metric.DYNAMIC_LIE, new Swing(AngleUnit.DEGREE, -0.5, -0.5, 0.6));
        swing.put(Metric.STRIKE_TOE, new Swing(LengthUnit.MILLIMETER, -1.0, -1.0, 4.0));
        swing.put(Metric.STRIKE_UP, new Swing(LengthUnit.MILLIMETER, -2.0, -2.0, 2.5));
        return Collections.unmodifiableMap(swing);
    }

    /** The margin of club speed is the one that the program takes by itself, 1 mph: declared, it is a question of its own. */
    private static Map<Metric, Double> margins() {
        return Map.of(Metric.CLUB_SPEED, SpeedUnit.MILE_PER_HOUR.toSi(1.0));
    }

    /** The metrics whose means are put in; everything else follows from them by the impact and flight models. */
    static Set<Metric> metrics() {
        return SWING.keySet();
    }

    /** The true mean of a metric that was put in, over all shots with the club but the mishit [SI]. */
    static double mean(String club, Metric metric) {
        Swing swing = of(metric);
        return swing.unit().toSi(club.equals(ALDER) ? swing.alder() : swing.rowan());
    }

    /** The shot-to-shot standard deviation, without the device's error and what is cut off [SI]. */
    static double deviation(Metric metric) {
        return of(metric).unit().toSi(of(metric).deviation());
    }

    /** The true difference, Alder minus Rowan [SI]. */
    static double difference(Metric metric) {
        return mean(ALDER, metric) - mean(ROWAN, metric);
    }

    /** The metrics that are practically the same, and the margin within which they are [SI]. */
    static Map<Metric, Double> practicallySame() {
        return MARGINS;
    }

    private static Swing of(Metric metric) {
        Swing swing = SWING.get(metric);
        if (swing == null) {
            throw new IllegalArgumentException(metric.key() + " is not put in");
        }
        return swing;
    }
}
