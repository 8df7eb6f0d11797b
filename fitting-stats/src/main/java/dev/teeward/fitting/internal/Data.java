package dev.teeward.fitting.internal;

/** The checks that every column of numbers, level and rate passes. Thread-safe. */
public final class Data {
    /** Beyond this the determinant of three columns would overflow. */
    private static final double LARGEST = 1e50;

    private Data() {}

    /**
     * A column: long enough, every number finite and within +-1e50.
     *
     * @param name what it is called in the message
     * @param values the numbers
     * @param atLeast how many it must hold
     * @throws IllegalArgumentException if it does not pass
     */
    public static void check(String name, double[] values, int atLeast) {
        if (values.length < atLeast) {
            throw new IllegalArgumentException(
                    name + " must hold at least " + atLeast + " numbers, but held " + values.length);
        }
        for (int i = 0; i < values.length; i++) {
            checkNumber(name, i, values[i]);
        }
    }

    /**
     * One number of a column: finite and within +-1e50.
     *
     * @param name what the column is called in the message
     * @param index its place in the column, from 0
     * @param value the number
     * @throws IllegalArgumentException if it does not pass
     */
    public static void checkNumber(String name, int index, double value) {
        if (!(Math.abs(value) <= LARGEST)) {
            throw new IllegalArgumentException(name + " must be finite and within +-1e50, but number " + (index + 1)
                    + " was " + value + "; leave out what was not measured");
        }
    }

    /**
     * A column beside another.
     *
     * @param name what it is called in the message
     * @param values the numbers
     * @param length how many it must hold
     * @throws IllegalArgumentException if it is shorter or longer
     */
    public static void checkSameLength(String name, double[] values, int length) {
        if (values.length != length) {
            throw new IllegalArgumentException(name + " must hold a number for each of the " + length
                    + " shots, but held " + values.length + "; leave out shots that lack one");
        }
    }

    /**
     * A level.
     *
     * @param level the level
     * @return the level
     * @throws IllegalArgumentException if it is not in (0, 1)
     */
    public static double checkLevel(double level) {
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException(
                    "level must be in (0, 1), but was " + level + "; for 95 percent use 0.95");
        }
        return level;
    }

    /**
     * A false-alarm rate.
     *
     * @param falseAlarmRate the rate
     * @throws IllegalArgumentException if it is not in (0, 1)
     */
    public static void checkRate(double falseAlarmRate) {
        if (!(falseAlarmRate > 0.0 && falseAlarmRate < 1.0)) {
            throw new IllegalArgumentException(
                    "false-alarm rate must be in (0, 1), but was " + falseAlarmRate + "; for 5 percent use 0.05");
        }
    }

    /**
     * Whether a column does not vary.
     *
     * @param values the numbers
     * @return true if all are the same, or none is there
     */
    public static boolean allEqual(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }
}
