package dev.teeward.fitting.io;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvParseException;
import dev.teeward.fitting.Metric;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.SpeedUnit;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class TableTest {
    private static final String TABLE =
            "# day: warm\nid,ball_speed_mph,launch_angle_deg,carry_m\n007,100,17,\n\"a,\"\"b\"\"\",50.0,-4,120\n";

    @Test
    void columnsAreSiAndTextIsKept() {
        ColumnTable table = TableReader.withDefaults()
                .requiring(Metric.BALL_SPEED)
                .withDefault(Metric.AXIS_TILT, 0.0)
                .read(new StringReader(TABLE), "f");
        assertEquals("f", table.file());
        assertEquals(2, table.rows());
        assertEquals(List.of("id", "ball_speed_mph", "launch_angle_deg", "carry_m"), table.headings());
        assertArrayEquals(new double[] {44.704, 22.352}, table.values(Metric.BALL_SPEED), 1e-12);
        assertArrayEquals(new double[] {0.0, 0.0}, table.values(Metric.AXIS_TILT));
        assertEquals("007", table.text(0, 0));
        assertEquals("a,\"b\"", table.text(1, 0));
        assertEquals("50.0", table.text(1, 1));
        assertEquals(OptionalInt.of(3), table.column("carry_m"));
        assertEquals(OptionalInt.empty(), table.column("carry"));
        assertTrue(table.has(Metric.CARRY));
        assertFalse(table.has(Metric.CARRY, 0));
        assertEquals(120.0, table.value(Metric.CARRY, 1));
        assertThrows(NoSuchElementException.class, () -> table.value(Metric.CARRY, 0));
        assertThrows(NoSuchElementException.class, () -> table.values(Metric.CARRY));
        assertThrows(NoSuchElementException.class, () -> table.values(Metric.APEX));
        assertThrows(IndexOutOfBoundsException.class, () -> table.text(2, 0));
        assertThrows(IndexOutOfBoundsException.class, () -> table.text(0, 4));
        assertEquals(Optional.of(SpeedUnit.MILE_PER_HOUR), table.unit(Metric.BALL_SPEED));
        assertEquals(Optional.empty(), table.unit(Metric.AXIS_TILT));
    }

    @Test
    void computedColumnsFollowThoseOfTheTable() throws IOException {
        ColumnTable table = TableReader.withDefaults()
                .read(TABLE, "f")
                .withComputed(Metric.CARRY, LengthUnit.YARD, new double[] {150.0, -0.0})
                .withComputed(Metric.SIDE, LengthUnit.YARD, new double[] {-0.9144, 1e-9})
                .withComputed(Metric.SMASH_FACTOR, RatioUnit.ONE, new double[] {1.3456, 1.05})
                .withComputed(Metric.CARRY, LengthUnit.YARD, new double[] {0.0, 0.0});
        StringWriter out = new StringWriter();
        TableWriter.withDefaults().write(out, table);
        assertEquals(
                "# day: warm\n"
                        + "id,ball_speed_mph,launch_angle_deg,carry_m,computed_carry_yd,side_yd,smash_factor,computed_computed_carry_yd\n"
                        + "007,100,17,,164.042,-1.000,1.346,0.000\n"
                        + "\"a,\"\"b\"\"\",50.0,-4,120,0.000,0.000,1.050,0.000\n",
                out.toString());
        StringWriter whole = new StringWriter();
        TableWriter.withDefaults().withDecimals(0).write(whole, table);
        assertTrue(whole.toString().contains("007,100,17,,164,-1,1,0\n"), whole.toString());
        assertThrows(
                IllegalArgumentException.class, () -> TableWriter.withDefaults().withDecimals(10));
    }

    @Test
    void separatorAndDecimalMarkAreThoseOfTheInput() throws IOException {
        ColumnTable table = TableReader.withDefaults()
                .read("carry_m;x\n150,5;a,b\n", "f")
                .withComputed(Metric.SIDE, LengthUnit.METER, new double[] {-3.25});
        StringWriter out = new StringWriter();
        TableWriter.withDefaults().write(out, table);
        assertEquals("carry_m;x;side_m\n150,5;a,b;-3,250\n", out.toString());
    }

    @Test
    void wrongComputedColumnsAreRefused() {
        ColumnTable table = TableReader.withDefaults().read(TABLE, "f");
        double[] two = {1.0, 2.0};
        assertThrows(IllegalArgumentException.class, () -> table.withComputed(Metric.SIDE, SpeedUnit.KNOT, two));
        assertThrows(
                IllegalArgumentException.class,
                () -> table.withComputed(Metric.SIDE, LengthUnit.YARD, new double[] {1.0}));
        assertThrows(
                IllegalArgumentException.class,
                () -> table.withComputed(Metric.SIDE, LengthUnit.YARD, new double[] {1.0, Double.NaN}));
        assertThrows(
                IllegalArgumentException.class, () -> TableReader.withDefaults().withDefault(Metric.SPIN_RATE, -1.0));
    }

    /** The reference is the JDK's own correctly rounded parser. */
    @Test
    void numbersAreRoundedAsByTheJdk() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(11L);
        Decimal decimal = new Decimal(false);
        for (int i = 0; i < 100_000; i++) {
            String text = switch (i % 4) {
                case 0 -> Double.toString((random.nextDouble() - 0.5) * 400.0);
                case 1 -> random.nextInt(100_000) + "." + random.nextInt(1_000);
                case 2 -> Double.toString(Double.longBitsToDouble(random.nextLong(0x7FF0_0000_0000_0000L)));
                default -> "-" + random.nextLong(Long.MAX_VALUE) + "." + random.nextLong(Long.MAX_VALUE);
            };
            assertEquals(Double.parseDouble(text), decimal.parse(text), 0.0, text);
        }
        for (String good : List.of(".5", "5.", "+5", "-5e-3", "5E2", "000012.50", "-0")) {
            assertEquals(Double.parseDouble(good) + 0.0, decimal.parse(good), good);
        }
        for (String bad : List.of("", ".", "-", "+-5", "5e", "e5", "5 5", "1_000", "\u0665", "5f", "1,5", "--5")) {
            assertTrue(Double.isNaN(decimal.parse(bad)), bad);
        }
    }

    @Test
    void aHundredThousandRowsAreRead() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(3L);
        StringBuilder text = new StringBuilder("id,ball_speed_mph,launch_angle_deg,spin_rate_rpm,axis_tilt_deg\n");
        for (int i = 0; i < 100_000; i++) {
            text.append(i)
                    .append(',')
                    .append(1_000 + random.nextInt(600))
                    .insert(text.length() - 1, '.')
                    .append(',');
            text.append(random.nextInt(40))
                    .append('.')
                    .append(random.nextInt(10))
                    .append(',');
            text.append(random.nextInt(9_000))
                    .append(',')
                    .append(random.nextInt(30))
                    .append('\n');
        }
        String table = text.toString();
        TableReader reader = TableReader.withDefaults().requiring(Metric.BALL_SPEED, Metric.SPIN_RATE);
        assertEquals(100_000, reader.read(table, "f").rows());
    }

    /** FastCSV 4.1 catches every Throwable and wraps it. */
    @Test
    void aLackOfMemoryIsNoFaultOfTheFile() {
        OutOfMemoryError memory = new OutOfMemoryError("Java heap space");
        assertSame(
                memory,
                assertThrows(
                        OutOfMemoryError.class,
                        () -> TableParser.failure("f", "row 1", new CsvParseException("wrapped", memory))));
        assertEquals(
                "f: row 1: is not a table row: there is text after a closing quotation mark, or a cell is too long",
                TableParser.failure("f", "row 1", new CsvParseException("Unexpected character"))
                        .getMessage());
    }
}
