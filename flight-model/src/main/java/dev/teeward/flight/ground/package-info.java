/**
 * The ground: where a ball comes down, how it bounces, skids and rolls, and where it stops.
 *
 * <p>A {@link dev.teeward.flight.ground.Ground} is a {@link dev.teeward.flight.ground.Turf}, a
 * {@link dev.teeward.flight.ground.Terrain} and a {@link dev.teeward.flight.ground.BounceModel}. Give it to
 * {@code FlightModel.withGround}, and every flight has a total and a {@link dev.teeward.flight.ground.RollOut}.
 *
 * <pre>{@code
 * Terrain uphill = Terrain.plane(degrees(2.0), degrees(0.0));
 * Ground ground = Ground.of(TurfClass.FAIRWAY).withTerrain(uphill);
 * FlightModel model = FlightModel.standard().withGround(ground);
 * }</pre>
 *
 * <p>Frame: x to the target, y up, z right, origin at the ball before the strike. No constant of turf here has been validated:
 * no single set describes real turf, and turf of one name differs from place to place by more than clubs do. Use the total to
 * compare, not to promise.
 */
@NullMarked
package dev.teeward.flight.ground;

import org.jspecify.annotations.NullMarked;
