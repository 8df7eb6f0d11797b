package dev.teeward.flight.study;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * How models agree with observed flights, as rows: a model, a part of the flights, a number of the flight.
 *
 * <pre>{@code
 * result.agreement("typical", "all", FlightOutput.CARRY).orElseThrow().rms();   // metres
 * result.markdown();                                                           // a table for a paper or a README
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ValidationResult {
    /** The part that holds all flights. */
    public static final String ALL = "all";

    /**
     * One row. Immutable and thread-safe.
     *
     * @param model the name of the model
     * @param part {@code all}, the name of a group, or a band of carry as in {@code carry 150-200 yd}
     * @param output the number compared
     * @param agreement how well
     */
    public record Row(String model, String part, FlightOutput output, Agreement agreement) {}

    private final List<Row> rows;
    private final List<Warning> warnings;

    private ValidationResult(List<Row> rows, List<Warning> warnings) {
        this.rows = List.copyOf(rows);
        this.warnings = List.copyOf(warnings);
    }

    static ValidationResult of(
            List<Validation.Difference> differences, Validation.LeftOut without, double level, double band) {
        List<Row> rows = new ArrayList<>();
        List<String> models = differences.stream()
                .map(Validation.Difference::model)
                .distinct()
                .toList();
        for (String model : models) {
            List<Validation.Difference> own =
                    differences.stream().filter(d -> d.model().equals(model)).toList();
            add(model, ALL, own, level, rows);
            parts(own, Validation.Difference::group).forEach((part, some) -> {
                if (!part.isEmpty()) {
                    add(model, part, some, level, rows);
                }
            });
            Map<Integer, List<Validation.Difference>> bands = own.stream()
                    .collect(Collectors.groupingBy(
                            d -> (int) Math.floor(d.carry() / band), TreeMap::new, Collectors.toList()));
            bands.forEach((k, some) -> add(
                    model,
                    String.format(Locale.ROOT, "carry %.0f-%.0f yd", k * band / 0.9144, (k + 1) * band / 0.9144),
                    some,
                    level,
                    rows));
        }
        List<Warning> warnings = new ArrayList<>(without.fits);
        if (!without.noLanding.isEmpty()) {
            warnings.add(Warning.of("no-flight", "no landing, and so left out for every model: " + without.noLanding));
        }
        if (!without.noRest.isEmpty()) {
            warnings.add(Warning.of(
                    "no-rest", "no known rest, and so total and run left out for every model: " + without.noRest));
        }
        return new ValidationResult(rows, warnings);
    }

    /** By group, in the order in which the groups first appear. */
    private static Map<String, List<Validation.Difference>> parts(
            List<Validation.Difference> differences, Function<Validation.Difference, String> part) {
        return differences.stream().collect(Collectors.groupingBy(part, LinkedHashMap::new, Collectors.toList()));
    }

    private static void add(
            String model, String part, List<Validation.Difference> differences, double level, List<Row> rows) {
        for (FlightOutput output : FlightOutput.values()) {
            List<Validation.Difference> some =
                    differences.stream().filter(d -> d.output() == output).toList();
            if (!some.isEmpty()) {
                rows.add(new Row(
                        model,
                        part,
                        output,
                        Agreement.of(
                                some.stream()
                                        .mapToDouble(Validation.Difference::difference)
                                        .toArray(),
                                some.stream()
                                        .mapToDouble(Validation.Difference::observed)
                                        .toArray(),
                                output.unit(),
                                level)));
            }
        }
    }

    /**
     * All rows: model by model, all flights first, then the groups, then the bands of carry.
     *
     * @return the rows, unmodifiable
     */
    public List<Row> rows() {
        return rows;
    }

    /**
     * One row's agreement.
     *
     * @param model the name of the model
     * @param part {@code all}, a group, or a band
     * @param output the number
     * @return the agreement; empty if there is no such row
     */
    public Optional<Agreement> agreement(String model, String part, FlightOutput output) {
        return rows.stream()
                .filter(r -> r.model().equals(model) && r.part().equals(part) && r.output() == output)
                .findFirst()
                .map(Row::agreement);
    }

    /**
     * What to know: {@code no-flight} where a model has no landing for a flight, {@code no-rest} where it has a landing and the
     * ground no answer for total and run; and what the fits without a group warned of, such as {@code parameters-not-determined},
     * each beginning with the group left out.
     *
     * @return the warnings, unmodifiable, usually none
     */
    public List<Warning> warnings() {
        return warnings;
    }

    /**
     * A Markdown table in yards, degrees and miles an hour, one decimal.
     *
     * @return the table, each line ended by a line feed
     */
    public String markdown() {
        return markdown(row -> true);
    }

    /**
     * Some rows as a Markdown table in yards, degrees and miles an hour, one decimal.
     *
     * @param wanted which rows
     * @return the table, each line ended by a line feed
     */
    public String markdown(Predicate<Row> wanted) {
        StringBuilder text = new StringBuilder(
                "| model | flights | of | n | bias | RMS | RMS % | worst | limits of agreement |\n|---|---|---|---|---|---|---|---|---|\n");
        for (Row row : rows.stream().filter(wanted).toList()) {
            Agreement a = row.agreement();
            Unit unit = row.output().tableUnit();
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %s [%s] | %d | %s | %.1f | %s | %.1f | %s |%n",
                    cell(row.model()),
                    cell(row.part()),
                    row.output().key().replace('_', ' '),
                    unit.symbol(),
                    a.count(),
                    signed(unit.fromSi(a.bias().value())),
                    unit.fromSi(a.rms()),
                    a.relativeRms().isPresent()
                            ? String.format(
                                    Locale.ROOT, "%.1f", 100.0 * a.relativeRms().getAsDouble())
                            : "",
                    unit.fromSi(a.worst()),
                    a.lowerLimit()
                            .map(low -> signed(unit.fromSi(low.value())) + " to "
                                    + signed(unit.fromSi(
                                            a.upperLimit().orElseThrow().value())))
                            .orElse("")));
        }
        return text.toString().replace(System.lineSeparator(), "\n");
    }

    private static String signed(double value) {
        String text = String.format(Locale.ROOT, "%+.1f", value);
        return text.endsWith("0.0") && text.length() == 4 ? "0.0" : text;
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").replaceAll("\\s+", " ");
    }

    /**
     * The same and the intervals as comma-separated values (RFC 4180), in SI, with a heading; empty where there is nothing.
     *
     * @return the table, each line ended by a line feed
     */
    public String csv() {
        StringBuilder text = new StringBuilder(
                "model,flights,output,unit,n,bias,bias_low,bias_high,rms,relative_rms,worst,"
                        + "lower_limit,lower_limit_low,lower_limit_high,upper_limit,upper_limit_low,upper_limit_high\n");
        for (Row row : rows) {
            Agreement a = row.agreement();
            text.append(quoted(row.model())).append(',').append(quoted(row.part()));
            text.append(',')
                    .append(row.output().key())
                    .append(',')
                    .append(row.output().unit().symbol());
            text.append(',').append(a.count());
            append(text, Optional.of(a.bias()));
            text.append(',').append(a.rms()).append(',');
            a.relativeRms().ifPresent(text::append);
            text.append(',').append(a.worst());
            append(text, a.lowerLimit());
            append(text, a.upperLimit());
            text.append('\n');
        }
        return text.toString();
    }

    private static void append(StringBuilder text, Optional<Estimate> estimate) {
        if (estimate.isEmpty()) {
            text.append(",,,");
            return;
        }
        Estimate e = estimate.get();
        text.append(',').append(e.value());
        if (e.interval().bounded()) {
            text.append(',')
                    .append(e.interval().lower())
                    .append(',')
                    .append(e.interval().upper());
        } else {
            text.append(",,");
        }
    }

    private static String quoted(String text) {
        return text.matches("[^,\"\\r\\n]*") ? text : "\"" + text.replace("\"", "\"\"") + "\"";
    }

    @Override
    public String toString() {
        return markdown();
    }
}
