/**
 * Runnable programs on top of the two libraries. One executable jar, one class for each command.
 *
 * <p>Exit codes: 0 done, 2 the command line or an input file is wrong (one line on standard error), 1 anything else.
 */
@NullMarked
package dev.teeward.examples;

import org.jspecify.annotations.NullMarked;
