package dev.teeward.flight.impact;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.kilograms;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.millimeters;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Handedness;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Conservation laws, limits and symmetries: closed forms of mechanics, independent of how the impact is solved. */
class RigidImpactTest extends ImpactModelContract {
    private static final double BALL_MASS = 0.04593;
    private static final double BALL_RADIUS = 0.021335;
    private static final double BALL_INERTIA = 0.4 * BALL_MASS * BALL_RADIUS * BALL_RADIUS;

    @Override
    protected ImpactModel model() {
        return RigidImpact.standard();
    }

    private static Delivery.Builder swing(double speed, double attack, double path, double face, double loft) {
        return Delivery.builder()
                .clubSpeed(metersPerSecond(speed))
                .attackAngle(degrees(attack))
                .clubPath(degrees(path))
                .faceAngle(degrees(face))
                .dynamicLoft(degrees(loft));
    }

    private static ClubHead.Builder head(double mass, double e) {
        return ClubHead.builder().mass(kilograms(mass)).restitution(e);
    }

    /** A head that can turn, flat so that the normal is known without the code under test. */
    private static ClubHead.Builder turningHead(double e) {
        return head(0.204, e).massCenterDepth(millimeters(42.3)).inertia(5.679e-4, 4.085e-4, 2.843e-4);
    }

    /** A fast driver: 113 mph, attack -1.3 deg, 2,690 rpm (common practice, from memory); 12.8 deg of dynamic loft fit it. */
    @Test
    void aDeepHeadThatComesDownWarnsOfItsSpin() {
        double speed = 113.0 * 0.44704;
        Impact fast =
                RigidImpact.standard().strike(swing(speed, -1.3, 0.0, 0.0, 12.8).build(), TypicalHead.driver());
        double tooMuch = fast.launch().spinRate().rpm() / 2_690.0 - 1.0;
        assertTrue(tooMuch >= 0.295 && tooMuch < 0.375, "30 to 37 percent, to a percent, but was " + tooMuch);
        assertTrue(
                fast.warnings().stream()
                        .anyMatch(w -> w.code().equals("spin-too-high-with-this-head")
                                && w.message().contains("30 to 37 percent")),
                () -> fast.warnings().toString());
        ClubHead livelier =
                TypicalHead.driver().toBuilder().tangentialRestitution(0.1).build();
        assertTrue(unwarned(swing(speed, 1.3, 0.0, 0.0, 12.8), TypicalHead.driver()));
        assertTrue(unwarned(swing(speed, -1.3, 0.0, 0.0, 12.8), livelier));
        assertTrue(unwarned(swing(40.0, -4.0, 0.0, 0.0, 22.0), TypicalHead.iron(6)));
        assertTrue(unwarned(
                swing(40.0, -4.0, 0.0, 0.0, 22.0),
                TypicalHead.iron(6).toBuilder().tangentialRestitution(0.0).build()));
    }

    private static boolean unwarned(Delivery.Builder delivery, ClubHead head) {
        return RigidImpact.standard().strike(delivery.build(), head).warnings().isEmpty();
    }

