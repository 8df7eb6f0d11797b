package dev.teeward.fitting.summary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.internal.BoundaryIntegral;
import dev.teeward.fitting.internal.DiscProbability;
import dev.teeward.fitting.internal.SymmetricMatrix2;
import dev.teeward.fitting.reference.Evaluators;
import dev.teeward.fitting.reference.ReferenceTable;
import dev.teeward.fitting.reference.ReferenceTable.Row;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Regions, medians, outlines and tolerance factors against mpmath, SciPy, R and NIST, and against closed forms. */
public class PatternReferenceTest {
    private static final Evaluators ROWS = rows();

    /** The rows checked here. */
    public static Set<String> coveredKeys() {
        return ROWS.keys();
    }

    @TestFactory
    Stream<DynamicTest> rowsAreMet() {
        return ROWS.tests();
    }

    @Test
    void coversTheStatedRows() {
        assertEquals(53, coveredKeys().size());
    }

    private static double[] synth(String treatment, String metric) {
        return ReferenceTable.column("synth_blocks", metric, "treatment", treatment);
    }

    private static double given(Row row, String name, double otherwise) {
        Matcher m = Pattern.compile("(?:^|[ ,])" + name + "=(-?[0-9.]+)").matcher(row.parameters());
        return m.find() ? Double.parseDouble(m.group(1)) : otherwise;
    }

    private static BoundaryIntegral point(Row row, double nu) {
        double sx = given(row, "sx", 1.0);
        double sy = given(row, "sy", 1.0);
        return BoundaryIntegral.of(
                new SymmetricMatrix2(sx * sx, given(row, "rho", 0.0) * sx * sy, sy * sy),
                given(row, "mx", 0.0),
                given(row, "my", 0.0),
                nu);
    }

    private static TargetRegion polygon(Row row) {
        Matcher m = Pattern.compile("\\((-?[0-9.]+) +(-?[0-9.]+)\\)").matcher(row.dataset());
        double[] x = new double[10];
        double[] y = new double[10];
        int n = 0;
        while (m.find()) {
            x[n] = Double.parseDouble(m.group(1));
            y[n++] = Double.parseDouble(m.group(2));
        }
        return n == 0
                ? TargetRegion.polygon(new double[] {-1.0, -1.0, 1.0, 1.0}, new double[] {-1.0, 1.0, 1.0, -1.0})
                : TargetRegion.polygon(Arrays.copyOf(x, n), Arrays.copyOf(y, n));
    }

    private static double ellipse(Row row) {
        Matcher m = Pattern.compile("semi-axes (\\S+) (\\S+) centre \\((\\S+) (\\S+)\\) angle (\\S+) rad")
                .matcher(row.dataset());
        assertTrue(m.find(), row.dataset());
        return TargetRegion.ellipse(
                        Double.parseDouble(m.group(3)),
                        Double.parseDouble(m.group(4)),
                        Double.parseDouble(m.group(1)),
                        Double.parseDouble(m.group(2)),
                        Double.parseDouble(m.group(5)))
                .probability(point(row, Double.POSITIVE_INFINITY));
    }

