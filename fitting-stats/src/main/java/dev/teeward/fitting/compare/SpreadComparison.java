package dev.teeward.fitting.compare;

/**
 * Which club repeats a metric better.
 *
 * <pre>{@code
 * SpreadComparison s = comparison.spread();
 * s.ratio().estimate();     // s_first / s_second with its interval
 * s.brownForsythe().pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param ratio the ratio of the standard deviations, first over second: Pitman-Morgan of the pairs, or F
 * @param brownForsythe the test that holds its level on heavy-tailed shots, of all used shots
 */
public record SpreadComparison(TestResult ratio, TestResult brownForsythe) {}
