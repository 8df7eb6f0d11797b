package dev.teeward.fitting.io;

import dev.teeward.fitting.Metric;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.Objects;

/**
 * Metrics, and amounts of them with their unit, as people write them outside of tables: {@code carry}, {@code 5 yd}.
 *
 * <pre>{@code
 * Metric carry = MetricText.metric("carry");
 * double margin = MetricText.amount(carry, "5yd"); // 4.572 m
 * MetricText.metric("cary");                       // fails: did you mean carry?
 * }</pre>
 *
 * <p>Thread-safe. All failures are {@link IllegalArgumentException}s with one line that says what is wrong.
 */
public final class MetricText {
    private MetricText() {}

    /**
     * The metric of a name.
     *
     * @param text the name as in files, without a unit, such as {@code ball_speed}
     * @return the metric
     * @throws IllegalArgumentException if there is none of exactly this name; the message gives the nearest, or else all
     */
    public static Metric metric(String text) {
        String name = Objects.requireNonNull(text, "text").strip();
        return Metric.find(name)
                .orElseThrow(() -> new IllegalArgumentException(Names.metric(name)
                        .map(near -> InputException.quote(name) + " is not a metric; did you mean " + near.key() + "?")
                        .orElseGet(() -> InputException.quote(name) + " is not a metric; there are " + all())));
    }

    /**
     * An amount of a metric.
     *
     * @param metric what it is an amount of
     * @param text a decimal with a point and a unit of the metric, with or without a space between; a pure number takes none
     * @return the amount [SI unit of the metric]
     * @throws IllegalArgumentException if it is not a number, or has no unit or one of another dimension
     */
    public static double amount(Metric metric, String text) {
        String written = Objects.requireNonNull(text, "text").strip();
        Decimal decimal = new Decimal(false);
        if (metric.siUnit() == RatioUnit.ONE) {
            double value = decimal.parse(written);
            if (Double.isNaN(value)) {
                throw new IllegalArgumentException(InputException.quote(written) + " " + decimal.problem());
            }
            return value;
        }
        UnitText.Amount<Unit> amount = UnitText.parse(written, metric.units(), decimal);
        return amount.unit().toSi(amount.value());
    }

    private static String all() {
        return String.join(
                ", ",
                java.util.stream.Stream.of(Metric.values()).map(Metric::key).toList());
    }
}
