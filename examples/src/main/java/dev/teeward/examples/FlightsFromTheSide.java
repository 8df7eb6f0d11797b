package dev.teeward.examples;

import dev.teeward.flight.Flight;
import dev.teeward.flight.Trajectory;
import java.util.List;
import java.util.Locale;

/** One shot by several models from the side, height and distance to the same scale; told apart by dashes and by names. */
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
    private final String description;
    private final double scale;
    private final double ground;

    FlightsFromTheSide(ModelSpread.Shot shot, List<Flight> flights, String description) {
        this.shot = shot;
        this.flights = flights;
        this.description = description;
        double far = flights.stream().mapToDouble(f -> f.carry().yards()).max().orElseThrow();
        double high = flights.stream().mapToDouble(f -> f.apex().yards()).max().orElseThrow();
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
        StringBuilder path = new StringBuilder();
        for (Trajectory.Point point : flights.get(i).trajectory().evenly(60)) {
            path.append(String.format(
                    Locale.ROOT,
                    "%s%.1f %.1f",
                    path.isEmpty() ? "M" : "L",
                    x(point.distance().yards()),
                    ground - scale * point.height().yards()));
        }
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

    private double x(double yards) {
        return LEFT + scale * yards;
    }
}
