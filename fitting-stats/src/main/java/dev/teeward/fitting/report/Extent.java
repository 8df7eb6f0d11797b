package dev.teeward.fitting.report;

/** The smallest and largest of the numbers seen. Not thread-safe. */
final class Extent {
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    Extent add(double... values) {
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return this;
    }

    boolean isEmpty() {
        return low > high;
    }

    double low() {
        return low;
    }

    double high() {
        return high;
    }

    double width() {
        return isEmpty() ? 0.0 : high - low;
    }

    /** Widened about its middle to at least this width, then by a share on both sides. */
    Extent padded(double least, double share) {
        double middle = isEmpty() ? 0.0 : 0.5 * (low + high);
        double half = Math.max(0.5 * least, (0.5 + share) * width());
        return new Extent().add(middle - half, middle + half);
    }
}
