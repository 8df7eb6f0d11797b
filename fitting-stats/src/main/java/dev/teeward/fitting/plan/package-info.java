/**
 * How many shots, in which order, and when to look: sample size by power and by precision, for pairs and for two samples.
 *
 * <p>Start with {@link dev.teeward.fitting.plan.PairsNeeded}:
 *
 * <pre>{@code
 * PairsNeeded plan = PairsNeeded.withDefaults();            // 80 % power, 5 % two-sided, pairs
 * int pairs = plan.forDifference(5.0, 6.0).shots();         // 14 pairs: 5 yd when the differences spread by 6 yd
 * int precise = plan.forHalfWidth(4.0, 6.0).shots();        // 12 pairs: a 95 % interval of +-4 yd is to be expected
 * int assured = plan.forHalfWidth(4.0, 6.0, 0.8).shots();   // 14 pairs: it is within +-4 yd in 80 % of sessions
 * }</pre>
 *
 * <p>Twelve pairs keep +-4 yd in 64 % of sessions, since the spread of a sample scatters. Clubs that scatter differently and are
 * not paired have {@link dev.teeward.fitting.plan.WelchShotsNeeded}.
 *
 * <p>{@link dev.teeward.fitting.plan.FittingPlan} does it within a cap on full swings and without taking the spread for known,
 * and {@link dev.teeward.fitting.plan.PairByPair} tells after every pair whether it is settled, worth going on, or not:
 *
 * <pre>{@code
 * FittingPlan.Result r = FittingPlan.withDefaults().forMargin(5.0, SpreadGuess.known(6.0));
 * int most = r.mostPairs();                                 // 24 pairs in 60 swings
 * PairByPair session = PairByPair.withinMargin(5.0).withMostPairs(most).append(152.0, 149.5);
 * Standing.Advice next = session.standing().advice();       // KEEP_GOING
 * }</pre>
 *
 * <p>{@link dev.teeward.fitting.plan.ShootingOrder} gives orders that drift cannot pass for a difference in, and
 * {@link dev.teeward.fitting.plan.GroupSequentialPlan} two or three looks on the way with one false-alarm rate.
 *
 * <p>Plans are made before the shots, from a difference that would matter. Power computed from an observed difference says
 * nothing that its p does not say, and is not offered.
 */
@NullMarked
package dev.teeward.fitting.plan;

import org.jspecify.annotations.NullMarked;
