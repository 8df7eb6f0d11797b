package dev.teeward.flight.aero;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Warning;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.StringReader;
import java.util.List;
import org.junit.jupiter.api.Test;

class TableAerodynamicsTest extends AerodynamicModelContract {
    private static final double[] RE = {4.7e4, 6e4, 7.5e4, 9e4, 1.05e5, 1.2e5, 1.4e5, 1.7e5, 2e5, 2.3e5};
    private static final double[] S = {0.06, 0.1, 0.15, 0.22, 0.32, 0.47, 0.7, 1.0};
    private static final String HEADING = "reynolds_number,spin_ratio,drag_coefficient,lift_coefficient\n";
    private static final String SMALL =
            HEADING + "80000,0.1,0.27,0.16\n80000,0.3,0.31,0.27\n200000,0.1,0.24,0.15\n200000,0.3,0.28,0.24\n";

    @Override
    protected AerodynamicModel model() {
        return TableAerodynamics.sampling(TypicalAerodynamics.of(), RE, S);
    }

    /** The numbers that the class's page gives, over 200 by 200 states. */
    @Test
    void aSampledModelIsAsCloseAsDocumented() {
        AerodynamicModel table = model();
        AerodynamicModel ball = TypicalAerodynamics.of();
        double worstDrag = 0.0;
        double worstLift = 0.0;
        double sum = 0.0;
        int n = 200;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double re = 4.7e4 + (2.3e5 - 4.7e4) * i / (n - 1.0);
                double s = 0.06 + 0.94 * j / (n - 1.0);
                double drag = Math.abs(table.dragCoefficient(re, s) - ball.dragCoefficient(re, s));
                double lift = Math.abs(table.liftCoefficient(re, s) - ball.liftCoefficient(re, s));
                worstDrag = Math.max(worstDrag, drag);
                worstLift = Math.max(worstLift, lift);
                sum += drag + lift;
            }
        }
        String measured = worstDrag + ", " + worstLift + ", " + sum / (2.0 * n * n);
        assertTrue(worstDrag <= 0.0025 && worstLift <= 0.001, measured);
        assertTrue(sum / (2.0 * n * n) <= 0.0003, measured);
    }

    /** Through the flight model: the table's flights are those of the model it was sampled from, within what it is off. */
    @Test
    void fliesLikeWhatItWasSampledFrom() {
        LaunchConditions launch = launch(118.0, 17.2, 6_400.0);
        Flight direct = FlightModel.standard().fly(launch);
        Flight table = FlightModel.of(Ball.of(model())).fly(launch);
        assertEquals(direct.carry().meters(), table.carry().meters(), 0.5);
        assertTrue(table.warnings().isEmpty(), table.warnings()::toString);
    }

    @Test
    void outsideItStaysAndTheFlightSaysSo() throws IOException {
        TableAerodynamics table = read(SMALL);
        assertEquals(ModelDomain.of(8e4, 2e5, 0.1, 0.3), table.domain());
        assertEquals(0.27, table.dragCoefficient(1e3, 0.0));
        assertEquals(0.24, table.liftCoefficient(1e9, 1e9));
        List<String> codes = FlightModel.of(Ball.of(table)).fly(launch(118.0, 17.2, 6_400.0)).warnings().stream()
                .map(Warning::code)
                .toList();
        assertEquals(List.of("reynolds-outside-model", "spin-ratio-outside-model"), codes);
    }

    private static LaunchConditions launch(double speed, double angle, double spin) {
        return LaunchConditions.builder()
                .ballSpeed(mph(speed))
                .launchAngle(degrees(angle))
                .spinRate(rpm(spin))
                .build();
    }

    private static TableAerodynamics read(String text) throws IOException {
        return TableAerodynamics.read(new StringReader(text), "tunnel.csv");
    }

    @Test
    void readsRowsAndColumnsInAnyOrder() throws IOException {
        String rows = """
                # reference: invented example
                # a note
                lift_coefficient, drag_coefficient ,spin_ratio,reynolds_number
                0.24,0.28,0.3,2e5

                0.16,0.27,0.1,80000
                0.15,0.24,0.1,2.0E5
                0.27,0.31,0.3,80000.0
                """;
        TableAerodynamics table = read("\uFEFF" + rows.replace("\n", "\r\n"));
        assertEquals(read(SMALL).withReference("invented example"), table);
        assertEquals(0.31, table.dragCoefficient(8e4, 0.3));
        assertEquals(0.15, table.liftCoefficient(2e5, 0.1));
        assertEquals("invented example", table.reference());
        assertEquals("2 by 2 nodes, Re 80000.0 to 200000.0, S 0.1 to 0.3: invented example", table.toString());
    }

    @Test
    void whatIsWrittenIsReadBack() throws IOException {
        TableAerodynamics table = TableAerodynamics.sampling(SmitsSmith1994.of(), RE, S);
        StringBuilder text = new StringBuilder();
        table.writeTo(text);
        TableAerodynamics back = read(text.toString());
        assertEquals(table, back);
        assertEquals(table.hashCode(), back.hashCode());
        assertTrue(text.toString().startsWith("# reference: sampled from: Smits and Smith 1994"), text.toString());
    }

    @Test
    void whatIsWrongIsNamed() {
        refused("tunnel.csv: no rows", "");
        refused("tunnel.csv: no rows", HEADING);
        refused("tunnel.csv: line 1: the heading must name the columns", "Re,S,Cd,Cl\n1,2,3,4\n");
        refused("tunnel.csv: line 1: the heading must name the columns", HEADING.replace("\n", ",note\n"));
        refused("line 5: a row must have 4 cells, but had 3", SMALL.replace("200000,0.3,0.28,0.24", "200000,0.3,0.28"));
        refused("line 4: lift_coefficient: \"\" is not a number", SMALL.replace(",0.1,0.24,0.15", ",0.1,0.24,"));
        refused("line 2: reynolds_number: \"8O000\" is not a number", SMALL.replace("80000,0.1", "8O000,0.1"));
        refused("line 2: drag_coefficient: \"NaN\" is not a number", SMALL.replace("0.27,0.16", "NaN,0.16"));
        refused("line 2: drag_coefficient: \"0.27f\" is not a number", SMALL.replace("0.27,0.16", "0.27f,0.16"));
        refused(
                "line 2: drag_coefficient must be in [0.0, 5.0], but was -0.27",
                SMALL.replace("0.27,0.16", "-0.27,0.16"));
        refused("line 2: spin_ratio must be in [0.0, 10.0], but was 30.0", SMALL.replace("80000,0.1", "80000,30"));
        refused("tunnel.csv: line 6: the point Re 200000.0, S 0.3 is already on line 5", SMALL + "2e5,0.30,0.2,0.2\n");
        refused("tunnel.csv: the point Re 200000.0, S 0.3 is missing", SMALL.replace("200000,0.3,0.28,0.24\n", ""));
        refused(
                "line 1: the heading must name the columns reynolds_number,spin_ratio,drag_coefficient,lift_coefficient in any"
                        + " order, but was reynolds_number;spin_ratio;drag_coefficient;lift_coefficient; cells are separated"
                        + " by commas, not semicolons",
                SMALL.replace(',', ';'));
        refused(
                "but had 1; cells are separated by commas",
                SMALL.replace("80000,0.1,0.27,0.16", "80000;0.1;0.27;0.16"));
        refused(
                "tunnel.csv: the greatest Reynolds number must be in [1000.0, 1.0E7], but was 2.0; in units of 1e5?",
                SMALL.replace("80000,", "0.8,").replace("200000,", "2.0,"));
        refused("at least 2 Reynolds numbers and 2 spin ratios, but had 1 and 2", HEADING + "1,2,3,4\n1,3,3,4\n");
    }

    private static void refused(String message, String text) {
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> read(text), message);
        assertTrue(String.valueOf(e.getMessage()).contains(message), e.getMessage());
    }

    @Test
    void arraysAreCheckedAndCopied() {
        double[] re = {1e5, 2e5};
        double[] s = {0.1, 0.3};
        double[][] drag = {{0.27, 0.31}, {0.24, 0.28}};
        double[][] lift = {{0.16, 0.27}, {0.15, 0.24}};
        TableAerodynamics table = TableAerodynamics.of(re, s, drag, lift);
        drag[0][0] = 1.0;
        re[0] = 0.0;
        assertEquals(0.27, table.dragCoefficient(1e5, 0.1));
        table.reynoldsNumbers()[0] = 0.0;
        table.spinRatios()[0] = 0.0;
        assertEquals(1e5, table.reynoldsNumbers()[0]);
        assertEquals(0.1, table.spinRatios()[0]);
        refuses("re must have at least 2 nodes", new double[] {1e5}, s, drag, lift);
        refuses("re must rise strictly", new double[] {1e5, 1e5}, s, drag, lift);
        refuses("but was 999.0; in units of 1e5?", new double[] {0.8, 999.0}, s, drag, lift);
        assertEquals(
                0.24,
                TableAerodynamics.of(new double[] {0.8, 1e3}, s, drag, lift).dragCoefficient(1e5, 0.1));
        refuses("s must rise strictly within [0, 10.0], but node 0 was -0.1", re, new double[] {-0.1, 1.0}, drag, lift);
        refuses("drag must have a row for each of the 2", re, s, new double[][] {{0.2, 0.2}}, lift);
        refuses("lift at Re 200000.0 must have a value", re, s, drag, new double[][] {{0.2, 0.2}, {0.2}});
        refuses("lift at Re 200000.0 and S 0.3 must be in", re, s, drag, new double[][] {{0.2, 0.2}, {0.2, Double.NaN}
        });
    }

    private static void refuses(String message, double[] re, double[] s, double[][] drag, double[][] lift) {
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> TableAerodynamics.of(re, s, drag, lift), message);
        assertTrue(String.valueOf(e.getMessage()).contains(message), e.getMessage());
    }

    @Test
    void copiesSayMore() throws IOException {
        TableAerodynamics table = read(SMALL);
        assertTrue(table.spread().isEmpty());
        CoefficientSpread spread = CoefficientSpread.of(0.02, 0.03);
        assertEquals(spread, table.withSpread(spread).spread().orElseThrow());
        assertEquals(0.012, table.withMomentSlope(0.012).momentSlope());
        assertNotEquals(table, table.withMomentSlope(0.012));
        assertThrows(IllegalArgumentException.class, () -> table.withMomentSlope(-1.0));
        assertThrows(IllegalArgumentException.class, () -> table.withReference(" "));
        assertThrows(IllegalArgumentException.class, () -> table.withReference("two\nlines"));
    }

    @Test
    void survivesSerialization() throws IOException, ClassNotFoundException {
        TableAerodynamics table = read(SMALL).withSpread(CoefficientSpread.of(0.02, 0.03));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(table);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            TableAerodynamics back = (TableAerodynamics) in.readObject();
            assertEquals(table, back);
            assertEquals(table.dragCoefficient(1.3e5, 0.17), back.dragCoefficient(1.3e5, 0.17));
        }
    }
}
