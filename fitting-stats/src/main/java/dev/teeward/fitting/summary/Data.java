package dev.teeward.fitting.summary;

/** The checks that every summarized column and level passes. */
final class Data {
    /** Beyond this the determinant of a covariance would overflow. */
    private static final double LARGEST = 1e50;

    private Data() {}

    static void check(String name, double[] values, int atLeast) {
        if (values.length < atLeast) {
            throw new IllegalArgumentException(
                    name + " must hold at least " + atLeast + " numbers, but held " + values.length);
        }
        for (int i = 0; i < values.length; i++) {
            checkNumber(name, i, values[i]);
        }
    }

    static void checkNumber(String name, int index, double value) {
        if (!(Math.abs(value) <= LARGEST)) {
            throw new IllegalArgumentException(name + " must be finite and within +-1e50, but number " + (index + 1)
                    + " was " + value + "; leave out what was not measured");
        }
    }

    static void checkSameLength(String name, double[] values, int length) {
        if (values.length != length) {
            throw new IllegalArgumentException(name + " must hold a number for each of the " + length
                    + " shots, but held " + values.length + "; leave out shots that lack one");
        }
    }

    static double checkLevel(double level) {
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in (0, 1), but was " + level + "; for 95 percent use 0.95");
        }
        return level;
    }
}
