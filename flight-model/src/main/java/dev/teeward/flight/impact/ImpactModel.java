package dev.teeward.flight.impact;

/**
 * What becomes of a delivery: the plug-in between club and ball.
 *
 * <p>A model of one's own is one method; it must be thread-safe, make no energy, treat both hands alike, change its launch without
 * jumps when the delivery changes, and refuse a face that moves away from the ball: {@code ImpactModelContract} in the test-jar
 * checks that. {@link RigidImpact} is the one that comes with this library.
 *
 * <pre>{@code
 * ImpactModel model = RigidImpact.standard();
 * LaunchConditions launch = model.strike(delivery, head).launch();
 * }</pre>
 */
@FunctionalInterface
public interface ImpactModel {
    /**
     * Strikes a ball at rest.
     *
     * @param delivery how the head arrives
     * @param head what arrives
     * @return the launch and what else there is to know
     * @throws IllegalArgumentException if the model cannot say what happens
     */
    Impact strike(Delivery delivery, ClubHead head);
}