    @Property(tries = 500, seed = "20240601", edgeCases = EdgeCasesMode.NONE)
    void momentumRestitutionAndFrictionHold(
            @ForAll @DoubleRange(min = 10.0, max = 55.0) double speed,
            @ForAll @DoubleRange(min = -10.0, max = 10.0) double attack,
            @ForAll @DoubleRange(min = -8.0, max = 8.0) double path,
            @ForAll @DoubleRange(min = -8.0, max = 8.0) double face,
            @ForAll @DoubleRange(min = 0.0, max = 50.0) double loft,
            @ForAll @DoubleRange(min = -25.0, max = 25.0) double toe,
            @ForAll @DoubleRange(min = -15.0, max = 15.0) double up,
            @ForAll @DoubleRange(min = 0.6, max = 0.9) double e,
            @ForAll @DoubleRange(min = 0.0, max = 0.4) double et,
            @ForAll @DoubleRange(min = 0.05, max = 0.5) double mu,
            @ForAll Handedness hand) {
        Delivery delivery = swing(speed, attack, path, face, loft)
                .strikeToe(millimeters(toe))
                .strikeUp(millimeters(up))
                .build();
        ClubHead head = turningHead(e)
                .tangentialRestitution(et)
                .friction(mu)
                .handedness(hand)
                .build();
        Impact impact = RigidImpact.standard().strike(delivery, head);
        LaunchConditions launch = impact.launch();

        double f = Math.toRadians(face);
        double l = Math.toRadians(loft);
        Vector3D n = unit(l, f);
        Vector3D right = new Vector3D(-Math.sin(f), 0.0, Math.cos(f));
        Vector3D upFace = right.crossProduct(n);
        Vector3D toward = right.scalarMultiply(hand.sign());
        Vector3D headVelocity =
                unit(Math.toRadians(attack), Math.toRadians(path)).scalarMultiply(speed);
        Vector3D v = unit(
                        launch.launchAngle().radians(), launch.startDirection().radians())
                .scalarMultiply(launch.ballSpeed().metersPerSecond());
        Vector3D w = spin(launch);
        // Momentum of the ball is the impulse; the head gets the opposite, at the contact.
        Vector3D p = v.scalarMultiply(BALL_MASS);
        Vector3D contact = new Vector3D(0.0423, n, 0.001 * up, upFace, 0.001 * toe, toward);
        Vector3D headAfter = headVelocity.subtract(p.scalarMultiply(1.0 / 0.204));
        Vector3D torque = contact.crossProduct(p).negate();
        double aboutNormal = torque.dotProduct(n) / 2.843e-4;
        double aboutUp = torque.dotProduct(upFace) / 5.679e-4;
        double aboutToe = torque.dotProduct(toward) / 4.085e-4;
        Vector3D turning = new Vector3D(aboutNormal, n, aboutUp, upFace, aboutToe, toward);
        Vector3D before = headVelocity.negate();
        Vector3D after = v.add(w.crossProduct(n.scalarMultiply(-BALL_RADIUS)))
                .subtract(headAfter.add(turning.crossProduct(contact)));

        double scale = 1e-9 * speed;
        assertEquals(-e * before.dotProduct(n), after.dotProduct(n), scale, "restitution along the normal");
        Vector3D spinOfImpulse = n.scalarMultiply(-BALL_RADIUS).crossProduct(p).scalarMultiply(1.0 / BALL_INERTIA);
        assertEquals(
                0.0, spinOfImpulse.subtract(w).getNorm(), 1e-9 * (1.0 + w.getNorm()), "angular momentum of the ball");
        double normalImpulse = p.dotProduct(n);
        double alongImpulse = p.subtract(n.scalarMultiply(normalImpulse)).getNorm();
        assertTrue(alongImpulse <= mu * normalImpulse * (1.0 + 1e-9), "friction cone");
        if (impact.slipped()) {
            assertEquals(mu * normalImpulse, alongImpulse, 1e-9 * normalImpulse, "full friction while slipping");
        } else {
            Vector3D left = along(after, n).add(et, along(before, n));
            assertEquals(0.0, left.getNorm(), scale, "grip");
        }
        double energyBefore = 0.5 * 0.204 * speed * speed;
        double energyAfter = 0.5 * BALL_MASS * v.getNormSq()
                + 0.5 * BALL_INERTIA * w.getNormSq()
                + 0.5 * 0.204 * headAfter.getNormSq()
                + 0.5
                        * (2.843e-4 * aboutNormal * aboutNormal
                                + 5.679e-4 * aboutUp * aboutUp
                                + 4.085e-4 * aboutToe * aboutToe);
        assertEquals(energyBefore - energyAfter, impact.energyLoss(), 1e-9 * energyBefore, "energy loss");
        assertTrue(energyAfter <= energyBefore, "energy");
        assertEquals(headAfter.getNorm(), impact.headSpeedAfter().metersPerSecond(), scale);
        assertTrue(impact.warnings().stream().noneMatch(told -> told.code().equals("energy-gained")));
    }

