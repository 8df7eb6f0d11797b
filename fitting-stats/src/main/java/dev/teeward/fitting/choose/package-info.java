/**
 * One club of several, by a goal that is stated beforehand.
 *
 * <p>Start with {@link dev.teeward.fitting.choose.ClubChoice}:
 *
 * <pre>{@code
 * ClubChoice.Result r = ClubChoice.withGoal(Goal.closeness(Length.ofYards(165.0)))
 *         .withCurrentClub("Alder")
 *         .choose(session);
 * r.leader().probability();   // that it is the best of them
 * r.leader().shrunk();        // what to expect of it, less the luck of having come out first
 * }</pre>
 *
 * <p>{@link dev.teeward.fitting.choose.Goal} says what is wanted: distance, total, closeness, tightness, holding a green, few
 * strokes, or a mixture with stated scales. {@link dev.teeward.fitting.choose.StrokesTable} is a baseline of strokes that the
 * user supplies, and {@link dev.teeward.fitting.choose.ApproachStrokes} applies it to approach shots.
 *
 * <p>The more clubs are tried, the more the best of them owes to luck. No procedure here picks a goal after the shots.
 */
@NullMarked
package dev.teeward.fitting.choose;

import org.jspecify.annotations.NullMarked;
