/**
 * Enumeration, resampling, noncentral t and order statistics for the fitting packages. Not API: it may change at any time.
 *
 * <p>Everything here works on plain {@code double} arrays, keeps no state between calls and is thread-safe unless a
 * class says otherwise.
 *
 * <pre>{@code
 * double power = NoncentralT.upperTail(2.262157162740992, 9.0, 3.1622776601683795); // 0.8031
 * }</pre>
 */
@NullMarked
package dev.teeward.fitting.internal;

import org.jspecify.annotations.NullMarked;
