package dev.teeward.flight.study;

import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.impact.Delivery;
import java.util.Objects;

/**
 * A shot of which both sides of the impact were measured.
 *
 * <pre>{@code
 * List<StruckShot> shots = List.of(new StruckShot(delivery, launch));
 * ImpactCalibration.withDefaults().fit(shots, TypicalHead.iron(7));
 * }</pre>
 *
 * @param delivery how the head arrived
 * @param launch how the ball left
 */
public record StruckShot(Delivery delivery, LaunchConditions launch) {
    /**
     * Refuses what is missing.
     *
     * @param delivery how the head arrived
     * @param launch how the ball left
     */
    public StruckShot {
        Objects.requireNonNull(delivery, "delivery");
        Objects.requireNonNull(launch, "launch");
    }
}
