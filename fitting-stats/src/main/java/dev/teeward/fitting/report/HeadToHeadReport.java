package dev.teeward.fitting.report;

import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.util.List;
import java.util.Objects;

/**
 * A head-to-head result in words and tables.
 *
 * <pre>{@code
 * HeadToHeadReport report = HeadToHeadReport.of(result).withUnits(UnitSystem.METRIC);
 * System.out.print(report.text());
 * report.data().number("/metrics/carry/difference/value");
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HeadToHeadReport {
    private final HeadToHeadResult result;
    private final UnitSystem units;
    private final ReportData data;

    private HeadToHeadReport(HeadToHeadResult result, UnitSystem units) {
        this.result = result;
        this.units = units;
        this.data = ReportData.of(result, units);
    }

    /**
     * A report in yards, feet and miles per hour.
     *
     * @param result the result
     * @return the report
     */
    public static HeadToHeadReport of(HeadToHeadResult result) {
        return new HeadToHeadReport(Objects.requireNonNull(result, "result"), UnitSystem.US);
    }

    /**
     * The same report in other units.
     *
     * @param system the units
     * @return a changed copy
     */
    public HeadToHeadReport withUnits(UnitSystem system) {
        return new HeadToHeadReport(result, Objects.requireNonNull(system, "system"));
    }

    /**
     * The units of all numbers.
     *
     * @return the units
     */
    public UnitSystem units() {
        return units;
    }

    /**
     * What the report is about.
     *
     * @return the result
     */
    public HeadToHeadResult result() {
        return result;
    }

    /**
     * Every number, in the units of the report.
     *
     * @return the numbers
     */
    public ReportData data() {
        return data;
    }

    /**
     * The words.
     *
     * @return the sections in the order of reading, unmodifiable
     */
    public List<Section> sections() {
        return List.of();
    }

    /**
     * The tables.
     *
     * @return the tables in the order of reading, unmodifiable
     */
    public List<Table> tables() {
        return List.of();
    }

    /**
     * The words and tables as a page for a terminal.
     *
     * @return plain ASCII, lines of at most 96 characters ending in a line feed
     */
    public String text() {
        return "";
    }
}
