package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.summary.Ellipse;
import dev.teeward.fitting.summary.LandingPattern;
import dev.teeward.quantity.Unit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where the balls of both clubs came down, seen from above: the target line upwards, right of it to the right, the same scale
 * on both axes.
 *
 * <p>Each club has its prediction ellipse at 90 % (see {@link LandingPattern.Result#ellipse()}) and a cross at its centre, but
 * not with fewer than 6 balls: the ellipse would say little and make everything else small. Excluded shots are hollow, flagged ones in a ring. Of more than 400 shots of a club 400 are drawn.
 *
 * <pre>{@code
 * Picture picture = LandingPicture.of(result, UnitSystem.US).orElseThrow();
 * picture.svg();   // <svg xmlns=... role="img" ...
 * }</pre>
 */
public final class LandingPicture {
    private static final int MOST_SHOTS = 400;
    private static final double LEFT = 40.0;
    private static final double RIGHT = SvgDrawing.WIDTH - 10.0;
    private static final double LOWEST = 170.0;
    private static final double HIGHEST = 340.0;

    private final DrawnShots shots;
    private final Unit unit;
    private final Map<ClubMark, List<Shot>> drawn = new EnumMap<>(ClubMark.class);
    private final Map<ClubMark, Ellipse> ellipses = new EnumMap<>(ClubMark.class);

    private LandingPicture(DrawnShots shots, UnitSystem units) {
        this.shots = shots;
        this.unit = Metric.CARRY.unit(units);
        for (ClubMark mark : ClubMark.values()) {
            drawn.put(mark, DrawnShots.thinned(shots.all(mark, true, Metric.CARRY, Metric.SIDE), MOST_SHOTS));
            shots.club(mark)
                    .pattern()
                    .filter(pattern -> pattern.n() >= DrawnShots.FEWEST_FOR_OUTLINE)
                    .ifPresent(pattern -> ellipses.put(mark, pattern.ellipse()));
        }
    }

    /**
     * Draws the landing points.
     *
     * @param result two clubs compared
     * @param units yards or metres
     * @return the picture {@code landing}, or empty if no used shot has both carry and side
     */
    public static Optional<Picture> of(HeadToHeadResult result, UnitSystem units) {
        return of(DrawnShots.of(result), units);
    }

    static Optional<Picture> of(DrawnShots shots, UnitSystem units) {
        LandingPicture picture = new LandingPicture(shots, units);
        boolean any = picture.drawn.values().stream().flatMap(List::stream).anyMatch(Shot::used);
        return any ? Optional.of(picture.draw()) : Optional.empty();
    }

    private Picture draw() {
        Extent sides = new Extent().add(0.0);
        Extent carries = new Extent();
        drawn.values()
                .forEach(list -> list.forEach(shot -> {
                    sides.add(unit.fromSi(shot.value(Metric.SIDE)));
                    carries.add(unit.fromSi(shot.value(Metric.CARRY)));
                }));
        ellipses.values().forEach(ellipse -> {
            double[][] outline = ellipse.points(72);
            for (int i = 0; i < outline[0].length; i++) {
                carries.add(unit.fromSi(outline[0][i]));
                sides.add(unit.fromSi(outline[1][i]));
            }
        });
        Extent across = sides.padded(10.0, 0.05);
        Extent along = carries.padded(5.0, 0.05);
        double perUnit = Math.min((RIGHT - LEFT) / across.width(), HIGHEST / along.width());
        double height = Math.max(LOWEST, perUnit * along.width());
        double middleSide = 0.5 * (across.low() + across.high());
        double middleCarry = 0.5 * (along.low() + along.high());
        double halfSide = 0.5 * (RIGHT - LEFT) / perUnit;
        double halfCarry = 0.5 * height / perUnit;

        boolean beside = shots.names().stream().mapToInt(String::length).sum() <= 40;
        double top = beside ? 62.0 : 77.0;
        Scale x = new Scale(middleSide - halfSide, middleSide + halfSide, LEFT, RIGHT);
        Scale y = new Scale(middleCarry - halfCarry, middleCarry + halfCarry, top + height, top);
        SvgDrawing drawing = new SvgDrawing("landing", title(), description(), top + height + 38.0);
        double below = ClubMark.legend(
                drawing, 0.0, 13.0, shots.names().get(0), shots.names().get(1), "mark");
        key(drawing, below);
        grid(drawing, x, y);
        for (ClubMark mark : ClubMark.values()) {
            ellipse(drawing, mark, x, y);
        }
        for (ClubMark mark : ClubMark.values()) {
            mark.draw(
                    drawing,
                    drawn(mark).stream()
                            .map(shot -> new PlacedShot(
                                    x.at(unit.fromSi(shot.value(Metric.SIDE))),
                                    y.at(unit.fromSi(shot.value(Metric.CARRY))),
                                    shots.kind(shot)))
                            .toList(),
                    3.4);
        }
        for (ClubMark mark : ClubMark.values()) {
            center(drawing, mark, x, y);
        }
        return drawing.finish();
    }

    private List<Shot> drawn(ClubMark mark) {
        return drawn.getOrDefault(mark, List.of());
    }

    private void key(SvgDrawing drawing, double y) {
        StringBuilder key = new StringBuilder();
        if (!ellipses.isEmpty()) {
            boolean both = ellipses.size() == ClubMark.values().length;
            key.append("outline: 90 % prediction ellipse")
                    .append(both ? "" : ", from " + DrawnShots.FEWEST_FOR_OUTLINE + " shots")
                    .append(", cross: its centre");
        } else {
            key.append(DrawnShots.NO_OUTLINE);
        }
        drawing.text(0.0, y, "start", key.toString(), "font-size", "11", "fill", Palette.SOFT);
        StringBuilder marks = new StringBuilder();
        if (has(PlacedShot.Kind.FLAGGED)) {
            marks.append("ringed: flagged, still counted");
        }
        if (has(PlacedShot.Kind.EXCLUDED)) {
            marks.append(marks.length() == 0 ? "" : "; ").append("hollow: excluded");
        }
        drawing.text(0.0, y + 14.0, "start", marks.toString(), "font-size", "11", "fill", Palette.SOFT);
    }

    private boolean has(PlacedShot.Kind kind) {
        return drawn.values().stream().flatMap(List::stream).anyMatch(shot -> shots.kind(shot) == kind);
    }

    private void grid(SvgDrawing drawing, Scale x, Scale y) {
        double least = 44.0 / x.perUnit();
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        drawing.group("stroke", Palette.GRID, "stroke-width", "1");
        Ticks across = Ticks.withStep(x.low(), x.high(), least);
        Ticks along = Ticks.withStep(y.low(), y.high(), least);
        across.values().forEach(v -> drawing.line(x.at(v), y.from(), x.at(v), y.to()));
        along.values().forEach(v -> drawing.line(x.from(), y.at(v), x.to(), y.at(v)));
        drawing.end();
        across.values().forEach(v -> drawing.text(x.at(v), y.from() + 14.0, "middle", across.label(Math.abs(v))));
        along.values().forEach(v -> drawing.text(LEFT - 5.0, y.at(v) + 4.0, "end", along.label(v)));
        drawing.text(x.from(), y.from() + 30.0, "start", "\u2190 left");
        drawing.text(
                0.5 * (x.from() + x.to()),
                y.from() + 30.0,
                "middle",
                "side of the target line [" + unit.symbol() + "]");
        drawing.text(x.to(), y.from() + 30.0, "end", "right \u2192");
        drawing.text(
                10.0,
                0.5 * (y.from() + y.to()),
                "middle",
                "carry [" + unit.symbol() + "]",
                "transform",
                "rotate(-90 10 " + Decimals.coordinate(0.5 * (y.from() + y.to())) + ")");
        drawing.end();
        drawing.line(x.at(0.0), y.from(), x.at(0.0), y.to(), "stroke", Palette.SOFT, "stroke-width", "1.6");
    }

    private void ellipse(SvgDrawing drawing, ClubMark mark, Scale x, Scale y) {
        Ellipse ellipse = ellipses.get(mark);
        if (ellipse == null) {
            return;
        }
        double[][] outline = ellipse.points(72);
        double[] px = new double[outline[0].length];
        double[] py = new double[outline[0].length];
        for (int i = 0; i < px.length; i++) {
            px[i] = x.at(unit.fromSi(outline[1][i]));
            py[i] = y.at(unit.fromSi(outline[0][i]));
        }
        drawing.polyline(
                px,
                py,
                true,
                "class",
                "ellipse",
                "fill",
                mark.color(),
                "fill-opacity",
                "0.07",
                "stroke",
                mark.color(),
                "stroke-width",
                "1.8",
                "stroke-dasharray",
                mark.dashes());
    }

    private void center(SvgDrawing drawing, ClubMark mark, Scale x, Scale y) {
        Ellipse ellipse = ellipses.get(mark);
        if (ellipse == null) {
            return;
        }
        double cx = x.at(unit.fromSi(ellipse.centerY()));
        double cy = y.at(unit.fromSi(ellipse.centerX()));
        String cross = "M" + SvgDrawing.point(cx - 7.0, cy) + "L" + SvgDrawing.point(cx + 7.0, cy) + "M"
                + SvgDrawing.point(cx, cy - 7.0) + "L" + SvgDrawing.point(cx, cy + 7.0);
        drawing.path(cross, "stroke", Palette.PAPER, "stroke-width", "5");
        drawing.path(cross, "class", "center", "stroke", mark.color(), "stroke-width", "2.4");
    }

    private String title() {
        return "Where the balls came down, seen from above";
    }

    private String description() {
        StringBuilder text = new StringBuilder(
                "Landing points by carry and side of the target line, both axes to the" + " same scale.");
        for (ClubMark mark : ClubMark.values()) {
            List<Shot> list = drawn(mark);
            long excluded = list.stream().filter(shot -> !shot.used()).count();
            text.append(' ')
                    .append(shots.club(mark).name())
                    .append(mark == ClubMark.FIRST ? ", circles: " : ", triangles: ")
                    .append(list.size() - excluded)
                    .append(" shots");
            if (excluded > 0) {
                text.append(" and ").append(excluded).append(" excluded, hollow");
            }
            Ellipse ellipse = ellipses.get(mark);
            if (ellipse == null) {
                text.append(", too few for an ellipse.");
            } else {
                double side = unit.fromSi(ellipse.centerY());
                text.append("; centre at ")
                        .append(Decimals.label(unit.fromSi(ellipse.centerX()), 1))
                        .append(" and ")
                        .append(Decimals.label(Math.abs(side), 1))
                        .append(' ')
                        .append(unit.symbol())
                        .append(side < 0.0 ? " left" : " right")
                        .append(", prediction ellipse at 90 % with semi-axes of ")
                        .append(Decimals.label(unit.fromSi(ellipse.semiMajor()), 1))
                        .append(" and ")
                        .append(Decimals.label(unit.fromSi(ellipse.semiMinor()), 1))
                        .append(' ')
                        .append(unit.symbol())
                        .append('.');
            }
            text.append(DrawnShots.thinning(
                    list.size(),
                    shots.all(mark, true, Metric.CARRY, Metric.SIDE).size()));
        }
        return text.toString();
    }
}
