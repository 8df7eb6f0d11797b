package dev.teeward.flight.aero;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * Models and laws against the rows of aero_coefficients.csv, each of which says whether it was seen, remembered or worked
 * out from a remembered formula; and what is promised for laws that know only half.
 */
class PublishedModelsTest {
    /** A row: the words before the numbers, Reynolds number, spin ratio, and the coefficients, NaN where there is none. */
    private record Row(String source, double re, double s, double drag, double lift) {}

    private static List<Row> rows(String start) throws IOException {
        List<Row> rows = new ArrayList<>();
        String name = "aero_coefficients.csv";
        try (InputStream in = Objects.requireNonNull(PublishedModelsTest.class.getResourceAsStream(name), name);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                // A comma that separates has an even number of quotes after it.
                String[] cells = line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1);
                if (cells.length == 7 && cells[0].replace("\"", "").startsWith(start)) {
                    rows.add(new Row(cells[0], number(cells[2]), number(cells[3]), number(cells[4]), number(cells[5])));
                }
            }
        }
        return rows;
    }

    private static double number(String cell) {
        return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
    }

    /** Rows worked out from the formula as remembered, printed to four digits. */
    @Test
    void smitsAndSmithGivesItsRows() throws IOException {
        List<Row> rows = rows("Smits & Smith 1994");
        assertEquals(32, rows.size());
        for (Row row : rows) {
            assertEquals(row.drag, SmitsSmith1994.of().dragCoefficient(row.re, row.s), 0.5e-4 + 1e-12, row::toString);
            assertEquals(row.lift, SmitsSmith1994.of().liftCoefficient(row.re, row.s), 0.5e-4 + 1e-12, row::toString);
        }
    }

    /**
     * Rows worked out from the forces in pounds, from memory. The coefficients 0.30 + 0.35 S and 0.317 are rounded to those
     * digits, so half a unit of each may be missing: 0.005 + 0.005 S, and 0.0005 with 0.0005 for the rows' own rounding.
     */
    @Test
    void daviesGivesItsRows() throws IOException {
        List<Row> rows = rows("Davies 1949");
        assertEquals(9, rows.size());
        for (Row row : rows) {
            double drag = Davies1949.of().dragCoefficient(row.re, row.s);
            assertEquals(row.drag, drag, 0.005 + 0.005 * row.s, row::toString);
            assertEquals(row.lift, Davies1949.of().liftCoefficient(row.re, row.s), 0.001, row::toString);
            assertTrue(Davies1949.of().domain().contains(row.re, row.s), row::toString);
        }
    }

    /** The pounds themselves: 0.064 lb of lift at most, 0.06 to 0.10 lb of drag, at 105 ft/s; 1 lb is 4.4482216 N. */
    @Test
    void daviesGivesThePounds() {
        double feet = 105.0 * 0.3048;
        double pound = 0.5 * 1.225 * Math.PI * 0.021335 * 0.021335 * feet * feet / 4.4482216152605;
        double at8000 = 0.021335 * 8_000.0 * Math.PI / 30.0 / feet;
        assertEquals(0.064, pound * Davies1949.of().liftCoefficient(9.1e4, 1e6), 0.0002);
        assertEquals(0.060, pound * Davies1949.of().dragCoefficient(9.1e4, 0.0), 0.001);
        assertEquals(0.100, pound * Davies1949.of().dragCoefficient(9.1e4, at8000), 0.001);
        double half = 0.064 * (1.0 - Math.exp(-0.00026 * 4_000.0));
        assertEquals(half, pound * Davies1949.of().liftCoefficient(9.1e4, at8000 / 2.0), 0.0002);
        assertTrue(Davies1949.of().domain().contains(9.1e4, at8000));
    }

    @Test
    void thePatentTableGivesItsRows() throws IOException {
        List<Row> rows = rows("US6729976");
        assertEquals(7, rows.size());
        for (Row row : rows) {
            for (DragLaw law : List.of(Us6729976.dragByReynoldsNumber(), Us6729976.dragBySpinRatio())) {
                assertEquals(row.drag, law.dragCoefficient(row.re, row.s), 0.5e-3, row::toString);
                assertTrue(law.domain().contains(row.re, row.s));
            }
            for (LiftLaw law : List.of(Us6729976.liftByReynoldsNumber(), Us6729976.liftBySpinRatio())) {
                assertEquals(row.lift, law.liftCoefficient(row.re, row.s), 0.5e-3, row::toString);
            }
        }
        assertEquals(0.2206, Us6729976.rows().get(4).drag(), 0.5e-4);
    }

    /** What the line cannot know: off it, the choice of coordinate decides, and beyond its ends it says nothing new. */
    @Test
    void thePatentTableDependsOnWhatWasChosen() {
        double fast = Us6729976.dragByReynoldsNumber().dragCoefficient(230e3, 0.211);
        double spinning = Us6729976.dragBySpinRatio().dragCoefficient(230e3, 0.211);
        assertEquals(0.222, fast, 0.5e-3);
        assertEquals(0.274, spinning, 0.5e-3);
        assertEquals(
                Us6729976.liftBySpinRatio().liftCoefficient(1e5, 0.211),
                Us6729976.liftBySpinRatio().liftCoefficient(1e5, 0.9));
        assertTrue(Us6729976.liftBySpinRatio().reference().contains("6,729,976"));
    }

    /** Cd = 46/V, V in ft/s (from memory), for a ball of 1.62 in and 1.5e-5 m2/s; 3.85e4 is rounded to three digits. */
    @Test
    void williamsGivesHisLine() throws IOException {
        for (double feet = 180.0; feet <= 280.0; feet += 10.0) {
            double re = feet * 0.3048 * 1.62 * 0.0254 / 1.5e-5;
            assertEquals(46.0 / feet, Williams1959.of().dragCoefficient(re, 0.1), 0.0015 * 46.0 / feet);
            assertTrue(Williams1959.of().domain().contains(re, 3.0), () -> "Re " + re);
        }
        List<Row> rows = rows("Williams 1959");
        assertEquals(5, rows.size());
        for (Row row : rows) {
            // The rows round Reynolds numbers to 1e3 and drag to 1e-3.
            double rounding = 0.5e-3 + (0.0015 + 0.5e3 / row.re) * row.drag;
            assertEquals(row.drag, Williams1959.of().dragCoefficient(row.re, 0.1), rounding, row::toString);
        }
        assertEquals(0.5, Williams1959.of().dragCoefficient(0.0, 0.0));
        assertEquals(0.5, Williams1959.of().dragCoefficient(7.7e4, 0.0), 1e-12);
        assertEquals(0.2, Williams1959.of().dragCoefficient(1.925e5, 0.1), 1e-12);
    }

    /** Cl = 1.99 S - 3.25 S^2 (from memory): peak 0.305 at 0.306. */
    @Test
    void lyuGivesItsParabolaUpToItsPeak() throws IOException {
        List<Row> rows = rows("Lyu/Kensrud/Smith/Tosaya 2018");
        assertEquals(7, rows.size());
        for (Row row : rows) {
            assertEquals(row.lift, Lyu2018.of().liftCoefficient(row.re, row.s), 0.5e-4 + 1e-12, row::toString);
            assertTrue(Lyu2018.of().domain().contains(row.re, row.s), row::toString);
        }
        assertEquals(0.0, Lyu2018.of().liftCoefficient(1e5, 0.0));
        assertEquals(0.1665, Lyu2018.of().liftCoefficient(1e5, 0.1), 1e-12);
        assertEquals(0.268, Lyu2018.of().liftCoefficient(1e5, 0.2), 1e-12);
        assertEquals(0.305, Lyu2018.of().liftCoefficient(1e5, 0.306), 0.0005);
        assertEquals(0.305, Lyu2018.of().liftCoefficient(1e5, 5.0), 0.0005);
        assertEquals(0.306, Lyu2018.of().domain().maxS(), 0.0005);
    }

    @Test
    void halvesCombineOnlyWhereAskedAndOnlyWhereBothWereMeasured() {
        AerodynamicModel both = AerodynamicModel.combining(Williams1959.of(), Lyu2018.of());
        assertEquals(0.2, both.dragCoefficient(1.925e5, 0.1), 1e-12);
        assertEquals(0.1665, both.liftCoefficient(1.925e5, 0.1), 1e-12);
        assertEquals(1.5e5, both.domain().minRe());
        assertEquals(2.35e5, both.domain().maxRe());
        assertEquals(0.037, both.domain().minS());
        assertTrue(
                both.reference().contains("Williams 1959") && both.reference().contains("Lyu"), both.reference());
        assertTrue(both.toString().startsWith("drag: "));
        IllegalArgumentException apart = assertThrows(
                IllegalArgumentException.class, () -> AerodynamicModel.combining(Williams1959.of(), Davies1949.of()));
        assertTrue(
                String.valueOf(apart.getMessage()).contains("Re 150000.0 to 235000.0")
                        && String.valueOf(apart.getMessage()).contains("Re 89000.0 to 93000.0"),
                apart.getMessage());
        DragLaw own = (re, s) -> 0.47;
        assertEquals(ModelDomain.unbounded(), own.domain());
        assertFalse(own.reference().isBlank());
        LiftLaw none = (re, s) -> 0.0;
        assertFalse(none.reference().isBlank());
        assertEquals(
                ModelDomain.unbounded(), AerodynamicModel.combining(own, none).domain());
    }

    @Test
    void singlesStaySingleAndNamed() {
        assertEquals("Davies1949", Davies1949.of().toString());
        assertEquals("Williams1959", Williams1959.of().toString());
        assertEquals("Lyu2018", Lyu2018.of().toString());
        assertTrue(Davies1949.of().reference().contains("from memory"));
        assertTrue(Williams1959.of().reference().contains("drag only"));
        assertTrue(Lyu2018.of().reference().contains("lift only"));
    }
}
