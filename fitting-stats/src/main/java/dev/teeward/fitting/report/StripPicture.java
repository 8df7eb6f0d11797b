package dev.teeward.fitting.report;

import dev.teeward.fitting.MetricGroup;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Every used shot of both clubs as a dot on a strip, metric by metric, with the mean and its interval, and beside it the
 * difference of the clubs with zero and the margin within which a difference does not matter. The difference has a thin bar,
 * its interval at the level of the result, and a thick one, the interval of the equivalence test at twice the level less 1
 * (90 % beside 95 %): the clubs are called practically the same if the thick bar lies within the margin, also after allowing
 * for the number of metrics; where only that undoes a verdict, a footnote says so.
 *
 * <p>One picture holds the metrics of one stage of the shot. An interval that runs beyond the strip ends in an arrow. Of more
 * than 300 shots of a club 300 are drawn.
 *
 * <pre>{@code
 * List<Picture> strips = StripPicture.all(result, UnitSystem.US);
 * Optional<Picture> landing = StripPicture.of(result, MetricGroup.LANDING, UnitSystem.US);
 * }</pre>
 */
public final class StripPicture {
    private static final double NOTE_HEIGHT = 14.0;

    /** So many letters of both names have room above the differences. */
    private static final int SHORT_NAMES = 18;

    private final DrawnShots shots;
    private final MetricGroup group;
    private final List<StripRow> rows;

    private StripPicture(DrawnShots shots, MetricGroup group, UnitSystem units) {
        this.shots = shots;
        this.group = group;
        this.rows = shots.result().metrics().stream()
                .filter(comparison -> comparison.metric().group() == group)
                .map(comparison -> new StripRow(shots, comparison, units))
                .toList();
    }

    /**
     * The strips of one stage of the shot.
     *
     * @param result two clubs compared
     * @param group the stage
     * @param units the family of units
     * @return the picture, {@code strips-} and the name of the stage, or empty if none of its metrics was compared
     */
    public static Optional<Picture> of(HeadToHeadResult result, MetricGroup group, UnitSystem units) {
        return of(DrawnShots.of(result), group, units);
    }

    /**
     * The strips of all metrics compared.
     *
     * @param result two clubs compared
     * @param units the family of units
     * @return one picture for each stage of the shot that has metrics, in the order of the stages, at least one
     */
    public static List<Picture> all(HeadToHeadResult result, UnitSystem units) {
        return all(DrawnShots.of(result), units);
    }

    static List<Picture> all(DrawnShots shots, UnitSystem units) {
        List<Picture> pictures = new ArrayList<>();
        for (MetricGroup group : MetricGroup.values()) {
            of(shots, group, units).ifPresent(pictures::add);
        }
        return List.copyOf(pictures);
    }

    static Optional<Picture> of(DrawnShots shots, MetricGroup group, UnitSystem units) {
        StripPicture picture = new StripPicture(shots, group, units);
        return picture.rows.isEmpty() ? Optional.empty() : Optional.of(picture.draw());
    }

    private Picture draw() {
        String first = shots.names().get(0);
        String second = shots.names().get(1);
        List<StripRow.Alone> notes = Stream.of(StripRow.Alone.WITHIN_MARGIN, StripRow.Alone.NOT_ZERO)
                .filter(note -> rows.stream().anyMatch(row -> row.alone() == note))
                .toList();
        double top = first.length() + second.length() <= 40 ? 22.0 : 37.0;
        double strips = top + 31.0;
        double bottom = strips + StripRow.HEIGHT * rows.size();
        SvgDrawing drawing = new SvgDrawing(
                "strips-" + group.name().toLowerCase(Locale.ROOT),
                title(),
                description(),
                bottom + NOTE_HEIGHT * notes.size());
        ClubMark.legend(drawing, 0.0, 13.0, first, second, "mark");
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        drawing.text(
                StripRow.STRIP_LEFT,
                top + 8.0,
                "start",
                rows.stream().anyMatch(StripRow::ringed) ? "shots (ring: stands out) and mean" : "shots and mean");
        drawing.text(
                StripRow.DIFFERENCE_RIGHT,
                top + 8.0,
                "end",
                first.length() + second.length() <= SHORT_NAMES ? first + " minus " + second : "first minus second");
        key(drawing, top + 19.0);
        drawing.end();
        for (int i = 0; i < rows.size(); i++) {
            rows.get(i).draw(drawing, strips + StripRow.HEIGHT * i);
        }
        drawing.group("font-size", "10.5", "fill", Palette.SOFT);
        for (int i = 0; i < notes.size(); i++) {
            drawing.text(
                    StripRow.STRIP_LEFT,
                    bottom + 8.0 + NOTE_HEIGHT * i,
                    "start",
                    notes.get(i).mark() + " " + note(notes.get(i)));
        }
        drawing.end();
        return drawing.finish();
    }

    private static String note(StripRow.Alone alone) {
        return (alone == StripRow.Alone.WITHIN_MARGIN ? "taken alone within the margin" : "taken alone not zero")
                + ", but not among so many metrics";
    }

    /** Which bar is which interval. */
    private void key(SvgDrawing drawing, double middle) {
        double x = StripRow.STRIP_LEFT;
        double y = middle + 4.0;
        drawing.path(
                "M" + SvgDrawing.point(x, middle) + "L" + SvgDrawing.point(x + 20.0, middle) + "M"
                        + SvgDrawing.point(x, middle - 3.0) + "L" + SvgDrawing.point(x, middle + 3.0) + "M"
                        + SvgDrawing.point(x + 20.0, middle - 3.0) + "L" + SvgDrawing.point(x + 20.0, middle + 3.0),
                "fill",
                "none",
                "stroke",
                Palette.INK,
                "stroke-width",
                "1.6");
        drawing.text(x + 25.0, y, "start", percent(shots.result().level()) + " interval");
        OptionalDouble inner = rows.stream()
                .map(StripRow::equivalenceLevel)
                .flatMapToDouble(OptionalDouble::stream)
                .findFirst();
        if (inner.isEmpty()) {
            return;
        }
        drawing.line(x + 120.0, middle, x + 140.0, middle, "stroke", Palette.INK, "stroke-width", "5");
        drawing.text(x + 145.0, y, "start", percent(inner.getAsDouble()) + ", for \u201cthe same\u201d");
        drawing.rectangle(x + 273.0, middle - 5.0, 20.0, 10.0, "fill", Palette.BAND, "stroke", Palette.SOFT);
        drawing.text(x + 298.0, y, "start", "margin");
    }

    private String title() {
        return switch (group) {
            case APPROACH -> "How the club came to the ball";
            case FACE -> "How the face was delivered";
            case STRIKE -> "Where the face was struck";
            case START -> "How the ball started";
            case FLIGHT -> "How the ball flew";
            case LANDING -> "How the ball came down";
            case RATIOS -> "Ratios";
        };
    }

    /** A level in percent; the space does not break. */
    private static String percent(double level) {
        return BigDecimal.valueOf(100.0 * level)
                        .setScale(3, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                + "\u00a0%";
    }

    private String description() {
        StringBuilder text = new StringBuilder("Each used shot is a dot; bars are means and differences with their ")
                .append(percent(shots.result().level()))
                .append(
                        " intervals; the thick bar of a difference is the interval that the equivalence test holds against")
                .append(" the margin, drawn as a band. ")
                .append(shots.names().get(0))
                .append(" has circles and ")
                .append(shots.names().get(1))
                .append(" triangles; differences are the first minus the second.");
        rows.forEach(row -> text.append(' ').append(row.words()));
        return text.toString();
    }
}
