package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.flight.Trajectory;
import dev.teeward.quantity.Unit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The flights of both clubs from the side and from above, computed by the flight model from each measured launch in the air and
 * wind of the session: thin lines for shots, a thick one for the mean launch of each club, but not if a session was combined from
 * days of different air, in which each shot has its own.
 *
 * <p>Only used shots with ball speed, launch angle and spin rate are flown; those without start direction or axis tilt are not
 * drawn from above. Heights and sides are stretched against the distance, and the picture says how much. Of more than 60
 * launches of a club 60 are drawn.
 *
 * <pre>{@code
 * Optional<Picture> flights = FlightPicture.of(result, UnitSystem.METRIC);
 * }</pre>
 */
public final class FlightPicture {
    private static final int POINTS = 33;
    private static final double LEFT = 40.0;
    private static final double RIGHT = SvgDrawing.WIDTH - 10.0;
    private static final double SIDE_HEIGHT = 112.0;
    private static final double ABOVE_HEIGHT = 112.0;

    private final DrawnShots shots;
    private final Unit distance;
    private final Unit height;
    private final Map<ClubMark, DrawnFlights> flights = new EnumMap<>(ClubMark.class);

    private FlightPicture(DrawnShots shots, UnitSystem units) {
        this.shots = shots;
        this.distance = Metric.CARRY.unit(units);
        this.height = Metric.APEX.unit(units);
        SessionFlights session = SessionFlights.of(shots.result().session());
        for (ClubMark mark : ClubMark.values()) {
            flights.put(mark, DrawnFlights.of(shots, mark, session));
        }
    }

    /**
     * Flies and draws.
     *
     * @param result two clubs compared
     * @param units the family of units
     * @return the picture {@code flights}, or empty if no used shot has a launch that can be flown
     * @throws IllegalArgumentException as {@link dev.teeward.fitting.complete.SessionAir#of} does
     */
    public static Optional<Picture> of(HeadToHeadResult result, UnitSystem units) {
        return of(DrawnShots.of(result), units);
    }

    static Optional<Picture> of(DrawnShots shots, UnitSystem units) {
        FlightPicture picture = new FlightPicture(shots, units);
        boolean any =
                picture.flights.values().stream().anyMatch(f -> !f.single().isEmpty());
        return any ? Optional.of(picture.draw()) : Optional.empty();
    }

    /** One coordinate of a point of a flight, in the unit shown. */
    private interface Coordinate {
        double of(Trajectory.Point point);
    }

    private double downrange(Trajectory.Point point) {
        return distance.fromSi(point.downrange().meters());
    }

    private double up(Trajectory.Point point) {
        return height.fromSi(point.height().meters());
    }

    private double side(Trajectory.Point point) {
        return distance.fromSi(point.side().meters());
    }

    private boolean directed() {
        return flights.values().stream().flatMap(f -> f.single().stream()).anyMatch(DrawnFlights.Flown::directed);
    }

    private Extent extent(Coordinate coordinate, boolean directedOnly) {
        Extent extent = new Extent().add(0.0);
        for (DrawnFlights club : flights.values()) {
            club.single().stream()
                    .filter(f -> f.directed() || !directedOnly)
                    .forEach(f ->
                            f.flight().trajectory().evenly(POINTS).forEach(point -> extent.add(coordinate.of(point))));
            club.mean()
                    .filter(f -> f.directed() || !directedOnly)
                    .ifPresent(f ->
                            f.flight().trajectory().evenly(POINTS).forEach(point -> extent.add(coordinate.of(point))));
        }
        return extent;
    }

    private Picture draw() {
        boolean directed = directed();
        Extent along = extent(this::downrange, false);
        double farthest = along.low() + 1.04 * Math.max(along.width(), 10.0);
        Scale x = new Scale(along.low(), farthest, LEFT, RIGHT);
        double top = shots.names().stream().mapToInt(String::length).sum() <= 40 ? 44.0 : 59.0;
        double bottom = top + SIDE_HEIGHT;
        Extent heights = extent(this::up, false);
        Scale y = new Scale(heights.low(), heights.low() + 1.28 * Math.max(heights.width(), 3.0), bottom, top);
        double total = directed ? bottom + 62.0 + ABOVE_HEIGHT + 36.0 : bottom + 50.0;
        SvgDrawing drawing =
                new SvgDrawing("flights", "The flights from the side and from above", description(), total);
        double below = ClubMark.legend(
                drawing, 0.0, 13.0, shots.names().get(0), shots.names().get(1), "line");
        drawing.text(
                0.0,
                below,
                "start",
                flights.values().stream().anyMatch(f -> f.mean().isPresent())
                        ? "thick: the mean launch, thin: single shots; all computed"
                        : "single shots, all computed",
                "font-size",
                "11",
                "fill",
                Palette.SOFT);
        grid(drawing, x, y, Ticks.of(y.low(), y.high(), 5), false);
        caption(drawing, top, "from the side", "height [" + height.symbol() + "]", stretch(x, y, height));
        lines(drawing, x, y, this::up, false);
        if (directed) {
            double from = bottom + 62.0;
            Extent sides = extent(this::side, true).padded(4.0, 0.06);
            // Room for the words above the lines.
            Scale z = new Scale(sides.low() - 0.22 * sides.width(), sides.high(), from, from + ABOVE_HEIGHT);
            grid(drawing, x, z, Ticks.of(z.low(), z.high(), 5), true);
            caption(drawing, from, "from above", "side [" + distance.symbol() + "]", stretch(x, z, distance));
            lines(drawing, x, z, this::side, true);
            axis(drawing, x, from + ABOVE_HEIGHT);
        } else {
            drawing.text(
                    0.0,
                    bottom + 44.0,
                    "start",
                    "not drawn from above: start direction and axis tilt are missing",
                    "font-size",
                    "11",
                    "fill",
                    Palette.SOFT);
        }
        axis(drawing, x, bottom);
        return drawing.finish();
    }

