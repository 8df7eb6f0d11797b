/**
 * A head-to-head result in words, tables and pictures that a golfer can take home. Embedders use the parts: sentences,
 * tables and SVG fragments, or the whole page.
 *
 * <p>Sentences come from the numbers: no direction is named unless its interval excludes zero, and no cause is claimed
 * beyond "goes with". Every number in a sentence is a number of {@code ReportData}, rounded.
 */
@NullMarked
package dev.teeward.fitting.report;

import org.jspecify.annotations.NullMarked;
