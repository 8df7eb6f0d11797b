/**
 * What follows from the readings of a session: metrics derived from others by definition, and missing results of the flight
 * computed by the flight model in the air and wind of that session.
 *
 * <p>Start with {@link dev.teeward.fitting.complete.SessionCompleter}; {@link dev.teeward.fitting.complete.SessionAir} says
 * which air that is and what had to be assumed for it:
 *
 * <pre>{@code
 * Completion completion = SessionCompleter.withDefaults().complete(session);
 * Session complete = completion.session();
 * completion.air().description();   // "28.0 degC (82.4 degF), ..."
 * Reading carry = complete.shots().shots().get(0).reading(Metric.CARRY).orElseThrow();
 * carry.origin();                   // MEASURED if it was, COMPUTED if the flight model filled it in
 * }</pre>
 *
 * <p>What was measured is never replaced by what was derived or computed. A total that was not measured is computed only by a
 * flight model with a {@link dev.teeward.flight.ground.Ground}, which the standard one does not have: no turf is assumed.
 */
@NullMarked
package dev.teeward.fitting.complete;

import org.jspecify.annotations.NullMarked;
