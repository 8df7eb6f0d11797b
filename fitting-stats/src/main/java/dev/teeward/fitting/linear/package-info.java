/**
 * Linear models of shots: the difference between clubs beside blocks, shot order and the swing.
 *
 * <p>Start with {@link dev.teeward.fitting.linear.Design}, which names the columns, and
 * {@link dev.teeward.fitting.linear.LinearModel}, which fits them:
 *
 * <pre>{@code
 * String[] club = {"Alder", "Rowan", "Rowan", "Alder", "Alder", "Rowan", "Rowan", "Alder"};
 * double[] speed = {86.1, 85.4, 86.0, 87.2, 85.9, 86.3, 85.1, 86.8};
 * double[] carry = {168.2, 169.9, 171.0, 170.4, 167.9, 171.9, 169.0, 169.7};
 * Design design = Design.of(8).withFactor("club", "Alder", club).withCentered("speed", speed);
 * LinearFit fit = LinearModel.withDefaults().withErrors(ErrorModel.HC3).fit(design, carry);
 * Estimate direct = fit.coefficient("club=Rowan").estimate(); // at equal club speed
 * MeanDecomposition.Result parts =
 *         MeanDecomposition.withDefaults().decompose("Alder", club, Map.of("speed", speed), carry);
 * }</pre>
 *
 * <p>The unadjusted difference answers what the golfer gets when handed the club; the adjusted one, what the club does to
 * the same swing. Print both: if the club changes the swing, adjusting takes a real benefit away. With twenty shots keep two
 * or three covariates, chosen beforehand. For several golfers, or blocks that are not complete, there is
 * {@link dev.teeward.fitting.linear.RandomInterceptModel}.
 *
 * <p>Numbers are taken as they come, in any unit; nothing is converted. A design whose columns depend on each other is
 * refused. Data that leave no degrees of freedom for an error are answered with unbounded intervals, p = 1 and a warning.
 */
@NullMarked
package dev.teeward.fitting.linear;

import org.jspecify.annotations.NullMarked;
