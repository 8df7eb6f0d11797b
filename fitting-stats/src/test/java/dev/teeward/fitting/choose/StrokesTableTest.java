package dev.teeward.fitting.choose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.io.InputException;
import dev.teeward.fitting.summary.TargetRegion;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Length;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The baseline and what approach shots are worth by it, by hand. */
class StrokesTableTest {
    private static final String TABLE = """
        lie,distance_m,strokes
        green,2,1.5
        green,10,1.9
        rough,10,2.5
        rough,110,3.1
        fairway,50,2.6
        fairway,200,3.2
        """;
    private static final StrokesTable STROKES = StrokesTable.read(TABLE, "table");

    private static double strokes(String lie, double meters) {
        return STROKES.strokes(lie, Length.ofMeters(meters));
    }

    @Test
    void straightBetweenTheRows() {
        assertEquals(1.9, strokes("green", 10.0), 1e-12);
        assertEquals(1.7, strokes("green", 6.0), 1e-12);
        assertEquals(1.5, strokes("green", 0.5), 1e-12);
        assertEquals(0.0, strokes("green", 0.0), 0.0);
        assertEquals(2.8, strokes("rough", 60.0), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> strokes("green", 10.1));
        assertThrows(IllegalArgumentException.class, () -> strokes("sand", 5.0));
        assertThrows(IllegalArgumentException.class, () -> strokes("green", -1.0));
        assertEquals(Set.of("green", "rough", "fairway"), STROKES.lies());
    }

    /** 109.361 yd and 328.084 ft are 100 m. */
    @Test
    void unitsOfTheColumn() {
        StrokesTable yards = StrokesTable.read("lie,distance_yd,strokes\nrough,109.361,3\nrough,218.722,4\n", "yards");
        assertEquals(3.5, yards.strokes("rough", Length.ofMeters(150.0)), 1e-5);
        StrokesTable feet = StrokesTable.read("lie,distance_ft,strokes\nrough,328.084,3\nrough,656.168,4\n", "feet");
        assertEquals(3.5, feet.strokes("rough", Length.ofMeters(150.0)), 1e-5);
    }

    @Test
    void refusesTablesThatCannotBeRight() {
        for (String bad : new String[] {
            "lie,strokes\nrough,3\n",
            "distance_m,strokes\n10,3\n",
            "lie,distance_m\nrough,3\n",
            "lie,distance_m,distance_yd,strokes\nrough,10,11,3\n",
            "lie,distance_m,strokes\nrough,ten,3\n",
            "lie,distance_m,strokes\nrough,10,0.5\n",
            "lie,distance_m,strokes\nrough,-1,3\n",
            "lie,distance_m,strokes\nrough,NaN,3\n",
            "lie,distance_m,strokes\n,10,3\n",
            "lie,distance_m,strokes\nrough,10,3\nrough,10,3\n",
            "lie,distance_m,strokes\nrough,10,3\nrough,20,2.9\n"
        }) {
            assertThrows(InputException.class, () -> StrokesTable.read(bad, "bad"), bad);
        }
    }

    /** From memory: about 2.8 from 100 yd of fairway, more from the rough. */
    @Test
    void theExampleIsAnExample() {
        StrokesTable example = StrokesTable.example();
        assertEquals(2.8, example.strokes("fairway", Length.ofYards(100.0)), 1e-9);
        for (double yards = 20.0; yards <= 240.0; yards += 5.0) {
            Length far = Length.ofYards(yards);
            assertTrue(example.strokes("rough", far) > example.strokes("fairway", far));
        }
    }

    /** One ball 6 m past the hole on the green (1.7), one 10 m right of it in the rough (2.5); from 150 m the baseline is 3.0. */
    @Test
    void approachShotsByHand() {
        TargetRegion green = TargetRegion.circle(150.0, 0.0, 8.0);
        ApproachStrokes approach = ApproachStrokes.of(STROKES, Length.ofMeters(150.0), green);
        assertEquals(3.0, approach.before(), 1e-12);
        assertEquals(1.7, approach.after(156.0, 0.0), 1e-12);
        double[] carry = {156.0, 150.0};
        double[] side = {0.0, 10.0};
        Estimate after = approach.after(carry, side);
        assertEquals(2.1, after.value(), 1e-12);
        // t quantile 12.706 at 1 df (tables) times sd 0.8 / sqrt 2 over sqrt 2.
        assertEquals(12.706 * 0.4, after.interval().upper() - 2.1, 1e-3);
        assertEquals(-0.1, approach.gained(carry, side).value(), 1e-12);
        assertEquals(2.5, approach.withLies("fairway", "rough", "rough").after(150.0, 10.0), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> approach.withLies("fairway", "green", "sand"));
        assertThrows(IllegalArgumentException.class, () -> approach.after(10.0, 0.0));
    }
}
