package dev.teeward.quantity;

import static dev.teeward.quantity.Units.yards;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Interval, Estimate, Warning and Handedness, and the examples in their documentation. */
class ResultValueTest {
    @Test
    void packageExampleHolds() {
        Length carry = yards(150.0);
        assertEquals(137.16, carry.meters(), 1e-12);
        assertEquals(450.0, carry.value(LengthUnit.FOOT), 1e-12);
        assertEquals(carry, Length.ofFeet(450.0));
    }

    @Test
    void intervalTellsItsEndsWidthAndLevel() {
        Interval i = Interval.of(-0.4, 2.6, 0.95);
        assertTrue(i.contains(0.0));
        assertTrue(i.contains(2.6));
        assertFalse(i.contains(2.7));
        assertFalse(i.contains(Double.NaN));
        assertEquals(3.0, i.width(), 1e-15);
        assertEquals(1.5, i.halfWidth(), 1e-15);
        assertTrue(i.within(-0.4, 3.0));
        assertFalse(i.within(-0.3, 3.0));
        assertTrue(i.bounded());
        assertEquals("[-0.4, 2.6] at 95 %", i.toString());
        assertEquals(i, Interval.of(-0.4, 2.6, 0.95));
        assertEquals(i.hashCode(), Interval.of(-0.4, 2.6, 0.95).hashCode());
        assertNotEquals(i, Interval.of(-0.4, 2.6, 0.90));
        assertNotEquals(i, Interval.of(-0.3, 2.6, 0.95));
        assertNotEquals(i, Interval.of(-0.4, 2.7, 0.95));
        assertFalse(i.within(-0.4, 2.5));
        assertEquals(Interval.of(0.0, 1.0, 0.9), Interval.of(-0.0, 1.0, 0.9));
    }

    @Test
    void intervalMayBeUnbounded() {
        Interval nothing = Interval.unbounded(0.9);
        assertTrue(nothing.contains(1e300));
        assertFalse(nothing.bounded());
        assertEquals(Double.POSITIVE_INFINITY, nothing.halfWidth(), 0.0);
        assertFalse(nothing.within(-5.0, 5.0));
        assertEquals(0.9, nothing.level(), 0.0);
    }

    @ParameterizedTest
    @CsvSource({"1,0,0.95", "NaN,0,0.95", "0,NaN,0.95", "0,1,0", "0,1,1", "0,1,95", "0,1,NaN", "Infinity,Infinity,0.9"})
    void intervalRefusesNonsense(double lower, double upper, double level) {
        assertThrows(IllegalArgumentException.class, () -> Interval.of(lower, upper, level));
    }

    @Test
    void estimateConvertsAllThreeNumbers() {
        Estimate e = Estimate.of(9.144, Interval.of(4.572, 13.716, 0.95), LengthUnit.METER);
        Estimate yards = e.convertTo(LengthUnit.YARD);
        assertEquals(10.0, yards.value(), 1e-12);
        assertEquals(5.0, yards.interval().lower(), 1e-12);
        assertEquals(15.0, yards.interval().upper(), 1e-12);
        assertEquals(0.95, yards.interval().level(), 0.0);
        assertSame(LengthUnit.YARD, yards.unit());
        assertSame(e, e.convertTo(LengthUnit.METER));
        assertEquals("10 yd [5, 15] at 95 %", yards.toString());
        assertEquals(e, Estimate.of(9.144, Interval.of(4.572, 13.716, 0.95), LengthUnit.METER));
        assertEquals(
                e.hashCode(),
                Estimate.of(9.144, Interval.of(4.572, 13.716, 0.95), LengthUnit.METER)
                        .hashCode());
        assertNotEquals(e, yards);
        assertNotEquals(e, Estimate.of(9.144, Interval.of(4.572, 13.717, 0.95), LengthUnit.METER));
        assertNotEquals(e, Estimate.of(9.145, Interval.of(4.572, 13.716, 0.95), LengthUnit.METER));
        assertNotEquals(e, Estimate.of(9.144, Interval.of(4.572, 13.716, 0.95), LengthUnit.FOOT));
        assertEquals(
                Estimate.of(0.0, Interval.of(-1.0, 1.0, 0.9), RatioUnit.ONE),
                Estimate.of(-0.0, Interval.of(-1.0, 1.0, 0.9), RatioUnit.ONE));
    }

    @Test
    void estimateKeepsAnUnboundedInterval() {
        Estimate e = Estimate.of(1.0, Interval.unbounded(0.95), LengthUnit.METER);
        assertFalse(e.convertTo(LengthUnit.FOOT).interval().bounded());
    }

    @Test
    void estimateRefusesOtherDimensionsAndNaN() {
        Estimate e = Estimate.of(1.0, Interval.of(0.0, 2.0, 0.95), LengthUnit.METER);
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> e.convertTo(SpeedUnit.MILE_PER_HOUR));
        assertTrue(refused.getMessage().contains("mph"), refused.getMessage());
        Estimate warmer = Estimate.of(5.0, Interval.of(0.0, 10.0, 0.95), TemperatureUnit.FAHRENHEIT);
        assertThrows(IllegalArgumentException.class, () -> warmer.convertTo(TemperatureUnit.CELSIUS));
        assertSame(warmer, warmer.convertTo(TemperatureUnit.FAHRENHEIT));
        assertThrows(
                IllegalArgumentException.class,
                () -> Estimate.of(Double.NaN, Interval.of(0.0, 2.0, 0.95), LengthUnit.METER));
    }

    @Test
    void warningHasACodeAndASentence() {
        Warning w = Warning.of("few-shots", "only 2 shots were used");
        assertEquals("few-shots", w.code());
        assertEquals("few-shots: only 2 shots were used", w.toString());
        assertEquals(w, Warning.of("few-shots", "only 2 shots were used"));
        assertEquals(
                w.hashCode(), Warning.of("few-shots", "only 2 shots were used").hashCode());
        assertNotEquals(w, Warning.of("few-shots", "only 3 shots were used"));
        assertNotEquals(w, Warning.of("no-shots", "only 2 shots were used"));
        assertThrows(IllegalArgumentException.class, () -> Warning.of("few-shots", " "));
        assertThrows(IllegalArgumentException.class, () -> Warning.of("few-shots", "two\nlines"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Few", "few shots", "-few", "few-", "few--shots"})
    void warningCodeIsForPrograms(String code) {
        assertThrows(IllegalArgumentException.class, () -> Warning.of(code, "a sentence"));
    }

    @ParameterizedTest
    @CsvSource({
        // Common practice, no source: a ball curving away from the golfer's own side is a fade, towards it a draw.
        "RIGHT, 3, fade, open, in-to-out",
        "RIGHT, -3, draw, closed, out-to-in",
        "RIGHT, 0, straight, square, straight",
        "LEFT, -3, fade, open, in-to-out",
        "LEFT, 3, draw, closed, out-to-in",
        "LEFT, -0.0, straight, square, straight"
    })
    void handednessGivesTheWords(Handedness hand, double rightPositive, String curve, String face, String path) {
        assertEquals(curve, hand.curveWord(rightPositive));
        assertEquals(face, hand.faceWord(rightPositive));
        assertEquals(path, hand.pathWord(rightPositive));
        assertThrows(IllegalArgumentException.class, () -> hand.curveWord(Double.NaN));
        assertEquals(hand == Handedness.RIGHT ? 1.0 : -1.0, hand.sign(), 0.0);
    }
}
