package dev.teeward.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What all seven quantities promise. */
class QuantityTest {
    private static final Map<Class<?>, Class<?>> QUANTITIES = Map.of(
            Length.class, LengthUnit.class,
            Speed.class, SpeedUnit.class,
            Angle.class, AngleUnit.class,
            SpinRate.class, SpinRateUnit.class,
            Temperature.class, TemperatureUnit.class,
            Pressure.class, PressureUnit.class,
            Mass.class, MassUnit.class);

    static List<Class<?>> quantities() {
        return List.copyOf(QUANTITIES.keySet());
    }

    @ParameterizedTest
    @MethodSource("quantities")
    void refusesWhatIsNotFinite(Class<?> type) throws Exception {
        Method of = type.getMethod("of", double.class, QUANTITIES.get(type));
        for (Object unit : QUANTITIES.get(type).getEnumConstants()) {
            for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                Throwable refused = assertThrows(InvocationTargetException.class, () -> of.invoke(null, bad, unit))
                        .getCause();
                assertTrue(refused instanceof IllegalArgumentException, refused.toString());
                assertTrue(refused.getMessage().contains("finite"), refused.getMessage());
                assertTrue(refused.getMessage().contains(((Unit) unit).symbol()), refused.getMessage());
            }
        }
    }

    @Test
    void refusesWhatBecomesInfiniteInSi() {
        assertThrows(IllegalArgumentException.class, () -> Pressure.ofKilopascals(1e306));
    }

    @ParameterizedTest
    @MethodSource("quantities")
    void comparesEqualsAndSerializesByValue(Class<?> type) throws Exception {
        Method of = type.getMethod("of", double.class, QUANTITIES.get(type));
        Object unit = QUANTITIES.get(type).getEnumConstants()[0];
        Object five = of.invoke(null, 5.0, unit);
        Object again = of.invoke(null, 5.0, unit);
        Object six = of.invoke(null, 6.0, unit);
        assertEquals(five, again);
        assertEquals(five.hashCode(), again.hashCode());
        assertNotEquals(five, six);
        assertNotEquals(five, "5");
        Method compareTo = type.getMethod("compareTo", type);
        assertTrue((int) compareTo.invoke(five, six) < 0);
        assertEquals(0, compareTo.invoke(five, again));
        assertEquals(of.invoke(null, 0.0, unit), of.invoke(null, -0.0, unit));
        assertEquals(five, throughBytes(five));
    }

    @Test
    void equalLengthsInDifferentUnitsAreEqual() {
        for (int i = 1; i <= 2_000; i++) {
            assertEquals(Length.ofYards(i), Length.ofFeet(3.0 * i));
            assertEquals(Length.ofFeet(i), Length.ofInches(12.0 * i));
            assertEquals(Length.ofMeters(i), Length.ofMillimeters(1_000.0 * i));
            assertEquals(Mass.ofPounds(i), Mass.ofOunces(16.0 * i));
        }
    }

    @Test
    void refusesForgedBytes() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(Length.ofMeters(1.0));
        }
        byte[] forged = bytes.toByteArray();
        // The last eight bytes are the one double that a length is.
        java.nio.ByteBuffer.wrap(forged).putDouble(forged.length - 8, Double.NaN);
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(forged))) {
            assertThrows(IllegalArgumentException.class, in::readObject);
        }
    }

    @Test
    void readsInSiAndCustomary() {
        assertEquals("137.16 m (150 yd)", Length.ofYards(150.0).toString());
        assertEquals("52.7507 m/s (118 mph)", Speed.ofMph(118.0).toString());
        assertEquals("0.300197 rad (17.2 deg)", Angle.ofDegrees(17.2).toString());
        assertEquals("670.206 rad/s (6400 rpm)", SpinRate.ofRpm(6_400.0).toString());
        assertEquals("303.15 K (86 degF)", Temperature.ofFahrenheit(86.0).toString());
        assertEquals("101325 Pa (29.9213 inHg)", Pressure.ofPascals(101_325.0).toString());
        assertEquals("0.2 kg (7.05479 oz)", Mass.ofGrams(200.0).toString());
        assertEquals("255.372 K (0 degF)", Temperature.ofFahrenheit(0.0).toString());
        assertEquals("0 m (0 yd)", Length.ofMeters(0.0).toString());
        assertEquals("1.0E-7 m (1.09361E-7 yd)", Length.ofMeters(1e-7).toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-500.0, -459.68})
    void refusesTemperaturesBelowAbsoluteZero(double fahrenheit) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> Temperature.ofFahrenheit(fahrenheit));
        assertTrue(refused.getMessage().contains("absolute zero"), refused.getMessage());
        assertTrue(refused.getMessage().contains(Double.toString(fahrenheit)), refused.getMessage());
        assertThrows(IllegalArgumentException.class, () -> Temperature.ofKelvins(-1e-6));
    }

    @Test
    void knowsFixedPoints() {
        // Published fixed points: water boils at 212 degF by the scale's definition, -40 is the same on both scales.
        assertEquals(100.0, Temperature.ofFahrenheit(212.0).celsius(), 1e-12);
        assertEquals(-40.0, Temperature.ofFahrenheit(-40.0).celsius(), 1e-12);
        assertEquals(0.0, Temperature.ofKelvins(0.0).kelvins(), 0.0);
        // One standard atmosphere is 29.92 inHg (NIST SP 811: 101325 Pa; printed to four digits everywhere).
        assertEquals(29.92, Pressure.ofPascals(101_325.0).inchesOfMercury(), 0.005);
        // The heaviest ball allowed, 1.620 oz, is 45.93 g (Rules of equipment, both figures printed).
        assertEquals(45.93, Mass.ofOunces(1.62).grams(), 0.005);
    }

    private static Object throughBytes(Object value) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }
}
