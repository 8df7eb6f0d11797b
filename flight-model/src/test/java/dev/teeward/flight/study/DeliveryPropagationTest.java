package dev.teeward.flight.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.CoefficientSpread;
import dev.teeward.flight.air.AirState;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From the club to rest with errors, against closed forms, against derivatives of single flights, and in its corners. */
class DeliveryPropagationTest {
    private static final double G = 9.80665;
    private static final double CLUB_MASS = 0.270;
    private static final FlightModel VACUUM = FlightModel.standard().withAir(AirState.of(0.0, 1.8e-5));
    private static final FlightModel FAIRWAY = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY));

    private static Delivery swing(double speed, double attack, double path, double face, double loft) {
        return Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(speed))
                .attackAngle(Angle.ofDegrees(attack))
                .clubPath(Angle.ofDegrees(path))
                .faceAngle(Angle.ofDegrees(face))
                .dynamicLoft(Angle.ofDegrees(loft))
                .build();
    }

    private static ClubHead plainHead(double e) {
        return ClubHead.builder()
                .mass(Mass.ofKilograms(CLUB_MASS))
                .restitution(e)
                .tangentialRestitution(0.2)
                .friction(1.0)
                .build();
    }

    private static double deviation(DeliveryPropagationResult result, FlightOutput output) {
        return result.estimate(output).interval().halfWidth() / 1.959964;
    }

    private static List<String> codes(DeliveryPropagationResult result) {
        return result.warnings().stream().map(Warning::code).toList();
    }

    /** The textbook: a central strike in the vertical plane on a head that cannot turn, then a parabola. */
    private static double carry(double speed, double attackDegrees, double loftDegrees, double e) {
        double psi = Math.toRadians(loftDegrees - attackDegrees);
        double ratio = 0.04593 / CLUB_MASS;
        double vn = (1.0 + e) * speed * Math.cos(psi) / (1.0 + ratio);
        double vt = 1.2 * (2.0 / 7.0) * speed * Math.sin(psi) / (1.0 + 2.0 / 7.0 * ratio);
        double angle = Math.toRadians(loftDegrees) - Math.atan2(vt, vn);
        return (vn * vn + vt * vt) * Math.sin(2.0 * angle) / G;
    }

    private static double slope(double above, double below, double step) {
        return (above - below) / (2.0 * step);
    }

    /**
     * In a vacuum all is in closed form, and small errors go by its slopes. The half width of an interval of n normal draws has a
     * standard error of {@code 1.9/sqrt(n)} standard deviations, over 1.96 that is 0.7 percent of one with 20,000.
     */
    @Test
    void smallErrorsInAVacuumAreThoseOfTheClosedForm() {
        DeliveryPropagation exact = DeliveryPropagation.withDefaults().withDraws(20_000);
        Delivery d = swing(40.0, -3.0, 0.0, 0.0, 24.0);
        double bySpeed = slope(carry(40.001, -3.0, 24.0, 0.8), carry(39.999, -3.0, 24.0, 0.8), 0.001) * 0.3;
        double byLoft = slope(carry(40.0, -3.0, 24.001, 0.8), carry(40.0, -3.0, 23.999, 0.8), 0.001) * 0.4;
        double byHead = slope(carry(40.0, -3.0, 24.0, 0.801), carry(40.0, -3.0, 24.0, 0.799), 0.001) * 0.01;
        DeliveryTolerance t = DeliveryTolerance.none()
                .withClubSpeed(Speed.ofMetersPerSecond(0.3))
                .withDynamicLoft(Angle.ofDegrees(0.4));
        DeliveryPropagationResult apart = exact.withDelivery(t).propagate(VACUUM, plainHead(0.8), d);
        double both = Math.hypot(bySpeed, byLoft);
        assertEquals(carry(40.0, -3.0, 24.0, 0.8), apart.flight().carry().meters(), 1e-3);
        assertEquals(
                carry(40.0, -3.0, 24.0, 0.8), apart.estimate(FlightOutput.CARRY).value(), 0.05 * both);
        assertEquals(1.0, deviation(apart, FlightOutput.CARRY) / both, 0.03);
        for (double r : new double[] {1.0, -1.0}) {
            DeliveryPropagationResult together = exact.withDelivery(
                            t.withCorrelation(ImpactQuantity.CLUB_SPEED, ImpactQuantity.DYNAMIC_LOFT, r))
                    .propagate(VACUUM, plainHead(0.8), d);
            assertEquals(
                    1.0,
                    deviation(together, FlightOutput.CARRY) / Math.abs(bySpeed + r * byLoft),
                    0.03,
                    "correlation " + r);
        }
        DeliveryPropagationResult head =
                exact.withHeadSpread(HeadSpread.of(0.01, 0.0, 0.0)).propagate(VACUUM, plainHead(0.8), d);
        assertEquals(1.0, deviation(head, FlightOutput.CARRY) / Math.abs(byHead), 0.03);
        // Spin goes with the speed: 0.3 in 40 m/s.
        DeliveryPropagationResult speed = exact.withDelivery(
                        DeliveryTolerance.none().withClubSpeed(Speed.ofMetersPerSecond(0.3)))
                .propagate(VACUUM, plainHead(0.8), d);
        assertEquals(
                speed.impact().launch().spinRate().rpm() * 0.3 / 40.0,
                speed.estimate(ImpactQuantity.SPIN_RATE).interval().halfWidth() / 1.959964,
                0.03 * speed.impact().launch().spinRate().rpm() * 0.3 / 40.0);
        assertEquals(0.0, speed.estimate(ImpactQuantity.LAUNCH_ANGLE).interval().halfWidth(), 1e-9);
    }

    /** Small errors of everything at once, against differences of single impacts and flights, one input at a time. */
    @Test
    void allErrorsTogetherAgreeWithTheDerivatives() {
        Delivery d = swing(37.5, -3.0, 2.0, -0.5, 22.0);
        ClubHead head = TypicalHead.iron(6);
        CoefficientSpread ball = CoefficientSpread.of(0.02, 0.03);
        TurfSpread turf = TurfSpread.of(0.02, 0.02, 0.04);
        DeliveryTolerance t = DeliveryTolerance.none()
                .withClubSpeed(Speed.ofMetersPerSecond(0.2))
                .withAttackAngle(Angle.ofDegrees(0.2))
                .withClubPath(Angle.ofDegrees(0.3))
                .withFaceAngle(Angle.ofDegrees(0.3))
                .withDynamicLoft(Angle.ofDegrees(0.3));
        DeliveryPropagationResult result = DeliveryPropagation.withDefaults()
                .withDelivery(t)
                .withHeadSpread(HeadSpread.of(0.01, 0.02, 0.0))
                .withBallSpread(ball)
                .withTurfSpread(turf)
                .propagate(FAIRWAY, head, d);
        assertEquals(List.of(), result.warnings());
        assertEquals(2_000, result.atRest());
        Delivery[][] swings = {
            {swing(37.7, -3.0, 2.0, -0.5, 22.0), swing(37.3, -3.0, 2.0, -0.5, 22.0)},
            {swing(37.5, -2.8, 2.0, -0.5, 22.0), swing(37.5, -3.2, 2.0, -0.5, 22.0)},
            {swing(37.5, -3.0, 2.3, -0.5, 22.0), swing(37.5, -3.0, 1.7, -0.5, 22.0)},
            {swing(37.5, -3.0, 2.0, -0.2, 22.0), swing(37.5, -3.0, 2.0, -0.8, 22.0)},
            {swing(37.5, -3.0, 2.0, -0.5, 22.3), swing(37.5, -3.0, 2.0, -0.5, 21.7)}
        };
        AerodynamicModel air = FAIRWAY.ball().aerodynamics();
        for (FlightOutput output : FlightOutput.of(FAIRWAY)) {
            double sum = 0.0;
            for (Delivery[] pair : swings) {
                sum = Math.hypot(sum, half(output, flown(FAIRWAY, head, pair[0]), flown(FAIRWAY, head, pair[1])));
            }
            sum = Math.hypot(
                    sum, half(output, flown(FAIRWAY, lively(0.795, 0.29), d), flown(FAIRWAY, lively(0.775, 0.29), d)));
            sum = Math.hypot(
                    sum, half(output, flown(FAIRWAY, lively(0.785, 0.31), d), flown(FAIRWAY, lively(0.785, 0.27), d)));
            sum = Math.hypot(
                    sum, half(output, flown(scaled(air, 1.02, 1.0), head, d), flown(scaled(air, 0.98, 1.0), head, d)));
            sum = Math.hypot(
                    sum, half(output, flown(scaled(air, 1.0, 1.03), head, d), flown(scaled(air, 1.0, 0.97), head, d)));
            sum = Math.hypot(sum, half(output, flown(firmness(1.0), head, d), flown(firmness(-1.0), head, d)));
            // The half width of 2,000 draws has a standard error of 2.2 percent; a total also jumps a little from
            // bounce to bounce.
            assertEquals(1.0, deviation(result, output) / sum, output.needsGround() ? 0.15 : 0.09, output.key());
        }
    }

    private static ClubHead lively(double e, double et) {
        return TypicalHead.iron(6).toBuilder()
                .restitution(e)
                .tangentialRestitution(et)
                .build();
    }

    private static FlightModel scaled(AerodynamicModel air, double drag, double lift) {
        return FAIRWAY.withBall(Ball.standard().withAerodynamics(AerodynamicModel.scaled(air, drag, lift)));
    }

    private static FlightModel firmness(double sign) {
        return FAIRWAY.withGround(Ground.of(TurfClass.FAIRWAY
                .turf()
                .withRestitutionFactor(Math.exp(0.02 * sign))
                .withTiltFactor(Math.exp(-0.02 * sign))
                .withRollingResistance(0.131 * Math.exp(-0.04 * sign))));
    }

    private static Flight flown(FlightModel model, ClubHead head, Delivery delivery) {
        return model.fly(RigidImpact.standard().strike(delivery, head).launch());
    }

    private static double half(FlightOutput output, Flight above, Flight below) {
        return (output.of(above) - output.of(below)) / 2.0;
    }

    @Test
    void whatIsKnownExactlyHasNoInterval() {
        Delivery d = swing(37.5, -3.0, 2.0, -0.5, 22.0);
        DeliveryPropagationResult result =
                DeliveryPropagation.withDefaults().withDraws(100).propagate(FAIRWAY, TypicalHead.iron(6), d);
        Flight flight = flown(FAIRWAY, TypicalHead.iron(6), d);
        for (FlightOutput output : FlightOutput.of(FAIRWAY)) {
            assertEquals(output.of(flight), result.estimate(output).value(), 1e-9);
            assertEquals(0.0, result.estimate(output).interval().halfWidth(), 1e-9);
        }
        assertEquals(List.of("turf-taken-as-known"), codes(result));
        assertTrue(codes(DeliveryPropagation.withDefaults()
                        .withDraws(100)
                        .propagate(FlightModel.standard(), TypicalHead.iron(6), d))
                .isEmpty());
        assertThrows(IllegalArgumentException.class, () -> result.estimate(ImpactQuantity.CLUB_SPEED));
    }

    /** Turf moves where the ball stops and nothing before; soft and firm fairways bound it as the classes do. */
    @Test
    void theTurfIsInTheTotalAlone() {
        Delivery drive = swing(45.0, 2.0, 0.0, 0.0, 13.0);
        DeliveryPropagationResult result = DeliveryPropagation.withDefaults()
                .withDraws(1_000)
                .withTurfSpread(TurfSpread.typical())
                .propagate(FAIRWAY, TypicalHead.driver(), drive);
        assertEquals(0.0, deviation(result, FlightOutput.CARRY), 1e-9);
        double soft = flown(FAIRWAY.withGround(Ground.of(TurfClass.SOFT_FAIRWAY)), TypicalHead.driver(), drive)
                .total()
                .orElseThrow()
                .meters();
        double firm = flown(FAIRWAY.withGround(Ground.of(TurfClass.FIRM_FAIRWAY)), TypicalHead.driver(), drive)
                .total()
                .orElseThrow()
                .meters();
        double width = 2.0 * result.estimate(FlightOutput.TOTAL).interval().halfWidth();
        // 95 of 100 fairways between the two classes, to the rounding of the spread and what is not even about the
        // middle.
        assertEquals(1.0, width / (firm - soft), 0.15);
        assertFalse(codes(result).contains("turf-taken-as-known"));
    }

    /** Uphill on a slope as steep as the rolling resistance, half of the turfs hold the ball; on the others it rolls back down. */
    @Test
    void ballsThatDoNotStopAreCounted() {
        FlightModel slope = FAIRWAY.withGround(Ground.of(TurfClass.FAIRWAY)
                .withTerrain(Terrain.plane(Angle.ofRadians(Math.atan(0.131)), Angle.ofRadians(0.0))));
        DeliveryPropagationResult result = DeliveryPropagation.withDefaults()
                .withDraws(200)
                .withTurfSpread(TurfSpread.of(0.0, 0.0, 0.3))
                .propagate(slope, TypicalHead.iron(6), swing(37.5, -3.0, 0.0, 0.0, 22.0));
        assertEquals(200, result.landed());
        // Binomial: 4 standard deviations of 7.1.
        assertTrue(Math.abs(result.atRest() - 100) <= 28, () -> "" + result.atRest());
        Warning warning = result.warnings().stream()
                .filter(w -> w.code().equals("draws-without-rest"))
                .findFirst()
                .orElseThrow();
        assertTrue(warning.message().startsWith((200 - result.atRest()) + " of 200 "), warning.message());
        FlightModel cliff = FAIRWAY.withGround(
                Ground.of(TurfClass.FAIRWAY).withTerrain(Terrain.plane(Angle.ofDegrees(-15.0), Angle.ofDegrees(0.0))));
        DeliveryPropagationResult none = DeliveryPropagation.withDefaults()
                .withDraws(100)
                .propagate(cliff, TypicalHead.iron(6), swing(37.5, -3.0, 0.0, 0.0, 22.0));
        assertEquals(0, none.atRest());
        assertThrows(IllegalArgumentException.class, () -> none.estimate(FlightOutput.TOTAL));
        assertTrue(none.estimate(FlightOutput.CARRY).value() > 100.0);
    }

    @Test
    void theSeedDecidesAndTheThreadsDoNot() {
        DeliveryPropagation p = DeliveryPropagation.withDefaults()
                .withDraws(300)
                .withDelivery(DeliveryTolerance.typical())
                .withHeadSpread(HeadSpread.typical())
                .withBallSpread(CoefficientSpread.of(0.02, 0.03))
                .withTurfSpread(TurfSpread.typical());
        Delivery d = swing(37.5, -3.0, 2.0, -0.5, 22.0);
        ClubHead head = TypicalHead.iron(6);
        DeliveryPropagationResult one = p.propagate(FAIRWAY, head, d);
        assertEquals(
                one.estimate(FlightOutput.TOTAL),
                p.withThreads(3).propagate(FAIRWAY, head, d).estimate(FlightOutput.TOTAL));
        assertFalse(one.estimate(FlightOutput.TOTAL)
                .equals(p.withSeed(2L).propagate(FAIRWAY, head, d).estimate(FlightOutput.TOTAL)));
        assertTrue(p.withLevel(0.8)
                        .propagate(FAIRWAY, head, d)
                        .estimate(FlightOutput.CARRY)
                        .interval()
                        .halfWidth()
                < one.estimate(FlightOutput.CARRY).interval().halfWidth());
        assertTrue(one.toString().startsWith("300 of 300 draws"), one::toString);
        assertTrue(p.toString().startsWith("300 draws with seed 1"), p::toString);
    }

    @Test
    void aHeadThatNobodyMeasuredWarnsAsItsImpactDoes() {
        DeliveryPropagationResult result = DeliveryPropagation.withDefaults()
                .withDraws(100)
                .propagate(FlightModel.standard(), TypicalHead.driver(), swing(50.5, -1.3, 0.0, 0.0, 12.8));
        assertEquals(List.of("spin-too-high-with-this-head"), codes(result));
    }

    @Test
    void wrongInputIsRefused() {
        DeliveryPropagation p = DeliveryPropagation.withDefaults().withDraws(100);
        Delivery d = swing(37.5, -3.0, 0.0, 0.0, 22.0);
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> p.withDelivery(DeliveryTolerance.none().withStrikeToe(Length.ofMillimeters(3.0)))
                        .propagate(VACUUM, plainHead(0.8), d));
        assertTrue(e.getMessage().contains("needs the inertia of the head"), e.getMessage());
        // Near the end of the range of the club speed some draws leave it, and are told.
        DeliveryPropagationResult edge = p.withDelivery(
                        DeliveryTolerance.none().withClubSpeed(Speed.ofMetersPerSecond(1.0)))
                .propagate(VACUUM, plainHead(0.5), swing(69.9, 0.0, 0.0, 0.0, 40.0));
        assertTrue(edge.landed() < 100 && codes(edge).contains("draws-without-a-flight"), edge::toString);
        assertThrows(IllegalArgumentException.class, () -> p.withDraws(99));
        assertThrows(IllegalArgumentException.class, () -> p.withLevel(1.0));
        assertThrows(IllegalArgumentException.class, () -> HeadSpread.of(0.4, 0.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> HeadSpread.of(Double.NaN, 0.0, 0.0));
        DeliveryTolerance t = DeliveryTolerance.none().withClubSpeed(Speed.ofMetersPerSecond(1.0));
        assertThrows(IllegalArgumentException.class, () -> t.withClubPath(Angle.ofDegrees(-1.0)));
        assertThrows(
                IllegalArgumentException.class,
                () -> t.withCorrelation(ImpactQuantity.CLUB_SPEED, ImpactQuantity.FACE_ANGLE, 0.5));
        assertEquals(1.0, t.standardDeviation(ImpactQuantity.CLUB_SPEED));
        assertEquals(0.0, t.standardDeviation(ImpactQuantity.STRIKE_UP));
        assertEquals(0.7, DeliveryTolerance.typical().standardDeviation(ImpactQuantity.FACE_ANGLE), 1e-12);
    }
}
