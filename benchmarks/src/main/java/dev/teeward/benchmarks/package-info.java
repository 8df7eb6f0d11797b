/**
 * JMH benchmarks, with peers and a trivial baseline beside our own code in the same run.
 */
@NullMarked
package dev.teeward.benchmarks;

import org.jspecify.annotations.NullMarked;
