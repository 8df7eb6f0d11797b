package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.explain.Explanation;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Every number of a head-to-head result as a tree of plain values, in the order of a report. Differences are first minus
 * second; right of the target is positive. Every name is always there; what is unknown, absent or infinite is null. Numbers
 * are in the unit beside them, those of metrics in the units asked for. Levels and percentages are rounded to 12 decimals; a
 * difference of two clubs, or an end of its interval, below 1e-12 of the largest reading is 0, because that is what is left
 * when equal numbers are added up in another order.
 *
 * <ul>
 *   <li>An <i>estimate</i> is {@code {value, lower, upper, level, unit}}, the level as a fraction; a <i>test</i> is an
 *       estimate with {@code {df: [], n: [], p, null_value, alternative, statistic_name, statistic, method, exclusions:
 *       [{count, reason}], warnings}}; <i>warnings</i> are {@code [{code, message}]}; a <i>quantity</i> is {@code {value,
 *       unit}}; a <i>summary</i> is {@code {n, mean, sd, median, min, max, method, warnings}} of estimates.
 *   <li>{@code schema, units, level, level_percent, equivalence_level_percent, order, primary, primary_declared,
 *       secondary_count, warnings}
 *   <li>{@code session}: {@code hand, place, date, ball, remarks, shots}, quantities {@code elevation, aim_offset, wind_speed,
 *       wind_from}, {@code air: {description, density, temperature,
 *       station_pressure, humidity_percent, density_altitude, warnings}}, and {@code parts: [{date, shots, pairs, elevation,
 *       wind_speed, wind_from, air}]} of sessions that were combined
 *   <li>{@code clubs/first} and {@code second}: {@code name, build: {loft, lie, length, head_mass, shaft}, used, excluded,
 *       exclusions, ratings: {feel, sound, look}} of summaries
 *   <li>{@code build_differences}: {@code [{property, first, second}]}
 *   <li>{@code pairing}: {@code source, pairs, enough, unpaired, without_partner, broken_count, broken: [{id, kind, reason}]}
 *   <li>{@code metrics}, by the key of the metric: {@code label, unit, group, sense, primary, in_family (false
 *       if the flight model worked out every reading: adjusted apart, and no finding), paired, pairs, origins: {first,
 *       second: {measured, derived, computed}}}, summaries {@code first, second}, tests {@code difference, exact, shift,
 *       effect, superiority, drift}, {@code least_p_percent, difference_sd, spread: {ratio, test}, equivalence} (an estimate with {@code
 *       margin, declared, equivalent, p, adjusted_p, df, n, method, warnings}), {@code adjusted_p, verdict, trivially_different, warnings, compared: {paired, first_shots, second_shots, first_mean,
 *       second_mean}} (the means of what the difference is of)
 *   <li>{@code patterns}: {@code first} and {@code second} of {@code landing: {n, center: {carry, side}, bias: {carry, side},
 *       ellipse: {kind, level, level_percent, center_carry, center_side, semi_major, semi_minor, unit, angle, area},
 *       r50_center, r90_center, r50_target, r90_target, method, warnings}} and {@code shapes: {n, table: [{start, curve,
 *       words, count}], misses_left, misses_right, miss_angle, miss_limit, miss, crossing_share (in percent), method, warnings}}; tests {@code ratio,
 *       mean_distance}; {@code tighter}, the name of a club
 *   <li>{@code strike}: {@code first} and {@code second} of {@code n, center_toe, center_up, sd_toe, sd_up, rms_offset, cost:
 *       {at_ten_millimeters, mean, statistic, n, df, p, determination, method}, method, warnings}
 *   <li>{@code associations}: {@code [{outcome, candidate, slope, outcome_difference, candidate_difference, part,
 *       adjusted_p, clear, shots, warnings}]}, the part an estimate with {@code df: [], n: [], method}
 *   <li>{@code explanation}, null unless one was given: {@code balance: {golfer, meeting, inputs: [{metric, side, difference,
 *       equivalence, adjusted_p, verdict, trivially_different, within}], missing, warnings}}, the two sides' verdicts null if
 *       nothing of them was compared; {@code effects: [{outcome, paired, total, direct, covariates: [{metric, difference, part,
 *       variance_inflation}], n, method, exclusions, warnings}]}, direct and part estimates with {@code df, p}; {@code flights:
 *       {inputs, of_delivery, paired, n, outcomes: [{outcome, modelled, measured, rest, shares: [{input, difference, share,
 *       lie}]}], method, exclusions, warnings}} of estimates; {@code agreements: [{outcome, accord, margin, inputs: [{input,
 *       by_flights, by_line, apart, adjusted_p, accord}], df, method, warnings}]}
 *   <li>{@code plan}: {@code power_percent, counts_equivalence, metrics} by key (the primary and the undecided ones): {@code {paired, now, needed,
 *       more}}, the last two {@code {low, central, high}} in pairs, or shots with each club; null beyond what anybody hits; null for a metric that would be settled if it were asked alone
 *   <li>{@code screening}: {@code false_alarm_bound_percent, flagged, flags: [{shot, index, club, kind, metrics, reason, method,
 *       statistic, cut_off, test_false_alarm_percent, family_false_alarm_percent}], warnings}, of used shots of the two clubs;
 *       the first rate is that of the one test that flags, the second that of all tests of its kind together
 *   <li>{@code duplicates_count, duplicates}: {@code [{shot, like, club}]}, used shots with all the readings of an earlier one
 *   <li>{@code without_flagged}: {@code used: {first, second}, pairs, metrics, changed: [{metric, with, without}], patterns,
 *       warnings}
 * </ul>
 *
 * <pre>{@code
 * ReportData data = ReportData.of(result, UnitSystem.US);
 * data.number("/metrics/carry/difference/value");   // yards
 * data.root();                                      // for any writer of JSON
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ReportData {
    /** The name and version of the structure, which stands at {@code /schema}. */
    public static final String SCHEMA = "teeward-head-to-head/2";

    private final Map<String, @Nullable Object> root;

    private ReportData(Map<String, @Nullable Object> root) {
        this.root = root;
    }

    /**
     * The numbers of a result, without an explanation ({@link HeadToHeadReport#withExplanation} has one).
     *
     * @param result the result
     * @param units the units of all numbers
     * @return the numbers
     */
    public static ReportData of(HeadToHeadResult result, UnitSystem units) {
        return of(result, units, Optional.empty());
    }

    static ReportData of(HeadToHeadResult result, UnitSystem units, Optional<Explanation> explanation) {
        return new ReportData(new ResultTree(
                        Objects.requireNonNull(result, "result"),
                        DrawnShots.screening(result),
                        SessionAir.of(result.session()),
                        Objects.requireNonNull(units, "units"),
                        explanation)
                .build());
    }

    /**
     * The whole tree: values are {@code Map<String, Object>}, {@code List<Object>}, {@code Double}, {@code Integer},
     * {@code String}, {@code Boolean} or null. An infinite end of an interval is null.
     *
     * @return the tree, unmodifiable
     */
    public Map<String, @Nullable Object> root() {
        return root;
    }

    /**
     * What stands at a place.
     *
     * @param pointer a JSON pointer (RFC 6901), such as {@code /metrics/carry/difference/value}; empty for the root
     * @return the value, or null if there is nothing or null
     * @throws IllegalArgumentException if the pointer is neither empty nor begins with a slash
     */
    public @Nullable Object value(String pointer) {
        Objects.requireNonNull(pointer, "pointer");
        if (pointer.isEmpty()) {
            return root;
        }
        if (pointer.charAt(0) != '/') {
            throw new IllegalArgumentException(
                    "pointer must be empty or begin with /, but was \"" + pointer + "\"; see RFC 6901");
        }
        Object node = root;
        for (String token : pointer.substring(1).split("/", -1)) {
            String name = token.replace("~1", "/").replace("~0", "~");
            if (node instanceof Map<?, ?> map) {
                node = map.get(name);
            } else if (node instanceof List<?> list && name.matches("0|[1-9][0-9]{0,8}")) {
                int index = Integer.parseInt(name);
                node = index < list.size() ? list.get(index) : null;
            } else {
                return null;
            }
        }
        return node;
    }

    /**
     * The number at a place.
     *
     * @param pointer a JSON pointer (RFC 6901), such as {@code /metrics/carry/difference/value}
     * @return the number in the unit beside it, or empty if no number stands there
     * @throws IllegalArgumentException if the pointer is neither empty nor begins with a slash
     */
    public OptionalDouble number(String pointer) {
        return value(pointer) instanceof Number number
                ? OptionalDouble.of(number.doubleValue())
                : OptionalDouble.empty();
    }
}
