package dev.teeward.flight.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TurfSpreadTest {
    /** Over 3.92 standard deviations every number changes as from the soft to the firm fairway, to the rounding of the spread. */
    @Test
    void typicalFairwaysLieBetweenTheSoftAndTheFirm() {
        Turf soft = TurfClass.SOFT_FAIRWAY.turf();
        Turf firm = TurfClass.FIRM_FAIRWAY.turf();
        Turf low = TurfSpread.typical().at(TurfClass.FAIRWAY.turf(), -1.96);
        Turf high = TurfSpread.typical().at(TurfClass.FAIRWAY.turf(), 1.96);
        double rounding = 0.005 * 3.92;
        assertEquals(
                Math.log(firm.restitutionFactor() / soft.restitutionFactor()),
                Math.log(high.restitutionFactor() / low.restitutionFactor()),
                rounding);
        assertEquals(
                Math.log(firm.tiltFactor() / soft.tiltFactor()),
                Math.log(high.tiltFactor() / low.tiltFactor()),
                rounding);
        assertEquals(
                Math.log(firm.rollingResistance() / soft.rollingResistance()),
                Math.log(high.rollingResistance() / low.rollingResistance()),
                rounding);
        assertEquals(TurfClass.FAIRWAY.turf(), TurfSpread.typical().at(TurfClass.FAIRWAY.turf(), 0.0));
    }

    @Test
    void rangesAreKept() {
        TurfSpread wide = TurfSpread.of(0.5, 0.5, 0.5);
        Turf farOut = wide.at(TurfClass.GREEN.turf(), 9.0);
        assertEquals(2.0, farOut.restitutionFactor());
        assertEquals(0.005, farOut.rollingResistance());
        assertEquals(2.0, wide.at(TurfClass.GREEN.turf(), -9.0).tiltFactor());
        assertEquals(2.0, wide.at(TurfClass.ROUGH.turf(), -9.0).rollingResistance());
        assertThrows(IllegalArgumentException.class, () -> TurfSpread.of(-0.1, 0.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> TurfSpread.of(0.0, 0.6, 0.0));
        assertThrows(IllegalArgumentException.class, () -> TurfSpread.of(0.0, 0.0, Double.NaN));
        assertTrue(TurfSpread.typical().toString().contains("15"), TurfSpread.typical()::toString);
    }
}
