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
 * which contains the bias); and three ellipses that look alike: content, prediction and mean confidence. The largest
 * distance between shots, the smallest circle around them and the area of their hull stay apart, in
 * {@link dev.teeward.fitting.summary.PatternExtent}: they grow with the number of shots and hang on one of them.
 *
 * <p>Will the next ball hold the green? {@link dev.teeward.fitting.summary.HoldProbability} answers for a
 * {@link dev.teeward.fitting.summary.TargetRegion} of any outline, {@link dev.teeward.fitting.summary.StayProbability} whether it
 * also comes to rest there, from measured rests or from flights over the ground model. Centres and spreads that mishits hardly move:
 * {@link dev.teeward.fitting.summary.RobustPattern}, {@link dev.teeward.fitting.summary.GeometricMedian}, {@link dev.teeward.fitting.summary.RobustSpread}. Regions that hold a
 * share of all future shots with confidence: {@link dev.teeward.fitting.summary.Tolerance}.
 *
 * <p>Data are plain doubles in SI unless a unit is given, and finite; a metric that was not measured is left out. Right of
 * the target is positive.
 */
@NullMarked
package dev.teeward.fitting.summary;

import org.jspecify.annotations.NullMarked;
