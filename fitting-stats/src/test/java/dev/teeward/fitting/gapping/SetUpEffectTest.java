package dev.teeward.fitting.gapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a change of lie, loft and length does, against closed forms and against flights made by hand. */
class SetUpEffectTest {
    private static final ClubHead HEAD =
            ClubHead.builder().mass(Mass.ofGrams(265.0)).restitution(0.78).build();
    private static final SetUpEffect PROCEDURE = SetUpEffect.withDefaults().withHead(HEAD);
    private static final double[] LOFTS = {24.0, 25.0, 26.5, 23.5};

    private static Session session(Handedness hand) {
        List<Shot> shots = new ArrayList<>();
        for (double loft : LOFTS) {
            shots.add(Shot.builder("six")
                    .number(shots.size() + 1)
                    .measured(Metric.CLUB_SPEED, 36.0)
                    .measured(Metric.ATTACK_ANGLE, 0.0)
                    .measured(Metric.CLUB_PATH, 0.0)
                    .measured(Metric.FACE_ANGLE, 0.0)
                    .measured(Metric.DYNAMIC_LOFT, Math.toRadians(loft))
                    .build());
        }
        return InventedBag.session(shots).toBuilder()
                .hand(hand)
                .club(Club.builder("six")
                        .lie(Angle.ofDegrees(62.0))
                        .length(Length.ofInches(37.5))
                        .build())
                .build();
    }

    private static double launchAngle(double loft) {
        return RigidImpact.standard()
                .strike(delivery(loft), HEAD)
                .launch()
                .launchAngle()
                .radians();
    }

    private static Delivery delivery(double loft) {
        Angle none = Angle.ofDegrees(0.0);
        return Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(36.0))
                .attackAngle(none)
                .clubPath(none)
                .faceAngle(none)
                .dynamicLoft(Angle.ofDegrees(loft))
                .build();
    }

    private static double change(SetUpEffect.Result result, Metric metric) {
        return result.effect(metric).orElseThrow().change().value();
    }

    /** For a head travelling level along the target line: tan(start) = -tan(launch) sin(d), exactly. */
    @Test
    void lieTurnsTheStartAsTheGeometrySays() {
        SetUpChange upright = SetUpChange.none().withLie(Angle.ofDegrees(2.0));
        double expected = 0.0;
        for (double loft : LOFTS) {
            expected -= Math.atan(Math.tan(launchAngle(loft)) * Math.sin(Math.toRadians(2.0))) / LOFTS.length;
        }
        SetUpEffect.Result right = PROCEDURE.of(session(Handedness.RIGHT), "six", upright);
        SetUpEffect.Result left = PROCEDURE.of(session(Handedness.LEFT), "six", upright);
        assertEquals(expected, change(right, Metric.START_DIRECTION), 1e-12);
        assertEquals(-expected, change(left, Metric.START_DIRECTION), 1e-12);
        assertTrue(change(right, Metric.CURVE) < 0.0);
        assertEquals(-change(right, Metric.CURVE), change(left, Metric.CURVE), 1e-9);
        assertEquals(change(right, Metric.CARRY), change(left, Metric.CARRY), 1e-9);
        assertEquals("qualified-builder", right.warnings().get(0).code());
        assertTrue(right.warnings().get(0).message().contains("qualified club builder"));
    }

    @Test
    void loftMovesTheCarryAsTwoFlightsDo() {
        double expected = 0.0;
        for (double loft : LOFTS) {
            expected += (carry(loft - 1.0) - carry(loft)) / LOFTS.length;
        }
        SetUpEffect.Result result = PROCEDURE.of(
                session(Handedness.RIGHT), "six", SetUpChange.none().withLoft(Angle.ofDegrees(-1.0)));
        assertEquals(expected, change(result, Metric.CARRY), 1e-9);
        assertTrue(expected > 0.0);
        assertTrue(result.effect(Metric.CARRY).orElseThrow().change().interval().contains(expected));
        assertEquals(0.0, change(result, Metric.START_DIRECTION), 1e-12);
    }

    private static double carry(double loft) {
        return FlightModel.standard()
                .fly(RigidImpact.standard().strike(delivery(loft), HEAD).launch())
                .carry()
                .meters();
    }

    /** Half an inch more on 37.5 in at 62 deg, hands as high as before: toe up by 62 - asin(37.5 sin 62 / 38) deg. */
    @Test
    void lengthActsAsLieAndSpeed() {
        Session session = session(Handedness.RIGHT);
        double toeUp = 62.0 - Math.toDegrees(Math.asin(37.5 * Math.sin(Math.toRadians(62.0)) / 38.0));
        SetUpEffect.Result length = PROCEDURE
                .withSpeedShare(0.0)
                .of(session, "six", SetUpChange.none().withLength(Length.ofInches(0.5)));
        SetUpEffect.Result lie = PROCEDURE.of(session, "six", SetUpChange.none().withLie(Angle.ofDegrees(toeUp)));
        for (Metric metric : List.of(Metric.START_DIRECTION, Metric.CURVE, Metric.SIDE, Metric.CARRY)) {
            assertEquals(change(lie, metric), change(length, metric), 1e-9, metric.key());
        }
        SetUpEffect.Result faster =
                PROCEDURE.of(session, "six", SetUpChange.none().withLength(Length.ofInches(0.5)));
        assertTrue(change(faster, Metric.CARRY) > change(length, Metric.CARRY) + 0.1);
    }

    @Test
    void noChangeDoesNothing() {
        SetUpEffect.Result result = PROCEDURE.of(session(Handedness.LEFT), "six", SetUpChange.none());
        result.effects()
                .forEach((metric, effect) -> assertEquals(0.0, effect.change().value(), 1e-12, metric.key()));
    }

    @Test
    void badInputIsNamed() {
        Session session = session(Handedness.RIGHT);
        assertTrue(
                message(() -> PROCEDURE.of(session, "five", SetUpChange.none())).contains("clubs are six"));
        assertTrue(message(() -> SetUpEffect.withDefaults().of(session, "six", SetUpChange.none()))
                .contains("head of six is not known"));
        Session bare = InventedBag.session(session.shots().shots());
        assertTrue(message(() -> PROCEDURE.of(bare, "six", SetUpChange.none().withLength(Length.ofInches(0.5))))
                .contains("the length and the lie of six"));
        Session one = InventedBag.session(session.shots().shots().subList(0, 1));
        assertTrue(message(() -> PROCEDURE.of(one, "six", SetUpChange.none())).contains("2 are needed"));
        assertTrue(
                message(() -> SetUpChange.none().withLie(Angle.ofDegrees(62.0))).contains("it is the change"));
        assertTrue(message(() -> SetUpChange.none().withLength(Length.ofInches(37.0)))
                .contains("it is the change"));
    }

    private static String message(org.junit.jupiter.api.function.Executable asked) {
        return String.valueOf(
                assertThrows(IllegalArgumentException.class, asked).getMessage());
    }
}
