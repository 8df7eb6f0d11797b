/**
 * From launch conditions to landing.
 *
 * <p>The frame is fixed to the ground, its origin is the ball before the strike: x to the target, y up, z to the right.
 *
 * <pre>
 *          y up
 *          |
 *          |      . launch angle, above the horizontal
 *          |    .
 *          |  .
 *   ball   o-------------------- x to the target
 *           \
 *            \   start direction, right positive
 *             \
 *              z to the right
 * </pre>
 *
 * <p>Signs are the same for both hands:
 * <ul>
 *   <li>a start direction, side or curve to the right of the target is positive;
 *   <li>a tilt of the spin axis is positive when the ball curves right; 0 is pure backspin, 180 deg pure topspin;
 *   <li>a launch angle is positive above the horizontal, a descent angle below it;
 *   <li>a wind is named by where it comes from: 0 is a headwind, 90 deg comes from the right;
 *   <li>a landing elevation is positive for higher ground.
 * </ul>
 */
@NullMarked
package dev.teeward.flight;

import org.jspecify.annotations.NullMarked;
