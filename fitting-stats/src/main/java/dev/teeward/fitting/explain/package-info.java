/**
 * Is it the club or the swing: were the swings the same, what is left of a difference at equal delivery, and which part of it
 * the flight gives to which input.
 *
 * <p>Start with {@link dev.teeward.fitting.explain.Explain}, which asks everything of a head-to-head result:
 *
 * <pre>{@code
 * HeadToHeadResult result = HeadToHead.withDefaults().withPrimary(Metric.CURVE).compare(session);
 * Explanation why = Explain.withDefaults().explain(result);
 * why.balance().side(SwingSide.GOLFER);            // were speed, attack angle and path the same?
 * why.effect(Metric.CURVE);                        // the whole difference, and that at equal delivery
 * why.flights().flatMap(f -> f.of(Metric.CURVE));  // so much from the axis tilt, so much from the spin, and the rest
 * }</pre>
 *
 * <p>Three views that do not lean on each other. {@link dev.teeward.fitting.explain.Balance} looks at the swings alone.
 * {@link dev.teeward.fitting.explain.TotalAndDirect} lets the shots themselves tell how much an input matters, which takes
 * degrees of freedom that ten shots hardly have. {@link dev.teeward.fitting.explain.FlightCounterfactual} knows from physics
 * how much an input matters, and needs none; what physics does not know is its unexplained rest.
 * {@link dev.teeward.fitting.explain.Agreement} tells whether the two say the same, and
 * {@link dev.teeward.fitting.explain.ClubOrSwing} puts the first two into one word within one budget of error, with only what
 * the golfer brings held equal.
 *
 * <p>Nothing here says that a club caused a swing. All differences are first club minus second, all numbers SI, right
 * positive for both hands.
 */
@NullMarked
package dev.teeward.fitting.explain;

import org.jspecify.annotations.NullMarked;
