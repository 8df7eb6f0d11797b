package dev.teeward.flight.impact;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.grams;
import static dev.teeward.quantity.Units.kilograms;
import static dev.teeward.quantity.Units.metersPerSecond;
import static dev.teeward.quantity.Units.millimeters;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Warning;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What goes in and comes out of an impact: ranges, refusals, copies. */
class DeliveryTest {
    private static final Delivery DELIVERY = Delivery.builder()
            .clubSpeed(metersPerSecond(40.0))
            .attackAngle(degrees(-3.0))
            .clubPath(degrees(1.0))
            .faceAngle(degrees(3.0))
            .dynamicLoft(degrees(20.0))
            .strikeToe(millimeters(4.0))
            .strikeUp(millimeters(-2.0))
            .build();

    private static final ClubHead HEAD = ClubHead.builder()
            .mass(grams(204.0))
            .restitution(0.83)
            .tangentialRestitution(0.1)
            .friction(0.3)
            .handedness(Handedness.LEFT)
            .massCenterDepth(millimeters(42.3))
            .inertia(5.679e-4, 4.085e-4, 2.843e-4)
            .bulgeRadius(millimeters(305.0))
            .rollRadius(millimeters(250.0))
            .build();

    @Test
    void valuesCopyAndCompare() {
        assertEquals(DELIVERY, DELIVERY.toBuilder().build());
        assertEquals(DELIVERY.hashCode(), DELIVERY.toBuilder().build().hashCode());
        assertNotEquals(
                DELIVERY, DELIVERY.toBuilder().strikeUp(millimeters(0.0)).build());
        assertEquals(2.0, DELIVERY.faceToPath().degrees(), 1e-12);
        assertTrue(DELIVERY.toString().startsWith("club speed 40"));
        assertEquals(HEAD, HEAD.toBuilder().build());
        assertEquals(HEAD.hashCode(), HEAD.toBuilder().build().hashCode());
        assertNotEquals(HEAD, HEAD.toBuilder().friction(0.2).build());
        assertTrue(HEAD.hasInertia());
        assertFalse(
                ClubHead.builder().mass(grams(300.0)).restitution(0.7).build().hasInertia());
        assertTrue(HEAD.toString().contains("LEFT"));
    }

    /** Spin loft in a vertical plane is loft minus attack (definition); on the side, the spherical law of cosines. */
    @Test
    void spinLoftIsTheAngleInSpace() {
        Delivery inLine = DELIVERY.toBuilder().faceAngle(degrees(1.0)).build();
        assertEquals(23.0, inLine.spinLoft().degrees(), 1e-12);
        double cos = Math.sin(Math.toRadians(20.0)) * Math.sin(Math.toRadians(-3.0))
                + Math.cos(Math.toRadians(20.0)) * Math.cos(Math.toRadians(-3.0)) * Math.cos(Math.toRadians(2.0));
        assertEquals(Math.toDegrees(Math.acos(cos)), DELIVERY.spinLoft().degrees(), 1e-9);
    }

    @Test
    void deliverySurvivesSerialization() throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(DELIVERY);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertEquals(DELIVERY, in.readObject());
        }
    }

    @Test
    void outOfRangeIsRefusedByName() {
        refused(
                "clubSpeed must be in (0, 70] m/s (0-157 mph), but was ",
                () -> Delivery.builder().clubSpeed(metersPerSecond(0.0)));
        refused("for mph use Speed.ofMph(95.0)", () -> Delivery.builder().clubSpeed(metersPerSecond(95.0)));
        refused(
                "attackAngle must be in [-45.0, 45.0] deg",
                () -> Delivery.builder().attackAngle(degrees(50.0)));
        refused("clubPath must be in", () -> Delivery.builder().clubPath(degrees(-46.0)));
        refused("faceAngle must be in", () -> Delivery.builder().faceAngle(degrees(61.0)));
        refused("dynamicLoft must be in", () -> Delivery.builder().dynamicLoft(degrees(-21.0)));
        refused(
                "strikeToe must be in [-60.0, 60.0] mm",
                () -> Delivery.builder().strikeToe(millimeters(61.0)));
        refused("strikeUp must be in", () -> Delivery.builder().strikeUp(millimeters(-41.0)));
        refused("mass of the head must be in", () -> ClubHead.builder().mass(kilograms(204.0)));
        refused(
                "restitution must be in [0.0, 1.0], but was 1.2",
                () -> ClubHead.builder().restitution(1.2));
        refused("tangentialRestitution must be", () -> ClubHead.builder().tangentialRestitution(-0.1));
        refused("friction must be", () -> ClubHead.builder().friction(Double.NaN));
        refused("massCenterDepth must be", () -> ClubHead.builder().massCenterDepth(millimeters(-1.0)));
        refused("for g cm2 multiply by 1e-7", () -> ClubHead.builder().inertia(5679.0, 4085.0, 2843.0));
        refused("sum of the other two", () -> ClubHead.builder().inertia(9e-4, 2e-4, 2e-4));
        refused("bulgeRadius must be", () -> ClubHead.builder().bulgeRadius(millimeters(99.0)));
        refused("rollRadius must be", () -> ClubHead.builder().rollRadius(millimeters(99.0)));
    }

    @Test
    void missingIsRefusedByName() {
        Delivery.Builder delivery = Delivery.builder().clubSpeed(metersPerSecond(40.0));
        String message = String.valueOf(
                assertThrows(IllegalStateException.class, delivery::build).getMessage());
        assertEquals("attackAngle must be given; a default would be a guess", message);
        ClubHead.Builder head = ClubHead.builder().mass(grams(200.0));
        assertEquals(
                "restitution must be given; a default would be a guess",
                assertThrows(IllegalStateException.class, head::build).getMessage());
    }

    /** A model of one's own is a lambda. */
    @Test
    void ownModelReturnsAnImpact() {
        ImpactModel own = (delivery, head) -> {
            LaunchConditions launch = LaunchConditions.builder()
                    .ballSpeed(metersPerSecond(1.4 * delivery.clubSpeed().metersPerSecond()))
                    .launchAngle(delivery.dynamicLoft())
                    .spinRate(rpm(3_000.0))
                    .build();
            return Impact.builder(launch, delivery)
                    .warnings(List.of(Warning.of("rule-of-thumb", "Ball speed is 1.4 times club speed.")))
                    .build();
        };
        Impact impact = own.strike(DELIVERY, HEAD);
        assertEquals(1.4, impact.smashFactor(), 1e-12);
        assertEquals(DELIVERY.spinLoft(), impact.spinLoft());
        assertEquals("rule-of-thumb", impact.warnings().get(0).code());
        assertTrue(impact.toString().endsWith("gripped"));
        refused(
                "energyLoss must be finite",
                () -> Impact.builder(impact.launch(), DELIVERY).energyLoss(Double.NaN));
    }

    private static void refused(String words, Executable call) {
        String message = String.valueOf(
                assertThrows(IllegalArgumentException.class, call).getMessage());
        assertTrue(message.contains(words), message);
    }
}