    @Property(tries = 500, seed = "20240602", edgeCases = EdgeCasesMode.MIXIN)
    void centralStrikesNeverGainEnergyAndAgreeWithTheClosedForm(
            @ForAll @DoubleRange(min = 1.0, max = 55.0) double speed,
            @ForAll @DoubleRange(min = -10.0, max = 10.0) double attack,
            @ForAll @DoubleRange(min = -10.0, max = 10.0) double path,
            @ForAll @DoubleRange(min = -10.0, max = 10.0) double face,
            @ForAll @DoubleRange(min = -5.0, max = 60.0) double loft,
            @ForAll @DoubleRange(min = 0.0, max = 1.0) double e,
            @ForAll @DoubleRange(min = 0.0, max = 1.0) double et,
            @ForAll @DoubleRange(min = 0.0, max = 1.0) double mu) {
        Delivery delivery = swing(speed, attack, path, face, loft).build();
        ClubHead head = head(0.27, e).tangentialRestitution(et).friction(mu).build();
        Impact impact = RigidImpact.standard().strike(delivery, head);
        assertTrue(impact.energyLoss() >= -1e-12 * speed * speed, "energy " + impact.energyLoss());
        assertTrue(impact.warnings().isEmpty());

        LaunchConditions solved = impact.launch();
        LaunchConditions closed = DPlane.of(delivery, head).launch();
        Vector3D v = unit(
                        solved.launchAngle().radians(), solved.startDirection().radians())
                .scalarMultiply(solved.ballSpeed().metersPerSecond());
        Vector3D u = unit(
                        closed.launchAngle().radians(), closed.startDirection().radians())
                .scalarMultiply(closed.ballSpeed().metersPerSecond());
        assertEquals(0.0, v.subtract(u).getNorm(), 1e-9 * speed, "velocity");
        assertEquals(0.0, spin(solved).subtract(spin(closed)).getNorm(), 1e-9 * speed / BALL_RADIUS, "spin");
    }

    @Property(tries = 300, seed = "20240603", edgeCases = EdgeCasesMode.NONE)
    void leftHandIsTheMirrorImageBitForBit(
            @ForAll @DoubleRange(min = -6.0, max = 6.0) double path,
            @ForAll @DoubleRange(min = -6.0, max = 6.0) double face,
            @ForAll @DoubleRange(min = 8.0, max = 50.0) double loft,
            @ForAll @DoubleRange(min = -20.0, max = 20.0) double toe,
            @ForAll @DoubleRange(min = -10.0, max = 10.0) double up) {
        ClubHead.Builder made = turningHead(0.8).bulgeRadius(millimeters(300.0)).rollRadius(millimeters(280.0));
        LaunchConditions right = RigidImpact.standard()
                .strike(
                        swing(40.0, -2.0, path, face, loft)
                                .strikeToe(millimeters(toe))
                                .strikeUp(millimeters(up))
                                .build(),
                        made.handedness(Handedness.RIGHT).build())
                .launch();
        LaunchConditions left = RigidImpact.standard()
                .strike(
                        swing(40.0, -2.0, -path, -face, loft)
                                .strikeToe(millimeters(toe))
                                .strikeUp(millimeters(up))
                                .build(),
                        made.handedness(Handedness.LEFT).build())
                .launch();
        LaunchConditions mirrored = right.toBuilder()
                .startDirection(degrees(0.0))
                .axisTilt(degrees(0.0))
                .build();
        assertEquals(
                mirrored,
                left.toBuilder()
                        .startDirection(degrees(0.0))
                        .axisTilt(degrees(0.0))
                        .build());
        assertEquals(-right.startDirection().radians(), left.startDirection().radians(), 0.0);
        assertEquals(-right.axisTilt().radians(), left.axisTilt().radians(), 0.0);
    }

    /** The ceiling of the smash factor, (1 + e)/(1 + m/M): momentum and restitution in one dimension. */
    @Test
    void smashFactorAtNoSpinLoftIsTheOneDimensionalOne() {
        Impact impact = RigidImpact.standard()
                .strike(swing(45.0, 3.0, 1.0, 1.0, 3.0).build(), head(0.2, 0.83).build());
        assertEquals(1.83 / (1.0 + 0.04593 / 0.2), impact.smashFactor(), 1e-12);
        assertEquals(0.0, impact.launch().spinRate().rpm(), 1e-9);
        assertEquals(0.0, impact.spinLoft().degrees(), 1e-12);
        // In one dimension the loss is (1 - e^2)/2 times the reduced mass times V^2.
        double reduced = 0.04593 * 0.2 / (0.04593 + 0.2);
        assertEquals(0.5 * (1.0 - 0.83 * 0.83) * reduced * 45.0 * 45.0, impact.energyLoss(), 1e-9);
    }

