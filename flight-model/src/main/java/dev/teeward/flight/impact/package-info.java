/**
 * From the delivery of the club head to the launch of the ball.
 *
 * <p>Start with {@link dev.teeward.flight.impact.Delivery} (how the head arrives),
 * {@link dev.teeward.flight.impact.ClubHead} (what arrives) and {@link dev.teeward.flight.impact.RigidImpact} (what comes
 * of it):
 *
 * <pre>{@code
 * Delivery delivery = Delivery.builder()
 *     .clubSpeed(mph(83.0)).attackAngle(degrees(-4.0)).clubPath(degrees(0.0))
 *     .faceAngle(degrees(2.0)).dynamicLoft(degrees(25.0)).build();
 * ClubHead iron = ClubHead.builder().mass(grams(270.0)).restitution(0.78).build();
 * Impact impact = RigidImpact.standard().strike(delivery, iron);
 * impact.launch().axisTilt().degrees();   // 3.95, so the ball curves right
 * impact.smashFactor();                   // 1.336
 * }</pre>
 *
 * <p>{@link dev.teeward.flight.impact.DPlane} gives start direction, axis tilt and a rough curve in closed form,
 * {@link dev.teeward.flight.impact.LieEffect} what a lie that is off does and what bending it would mend,
 * {@link dev.teeward.flight.impact.ShaftTurn} how closing the face takes loft,
 * {@link dev.teeward.flight.impact.TypicalHead} heads to start from, and
 * {@link dev.teeward.flight.impact.ImpliedDelivery} goes backwards from a launch to the face that made it.
 *
 * <p>Frame: x to the target, y up, z right. Right of the target is positive for both hands, for face angle, path, start
 * direction and tilt; attack angle and loft are positive upwards. A strike towards the toe or above the centre is positive
 * for both hands. Face angle and dynamic loft are the delivered direction of the face normal and already contain the lie.
 *
 * <p>All models here are of a rigid, free head: the shaft and the hands do not act during the half millisecond of contact,
 * and the head does not rotate before it. What that leaves out is said in {@link dev.teeward.flight.impact.RigidImpact}.
 */
@NullMarked
package dev.teeward.flight.impact;

import org.jspecify.annotations.NullMarked;
