package dev.teeward.fitting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class MetricTest {
    @Test
    void keysAreThoseOfTheFileFormat() {
        assertEquals(
                List.of(
                        "club_speed",
                        "attack_angle",
                        "club_path",
                        "face_angle",
                        "dynamic_loft",
                        "dynamic_lie",
                        "spin_loft",
                        "face_to_path",
                        "strike_toe",
                        "strike_up",
                        "ball_speed",
                        "launch_angle",
                        "start_direction",
                        "spin_rate",
                        "axis_tilt",
                        "curve",
                        "apex",
                        "flight_time",
                        "carry",
                        "side",
                        "descent_angle",
                        "landing_speed",
                        "total",
                        "smash_factor"),
                Stream.of(Metric.values()).map(Metric::key).toList());
    }

    @Test
    void findsByExactKeyOnly() {
        for (Metric metric : Metric.values()) {
            assertEquals(metric, Metric.of(metric.key()));
        }
        assertTrue(Metric.find("Carry").isEmpty());
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> Metric.of("cary"));
        assertTrue(String.valueOf(e.getMessage())
                .startsWith("there is no metric \"cary\"; there are club_speed, attack_angle,"));
    }

    @Test
    void labelsAreDistinct() {
        Set<String> labels = new HashSet<>();
        for (Metric metric : Metric.values()) {
            assertTrue(labels.add(metric.label()), metric.label());
        }
    }

    @Test
    void groupsFollowTheShot() {
        MetricGroup last = MetricGroup.APPROACH;
        for (Metric metric : Metric.values()) {
            assertTrue(metric.group().compareTo(last) >= 0, metric.key());
            last = metric.group();
        }
    }

    @Test
    void limitsOfTheStartAreThoseOfTheFlightModel() {
        assertFalse(Metric.BALL_SPEED.allows(0.0));
        assertTrue(Metric.BALL_SPEED.allows(110.0));
        assertFalse(Metric.BALL_SPEED.allows(110.001));
        assertFalse(Metric.BALL_SPEED.allows(Double.NaN));
        assertTrue(Metric.LAUNCH_ANGLE.allows(AngleUnit.DEGREE.toSi(-90.0)));
        assertTrue(Metric.LAUNCH_ANGLE.allows(AngleUnit.DEGREE.toSi(90.0)));
        assertFalse(Metric.LAUNCH_ANGLE.allows(AngleUnit.DEGREE.toSi(95.0)));
        assertTrue(Metric.SPIN_RATE.allows(0.0));
        assertTrue(Metric.SPIN_RATE.allows(SpinRateUnit.REVOLUTION_PER_MINUTE.toSi(20_000.0)));
        assertFalse(Metric.SPIN_RATE.allows(-1e-9));
        assertTrue(Metric.AXIS_TILT.allows(AngleUnit.DEGREE.toSi(-180.0)));
    }

    @Test
    void unitsOfBothSystemsBelongToTheDimension() {
        for (Metric metric : Metric.values()) {
            for (UnitSystem system : UnitSystem.values()) {
                assertTrue(metric.units().contains(metric.unit(system)), metric.key());
            }
            assertEquals(metric.siUnit(), metric.units().get(0));
        }
        assertEquals(LengthUnit.YARD, Metric.CARRY.unit(UnitSystem.US));
        assertEquals(LengthUnit.METER, Metric.CARRY.unit(UnitSystem.METRIC));
        assertEquals(SpeedUnit.MILE_PER_HOUR, Metric.CLUB_SPEED.unit(UnitSystem.US));
        assertEquals(1, Metric.SMASH_FACTOR.units().size());
    }

    @Test
    void signedExactlyWhereThereIsADirection() {
        Set<Metric> lateral = EnumSet.noneOf(Metric.class);
        for (Metric metric : Metric.values()) {
            if (metric.sense() == Sense.LATERAL) {
                lateral.add(metric);
                assertEquals(-metric.lower(), metric.upper(), 0.0, metric.key());
            }
            if (metric.sense() == Sense.NONE) {
                assertEquals(0.0, metric.lower(), 0.0, metric.key());
            }
        }
        assertEquals(
                EnumSet.of(
                        Metric.CLUB_PATH,
                        Metric.FACE_ANGLE,
                        Metric.FACE_TO_PATH,
                        Metric.START_DIRECTION,
                        Metric.AXIS_TILT,
                        Metric.CURVE,
                        Metric.SIDE),
                lateral);
    }
}
