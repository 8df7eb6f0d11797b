package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The surface through a grid: through its values, smooth, in order, and without bumps of its own. */
class CoefficientSurfaceTest {
    private static final int TABLES = 300;
    private static final int POINTS = 400;

    /** A grid with uneven axes of 2 to 6 nodes. */
    private static final class Grid {
        final double[] x;
        final double[] y;
        final double[] f;

        Grid(double[] x, double[] y, double[] f) {
            this.x = x;
            this.y = y;
            this.f = f;
        }

        static Grid random(SplittableRandom random, boolean monotone) {
            double[] x = axis(random);
            double[] y = axis(random);
            double[] f = new double[x.length * y.length];
            for (int i = 0; i < x.length; i++) {
                for (int j = 0; j < y.length; j++) {
                    double before = i == 0 ? 0.0 : f[(i - 1) * y.length + j];
                    double below = j == 0 ? 0.0 : f[i * y.length + j - 1];
                    // Steps of very different size, every third of them none.
                    double step = random.nextInt(3) == 0 ? 0.0 : Math.pow(10.0, random.nextDouble(-3.0, 1.0));
                    f[i * y.length + j] = monotone ? Math.max(before, below) + step : random.nextDouble(-1.0, 1.0);
                }
            }
            return new Grid(x, y, f);
        }

        private static double[] axis(SplittableRandom random) {
            double[] nodes = new double[random.nextInt(2, 7)];
            for (int i = 1; i < nodes.length; i++) {
                nodes[i] = nodes[i - 1] + random.nextDouble(0.1, 2.0);
            }
            return nodes;
        }

        CoefficientSurface surface() {
            return new CoefficientSurface(x, y, f);
        }

        double value(int i, int j) {
            return f[i * y.length + j];
        }

        double size() {
            return Arrays.stream(f).map(Math::abs).max().orElse(0.0);
        }
    }

    @Test
    void goesThroughEveryValue() {
        SplittableRandom random = new SplittableRandom(1L);
        for (int table = 0; table < TABLES; table++) {
            Grid grid = Grid.random(random, table % 2 == 0);
            CoefficientSurface surface = grid.surface();
            for (int i = 0; i < grid.x.length; i++) {
                for (int j = 0; j < grid.y.length; j++) {
                    assertEquals(grid.value(i, j), surface.at(grid.x[i], grid.y[j]));
                }
            }
        }
    }

    /**
     * SciPy's PchipInterpolator (monotone_cubic.py), which the slopes are on every line, and the surface on lines that need no
     * flatter ones.
     */
    @Test
    void isSciPysMonotoneCubicAlongALine() throws IOException {
        Map<String, Grid> lines = Map.of(
                "uneven", line(new double[] {0.0, 1.0, 1.5, 4.0, 4.25, 7.0}, 0.0, 0.2, 0.9, 1.1, 1.15, 1.2),
                "peak", line(new double[] {0.05, 0.1, 0.2, 0.4, 0.6}, 0.1, 0.2, 0.3, 0.28, 0.2),
                "plateau", line(new double[] {8e4, 1e5, 1.2e5, 1.6e5, 2.4e5}, 0.3, 0.26, 0.24, 0.24, 0.235));
        String name = "monotone_cubic.csv";
        int compared = 0;
        try (InputStream in = Objects.requireNonNull(CoefficientSurfaceTest.class.getResourceAsStream(name), name);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            List<String> rows =
                    reader.lines().filter(row -> !row.startsWith("#")).toList();
            for (String row : rows.subList(1, rows.size())) {
                String[] cells = row.split(",", -1);
                Grid line = Objects.requireNonNull(lines.get(cells[0]));
                double at = Double.parseDouble(cells[1]);
                double expected = Double.parseDouble(cells[2]);
                assertEquals(expected, cubic(line, at), 1e-14, row);
                if (!cells[0].equals("uneven")) {
                    assertEquals(expected, line.surface().at(at, 0.3), 1e-14, row);
                }
                compared++;
            }
        }
        assertEquals(69, compared);
    }

    /** The cubics with these slopes, in powers. */
    private static double cubic(Grid line, double at) {
        double[] values = new double[line.x.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = line.value(i, 0);
        }
        double[] slopes = MonotoneSlopes.of(line.x, values);
        int i = 0;
        while (i < line.x.length - 2 && at > line.x[i + 1]) {
            i++;
        }
        double h = line.x[i + 1] - line.x[i];
        double secant = (values[i + 1] - values[i]) / h;
        double t = at - line.x[i];
        double second = (3.0 * secant - 2.0 * slopes[i] - slopes[i + 1]) / h;
        double third = (slopes[i] + slopes[i + 1] - 2.0 * secant) / (h * h);
        return values[i] + t * (slopes[i] + t * (second + t * third));
    }

    /** The same values in both columns. */
    private static Grid line(double[] x, double... values) {
        double[] f = new double[2 * x.length];
        for (int i = 0; i < f.length; i++) {
            f[i] = values[i / 2];
        }
        return new Grid(x, new double[] {0.0, 1.0}, f);
    }

