package dev.teeward.fitting.report;

import java.util.List;

/** How one of the two clubs is drawn: colour, shape of its marks, and dashes of its lines, so that colour is never needed. */
enum ClubMark {
    /** Round marks and full lines. */
    FIRST(Palette.FIRST, "none"),

    /** Triangles and dashed lines. */
    SECOND(Palette.SECOND, "5 3");

    private static final int LEGEND_COLUMNS = 23;

    private final String color;
    private final String dashes;

    ClubMark(String color, String dashes) {
        this.color = color;
        this.dashes = dashes;
    }

    String color() {
        return color;
    }

    String dashes() {
        return dashes;
    }

    /** One mark; a triangle of about the area of the circle. */
    void draw(SvgDrawing drawing, double x, double y, double radius) {
        if (this == FIRST) {
            drawing.circle(x, y, radius);
            return;
        }
        double r = 1.4 * radius;
        drawing.path("M" + SvgDrawing.point(x, y - r) + "L" + SvgDrawing.point(x + 0.87 * r, y + 0.5 * r) + "L"
                + SvgDrawing.point(x - 0.87 * r, y + 0.5 * r) + "Z");
    }

    /** Marks of shots: used ones filled, flagged ones in a ring, excluded ones hollow. */
    void draw(SvgDrawing drawing, List<PlacedShot> shots, double radius) {
        drawing.group("fill", color, "fill-opacity", "0.7");
        shots.stream()
                .filter(s -> s.kind() != PlacedShot.Kind.EXCLUDED)
                .forEach(s -> draw(drawing, s.x(), s.y(), radius));
        drawing.end();
        if (shots.stream().anyMatch(s -> s.kind() == PlacedShot.Kind.EXCLUDED)) {
            drawing.group("fill", "none", "stroke", color, "stroke-width", "1.2");
            shots.stream()
                    .filter(s -> s.kind() == PlacedShot.Kind.EXCLUDED)
                    .forEach(s -> draw(drawing, s.x(), s.y(), radius));
            drawing.end();
        }
        if (shots.stream().anyMatch(s -> s.kind() == PlacedShot.Kind.FLAGGED)) {
            drawing.group("fill", "none", "stroke", Palette.INK, "stroke-width", "1");
            shots.stream()
                    .filter(s -> s.kind() == PlacedShot.Kind.FLAGGED)
                    .forEach(s -> drawing.circle(s.x(), s.y(), radius + 3.0));
            drawing.end();
        }
    }

    /** The names of both clubs with their marks; gives the y below them. */
    static double legend(SvgDrawing drawing, double x, double y, String first, String second, String symbol) {
        boolean beside = columns(first) + columns(second) <= 2 * LEGEND_COLUMNS - 6;
        double next = x + 26.0 + 6.7 * columns(shortened(first, 2 * LEGEND_COLUMNS)) + 12.0;
        FIRST.entry(drawing, x, y, first, symbol);
        SECOND.entry(drawing, beside ? next : x, beside ? y : y + 15.0, second, symbol);
        return beside ? y + 15.0 : y + 30.0;
    }

    private void entry(SvgDrawing drawing, double x, double y, String name, String symbol) {
        if (symbol.equals("line")) {
            drawing.line(
                    x, y - 4.0, x + 20.0, y - 4.0, "stroke", color, "stroke-width", "2.4", "stroke-dasharray", dashes);
        } else {
            drawing.group("fill", color);
            draw(drawing, x + 12.0, y - 4.0, 4.0);
            drawing.end();
        }
        drawing.text(x + 25.0, y, "start", shortened(name, 2 * LEGEND_COLUMNS), "font-weight", "600");
    }

    /** How many columns of narrow letters a name takes: wide letters count twice. */
    private static int columns(String name) {
        return name.codePoints().map(c -> c >= 0x1100 ? 2 : 1).sum();
    }

    /** A name cut to so many columns. */
    static String shortened(String name, int most) {
        if (columns(name) <= most) {
            return name;
        }
        StringBuilder kept = new StringBuilder();
        int used = 1;
        for (int c : name.codePoints().toArray()) {
            used += c >= 0x1100 ? 2 : 1;
            if (used > most) {
                break;
            }
            kept.appendCodePoint(c);
        }
        return kept.append('\u2026').toString();
    }
}
