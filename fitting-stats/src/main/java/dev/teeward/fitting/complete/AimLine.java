package dev.teeward.fitting.complete;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Reading;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Turns a session from the line of the device to the line the golfer aimed along.
 *
 * <p>With the aim a to the right, directions become d - a and the side becomes s cos a - x sin a, where x = sqrt(carry^2 -
 * s^2) is the distance along the old line. The wind turns with them.
 */
final class AimLine {
    private static final Metric[] DIRECTIONS = {Metric.CLUB_PATH, Metric.FACE_ANGLE, Metric.START_DIRECTION};

    private AimLine() {}

    /** The session seen along its aim, whose aim offset is then 0; the same session if no other aim is given. */
    static Session turned(Session session, List<Warning> warnings) {
        double aim = session.aimOffset().map(Angle::radians).orElse(0.0);
        if (aim == 0.0) {
            return session;
        }
        List<Shot> shots = new ArrayList<>();
        int lost = 0;
        for (Shot shot : session.shots()) {
            Shot seen = shot;
            for (Metric metric : DIRECTIONS) {
                if (shot.has(metric)) {
                    seen = put(seen, metric, shot.value(metric) - aim);
                }
            }
            if (shot.has(Metric.SIDE)) {
                seen = side(seen, aim);
            }
            lost += shot.metrics().size() - seen.metrics().size();
            shots.add(seen);
        }
        double degrees = session.aimOffset().orElseThrow().degrees();
        String offset = String.format(Locale.ROOT, "%.2f deg %s", Math.abs(degrees), degrees > 0.0 ? "right" : "left");
        warnings.add(Warning.of(
                "aim-turned",
                "the golfer aimed " + offset + " of the target line of the device, so that club path, face angle, start"
                        + " direction, side and wind are given relative to the aim"));
        if (lost > 0) {
            warnings.add(Warning.of(
                    "aim-not-turned",
                    lost + " readings were left out, because they cannot be given relative to the aim: a side needs the"
                            + " carry, and every reading must stay within the limits of its metric"));
        }
        Session.Builder turned = session.toBuilder()
                .shots(ShotSet.of(shots))
                .aimOffset(Angle.ofRadians(0.0))
                .remark("directions and side are relative to the aim, which was " + offset + " of the target line");
        if (session.windFrom().isPresent() && session.windSpeed().isPresent()) {
            double from = Math.IEEEremainder(session.windFrom().get().degrees() - Math.toDegrees(aim), 360.0);
            turned.wind(Angle.ofDegrees(from), session.windSpeed().get());
        }
        return turned.parts(session.parts()).build();
    }

    /** The parts of a combined session, their wind turned as far as the session was. */
    static List<Session> parts(Session session) {
        boolean along = session.aimOffset().filter(aim -> aim.radians() == 0.0).isPresent();
        return session.parts().stream()
                .map(part -> along ? turned(part, new ArrayList<>()) : part)
                .toList();
    }

    private static Shot side(Shot shot, double aim) {
        double side = shot.value(Metric.SIDE);
        if (!shot.has(Metric.CARRY) || Math.abs(side) > shot.value(Metric.CARRY)) {
            return shot.without(Metric.SIDE);
        }
        double carry = shot.value(Metric.CARRY);
        double along = Math.sqrt((carry - side) * (carry + side));
        return put(shot, Metric.SIDE, side * Math.cos(aim) - along * Math.sin(aim));
    }

    /** The same origin: another line of reference does not change where the number comes from. */
    private static Shot put(Shot shot, Metric metric, double value) {
        return metric.allows(value)
                ? shot.with(
                        metric,
                        Reading.of(value, shot.reading(metric).orElseThrow().origin()))
                : shot.without(metric);
    }
}
