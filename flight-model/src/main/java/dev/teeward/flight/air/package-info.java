/**
 * Air and wind: what the ball flies through.
 */
@NullMarked
package dev.teeward.flight.air;

import org.jspecify.annotations.NullMarked;
