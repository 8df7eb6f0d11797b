package dev.teeward.flight.air;

import static dev.teeward.quantity.Units.celsius;
import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.fahrenheit;
import static dev.teeward.quantity.Units.feet;
import static dev.teeward.quantity.Units.hectopascals;
import static dev.teeward.quantity.Units.inchesOfMercury;
import static dev.teeward.quantity.Units.meters;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.mph;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The examples of the package's documentation, with the numbers they show. */
class AirExamplesTest {
    // Expected values: the formulas evaluated in Python, independently of this code.
    @Test
    void packageExample() {
        Atmosphere air = Atmosphere.ofAltimeterSetting(inchesOfMercury(30.05), feet(5_430.0), fahrenheit(85.0), 0.25);
        double density = air.density();
        double feet = air.densityAltitude().feet();
        Wind wind = WindProfile.logLaw(degrees(30.0), mph(8.0), Roughness.OPEN);
        double alongAtApex = wind.alongTarget(30.0);
        assertEquals(0.9551148, density, 1e-7);
        assertEquals(8_260.915, feet, 0.01);
        assertEquals(-3.682917, alongAtApex, 1e-6);
    }

    @Test
    void atmosphereExample() {
        Atmosphere standard = Atmosphere.standardAt(feet(5_280.0));
        Atmosphere summer = Atmosphere.ofAltimeterSetting(hectopascals(1005.0), meters(1655.0), celsius(30.0), 0.2);
        double rho = summer.density();
        assertEquals(5_280.0, standard.densityAltitude().feet(), 1e-6);
        assertEquals(0.9418148, rho, 1e-7);
    }

    @Test
    void windExamples() {
        Wind breeze = Wind.from(degrees(30.0), mph(8.0));
        assertEquals(-3.097, breeze.alongTarget(10.0), 0.0005);
        Wind wind = WindProfile.logLaw(degrees(0.0), metersPerSecond(5.0), Roughness.OPEN);
        assertEquals(-3.614737, wind.alongTarget(2.0), 1e-6);
        assertEquals(-5.945589, wind.alongTarget(30.0), 1e-6);
    }

    @Test
    void stateAndGravityExamples() {
        AirState air = AirState.of(1.2, 1.81e-5);
        assertEquals(1.508e-5, air.kinematicViscosity(), 0.0005e-5);
        assertEquals(9.80665, Gravity.STANDARD);
        assertEquals(9.80311294, Gravity.at(degrees(45.0), meters(1000.0)), 0.5e-8);
        assertEquals(meters(0.03), Roughness.OPEN.length());
    }
}
