/**
 * What was measured: shots, sets of shots, and the session they were hit in. These types hold; they do not compute.
 *
 * <p>Start with {@link dev.teeward.fitting.Session}, which is what a file holds, {@link dev.teeward.fitting.ShotSet}, which
 * is what the statistics take, and {@link dev.teeward.fitting.Metric}, which names everything that can be measured:
 *
 * <pre>{@code
 * Shot shot = Shot.builder("Alder").number(1).measured(Metric.CARRY, 150.0).build(); // metres
 * Session session = Session.builder().hand(Handedness.LEFT).shots(ShotSet.of(shot)).build();
 * double[] carries = session.shots().used().club("Alder").values(Metric.CARRY);
 * }</pre>
 *
 * <p>Signs: start direction, path, face, side, curve and axis tilt are right of the target positive for both hands; attack
 * and launch angle are up positive; strike is towards the toe and up positive. A metric that was not measured is absent:
 * ask {@link dev.teeward.fitting.Shot#has}; it is never NaN, 0 or -1. Numbers of metrics are plain {@code double} in SI
 * (metres, metres per second, radians, radians per second, seconds); what belongs to the session is a quantity.
 *
 * <p>All values are immutable and thread-safe; their builders are neither. Nothing is null unless marked.
 */
@NullMarked
package dev.teeward.fitting;

import org.jspecify.annotations.NullMarked;
