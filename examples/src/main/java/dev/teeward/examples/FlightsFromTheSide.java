package dev.teeward.examples;

import dev.teeward.flight.Flight;
import dev.teeward.flight.Trajectory;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** One shot by several models from the side, height and distance to the same scale; told apart by dashes and by names, with bands for balls that differ. */
final class FlightsFromTheSide {
    private static final double WIDTH = 440.0;
    private static final double LEFT = 36.0;
    private static final double TOP = 22.0;
    private static final double LINE = 17.0;
    private static final String INK = "var(--teeward-ink, #15202b)";
    private static final String GRID = "var(--teeward-grid, #d5dbe0)";

    /** Of the palette of Okabe and Ito 2008; the page knows the first two for dark paper. */
    private static final List<String> COLORS =
            List.of("var(--teeward-first, #0072b2)", "var(--teeward-second, #d55e00)", "#009e73", "#cc79a7");

    private static final List<String> DASHES = List.of("none", "9 4", "2 4", "12 3 2 3");

    private final ModelSpread.Shot shot;
    private final List<Flight> flights;
    private final List<Optional<BallBand>> bands;
    private final String description;
    private final double scale;
    private final double ground;

    FlightsFromTheSide(
            ModelSpread.Shot shot, List<Flight> flights, List<Optional<BallBand>> bands, String description) {
        this.shot = shot;
        this.flights = flights;
        this.bands = bands;
        this.description = description;
        List<Flight> drawn = Stream.concat(
                        flights.stream(),
                        bands.stream().flatMap(Optional::stream).flatMap(b -> Stream.of(b.shorter(), b.longer())))
                .toList();
        double far = drawn.stream().mapToDouble(f -> f.carry().yards()).max().orElseThrow();
        double high = drawn.stream().mapToDouble(f -> f.apex().yards()).max().orElseThrow();
        scale = (WIDTH - LEFT - 24.0) / far;
        ground = TOP + LINE * flights.size() + scale * high;
    }

    String svg() {
        StringBuilder svg = new StringBuilder();
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" font-size=\"13\""
                        + " aria-labelledby=\"%s-t %s-d\"><title id=\"%s-t\">%s</title><desc id=\"%s-d\">%s</desc>",
                WIDTH,
                ground + 26.0,
                shot.id(),
                shot.id(),
                shot.id(),
                shot.title(),
                shot.id(),
                description));
        for (double yards = 0.0; x(yards) <= WIDTH - 12.0; yards += 50.0) {
            svg.append(String.format(
                    Locale.ROOT,
                    "<path d=\"M%.1f %.1fV%.1f\" stroke=\"%s\"/><text x=\"%.1f\" y=\"%.1f\" fill=\"%s\""
                            + " text-anchor=\"middle\">%.0f%s</text>",
                    x(yards),
                    TOP + LINE * flights.size(),
                    ground + 5.0,
                    GRID,
                    x(yards),
                    ground + 20.0,
                    INK,
                    yards,
                    yards == 0.0 ? " yd" : ""));
        }
        svg.append(String.format(Locale.ROOT, "<path d=\"M%.1f %.1fH%.1f\" stroke=\"%s\"/>", LEFT, ground, WIDTH, INK));
        for (int i = 0; i < flights.size(); i++) {
            String color = COLORS.get(i % COLORS.size());
            bands.get(i).ifPresent(band -> band(svg, band, color));
        }
        for (int i = 0; i < flights.size(); i++) {
            flight(svg, i);
        }
        return svg.append("</svg>").toString();
    }

    private void flight(StringBuilder svg, int i) {
        String style = String.format(
                Locale.ROOT,
                "fill=\"none\" stroke=\"%s\" stroke-width=\"2.2\" stroke-dasharray=\"%s\"",
                COLORS.get(i % COLORS.size()),
                DASHES.get(i % DASHES.size()));
        String path = path(flights.get(i).trajectory().evenly(60));
        double y = TOP + LINE * i - 6.0;
        svg.append(String.format(
                Locale.ROOT,
                "<path d=\"%s\" %s/><path d=\"M%.1f %.1fh40\" %s/><text x=\"%.1f\" y=\"%.1f\" fill=\"%s\">%s, carry %.0f"
                        + " yd</text>",
                path,
                style,
                LEFT,
                y,
                style,
                LEFT + 48.0,
                y + 4.5,
                INK,
                ModelSpread.MODELS.get(i),
                flights.get(i).carry().yards()));
    }

    /** What lies between the path of the shorter ball and that of the longer. */
    private void band(StringBuilder svg, BallBand band, String color) {
        List<Trajectory.Point> outline =
                new ArrayList<>(band.longer().trajectory().evenly(60));
        List<Trajectory.Point> back =
                new ArrayList<>(band.shorter().trajectory().evenly(60));
        Collections.reverse(back);
        outline.addAll(back);
        svg.append(String.format(
                Locale.ROOT,
                "<path class=\"balls\" d=\"%sZ\" fill=\"%s\" fill-opacity=\"0.22\" stroke=\"none\"/>",
                path(outline),
                color));
    }

    private String path(List<Trajectory.Point> points) {
        StringBuilder path = new StringBuilder();
        for (Trajectory.Point point : points) {
            path.append(String.format(
                    Locale.ROOT,
                    "%s%.1f %.1f",
                    path.isEmpty() ? "M" : "L",
                    x(point.distance().yards()),
                    ground - scale * point.height().yards()));
        }
        return path.toString();
    }

    private double x(double yards) {
        return LEFT + scale * yards;
    }
}
