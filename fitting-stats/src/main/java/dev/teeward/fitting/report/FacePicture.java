package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.summary.Ellipse;
import dev.teeward.fitting.summary.EllipseKind;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Unit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where the balls met the face, looking at the face from the target: the toe is at the left for a right-handed club and at the
 * right for a left-handed one.
 *
 * <p>Strikes and the prediction ellipses at 90 % (of clubs with at least 6 strikes) are to scale; the outline is a sketch of an iron, 80 mm from heel to toe
 * (common practice, no source). Of more than 400 shots of a club 400 are drawn.
 *
 * <pre>{@code
 * Optional<Picture> face = FacePicture.of(result, UnitSystem.US);
 * }</pre>
 */
public final class FacePicture {
    private static final int MOST_SHOTS = 400;
    private static final double TOP = 44.0;

    /** The outline of the sketch, towards the toe and up [m]. */
    private static final double[][] OUTLINE = {
        {
            -0.038, -0.034, -0.022, 0.000, 0.022, 0.034, 0.0395, 0.041, 0.040, 0.036, 0.030, 0.022, 0.000, -0.020,
            -0.034, -0.040
        },
        {
            -0.010, -0.017, -0.0205, -0.0215, -0.0205, -0.017, -0.009, 0.004, 0.017, 0.026, 0.030, 0.029, 0.020, 0.012,
            0.007, 0.002
        }
    };

    private final DrawnShots shots;
    private final Unit unit;
    private final boolean left;
    private final Map<ClubMark, List<Shot>> drawn = new EnumMap<>(ClubMark.class);
    private final Map<ClubMark, Ellipse> ellipses = new EnumMap<>(ClubMark.class);

    private FacePicture(DrawnShots shots, UnitSystem units) {
        this.shots = shots;
        this.unit = Metric.STRIKE_TOE.unit(units);
        this.left = shots.result()
                .session()
                .hand()
                .filter(h -> h == Handedness.LEFT)
                .isPresent();
        for (ClubMark mark : ClubMark.values()) {
            drawn.put(mark, DrawnShots.thinned(shots.all(mark, true, Metric.STRIKE_TOE, Metric.STRIKE_UP), MOST_SHOTS));
            shots.club(mark)
                    .strike()
                    .filter(strike -> strike.n() >= DrawnShots.FEWEST_FOR_OUTLINE)
                    .ifPresent(strike -> ellipses.put(mark, strike.ellipse(EllipseKind.PREDICTION, 0.9)));
        }
    }

    /**
     * Draws the strikes.
     *
     * @param result two clubs compared
     * @param units the family of units
     * @return the picture {@code face}, or empty if no used shot has both strike offsets
     */
    public static Optional<Picture> of(HeadToHeadResult result, UnitSystem units) {
        return of(DrawnShots.of(result), units);
    }

    static Optional<Picture> of(DrawnShots shots, UnitSystem units) {
        FacePicture picture = new FacePicture(shots, units);
        boolean any = picture.drawn.values().stream().flatMap(List::stream).anyMatch(Shot::used);
        return any ? Optional.of(picture.draw()) : Optional.empty();
    }

    private Picture draw() {
        Extent toes = new Extent().add(OUTLINE[0]).add(-0.046);
        Extent ups = new Extent().add(OUTLINE[1]);
        drawn.values()
                .forEach(list -> list.forEach(shot -> {
                    toes.add(shot.value(Metric.STRIKE_TOE));
                    ups.add(shot.value(Metric.STRIKE_UP));
                }));
        Extent across = toes.padded(0.0, 0.03);
        Extent upwards = ups.padded(0.0, 0.06);
        double perMeter = (SvgDrawing.WIDTH - 16.0) / across.width();
        double height = perMeter * upwards.width();
        boolean beside = shots.names().stream().mapToInt(String::length).sum() <= 40;
        double top = beside ? TOP : TOP + 15.0;
        // Looking back from the target, the toe of a right-handed club is at the left.
        Scale x = left
                ? new Scale(across.low(), across.high(), 8.0, SvgDrawing.WIDTH - 8.0)
                : new Scale(across.low(), across.high(), SvgDrawing.WIDTH - 8.0, 8.0);
        Scale y = new Scale(upwards.low(), upwards.high(), top + height, top);
        SvgDrawing drawing = new SvgDrawing("face", "Where the ball met the face", description(), top + height + 22.0);
        double below = ClubMark.legend(
                drawing, 0.0, 13.0, shots.names().get(0), shots.names().get(1), "mark");
        drawing.text(0.0, below, "start", key(), "font-size", "11", "fill", Palette.SOFT);
        face(drawing, x, y);
        for (ClubMark mark : ClubMark.values()) {
            ellipse(drawing, mark, x, y);
        }
        for (ClubMark mark : ClubMark.values()) {
            mark.draw(
                    drawing,
                    drawn(mark).stream()
                            .map(shot -> new PlacedShot(
                                    x.at(shot.value(Metric.STRIKE_TOE)),
                                    y.at(shot.value(Metric.STRIKE_UP)),
                                    shots.kind(shot)))
                            .toList(),
                    3.4);
        }
        labels(drawing, x, y);
        return drawing.finish();
    }