    @Test
    void hollowBallRollsWithItsOwnInertia() {
        // A thin shell has k = 2/3, hence c = k/(1 + k) = 2/5 (Daish 1972, from memory; derived).
        StruckBall shell = new StruckBall(0.04593, 0.021335, 2.0 / 3.0);
        LaunchConditions launch = RigidImpact.standard()
                .withBall(shell)
                .strike(swing(30.0, 0.0, 0.0, 0.0, 20.0).build(), head(0.3, 0.8).build())
                .launch();
        double vt = 0.4 * 30.0 * Math.sin(Math.toRadians(20.0)) / (1.0 + 0.4 * 0.04593 / 0.3);
        assertEquals(1.5 * vt / 0.021335, launch.spinRate().radiansPerSecond(), 1e-9);
        double vn = 1.8 * 30.0 * Math.cos(Math.toRadians(20.0)) / (1.0 + 0.04593 / 0.3);
        assertEquals(Math.hypot(vn, vt), launch.ballSpeed().metersPerSecond(), 1e-9);
    }

    /** Effective mass of an off-centre strike, 1/M + x^2/I (textbook), in the one direction where nothing else acts. */
    @Test
    void offCenterSpeedLossIsThatOfTheEffectiveMass() {
        ClubHead head = head(0.204, 0.83).inertia(5.679e-4, 4.085e-4, 2.843e-4).build();
        Impact impact = RigidImpact.standard()
                .strike(
                        swing(45.0, 0.0, 0.0, 0.0, 0.0)
                                .strikeToe(millimeters(20.0))
                                .build(),
                        head);
        double effective = 1.0 / (1.0 / 0.204 + 0.02 * 0.02 / 5.679e-4);
        assertEquals(1.83 / (1.0 + 0.04593 / effective), impact.smashFactor(), 1e-12);
    }

    @Test
    void gearEffectTurnsTheBallBackForBothHands() {
        for (Handedness hand : Handedness.values()) {
            ClubHead head = turningHead(0.83).handedness(hand).build();
            LaunchConditions toe = RigidImpact.standard()
                    .strike(
                            swing(45.0, 0.0, 0.0, 0.0, 10.0)
                                    .strikeToe(millimeters(15.0))
                                    .build(),
                            head)
                    .launch();
            // A toe strike starts away from the golfer and curves back: a draw.
            assertEquals("draw", hand.curveWord(toe.axisTilt().degrees()));
            assertEquals(hand.sign(), Math.signum(toe.startDirection().degrees()));
        }
    }

    @Test
    void restitutionMayDependOnTheNormalSpeed() {
        // The fit of Penner (2001), from memory.
        ClubHead falling = ClubHead.builder()
                .mass(kilograms(0.2))
                .restitution(v -> 0.86 - 0.0029 * v)
                .build();
        Delivery delivery = swing(45.0, 0.0, 0.0, 0.0, 12.0).build();
        double normal = 45.0 * Math.cos(Math.toRadians(12.0));
        ClubHead constant = head(0.2, 0.86 - 0.0029 * normal).build();
        assertEquals(
                RigidImpact.standard().strike(delivery, constant).smashFactor(),
                RigidImpact.standard().strike(delivery, falling).smashFactor(),
                1e-12);
    }

    @Test
    void contradictoryCoefficientsAreSaidToGainEnergy() {
        // e = 1 with a gripping face, the head coming from where the frictionless rebound would be oblique.
        ClubHead head = head(0.2, 1.0)
                .massCenterDepth(millimeters(60.0))
                .inertia(1.5e-4, 1.5e-4, 1.5e-4)
                .build();
        Impact impact = RigidImpact.standard()
                .strike(
                        swing(30.0, 0.0, -20.0, 0.0, 0.0)
                                .strikeToe(millimeters(30.0))
                                .build(),
                        head);
        assertTrue(impact.energyLoss() < 0.0);
        assertEquals("energy-gained", impact.warnings().get(0).code());
        assertFalse(impact.slipped());
    }

