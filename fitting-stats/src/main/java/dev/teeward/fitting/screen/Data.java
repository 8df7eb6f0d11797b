package dev.teeward.fitting.screen;

/** The checks that every screened column passes. */
final class Data {
    /** Beyond this the determinant of three metrics would overflow. */
    private static final double LARGEST = 1e50;

    private Data() {}

    static void check(double[] values, int atLeast) {
        if (values.length < atLeast) {
            throw new IllegalArgumentException(
                    "values must hold at least " + atLeast + " numbers, but held " + values.length);
        }
        for (int i = 0; i < values.length; i++) {
            if (!(Math.abs(values[i]) <= LARGEST)) {
                throw new IllegalArgumentException("values must be finite and within +-1e50, but number " + (i + 1)
                        + " was " + values[i] + "; leave out what was not measured");
            }
        }
    }

    static void checkRate(double falseAlarmRate) {
        if (!(falseAlarmRate > 0.0 && falseAlarmRate < 1.0)) {
            throw new IllegalArgumentException(
                    "false-alarm rate must be in (0, 1), but was " + falseAlarmRate + "; for 5 percent use 0.05");
        }
    }

    static boolean allEqual(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }
}
