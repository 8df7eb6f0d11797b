/**
 * Describes one set of shots: numbers of one metric, where the balls land, how they fly, where the face meets them.
 *
 * <p>Start with {@link dev.teeward.fitting.summary.SampleSummary} and {@link dev.teeward.fitting.summary.LandingPattern}:
 *
 * <pre>{@code
 * SampleSummary.Result carries = SampleSummary.withDefaults().withUnit(LengthUnit.METER).summarize(carry);
 * LandingPattern.Result pattern = LandingPattern.withDefaults().withTarget(150.0, 0.0).describe(carry, side);
 * Estimate half = pattern.radiusAboutCenter(0.5);         // precision
 * Ellipse next = pattern.ellipse(EllipseKind.PREDICTION, 0.9);
 * }</pre>
 *
 * <p>Two things are kept apart everywhere: <em>about the own centre</em> (precision) and <em>about the target</em> (accuracy,
 * which contains the bias); and three ellipses that look alike: content, prediction and mean confidence. The range from the
 * first to the last shot, the smallest circle around all shots and the area of their hull are left out: they grow with the
 * number of shots and hang on one of them.
 *
 * <p>Data are plain doubles in SI unless a unit is given, and finite; a metric that was not measured is left out. Right of
 * the target is positive.
 */
@NullMarked
package dev.teeward.fitting.summary;

import org.jspecify.annotations.NullMarked;
