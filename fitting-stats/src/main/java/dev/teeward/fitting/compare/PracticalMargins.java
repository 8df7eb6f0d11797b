package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * For each metric the largest difference of two clubs that does not matter in practice.
 *
 * <p>The defaults (5 yd of carry, 1 deg of face to path, and so on) are common practice, no source: set your own before the
 * shots are hit. {@link #declared} tells which were set.
 *
 * <pre>{@code
 * PracticalMargins margins = PracticalMargins.defaults().with(Metric.CARRY, LengthUnit.YARD.toSi(3.0));
 * margins.of(Metric.CARRY);            // 2.7432 m
 * margins.declared(Metric.BALL_SPEED); // false
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class PracticalMargins {
    private static final PracticalMargins DEFAULTS = new PracticalMargins(common(), EnumSet.noneOf(Metric.class));

    private final Map<Metric, Double> si;
    private final Set<Metric> declared;

    private PracticalMargins(Map<Metric, Double> si, Set<Metric> declared) {
        this.si = si;
        this.declared = declared;
    }

    /**
     * A default margin for every metric, none of them declared.
     *
     * @return the defaults
     */
    public static PracticalMargins defaults() {
        return DEFAULTS;
    }

    /**
     * No margin for any metric, so that nothing can be found practically the same.
     *
     * @return no margins
     */
    public static PracticalMargins none() {
        return new PracticalMargins(new EnumMap<>(Metric.class), EnumSet.noneOf(Metric.class));
    }

    /**
     * With the margin of a metric declared.
     *
     * @param metric which
     * @param margin the largest difference that does not matter, above 0 and at most a quarter of the range in which the
     *     metric is believed [SI unit of the metric]
     * @return a changed copy
     * @throws ComparisonException if the margin is not such a number
     */
    public PracticalMargins with(Metric metric, double margin) {
        Objects.requireNonNull(metric, "metric");
        double most = 0.25 * (metric.upper() - metric.lower());
        if (!(margin > 0.0 && margin <= most)) {
            Unit unit = metric.unit(UnitSystem.US);
            throw new ComparisonException(
                    ComparisonException.Reason.BAD_MARGIN,
                    "margin of " + metric.label() + " must be in (0, " + plain(most) + "] "
                            + metric.siUnit().symbol() + " (0-" + plain(unit.fromSi(most)) + " " + unit.symbol()
                            + "), but was " + plain(margin) + " "
                            + metric.siUnit().symbol()
                            + "; it is the largest difference that does not matter");
        }
        Map<Metric, Double> changed = new EnumMap<>(Metric.class);
        changed.putAll(si);
        changed.put(metric, margin);
        Set<Metric> named = EnumSet.noneOf(Metric.class);
        named.addAll(declared);
        named.add(metric);
        return new PracticalMargins(changed, named);
    }

    /**
     * The margin of a metric.
     *
     * @param metric which
     * @return the margin [SI unit of the metric], or empty
     */
    public OptionalDouble of(Metric metric) {
        Double margin = si.get(metric);
        return margin == null ? OptionalDouble.empty() : OptionalDouble.of(margin);
    }

    /**
     * Whether the margin of a metric was set, rather than taken from the defaults.
     *
     * @param metric which
     * @return true if it was set
     */
    public boolean declared(Metric metric) {
        return declared.contains(metric);
    }

    /**
     * All margins.
     *
     * @return margins by metric [SI unit of the metric], unmodifiable
     */
    public Map<Metric, Double> toMap() {
        return Collections.unmodifiableMap(si);
    }

    private static String plain(double value) {
        return Double.isFinite(value)
                ? new java.math.BigDecimal(value)
                        .round(new java.math.MathContext(4))
                        .stripTrailingZeros()
                        .toPlainString()
                : String.valueOf(value);
    }

    private static Map<Metric, Double> common() {
        Map<Metric, Double> m = new EnumMap<>(Metric.class);
        put(m, SpeedUnit.MILE_PER_HOUR, 1.0, Metric.CLUB_SPEED);
        put(m, SpeedUnit.MILE_PER_HOUR, 1.5, Metric.BALL_SPEED);
        put(m, SpeedUnit.MILE_PER_HOUR, 2.0, Metric.LANDING_SPEED);
        put(
                m,
                AngleUnit.DEGREE,
                1.0,
                Metric.ATTACK_ANGLE,
                Metric.CLUB_PATH,
                Metric.FACE_ANGLE,
                Metric.DYNAMIC_LOFT,
                Metric.DYNAMIC_LIE,
                Metric.FACE_TO_PATH,
                Metric.LAUNCH_ANGLE,
                Metric.START_DIRECTION);
        put(m, AngleUnit.DEGREE, 1.5, Metric.SPIN_LOFT);
        put(m, AngleUnit.DEGREE, 2.0, Metric.AXIS_TILT, Metric.DESCENT_ANGLE);
        put(m, LengthUnit.MILLIMETER, 3.0, Metric.STRIKE_TOE, Metric.STRIKE_UP);
        put(m, SpinRateUnit.REVOLUTION_PER_MINUTE, 300.0, Metric.SPIN_RATE);
        put(m, LengthUnit.YARD, 5.0, Metric.CURVE, Metric.CARRY, Metric.SIDE, Metric.TOTAL);
        put(m, LengthUnit.FOOT, 10.0, Metric.APEX);
        m.put(Metric.FLIGHT_TIME, 0.2);
        m.put(Metric.SMASH_FACTOR, 0.02);
        return m;
    }

    private static void put(Map<Metric, Double> margins, Unit unit, double value, Metric... metrics) {
        for (Metric metric : metrics) {
            margins.put(metric, unit.toSi(value));
        }
    }
}
