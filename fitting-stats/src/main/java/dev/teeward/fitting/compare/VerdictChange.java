package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;

/**
 * A verdict that hangs on the flagged shots.
 *
 * <pre>{@code
 * for (VerdictChange change : result.changedVerdicts()) {
 *     show(change.metric().label() + ": " + change.with() + ", but " + change.without() + " without the flagged shots");
 * }
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param metric the metric
 * @param with the verdict of all used shots
 * @param without the verdict without the flagged shots, which is another
 */
public record VerdictChange(Metric metric, Verdict with, Verdict without) {}
