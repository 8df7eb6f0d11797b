/**
 * The numerical heart: one force sum, one integrator, events and dense output, on plain {@code double} arrays in SI.
 *
 * <p><strong>Not API.</strong> The types here may change in any release; programs use {@code dev.teeward.flight}.
 *
 * <p>Frame: x to the target, y up, z right, origin at the ball. A state is seven numbers in the order
 * {@code vx, vy, vz, spin, y, x, z}: the first five are all a force needs to know, so the stages of a Runge-Kutta step carry
 * only them.
 */
@NullMarked
package dev.teeward.flight.internal;

import org.jspecify.annotations.NullMarked;