    /** A monotone table gives a surface that is monotone along every line, not only along those of the grid. */
    @Test
    void risesWhereTheTableRises() {
        SplittableRandom random = new SplittableRandom(2L);
        for (int table = 0; table < TABLES; table++) {
            Grid grid = Grid.random(random, true);
            CoefficientSurface surface = grid.surface();
            double rounding = 1e-12 * grid.size();
            for (int point = 0; point < POINTS; point++) {
                double u = random.nextDouble(-0.5, grid.x[grid.x.length - 1] + 0.5);
                double v = random.nextDouble(-0.5, grid.y[grid.y.length - 1] + 0.5);
                double step = Math.pow(10.0, random.nextDouble(-6.0, 0.0));
                assertTrue(surface.at(u + step, v) - surface.at(u, v) >= -rounding, () -> "along x at " + u + ", " + v);
                assertTrue(surface.at(u, v + step) - surface.at(u, v) >= -rounding, () -> "along y at " + u + ", " + v);
            }
        }
    }

    /** Any table: within a cell no value beyond the four around it, and the order that both edges have. */
    @Test
    void staysWithinEachCellsCornersAndOrder() {
        SplittableRandom random = new SplittableRandom(3L);
        for (int table = 0; table < TABLES; table++) {
            Grid grid = Grid.random(random, false);
            CoefficientSurface surface = grid.surface();
            for (int point = 0; point < POINTS; point++) {
                int i = random.nextInt(grid.x.length - 1);
                int j = random.nextInt(grid.y.length - 1);
                double a = grid.value(i, j);
                double b = grid.value(i + 1, j);
                double c = grid.value(i, j + 1);
                double d = grid.value(i + 1, j + 1);
                double u = random.nextDouble(grid.x[i], grid.x[i + 1]);
                double v = random.nextDouble(grid.y[j], grid.y[j + 1]);
                double value = surface.at(u, v);
                assertTrue(value >= Math.min(Math.min(a, b), Math.min(c, d)) - 1e-12);
                assertTrue(value <= Math.max(Math.max(a, b), Math.max(c, d)) + 1e-12);
                double further = random.nextDouble(u, grid.x[i + 1]);
                double change = surface.at(further, v) - value;
                assertTrue(!(b >= a && d >= c) || change >= -1e-12);
                assertTrue(!(b <= a && d <= c) || change <= 1e-12);
            }
        }
    }

    /**
     * Two rows in order whose cubics of one axis cross: 0 to 1 over [1, 2], the lower row steep at first (it comes from far
     * below), the upper one steep at last (it goes far up).
     */
    @Test
    void rowsInOrderStayInOrderWhereTheirCubicsCross() {
        double[] x = {0.0, 1.0, 2.0, 3.0};
        double[] lower = {-9.0, 0.0, 1.0, 1.0};
        double[] upper = {0.0, 0.0, 1.0, 9.0};
        double[] values = new double[8];
        for (int i = 0; i < 4; i++) {
            values[2 * i] = lower[i];
            values[2 * i + 1] = upper[i];
        }
        double[] below = MonotoneSlopes.of(x, lower);
        double[] above = MonotoneSlopes.of(x, upper);
        // At the middle of [1, 2] a cubic is the mean of the ends plus an eighth of the difference of the slopes.
        assertTrue(0.5 + (below[1] - below[2]) / 8.0 > 0.5 + (above[1] - above[2]) / 8.0, "the cubics cross");
        CoefficientSurface surface = new CoefficientSurface(x, new double[] {0.0, 1.0}, values);
        for (double u = 0.0; u <= 3.0; u += 0.01) {
            assertTrue(surface.at(u, 1.0) >= surface.at(u, 0.0) - 1e-12, "at " + u);
            for (double v = 0.0; v < 1.0; v += 0.1) {
                assertTrue(surface.at(u, v + 0.1) >= surface.at(u, v) - 1e-12, "at " + u + ", " + v);
            }
        }
    }

    /** Both one-sided slopes at the borders of the cells, by differences: equal but for curvature times the step. */
    @Test
    void gradientIsContinuousAcrossCells() {
        SplittableRandom random = new SplittableRandom(4L);
        double h = 1e-6;
        for (int table = 0; table < TABLES; table++) {
            Grid grid = Grid.random(random, table % 2 == 0);
            CoefficientSurface surface = grid.surface();
            // A cubic's second derivative over a cell of 0.1: at most some 10 ranges over the square of that.
            double tolerance = 100.0 * 10.0 * 2.0 * grid.size() * h;
            for (int i = 1; i < grid.x.length - 1; i++) {
                double v = random.nextDouble(grid.y[0], grid.y[grid.y.length - 1]);
                double at = surface.at(grid.x[i], v);
                double left = (at - surface.at(grid.x[i] - h, v)) / h;
                double right = (surface.at(grid.x[i] + h, v) - at) / h;
                assertEquals(left, right, tolerance);
                double across = (surface.at(grid.x[i] - h, v + h) - surface.at(grid.x[i] - h, v)) / h;
                double beyond = (surface.at(grid.x[i] + h, v + h) - surface.at(grid.x[i] + h, v)) / h;
                assertEquals(across, beyond, tolerance);
            }
            for (int j = 1; j < grid.y.length - 1; j++) {
                double u = random.nextDouble(grid.x[0], grid.x[grid.x.length - 1]);
                double at = surface.at(u, grid.y[j]);
                double below = (at - surface.at(u, grid.y[j] - h)) / h;
                double above = (surface.at(u, grid.y[j] + h) - at) / h;
                assertEquals(below, above, tolerance);
            }
        }
    }
}
