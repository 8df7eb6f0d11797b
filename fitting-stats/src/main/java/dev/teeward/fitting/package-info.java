/**
 * Shots and sessions as they were measured. The types here hold; the packages beside them compute.
 */
@NullMarked
package dev.teeward.fitting;

import org.jspecify.annotations.NullMarked;