    private String stretch(Scale x, Scale y, Unit across) {
        double ratio = y.perUnit() * across.fromSi(1.0) / (x.perUnit() * distance.fromSi(1.0));
        return "stretched " + Decimals.label(ratio, 1) + " \u00d7";
    }

    private void caption(SvgDrawing drawing, double top, String view, String axis, String stretch) {
        drawing.group("font-size", "11");
        drawing.text(LEFT + 6.0, top + 12.0, "start", view, "font-weight", "600");
        drawing.text(RIGHT - 4.0, top + 12.0, "end", axis + ", " + stretch, "fill", Palette.SOFT);
        drawing.end();
    }

    private static void grid(SvgDrawing drawing, Scale x, Scale y, Ticks ticks, boolean sides) {
        drawing.group("stroke", Palette.GRID, "stroke-width", "1");
        double low = Math.min(y.from(), y.to());
        double high = Math.max(y.from(), y.to());
        Ticks.withStep(x.low(), x.high(), 48.0 / x.perUnit())
                .values()
                .forEach(v -> drawing.line(x.at(v), low, x.at(v), high));
        ticks.values().forEach(v -> drawing.line(LEFT, y.at(v), RIGHT, y.at(v)));
        drawing.end();
        drawing.line(LEFT, y.at(0.0), RIGHT, y.at(0.0), "stroke", Palette.SOFT, "stroke-width", "1.4");
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        for (double v : ticks.values()) {
            String letter = !sides || v == 0.0 ? "" : v < 0.0 ? " L" : " R";
            drawing.text(LEFT - 4.0, y.at(v) + 4.0, "end", ticks.label(sides ? Math.abs(v) : v) + letter);
        }
        drawing.end();
    }

    private void axis(SvgDrawing drawing, Scale x, double y) {
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        Ticks ticks = Ticks.withStep(x.low(), x.high(), 48.0 / x.perUnit());
        ticks.values().forEach(v -> drawing.text(x.at(v), y + 14.0, "middle", ticks.label(v)));
        drawing.text(
                0.5 * (LEFT + RIGHT), y + 28.0, "middle", "distance along the target line [" + distance.symbol() + "]");
        drawing.end();
    }

    private void lines(SvgDrawing drawing, Scale x, Scale y, Coordinate coordinate, boolean directedOnly) {
        for (ClubMark mark : ClubMark.values()) {
            drawing.group(
                    "class",
                    "shots",
                    "fill",
                    "none",
                    "stroke",
                    mark.color(),
                    "stroke-width",
                    "0.8",
                    "stroke-opacity",
                    "0.45");
            club(mark).single().stream()
                    .filter(f -> f.directed() || !directedOnly)
                    .forEach(f -> line(drawing, f, x, y, coordinate));
            drawing.end();
        }
        for (ClubMark mark : ClubMark.values()) {
            drawing.group(
                    "class",
                    "mean",
                    "fill",
                    "none",
                    "stroke",
                    mark.color(),
                    "stroke-width",
                    "2.6",
                    "stroke-dasharray",
                    mark.dashes());
            club(mark)
                    .mean()
                    .filter(f -> f.directed() || !directedOnly)
                    .ifPresent(f -> line(drawing, f, x, y, coordinate));
            drawing.end();
        }
    }

    private DrawnFlights club(ClubMark mark) {
        DrawnFlights club = flights.get(mark);
        if (club == null) {
            throw new IllegalStateException("no flights of " + mark);
        }
        return club;
    }

    private void line(SvgDrawing drawing, DrawnFlights.Flown flown, Scale x, Scale y, Coordinate coordinate) {
        List<Trajectory.Point> points = flown.flight().trajectory().evenly(POINTS);
        double[] px = new double[points.size()];
        double[] py = new double[points.size()];
        for (int i = 0; i < px.length; i++) {
            px[i] = x.at(downrange(points.get(i)));
            py[i] = y.at(coordinate.of(points.get(i)));
        }
        drawing.polyline(px, py, false);
    }

    private String description() {
        StringBuilder text =
                new StringBuilder("Flights computed by the flight model from each measured launch in the air"
                        + " and wind of the session.");
        for (ClubMark mark : ClubMark.values()) {
            DrawnFlights club = club(mark);
            text.append(' ').append(shots.club(mark).name());
            if (club.single().isEmpty()) {
                text.append(": no launch to fly.");
                continue;
            }
            text.append(mark == ClubMark.FIRST ? ", full line: " : ", dashed line: ")
                    .append(club.single().size())
                    .append(" flights");
            club.mean().ifPresent(mean -> {
                double side = distance.fromSi(mean.flight().side().meters());
                text.append("; the mean launch carries ")
                        .append(Decimals.label(
                                distance.fromSi(mean.flight().carry().meters()), 1))
                        .append(' ')
                        .append(distance.symbol())
                        .append(", rises to ")
                        .append(Decimals.label(
                                height.fromSi(mean.flight().apex().meters()), 1))
                        .append(' ')
                        .append(height.symbol());
                if (mean.directed()) {
                    text.append(" and lands ")
                            .append(Decimals.label(Math.abs(side), 1))
                            .append(' ')
                            .append(distance.symbol())
                            .append(side < 0.0 ? " left" : " right");
                }
            });
            text.append('.').append(DrawnShots.thinning(club.single().size(), club.launches()));
        }
        if (!directed()) {
            text.append(" Not drawn from above, because start direction and axis tilt are missing.");
        }
        return text.toString();
    }
}
