package dev.teeward.flight.impact;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;

/**
 * The axes that go with a launch direction: along it, level to the right, and perpendicular to both upwards. The spin axis
 * of a launch lies in the plane of the last two; tilt turns it from level right (backspin) downwards.
 */
record LaunchFrame(Vector along, Vector right, Vector up) {

    static LaunchFrame of(double elevation, double azimuth) {
        double sinE = Math.sin(elevation);
        double cosE = Math.cos(elevation);
        double sinA = Math.sin(azimuth);
        double cosA = Math.cos(azimuth);
        return new LaunchFrame(
                new Vector(cosE * cosA, sinE, cosE * sinA),
                new Vector(-sinA, 0.0, cosA),
                new Vector(-sinE * cosA, cosE, -sinE * sinA));
    }

    /** The spin axis of a given tilt [rad], a unit vector. */
    Vector spinAxis(double tilt) {
        return right.times(Math.cos(tilt)).plus(-Math.sin(tilt), up);
    }

    /** Launch conditions from velocity [m/s] and spin vector [rad/s], the latter perpendicular to the former. */
    static LaunchConditions launch(Vector velocity, Vector spin) {
        double elevation = velocity.elevation();
        double azimuth = velocity.azimuth();
        LaunchFrame frame = of(elevation, azimuth);
        double rate = spin.norm();
        double tilt = rate == 0.0 ? 0.0 : Math.atan2(-spin.dot(frame.up), spin.dot(frame.right));
        return LaunchConditions.builder()
                .ballSpeed(Speed.ofMetersPerSecond(velocity.norm()))
                .launchAngle(Angle.ofRadians(elevation))
                .startDirection(Angle.ofRadians(azimuth))
                .spinRate(SpinRate.ofRadiansPerSecond(rate))
                .axisTilt(Angle.ofRadians(tilt))
                .build();
    }
}
