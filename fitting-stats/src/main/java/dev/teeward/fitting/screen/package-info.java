/**
 * Flags shots that stand out, each with its reason and with the rate of false alarms. Nothing here removes a shot.
 *
 * <p>Start with {@link dev.teeward.fitting.screen.SessionScreen} for a whole session; the shots it flags stay in it:
 *
 * <pre>{@code
 * ScreenReport report = SessionScreen.withDefaults().screen(session);
 * for (ShotFlag flag : report.flags()) {
 *     System.out.println(flag);   // "shot 13 with Alder, mishit: strike, toe 45.0 mm and ..."
 * }
 * Session without = report.flaggedExcluded();
 * }</pre>
 *
 * <p>Its parts serve for plain numbers: {@link dev.teeward.fitting.screen.GrubbsTest} for one metric and
 * {@link dev.teeward.fitting.screen.MinimumCovarianceDeterminant} for two:
 *
 * <pre>{@code
 * GrubbsTest.Result one = GrubbsTest.withDefaults().screen(carry);
 * MinimumCovarianceDeterminant.Result two = MinimumCovarianceDeterminant.withDefaults().screen(carry, side);
 * for (Flag flag : two.flags()) {
 *     System.out.println(flag);
 * }
 * }</pre>
 *
 * <p>Beside them, for two metrics that are not robust, {@link dev.teeward.fitting.screen.MahalanobisTest}; for several
 * suspects in one metric, {@link dev.teeward.fitting.screen.GeneralizedEsdTest}. Shots that warm up are declared, not found:
 * {@link dev.teeward.fitting.screen.WarmUp} is the one thing here that excludes shots, by their place alone.
 *
 * <p>Rates are for one screened set of good, normally spread shots:
 * {@link dev.teeward.fitting.screen.Flag#falseAlarmRateOver} says what several sets add up to. Rules such as "drop what is
 * more than two standard deviations off" are left out on purpose: dropping shots so from clean data raises the false
 * alarms of the comparison after it from 5 to 8.5 %, and with 1.5 standard deviations to 15 % (own simulation, 10 shots a
 * club). Screen on what the golfer did (strike, face, path) rather than on the result that is to be compared.
 *
 * <p>Values of the single tests are plain doubles in one unit of the caller's choice, and finite; a metric that was not measured is left out.
 */
@NullMarked
package dev.teeward.fitting.screen;

import org.jspecify.annotations.NullMarked;
