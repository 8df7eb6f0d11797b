package dev.teeward.flight;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class LaunchConditionsTest {
    private static final LaunchConditions LAUNCH = LaunchConditions.builder()
            .ballSpeed(mph(118.0))
            .launchAngle(degrees(17.2))
            .startDirection(degrees(-1.2))
            .spinRate(rpm(6_400.0))
            .axisTilt(degrees(-4.0))
            .build();

    private static String refusal(Class<? extends RuntimeException> type, Executable call) {
        return String.valueOf(assertThrows(type, call).getMessage());
    }

    @Test
    void valuesComeOutAsTheyWentIn() {
        assertEquals(118.0, LAUNCH.ballSpeed().mph(), 1e-12);
        assertEquals(17.2, LAUNCH.launchAngle().degrees(), 1e-12);
        assertEquals(-1.2, LAUNCH.startDirection().degrees(), 1e-12);
        assertEquals(6_400.0, LAUNCH.spinRate().rpm(), 1e-9);
        assertEquals(-4.0, LAUNCH.axisTilt().degrees(), 1e-12);
    }

    @Test
    void directionAndTiltAreZeroUnlessGivenAndTheRestMustBeGiven() {
        LaunchConditions straight = LaunchConditions.builder()
                .ballSpeed(mph(118.0))
                .launchAngle(degrees(17.2))
                .spinRate(rpm(6_400.0))
                .build();
        assertEquals(0.0, straight.startDirection().degrees());
        assertEquals(0.0, straight.axisTilt().degrees());
        LaunchConditions.Builder noSpin =
                LaunchConditions.builder().ballSpeed(mph(118.0)).launchAngle(degrees(17.2));
        String message = refusal(IllegalStateException.class, noSpin::build);
        assertTrue(message.startsWith("spinRate must be given"), message);
    }

    @Test
    void valuesOutOfRangeAreRefusedWithNameRangeValueAndHint() {
        LaunchConditions.Builder builder = LaunchConditions.builder();
        String speed = refusal(IllegalArgumentException.class, () -> builder.ballSpeed(Speed.ofMetersPerSecond(167.0)));
        assertTrue(speed.startsWith("ballSpeed must be in (0, 110] m/s (0-246 mph), but was 167 m/s"), speed);
        assertTrue(speed.contains("if mph was meant, use Speed.ofMph(167)"), speed);
        String spin = refusal(IllegalArgumentException.class, () -> builder.spinRate(rpm(-100.0)));
        assertTrue(spin.contains("for topspin use an axisTilt of 180 deg"), spin);
        String angle = refusal(IllegalArgumentException.class, () -> builder.launchAngle(degrees(90.001)));
        assertTrue(angle.startsWith("launchAngle must be in [-90, 90] deg (-1.5708 to 1.5708 rad), but was"), angle);
        String radians = refusal(IllegalArgumentException.class, () -> builder.launchAngle(Angle.ofRadians(17.2)));
        assertTrue(radians.endsWith("if degrees were meant, use Angle.ofDegrees(17.2)"), radians);
        String few = refusal(IllegalArgumentException.class, () -> builder.launchAngle(Angle.ofRadians(4.0)));
        assertTrue(few.endsWith("if degrees were meant, use Angle.ofDegrees(4)"), few);
        String radps =
                refusal(IllegalArgumentException.class, () -> builder.spinRate(SpinRate.ofRadiansPerSecond(6_400.0)));
        assertTrue(radps.endsWith("if rpm was meant, use SpinRate.ofRpm(6400)"), radps);
        assertThrows(IllegalArgumentException.class, () -> builder.ballSpeed(Speed.ofMetersPerSecond(0.0)));
        assertThrows(IllegalArgumentException.class, () -> builder.spinRate(SpinRate.ofRpm(20_001.0)));
        assertThrows(IllegalArgumentException.class, () -> builder.startDirection(degrees(-91.0)));
        assertThrows(IllegalArgumentException.class, () -> builder.axisTilt(degrees(181.0)));
    }

    @Test
    void aCopyThroughTheBuilderIsEqualAndAChangedOneIsNot() {
        assertEquals(LAUNCH, LAUNCH.toBuilder().build());
        assertEquals(LAUNCH.hashCode(), LAUNCH.toBuilder().build().hashCode());
        assertNotEquals(LAUNCH, LAUNCH.toBuilder().axisTilt(degrees(-3.0)).build());
        assertNotEquals(LAUNCH, LAUNCH.toBuilder().ballSpeed(mph(119.0)).build());
        assertTrue(LAUNCH.toString().contains("axis tilt"), LAUNCH::toString);
    }

    @Test
    void theyTravelSerialized() throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(LAUNCH);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertEquals(LAUNCH, in.readObject());
        }
    }
}
