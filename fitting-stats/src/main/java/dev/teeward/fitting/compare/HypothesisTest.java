package dev.teeward.fitting.compare;

import dev.teeward.quantity.Unit;

/**
 * What the tests of this package have in common: level, alternative, null value and unit.
 *
 * <p>Each {@code with} method returns a changed copy. Numbers given to a test are taken to be in the unit, which is only
 * carried through to the estimate.
 *
 * <pre>{@code
 * TestResult r = WelchTTest.withDefaults().withLevel(0.90).withUnit(LengthUnit.YARD).test(x, y);
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param <T> the test itself
 */
public abstract class HypothesisTest<T extends HypothesisTest<T>> {
    final Options options;

    HypothesisTest(Options options) {
        this.options = options;
    }

    abstract T copy(Options changed);

    /**
     * With another confidence level.
     *
     * @param level the level, in (0, 1); 0.95 unless changed
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public final T withLevel(double level) {
        return copy(options.withLevel(level));
    }

    /**
     * With another alternative.
     *
     * @param alternative the alternative; two-sided unless changed
     * @return a changed copy
     */
    public final T withAlternative(Alternative alternative) {
        return copy(options.withAlternative(alternative));
    }

    /**
     * With another null value.
     *
     * @param nullValue the value tested against, finite, in the unit of the estimate
     * @return a changed copy
     * @throws IllegalArgumentException if the value is not finite
     */
    public final T withNullValue(double nullValue) {
        return copy(options.withNullValue(nullValue));
    }

    /**
     * With the unit of the numbers.
     *
     * @param unit the unit that the numbers are in; a pure number unless changed
     * @return a changed copy
     */
    public final T withUnit(Unit unit) {
        return copy(options.withUnit(unit));
    }
}
