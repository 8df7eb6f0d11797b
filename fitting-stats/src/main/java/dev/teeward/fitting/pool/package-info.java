/**
 * A club's effect over many golfers, for shops and researchers: one session each, the golfers drawn at random.
 *
 * <p>Start with {@link dev.teeward.fitting.pool.ClubOverGolfers}:
 *
 * <pre>{@code
 * ClubOverGolfers.Result r = ClubOverGolfers.of("Alder", "Rowan", Metric.CARRY).pool(sessionsByGolfer);
 * Estimate mean = r.pooled().mean().convertTo(LengthUnit.YARD);         // over golfers
 * Estimate next = r.pooled().nextGolfer().convertTo(LengthUnit.YARD);   // for the next one in the shop
 * int more = r.golfersNeeded(LengthUnit.YARD.toSi(2.0)).more();         // until the mean is known to +-2 yd
 * }</pre>
 *
 * <p>{@link dev.teeward.fitting.pool.RandomEffects} does the same for differences and standard errors from elsewhere. The mean
 * answers for the trade, the interval of the next golfer for a fitter: a club may gain 3 yd in the mean and still cost one
 * golfer in four.
 */
@NullMarked
package dev.teeward.fitting.pool;

import org.jspecify.annotations.NullMarked;