    @Test
    void refusesWhatItCannotSay() {
        RigidImpact model = RigidImpact.standard();
        ClubHead plain = head(0.2, 0.83).build();
        refused(
                "off-centre",
                () -> model.strike(
                        swing(40.0, 0.0, 0.0, 0.0, 10.0)
                                .strikeToe(millimeters(5.0))
                                .build(),
                        plain));
        refused(
                "off-centre",
                () -> model.strike(
                        swing(40.0, 0.0, 0.0, 0.0, 10.0)
                                .strikeUp(millimeters(5.0))
                                .build(),
                        plain));
        refused(
                "spin loft was 90 deg",
                () -> model.strike(swing(40.0, -20.0, 0.0, 0.0, 75.0).build(), plain));
        ClubHead odd = ClubHead.builder()
                .mass(kilograms(0.2))
                .restitution(v -> Double.NaN)
                .build();
        refused(
                "restitution must be in [0, 1], but was NaN",
                () -> model.strike(swing(40.0, 0.0, 0.0, 0.0, 10.0).build(), odd));
    }

    /** No pair of friction and geometry jams: the normal impulse of a slipping contact stays positive. */
    @Property(tries = 300, seed = "20240606", edgeCases = EdgeCasesMode.NONE)
    void extremeStrikesStillPushTheBallAway(
            @ForAll @DoubleRange(min = 0.0, max = 1.0) double mu,
            @ForAll @DoubleRange(min = -60.0, max = 60.0) double toe,
            @ForAll @DoubleRange(min = -40.0, max = 40.0) double up,
            @ForAll @DoubleRange(min = -45.0, max = 45.0) double path,
            @ForAll @DoubleRange(min = -20.0, max = 40.0) double loft) {
        ClubHead light = head(0.05, 0.5)
                .friction(mu)
                .massCenterDepth(millimeters(80.0))
                .inertia(1e-5, 1e-5, 1e-5)
                .build();
        LaunchConditions launch = RigidImpact.standard()
                .strike(
                        swing(40.0, 0.0, path, 0.0, loft)
                                .strikeToe(millimeters(toe))
                                .strikeUp(millimeters(up))
                                .build(),
                        light)
                .launch();
        Vector3D v =
                unit(launch.launchAngle().radians(), launch.startDirection().radians());
        double normal = v.dotProduct(unit(Math.toRadians(loft), 0.0));
        assertTrue(normal > 0.0, "normal part " + normal);
        assertTrue(Math.sqrt(1.0 - normal * normal) <= mu * normal * (1.0 + 1e-6) + 1e-7, "friction cone");
    }

    private static void refused(String words, Executable call) {
        String message = String.valueOf(
                assertThrows(IllegalArgumentException.class, call).getMessage());
        assertTrue(message.contains(words), message);
    }

    private static Vector3D unit(double elevation, double azimuth) {
        return new Vector3D(
                Math.cos(elevation) * Math.cos(azimuth), Math.sin(elevation), Math.cos(elevation) * Math.sin(azimuth));
    }

    private static Vector3D along(Vector3D v, Vector3D n) {
        return v.subtract(n.scalarMultiply(v.dotProduct(n)));
    }

    /** The spin vector, from the definition of tilt: the level axis to the right turned about the launch direction. */
    private static Vector3D spin(LaunchConditions launch) {
        double azimuth = launch.startDirection().radians();
        Vector3D direction = unit(launch.launchAngle().radians(), azimuth);
        Vector3D right = new Vector3D(-Math.sin(azimuth), 0.0, Math.cos(azimuth));
        Vector3D down = direction.crossProduct(right);
        double tilt = launch.axisTilt().radians();
        return new Vector3D(Math.cos(tilt), right, Math.sin(tilt), down)
                .scalarMultiply(launch.spinRate().radiansPerSecond());
    }
}
