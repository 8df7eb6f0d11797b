/**
 * From launch conditions to landing.
 */
@NullMarked
package dev.teeward.flight;

import org.jspecify.annotations.NullMarked;