    private static Evaluators rows() {
        Evaluators map = new Evaluators();
        for (int i = 1; i <= 13; i++) {
            map.put("POLY-bvn/" + i, row -> polygon(row).probability(point(row, Double.POSITIVE_INFINITY)));
        }
        for (int i = 1; i <= 9; i++) {
            map.put("POLY-bvt/" + i, row -> polygon(row).probability(point(row, 8.0)));
        }
        for (int i = 1; i <= 4; i++) {
            map.put("ELLP-bvn/" + i, PatternReferenceTest::ellipse);
        }
        for (int i = 1; i <= 4; i++) {
            map.put("TOL-one/" + i, row -> tolerance(row).oneSided((int) given(row, "n", 0.0)));
        }
        for (int i = 1; i <= 5; i++) {
            map.put("TOL-two/" + i, row -> switch (row.quantity()) {
                case "k2" -> tolerance(row).twoSided((int) given(row, "n", 0.0));
                case "k2_howe" -> tolerance(row).twoSidedByHowe((int) given(row, "n", 0.0));
                case "k1_approx" -> tolerance(row).oneSidedByNatrella((int) given(row, "n", 0.0));
                default -> Evaluators.unknown(row);
            });
        }
        for (String treatment : List.of("A", "B")) {
            map.putRow(
                    "DISP-synth/" + (treatment.equals("A") ? 1 : 2) + " extreme_spread",
                    row -> PatternExtent.of(synth(treatment, "u"), synth(treatment, "v"))
                            .extremeSpread());
        }
        map.putRow(
                "PRED-disc/1 P_predictive",
                row -> HoldProbability.predictive(
                        TargetRegion.circle(0.0, 0.0, 3.0), new SymmetricMatrix2(9.0, 3.6, 4.0), 2.0, -1.0, 10));
        GeometricMedian a = GeometricMedian.of(synth("A", "u"), synth("A", "v"));
        GeometricMedian b = GeometricMedian.of(synth("B", "u"), synth("B", "v"));
        GeometricMedian fermat = GeometricMedian.of(new double[] {0.0, 4.0, 0.0}, new double[] {0.0, 0.0, 3.0});
        map.put("GEOMED-synth/1", a.x(), a.y(), a.sumOfDistances());
        map.put("GEOMED-synth/2", b.x(), b.y(), b.sumOfDistances());
        map.put("GEOMED-tri/1", fermat.x(), fermat.y(), fermat.sumOfDistances(), fermat.sumOfDistances());
        return map;
    }

