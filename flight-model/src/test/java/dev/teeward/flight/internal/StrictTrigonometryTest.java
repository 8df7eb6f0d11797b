package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against {@link StrictMath}, whose results Java specifies to the bit. */
class StrictTrigonometryTest {
    private static final int DRAWS = 500_000;

    @Test
    void sinesAndCosinesAreThoseOfStrictMath() {
        SplittableRandom random = new SplittableRandom(31L);
        for (int i = 0; i < DRAWS; i++) {
            double small = i % 3 == 0 ? StrictMath.pow(10.0, -random.nextDouble(12.0)) : 1.0;
            check(small * random.nextDouble(-1.0, 1.0));
        }
        double quarter = StrictMath.PI / 4.0;
        for (double angle : new double[] {quarter, 0x1.0p-26, 0.3, 0.78125, 0.0, 1e300, Double.MIN_VALUE}) {
            for (double near : new double[] {Math.nextDown(angle), angle, Math.nextUp(angle)}) {
                check(near);
                check(-near);
            }
        }
        check(Double.NaN);
        check(Double.POSITIVE_INFINITY);
    }

    private static void check(double angle) {
        same(StrictMath.sin(angle), StrictTrigonometry.sin(angle));
        same(StrictMath.cos(angle), StrictTrigonometry.cos(angle));
    }

    @Test
    void angleOfFallIsThatOfStrictMath() {
        SplittableRandom random = new SplittableRandom(32L);
        for (int i = 0; i < DRAWS; i++) {
            double steep = i % 3 == 0 ? StrictMath.pow(10.0, random.nextDouble(-12.0, 12.0)) : 1.0;
            fall(random.nextDouble(-60.0, 6.0) * steep, random.nextDouble(60.0));
        }
        for (double along : new double[] {0.0, 1.0, Double.MIN_VALUE, Double.POSITIVE_INFINITY, Double.NaN}) {
            for (double up : new double[] {-0.0, 0.0, -1.0, -0.4375, -0.6875, -1.1875, -2.4375, 3.0, Double.NaN}) {
                fall(up, along);
            }
        }
    }

    private static void fall(double up, double along) {
        same(-StrictMath.atan2(up, along), StrictTrigonometry.fall(up, along));
    }

    private static void same(double expected, double actual) {
        assertEquals(Double.doubleToLongBits(expected), Double.doubleToLongBits(actual));
    }
}
