package dev.teeward.flight.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Where else to look for a delivery that agrees with the measurements, once the search has come to a first one. */
final class ImpactStarts {
    /** About how far a start lies from path to face. */
    private static final double TOWARDS_FACE = 0.78;

    /** How far from the middle of the face other strikes are tried [mm], and how far apart face and path [deg]. */
    private static final double TOE_AWAY = 15.0;

    private static final double UP_AWAY = 10.0;
    private static final double WIDE_OPEN = 6.0;

    private ImpactStarts() {}

    /** How far from the middle of the face a strike is tried [mm]. */
    static double away(ImpactQuantity strike) {
        return strike == ImpactQuantity.STRIKE_TOE ? TOE_AWAY : UP_AWAY;
    }

    /** Other places to start from: strikes elsewhere on the face, and other faces to the same path. */
    static List<double[]> beside(double[] delivery, MeasuredImpact measured) {
        int toe = ImpactQuantity.STRIKE_TOE.index();
        int up = ImpactQuantity.STRIKE_UP.index();
        double open = delivery[ImpactQuantity.FACE_ANGLE.index()] - delivery[ImpactQuantity.CLUB_PATH.index()];
        boolean parted = measured.value(ImpactQuantity.FACE_ANGLE).isPresent()
                && measured.value(ImpactQuantity.CLUB_PATH).isPresent();
        List<double[]> starts = new ArrayList<>();
        for (double faceToPath : parted ? new double[] {open} : new double[] {open, -open, WIDE_OPEN, -WIDE_OPEN}) {
            for (double side : strikes(ImpactQuantity.STRIKE_TOE, delivery, measured)) {
                for (double height : strikes(ImpactQuantity.STRIKE_UP, delivery, measured)) {
                    double[] start = delivery.clone();
                    start[toe] = side;
                    start[up] = height;
                    part(start, faceToPath - open, measured);
                    if (!Arrays.equals(start, delivery)) {
                        starts.add(start);
                    }
                }
            }
        }
        return starts;
    }

    /** What was measured; else both sides of the face, wherever the first answer lies, and the first answer. */
    private static double[] strikes(ImpactQuantity quantity, double[] delivery, MeasuredImpact measured) {
        double first = delivery[quantity.index()];
        double away = away(quantity);
        return measured.value(quantity).isPresent() ? new double[] {first} : new double[] {-away, first, away};
    }

    /** Opens the face to the path by an angle [deg], so that the start direction stays about where it was, if both may move. */
    private static void part(double[] x, double more, MeasuredImpact measured) {
        boolean face = measured.value(ImpactQuantity.FACE_ANGLE).isPresent();
        boolean path = measured.value(ImpactQuantity.CLUB_PATH).isPresent();
        double ofFace = face ? 0.0 : path ? 1.0 : 1.0 - TOWARDS_FACE;
        double ofPath = path ? 0.0 : face ? 1.0 : TOWARDS_FACE;
        x[ImpactQuantity.FACE_ANGLE.index()] += ofFace * more;
        x[ImpactQuantity.CLUB_PATH.index()] -= ofPath * more;
    }
}