    private static Tolerance tolerance(Row row) {
        String text = row.parameters();
        Matcher m = Pattern.compile("content=([0-9.]+),confidence=([0-9.]+)").matcher(text);
        assertTrue(m.find(), text);
        return Tolerance.of(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2)));
    }

    private static final double[] X = {0.0, 4.0, 4.0, 0.0, 2.0};
    private static final double[] Y = {0.0, 0.0, 3.0, 3.0, 1.0};

    /** A rectangle of 4 by 3 with a point inside: everything in closed form. */
    @Test
    void outlineOfARectangle() {
        PatternExtent e = PatternExtent.of(X, Y);
        assertEquals(5.0, e.extremeSpread(), 1e-14);
        assertEquals(12.0, e.hullArea(), 1e-14);
        assertEquals(2.5, e.circleRadius(), 1e-12);
        assertEquals(2.0, e.circleCenter()[0], 1e-12);
        assertEquals(4, e.hull().length);
        assertEquals(5, e.n());
        PatternExtent acute = PatternExtent.of(new double[] {0.0, 2.0, 1.0}, new double[] {0.0, 0.0, Math.sqrt(3.0)});
        assertEquals(2.0 / Math.sqrt(3.0), acute.circleRadius(), 1e-12);
        PatternExtent same = PatternExtent.of(new double[] {7.0, 7.0}, new double[] {1.0, 1.0});
        assertEquals(0.0, same.circleRadius());
        assertEquals(0.0, same.hullArea());
        PatternExtent line = PatternExtent.of(new double[] {0.0, 1.0, 2.0}, new double[] {0.0, 1.0, 2.0});
        assertEquals(Math.sqrt(8.0), line.extremeSpread(), 1e-14);
        assertEquals(Math.sqrt(2.0), line.circleRadius(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> PatternExtent.of(new double[0], new double[0]));
    }

    @Test
    void mediansOfSpecialPatterns() {
        // A shot that the others pull with no more than its own weight is the median: the centre of a cross.
        GeometricMedian cross =
                GeometricMedian.of(new double[] {0.0, 1.0, -1.0, 0.0, 0.0}, new double[] {0.0, 0.0, 0.0, 1.0, -1.0});
        assertEquals(0.0, Math.hypot(cross.x(), cross.y()), 1e-12);
        assertEquals(4.0, cross.sumOfDistances(), 1e-12);
        GeometricMedian one = GeometricMedian.of(new double[] {3.0}, new double[] {-2.0});
        assertEquals(3.0, one.x());
        GeometricMedian line = GeometricMedian.of(new double[] {0.0, 1.0, 5.0}, new double[] {0.0, 0.0, 0.0});
        assertEquals(1.0, line.x(), 1e-12);
        // Three points with an angle of more than 120 degrees: its corner.
        GeometricMedian corner = GeometricMedian.of(new double[] {0.0, 1.0, -0.1}, new double[] {0.0, 0.05, 0.05});
        assertEquals(0.0, Math.hypot(corner.x(), corner.y()), 1e-9);
    }

    @Test
    void regionsKnowWhatTheyContain() {
        TargetRegion square =
                TargetRegion.polygon(new double[] {0.0, 4.0, 4.0, 0.0}, new double[] {0.0, 0.0, 3.0, 3.0});
        assertTrue(square.contains(4.0, 1.0) && square.contains(1.0, 1.0));
        assertFalse(square.contains(4.1, 1.0));
        assertEquals(12.0, square.area(), 1e-14);
        TargetRegion tilted = TargetRegion.ellipse(1.0, 2.0, 3.0, 1.0, Math.PI / 2.0);
        assertTrue(tilted.contains(1.0, 4.9));
        assertFalse(tilted.contains(3.9, 2.0));
        assertEquals(3.0 * Math.PI, tilted.area(), 1e-12);
        assertTrue(tilted.toString().startsWith("ellipse") && square.toString().startsWith("polygon"));
        assertThrows(
                IllegalArgumentException.class,
                () -> TargetRegion.polygon(new double[] {0.0, 1.0, 0.0, 1.0}, new double[] {0.0, 1.0, 1.0, 0.0}));
        assertThrows(IllegalArgumentException.class, () -> TargetRegion.circle(0.0, 0.0, 0.0));
    }

    /** A circle by its border and by the disc's own integral; a huge region holds everything, a far one next to nothing. */
    @Test
    void circlesAgreeWithDiscs() {
        SymmetricMatrix2 s = new SymmetricMatrix2(9.0, 3.6, 4.0);
        BoundaryIntegral point = BoundaryIntegral.of(s, 2.0, -1.0, Double.POSITIVE_INFINITY);
        double disc = DiscProbability.of(s, 2.0, -1.0).probability(3.0);
        assertEquals(disc, TargetRegion.circle(0.0, 0.0, 3.0).probability(point), 1e-13);
        assertEquals(disc, TargetRegion.circle(0.0, 0.0, 3.0).probability(point.coarse()), 1e-6);
        assertEquals(1.0, TargetRegion.circle(0.0, 0.0, 1e5).probability(point), 1e-12);
        double[] far = {1e3, 1e3 + 1.0, 1e3};
        assertEquals(
                0.0, TargetRegion.polygon(far, new double[] {0.0, 0.0, 1.0}).probability(point), 1e-300);
        double[] wide = {-1e6, 1e6, 1e6, -1e6};
        assertEquals(
                1.0,
                TargetRegion.polygon(wide, new double[] {-1e6, -1e6, 1e6, 1e6}).probability(point),
                1e-12);
        // A half plane through the mean, as far as a large box goes.
        BoundaryIntegral plain = BoundaryIntegral.of(new SymmetricMatrix2(1.0, 0.0, 1.0), 0.0, 0.0, 5.0);
        double[] right = {0.0, 1e7, 1e7, 0.0};
        assertEquals(
                0.5,
                TargetRegion.polygon(right, new double[] {-1e7, -1e7, 1e7, 1e7}).probability(plain),
                1e-12);
    }

    @Test
    void holdProbabilityOfManyShotsIsTheShare() {
        Random random = new Random(8L);
        double[] carry = random.doubles(2_000).map(v -> 150.0).toArray();
        double[] side = new double[2_000];
        Arrays.setAll(carry, i -> 150.0 + 6.0 * random.nextGaussian());
        Arrays.setAll(side, i -> 4.0 * random.nextGaussian());
        TargetRegion green =
                TargetRegion.polygon(new double[] {145.0, 155.0, 155.0, 145.0}, new double[] {-5, -5, 5, 5});
        HoldProbability.Result r = HoldProbability.withDefaults().withDraws(299).estimate(green, carry, side);
        // P(|Z| < 5/6) P(|Z| < 5/4), from the normal table: 0.59534 times 0.78870.
        assertEquals(0.59534 * 0.78870, r.probability().orElseThrow().value(), 0.03);
        assertEquals(r.share().value(), r.probability().orElseThrow().value(), 0.03);
        assertTrue(r.probability().orElseThrow().interval().contains(r.share().value()));
        assertEquals(2_000, r.n());
        assertTrue(r.method().contains("1998 degrees"));
    }

    @Test
    void holdProbabilityOfFewShots() {
        double[] carry = {150.0, 152.0, 149.0, 155.0, 147.0, 151.0, 150.5, 148.0, 153.0, 149.5};
        double[] side = {1.0, -2.0, 3.0, 0.5, -1.0, 2.0, -3.0, 0.0, 1.5, -0.5};
        TargetRegion circle = TargetRegion.circle(150.0, 0.0, 3.0);
        HoldProbability p =
                HoldProbability.withDefaults().withLevel(0.9).withSeed(2L).withDraws(499);
        HoldProbability.Result r = p.estimate(circle, carry, side);
        assertTrue(r.probability().orElseThrow().value() < r.plugIn().orElseThrow());
        assertTrue(r.probability().orElseThrow().interval().width() > 0.2);
        assertEquals(r.probability(), p.estimate(circle, carry, side).probability());
        // The Wilson interval of 7 of 10 at 95 % is 0.397 to 0.892 (Hipparchus, R).
        HoldProbability.Result seven = HoldProbability.withDefaults()
                .withDraws(99)
                .estimate(
                        TargetRegion.circle(0.0, 0.0, 1.0),
                        new double[] {0, .1, .2, .3, .4, .5, .6, 9, 8, 7},
                        side01());
        assertEquals(7, seven.count());
        assertEquals(0.397, seven.share().interval().lower(), 5e-4);
        assertEquals(0.892, seven.share().interval().upper(), 5e-4);
        HoldProbability.Result line = p.estimate(circle, new double[] {149.0, 150.0, 151.0}, new double[3]);
        assertTrue(line.probability().isEmpty() && line.warnings().get(0).code().equals("no-spread"));
        assertEquals(3, line.count());
        assertEquals(
                List.of("few-shots"),
                p.estimate(circle, new double[] {149.0, 150.0, 151.0}, new double[] {0.0, 1.0, 0.0}).warnings().stream()
                        .map(w -> w.code())
                        .toList());
        assertThrows(IllegalArgumentException.class, () -> p.estimate(circle, new double[2], new double[2]));
        assertThrows(IllegalArgumentException.class, () -> p.withDraws(98));
    }

    private static double[] side01() {
        return new double[] {.1, 0, .1, 0, .1, 0, .1, 0, .1, 0};
    }

    /** The simulated tolerance ellipse of many shots is that of the content; of ten shots it holds its confidence. */
    @Test
    void toleranceEllipse() {
        Tolerance nine = Tolerance.of(0.9, 0.95);
        double many = nine.ellipse(2_000, 999, 1L);
        assertTrue(many > EllipseKind.CONTENT.scale(0.9, 2_000) && many < 1.1 * EllipseKind.CONTENT.scale(0.9, 2_000));
        double ten = nine.ellipse(10, 4_999, 2L);
        assertTrue(ten > EllipseKind.PREDICTION.scale(0.9, 10));
        Random random = new Random(3L);
        int held = 0;
        for (int r = 0; r < 400; r++) {
            double[] x = random.doubles(10).toArray();
            double[] y = random.doubles(10).toArray();
            Arrays.setAll(x, i -> random.nextGaussian());
            Arrays.setAll(y, i -> random.nextGaussian());
            SymmetricMatrix2 s = SymmetricMatrix2.covarianceOf(x, y);
            double mx = Arrays.stream(x).average().orElseThrow();
            double my = Arrays.stream(y).average().orElseThrow();
            double angle = s.majorAngle();
            double share = BoundaryIntegral.of(new SymmetricMatrix2(1.0, 0.0, 1.0), 0.0, 0.0, Double.POSITIVE_INFINITY)
                    .ellipse(mx, my, Math.sqrt(ten * s.majorEigenvalue()), Math.sqrt(ten * s.minorEigenvalue()), angle);
            held += share >= 0.9 ? 1 : 0;
        }
        // 95 % of 400 is 380 with a standard deviation of 4.4.
        assertEquals(380.0, held, 18.0);
        assertThrows(IllegalArgumentException.class, () -> nine.ellipse(3, 999, 1L));
        assertThrows(IllegalArgumentException.class, () -> nine.ellipse(10, 10, 1L));
        assertThrows(IllegalArgumentException.class, () -> nine.oneSided(1));
        assertThrows(
                IllegalArgumentException.class, () -> Tolerance.of(0.9, 0.99).oneSidedByNatrella(3));
        assertThrows(IllegalArgumentException.class, () -> Tolerance.of(1.0, 0.9));
    }
}
