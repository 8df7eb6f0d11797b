/**
 * Air and wind: what the ball flies through, and what pulls it down.
 *
 * <p>Start with {@link dev.teeward.flight.air.Atmosphere}: it makes the {@link dev.teeward.flight.air.AirState} (density and
 * viscosity) of a flight from what a person knows about the place, be it an elevation, a barometer or a weather report. A
 * {@link dev.teeward.flight.air.Wind} is uniform, or a {@link dev.teeward.flight.air.WindProfile} that grows with height, or
 * a class of one's own with two methods; {@link dev.teeward.flight.air.Gusts} draws winds for a gusty day. {@link dev.teeward.flight.air.Gravity} is there for those who want its latitude.
 *
 * <pre>{@code
 * Atmosphere air = Atmosphere.ofAltimeterSetting(inchesOfMercury(30.05), feet(5_430.0), fahrenheit(85.0), 0.25);
 * double density = air.density();                // 0.955... kg/m3; the standard at sea level is 1.225
 * double feet = air.densityAltitude().feet();    // 8,260.9... ft
 * Wind wind = WindProfile.logLaw(degrees(30.0), mph(8.0), Roughness.OPEN);
 * double alongAtApex = wind.alongTarget(30.0);   // -3.682... m/s: against the ball
 * }</pre>
 *
 * <p>Conventions: x to the target, y up, z right. A wind is named by where it comes from (0 deg headwind, 90 deg from the
 * right), its components are the velocity of the air. Station pressure and altimeter setting are never mixed. Relative
 * humidity is a fraction, not percent. Air is the same along the whole flight. Every result has the same bits on every
 * Java virtual machine: exponentials, logarithms, powers and sines come from {@link java.lang.StrictMath}.
 */
@NullMarked
package dev.teeward.flight.air;

import org.jspecify.annotations.NullMarked;
