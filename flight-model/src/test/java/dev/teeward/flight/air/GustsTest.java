package dev.teeward.flight.air;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The moments of the stated model, over many draws. */
class GustsTest {
    private static final Angle FROM = Angle.ofDegrees(0.0);
    private static final Speed SPEED = Speed.ofMetersPerSecond(8.0);
    private static final WindProfile MEAN = WindProfile.logLaw(FROM, SPEED, Roughness.OPEN);

    /** A normal number cut at 3 standard deviations has a standard deviation of 0.98658 (closed form). */
    private static final double CUT = 0.98658;

    @Test
    void drawsHaveTheStatedMeanAndDeviations() {
        Gusts gusts = Gusts.around(FROM, SPEED, 0.2);
        SplittableRandom random = new SplittableRandom(4L);
        int n = 40_000;
        double along = 0.0;
        double right = 0.0;
        double alongSquares = 0.0;
        double rightSquares = 0.0;
        for (int i = 0; i < n; i++) {
            Wind wind = gusts.draw(random);
            double a = wind.alongTarget(10.0);
            double r = wind.towardsRight(10.0);
            along += a / n;
            right += r / n;
            alongSquares += (a + 8.0) * (a + 8.0) / n;
            rightSquares += r * r / n;
        }
        // Four standard errors.
        assertEquals(-8.0, along, 4.0 * 1.6 / Math.sqrt(n));
        assertEquals(0.0, right, 4.0 * 1.28 / Math.sqrt(n));
        assertEquals(1.6 * CUT, Math.sqrt(alongSquares), 4.0 * 1.6 / Math.sqrt(2.0 * n));
        assertEquals(1.28 * CUT, Math.sqrt(rightSquares), 4.0 * 1.28 / Math.sqrt(2.0 * n));
    }

    @Test
    void aDrawFromAProfileIsAProfileOverTheSameCountry() {
        Gusts gusts = Gusts.around(MEAN, 0.3);
        WindProfile wind = assertInstanceOf(WindProfile.class, gusts.draw(new SplittableRandom(5L)));
        double ratio = MEAN.alongTarget(2.0) / MEAN.alongTarget(20.0);
        assertEquals(ratio, wind.alongTarget(2.0) / wind.alongTarget(20.0), 1e-12);
    }

    @Test
    void theSameSeedGivesTheSameWinds() {
        Gusts gusts = Gusts.around(MEAN, 0.2);
        assertEquals(gusts.draw(new SplittableRandom(6L)), gusts.draw(new SplittableRandom(6L)));
        assertEquals(MEAN, gusts.mean());
        assertEquals(0.2, gusts.intensity(), 0.0);
    }

    @Test
    void refusesWhatIsNoTurbulence() {
        assertThrows(IllegalArgumentException.class, () -> Gusts.around(MEAN, 20.0));
        assertThrows(IllegalArgumentException.class, () -> Gusts.around(MEAN, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Gusts.around(FROM, Speed.ofMetersPerSecond(15.1), 0.1));
    }

    /** The exponents that have the logarithmic law's slope at 10 m: {@code 1 / ln(10 / z0)}, in closed form. */
    @Test
    void powerLawExponentsOfTheRoughnessClasses() {
        assertEquals(0.1721, Roughness.OPEN.powerLawExponent(), 5e-5);
        assertEquals(0.3338, Roughness.VERY_ROUGH.powerLawExponent(), 5e-5);
        for (Roughness roughness : Roughness.values()) {
            Wind power = WindProfile.powerLaw(FROM, SPEED, roughness.powerLawExponent());
            if (roughness.length().meters() < 0.5) { // above, 10 m is where the logarithmic law ends
                Wind log = WindProfile.logLaw(FROM, SPEED, roughness);
                assertEquals(
                        log.alongTarget(10.01) - log.alongTarget(9.99),
                        power.alongTarget(10.01) - power.alongTarget(9.99),
                        1e-6);
            }
        }
    }
}