    private List<Shot> drawn(ClubMark mark) {
        return drawn.getOrDefault(mark, List.of());
    }

    private static void face(SvgDrawing drawing, Scale x, Scale y) {
        double[] px = new double[OUTLINE[0].length];
        double[] py = new double[OUTLINE[0].length];
        for (int i = 0; i < px.length; i++) {
            px[i] = x.at(OUTLINE[0][i]);
            py[i] = y.at(OUTLINE[1][i]);
        }
        drawing.path(
                smooth(px, py),
                "class",
                "outline",
                "fill",
                Palette.BAND,
                "stroke",
                Palette.SOFT,
                "stroke-width",
                "1.4");
        drawing.group("stroke", Palette.GRID, "stroke-width", "1.4");
        for (int i = -3; i <= 2; i++) {
            double up = y.at(0.005 * i);
            drawing.line(x.at(-0.026), up, x.at(0.026), up);
        }
        drawing.end();
        drawing.group("stroke", Palette.SOFT, "stroke-width", "1.2", "stroke-dasharray", "2 3");
        drawing.line(x.at(-0.006), y.at(0.0), x.at(0.006), y.at(0.0));
        drawing.line(x.at(0.0), y.at(-0.006), x.at(0.0), y.at(0.006));
        drawing.end();
    }

    /** A closed curve through the middles of the sides of a polygon, with its corners as control points. */
    private static String smooth(double[] x, double[] y) {
        int n = x.length;
        StringBuilder path =
                new StringBuilder("M").append(SvgDrawing.point(0.5 * (x[n - 1] + x[0]), 0.5 * (y[n - 1] + y[0])));
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            path.append('Q')
                    .append(SvgDrawing.point(x[i], y[i]))
                    .append(' ')
                    .append(SvgDrawing.point(0.5 * (x[i] + x[j]), 0.5 * (y[i] + y[j])));
        }
        return path.append('Z').toString();
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
            px[i] = x.within(outline[0][i]);
            py[i] = y.within(outline[1][i]);
        }
        drawing.polyline(
                px,
                py,
                true,
                "class",
                "ellipse",
                "fill",
                "none",
                "stroke",
                mark.color(),
                "stroke-width",
                "1.6",
                "stroke-dasharray",
                mark.dashes());
    }

    private void labels(SvgDrawing drawing, Scale x, Scale y) {
        drawing.group("font-size", "11", "fill", Palette.SOFT);
        double base = y.from() + 14.0;
        double toe = x.at(x.high());
        double heel = x.at(x.low());
        drawing.text(toe, base, toe < heel ? "start" : "end", toe < heel ? "\u2190 toe" : "toe \u2192");
        drawing.text(heel, base, heel < toe ? "start" : "end", heel < toe ? "\u2190 heel" : "heel \u2192");
        double half = 0.5 * unit.toSi(10.0) * x.perUnit();
        double middle = 0.5 * SvgDrawing.WIDTH;
        drawing.line(
                middle - half, base - 9.0, middle + half, base - 9.0, "stroke", Palette.SOFT, "stroke-width", "1.4");
        drawing.text(middle, base + 4.0, "middle", "10 " + unit.symbol());
        drawing.end();
    }

    private String key() {
        String hand = shots.result().session().hand().isPresent()
                ? (left ? "left-handed club" : "right-handed club")
                : "drawn right-handed, the hand is not given";
        return hand + (ellipses.isEmpty() ? "; " + DrawnShots.NO_OUTLINE : "; outlines: 90 % prediction ellipses");
    }

    private String description() {
        StringBuilder text = new StringBuilder("The face seen from the target, toe at the ")
                .append(left ? "right" : "left")
                .append(", with the strikes to scale on a sketch of a face.");
        for (ClubMark mark : ClubMark.values()) {
            List<Shot> list = drawn(mark);
            long used = list.stream().filter(Shot::used).count();
            text.append(' ')
                    .append(shots.club(mark).name())
                    .append(mark == ClubMark.FIRST ? ", circles: " : ", triangles: ")
                    .append(used)
                    .append(" strikes");
            if (used < list.size()) {
                text.append(" and ").append(list.size() - used).append(" excluded, hollow");
            }
            Ellipse ellipse = ellipses.get(mark);
            if (ellipse != null) {
                text.append("; centre ")
                        .append(Decimals.label(unit.fromSi(Math.abs(ellipse.centerX())), 1))
                        .append(' ')
                        .append(unit.symbol())
                        .append(ellipse.centerX() < 0.0 ? " towards the heel and " : " towards the toe and ")
                        .append(Decimals.label(unit.fromSi(Math.abs(ellipse.centerY())), 1))
                        .append(' ')
                        .append(unit.symbol())
                        .append(ellipse.centerY() < 0.0 ? " low" : " high");
            }
            text.append('.')
                    .append(DrawnShots.thinning(
                            list.size(),
                            shots.all(mark, true, Metric.STRIKE_TOE, Metric.STRIKE_UP)
                                    .size()));
        }
        return text.toString();
    }
}
