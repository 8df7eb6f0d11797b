/**
 * Numerical parts that the statistics share: enumeration, small matrices, quadrature. Not API: nothing here is promised,
 * and no public signature elsewhere mentions it.
 */
@NullMarked
package dev.teeward.fitting.internal;

import org.jspecify.annotations.NullMarked;
