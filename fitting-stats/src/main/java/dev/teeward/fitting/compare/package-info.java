/**
 * Two clubs compared: whole sessions, and the tests, intervals, equivalence, effect sizes and multiplicity behind them.
 *
 * <p>Start with {@link dev.teeward.fitting.compare.HeadToHead}, which completes and screens a session, pairs its shots and
 * compares every metric that both clubs have. Which metric decides and what difference matters are declared beforehand:
 *
 * <pre>{@code
 * HeadToHeadResult result = HeadToHead.withDefaults()
 *         .withClubs("Alder", "Rowan")
 *         .withPrimary(Metric.CARRY)
 *         .withMargin(Metric.CARRY, LengthUnit.YARD.toSi(5.0))
 *         .compare(session);
 * MetricComparison carry = result.primary();
 * Estimate yards = carry.difference().estimate().convertTo(LengthUnit.YARD);
 * Verdict verdict = carry.verdict().verdict();
 * }</pre>
 *
 * <p>The procedures take plain arrays. Start with {@link dev.teeward.fitting.compare.PairedTTest} when the shots alternate and with
 * {@link dev.teeward.fitting.compare.WelchTTest} otherwise; put {@link dev.teeward.fitting.compare.SignFlipTest} or
 * {@link dev.teeward.fitting.compare.PermutationTest} beside it, and judge by
 * {@link dev.teeward.fitting.compare.ThreeWayVerdict} against a margin set before the shots:
 *
 * <pre>{@code
 * double[] alder = {171.2, 168.9, 173.4, 170.1, 169.5, 172.8, 167.7, 171.9, 170.6, 172.2};
 * double[] rowan = {174.0, 170.3, 175.9, 173.8, 170.2, 176.1, 171.0, 173.5, 174.4, 173.9};
 * TestResult difference = PairedTTest.withDefaults().withUnit(LengthUnit.YARD).test(alder, rowan);
 * TostTest.Result equivalence = TostTest.withinMargin(5.0).withUnit(LengthUnit.YARD).testPairs(alder, rowan);
 * ThreeWayVerdict verdict = ThreeWayVerdict.of(difference, equivalence);
 * }</pre>
 *
 * <p>Beside them, each for a question of its own:
 *
 * <ul>
 *   <li>several metrics of the same pairs: {@link dev.teeward.fitting.compare.HotellingTest},
 *       {@link dev.teeward.fitting.compare.MaxTTest}, {@link dev.teeward.fitting.compare.PValueAdjustment};
 *   <li>several clubs: {@link dev.teeward.fitting.compare.PairwiseComparison},
 *       {@link dev.teeward.fitting.compare.FriedmanTest}, {@link dev.teeward.fitting.compare.KruskalWallisTest},
 *       {@link dev.teeward.fitting.compare.ProbabilityOfBest}, and for rounds
 *       {@link dev.teeward.fitting.compare.MaxTTest#testRounds} and
 *       {@link dev.teeward.fitting.compare.ProbabilityOfBest#testRounds};
 *   <li>spread: {@link dev.teeward.fitting.compare.SpreadRatio}, {@link dev.teeward.fitting.compare.BrownForsytheTest},
 *       {@link dev.teeward.fitting.compare.PermutationDispersionTest},
 *       {@link dev.teeward.fitting.compare.FlignerKilleenTest};
 *   <li>mishits among the shots: {@link dev.teeward.fitting.compare.YuenTest},
 *       {@link dev.teeward.fitting.compare.HodgesLehmannEstimator};
 *   <li>any statistic at all: {@link dev.teeward.fitting.compare.Bootstrap};
 *   <li>probabilities instead of p: {@link dev.teeward.fitting.compare.BayesianComparison},
 *       {@link dev.teeward.fitting.compare.NormalInverseGamma};
 *   <li>several days, several airs: {@link dev.teeward.fitting.compare.AirShare};
 *   <li>straight or workable: {@link dev.teeward.fitting.compare.Workability};
 *   <li>order and looks: {@link dev.teeward.fitting.compare.Drift}, {@link dev.teeward.fitting.compare.MannKendallTest},
 *       {@link dev.teeward.fitting.compare.RunsTest}, {@link dev.teeward.fitting.compare.SerialDependenceTest},
 *       {@link dev.teeward.fitting.compare.SequentialTTest}.
 * </ul>
 *
 * <p>Differences are always first minus second and ratios first over second. Numbers are taken as they come, all in one
 * unit, which {@code withUnit} names; nothing is converted. Estimate and interval come first, p second. A test of two clubs
 * gives a {@link dev.teeward.fitting.compare.TestResult}; every result says what method was really used: an exact method is never
 * exchanged for an approximation without saying so, and no result is ever not-a-number. An empty sample and a number that
 * is not finite are refused; one shot, or shots without spread, are answered with an unbounded interval, p = 1 and a
 * warning. Nothing but the Theil-Sen slope is quadratic in the number of
 * shots.
 */
@NullMarked
package dev.teeward.fitting.compare;

import org.jspecify.annotations.NullMarked;
