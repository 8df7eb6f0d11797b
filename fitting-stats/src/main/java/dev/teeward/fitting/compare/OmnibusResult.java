package dev.teeward.fitting.compare;

import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a test of several clubs at once found: whether they differ at all, not where. Such a test has no estimate; go on with
 * {@link PairwiseComparison}.
 *
 * <p>Where the data cannot answer, p is 1, the statistic absent and a warning says why.
 *
 * <pre>{@code
 * OmnibusResult r = FriedmanTest.withDefaults().test(alder, rowan, hazel);
 * r.pValue();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param method the method actually used, in words
 * @param statisticName the usual name of the statistic
 * @param statistic its value, or empty if the data do not define it
 * @param degreesOfFreedom none, one or two numbers
 * @param pValue in [0, 1]
 * @param sampleSizes the number of shots of each club
 * @param warnings what to know before using this
 */
public record OmnibusResult(
        String method,
        String statisticName,
        OptionalDouble statistic,
        List<Double> degreesOfFreedom,
        double pValue,
        List<Integer> sampleSizes,
        List<Warning> warnings) {
    /**
     * Copies the lists.
     *
     * @param method the method actually used, in words
     * @param statisticName the usual name of the statistic
     * @param statistic its value, or empty if the data do not define it
     * @param degreesOfFreedom none, one or two numbers
     * @param pValue in [0, 1]
     * @param sampleSizes the number of shots of each club
     * @param warnings what to know before using this
     */
    public OmnibusResult {
        degreesOfFreedom = List.copyOf(degreesOfFreedom);
        sampleSizes = List.copyOf(sampleSizes);
        warnings = List.copyOf(warnings);
    }

    static OmnibusResult unanswered(String method, String statisticName, List<Integer> sizes, Warning warning) {
        return new OmnibusResult(
                method, statisticName, OptionalDouble.empty(), List.of(), 1.0, sizes, List.of(warning));
    }
}
