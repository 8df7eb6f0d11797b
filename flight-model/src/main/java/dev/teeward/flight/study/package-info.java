/**
 * What a researcher does with a flight model.
 */
@NullMarked
package dev.teeward.flight.study;

import org.jspecify.annotations.NullMarked;
