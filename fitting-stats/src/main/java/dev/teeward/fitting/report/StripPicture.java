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

/**
 * Every used shot of both clubs as a dot on a strip, metric by metric, with the mean and its interval, and beside it the
 * difference of the clubs with its interval, zero, and the margin within which a difference does not matter.
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
        double top = first.length() + second.length() <= 40 ? 22.0 : 37.0;
        SvgDrawing drawing = new SvgDrawing(
                "strips-" + group.name().toLowerCase(Locale.ROOT),
                title(),
                description(),
                top + 14.0 + StripRow.HEIGHT * rows.size());
        ClubMark.legend(drawing, 0.0, 13.0, first, second, "mark");
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        drawing.text(StripRow.STRIP_LEFT, top + 8.0, "start", "shots, mean, " + level() + " interval");
        drawing.text(StripRow.DIFFERENCE_RIGHT, top + 8.0, "end", "first minus second");
        drawing.end();
        for (int i = 0; i < rows.size(); i++) {
            rows.get(i).draw(drawing, top + 14.0 + StripRow.HEIGHT * i);
        }
        return drawing.finish();
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

    /** The level in percent; the space does not break. */
    private String level() {
        return BigDecimal.valueOf(100.0 * shots.result().level())
                        .setScale(3, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                + "\u00a0%";
    }

    private String description() {
        StringBuilder text = new StringBuilder("Each used shot is a dot; bars are means with their ")
                .append(level())
                .append(" intervals. ")
                .append(shots.names().get(0))
                .append(" has circles and ")
                .append(shots.names().get(1))
                .append(" triangles; differences are the first minus the second.");
        rows.forEach(row -> text.append(' ').append(row.words()));
        return text.toString();
    }
}
