/**
 * The whole bag: how far each club carries, what lies between neighbours, which distances no club covers, and what a change
 * of loft, lie or length would do.
 *
 * <p>Start with {@link dev.teeward.fitting.gapping.Gapping}:
 *
 * <pre>{@code
 * Bag bag = Gapping.withDefaults().withWanted(yards(12.0), yards(4.0)).measure(session);
 * Gap widest = bag.gaps().get(0);
 * widest.difference().estimate().convertTo(LengthUnit.YARD);   // with its interval
 * widest.larger().orElseThrow();                               // probability that it is more than 16 yd
 * bag.uncovered();                                             // distances that no club covers
 * }</pre>
 *
 * <p>{@link dev.teeward.fitting.gapping.SetUpEffect} asks what a {@link dev.teeward.fitting.gapping.SetUpChange} would do to
 * start, curve and carry of the swings that were measured. A change of a club is made, and checked afterwards, by a qualified
 * club builder: bent too far, a club can break, and its bounce and balance change with it.
 *
 * <p>Means and their differences speak of the club; a <em>predictive</em> statement speaks of a single shot to come, and holds
 * the spread of the shots as well as the error of the mean. Every class says which of the two it gives.
 */
@NullMarked
package dev.teeward.fitting.gapping;

import org.jspecify.annotations.NullMarked;
