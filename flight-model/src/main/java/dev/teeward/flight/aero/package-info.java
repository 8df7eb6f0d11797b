/**
 * Drag and lift coefficients of golf balls, as plug-ins.
 */
@NullMarked
package dev.teeward.flight.aero;

import org.jspecify.annotations.NullMarked;
