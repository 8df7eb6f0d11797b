/**
 * A head-to-head result in words, tables and pictures that a golfer can take home. Embedders use the parts: sentences,
 * tables and SVG fragments, or the whole page.
 *
 * <p>Sentences come from the numbers: no direction is named unless its interval excludes zero, and no cause is claimed
 * beyond "goes with". Every number in a sentence is a number of {@link dev.teeward.fitting.report.ReportData}, rounded, or
 * stands in text quoted from the session.
 *
 * <pre>{@code
 * HeadToHeadResult result = HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session);
 * HeadToHeadReport report = HeadToHeadReport.of(result).withUnits(UnitSystem.METRIC);
 * String page = report.text();
 * String answer = report.sections().get(0).sentences().get(1).text();
 * double meters = report.data().number("/metrics/carry/difference/value").orElseThrow();
 * }</pre>
 *
 * <p>So are a bag ({@link dev.teeward.fitting.report.GappingReport}), a choice of a club ({@link
 * dev.teeward.fitting.report.ChoiceReport}), a pool of golfers ({@link dev.teeward.fitting.report.PoolReport}) and a plan ({@link
 * dev.teeward.fitting.report.PlanPicture}).
 */
@NullMarked
package dev.teeward.fitting.report;

import org.jspecify.annotations.NullMarked;
