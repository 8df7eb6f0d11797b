package dev.teeward.fitting.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.reference.ReferenceTable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The split of a difference against R's lm ({@code decomposition.R} beside the tables), with and without blocks and order. */
class MeanDecompositionTest {
    private static final int REPLICATES = 20_000;

    private record Row(String club, String pair, double order, double speed, double face, double carry) {}

    private static List<String[]> table(String name) {
        try (InputStream in = Objects.requireNonNull(
                MeanDecompositionTest.class.getResourceAsStream("/dev/teeward/fitting/linear/" + name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException(name, e);
        }
    }

    private static List<Row> shots() {
        return table("decomposition_shots.csv").stream()
                .map(c -> new Row(
                        c[0],
                        c[1],
                        Double.parseDouble(c[2]),
                        Double.parseDouble(c[3]),
                        Double.parseDouble(c[4]),
                        Double.parseDouble(c[5])))
                .toList();
    }

    private static double[] of(List<Row> rows, ToDoubleFunction<Row> what) {
        return rows.stream().mapToDouble(what).toArray();
    }

    private static String[] clubs(List<Row> rows) {
        return rows.stream().map(Row::club).toArray(String[]::new);
    }

    private static Design pairs(List<Row> rows) {
        return Design.of(rows.size())
                .withFactor("pair", "1", rows.stream().map(Row::pair).toArray(String[]::new));
    }

    private static MeanDecomposition.Result split(MeanDecomposition procedure, List<Row> rows) {
        Map<String, double[]> x = new LinkedHashMap<>();
        x.put("speed", of(rows, Row::speed));
        x.put("face", of(rows, Row::face));
        return procedure.decompose("Alder", clubs(rows), x, of(rows, Row::carry));
    }

    private static MeanDecomposition.Result split(String name) {
        List<Row> all = shots();
        MeanDecomposition plain = MeanDecomposition.withDefaults();
        return switch (name) {
            case "shots" -> split(plain, all);
            case "unequal" ->
                split(
                        plain,
                        all.stream()
                                .filter(r -> !List.of(2.0, 3.0, 6.0, 7.0, 10.0).contains(r.order()))
                                .toList());
            case "order" -> split(plain.withBase(Design.of(20).withCentered("order", of(all, Row::order))), all);
            case "pairs" -> split(plain.withBase(pairs(all)), all);
            case "pairs and order" -> split(plain.withBase(pairs(all).withCentered("order", of(all, Row::order))), all);
            default -> throw new IllegalArgumentException(name);
        };
    }

    private static Coefficient part(MeanDecomposition.Result r, String name) {
        return switch (name) {
            case "difference" -> r.difference();
            case "direct" -> r.direct();
            default -> Objects.requireNonNull(r.explained().get(name), name);
        };
    }

    @Test
    void defaultsAreThoseOfLinearModelsInR() {
        List<String[]> values = table("decomposition_values.csv");
        assertEquals(20, values.size());
        for (String[] row : values) {
            Coefficient c = part(split(row[0]), row[1]);
            String at = row[0] + ", " + row[1];
            assertEquals(Double.parseDouble(row[2]), c.estimate().value(), 1e-9, at);
            assertEquals(Double.parseDouble(row[3]), c.standardError().orElseThrow(), 1e-9, at);
            assertEquals(Double.parseDouble(row[4]), c.degreesOfFreedom(), 0.0, at);
            assertEquals(Double.parseDouble(row[5]), c.pValue(), 1e-9, at);
        }
    }

    @Test
    void partsAddUpBesideABase() {
        for (String name : List.of("shots", "unequal", "order", "pairs", "pairs and order")) {
            MeanDecomposition.Result r = split(name);
            double parts = r.direct().estimate().value()
                    + r.explained().values().stream()
                            .mapToDouble(c -> c.estimate().value())
                            .sum();
            assertEquals(r.difference().estimate().value(), parts, 1e-10, name);
            double shares = r.shapley().values().stream().mapToDouble(v -> v).sum();
            assertEquals(
                    r.difference().estimate().value() - r.direct().estimate().value(), shares, 1e-9, name);
            assertEquals(
                    name.equals("shots") || name.equals("unequal"),
                    r.threefold().isPresent(),
                    name);
        }
        assertTrue(split("pairs").warnings().stream().anyMatch(w -> w.code().equals("no-threefold-split")));
    }

    /** The model with an effect of each pair and that of the differences are one; the sleep data of R, t.test: p 0.002833. */
    @Test
    void pairsInTheBaseAreDifferencesWithinPairs() {
        double[] first = ReferenceTable.column("r_sleep", "extra", "group", "1");
        double[] second = ReferenceTable.column("r_sleep", "extra", "group", "2");
        double[] speed = new SplittableRandom(3L).doubles(20).toArray();
        String[] club = new String[20];
        String[] pair = new String[20];
        double[] y = new double[20];
        double[] dy = new double[10];
        double[] dx = new double[10];
        for (int i = 0; i < 20; i++) {
            club[i] = i < 10 ? "Alder" : "Rowan";
            pair[i] = String.valueOf(i % 10);
            y[i] = i < 10 ? first[i] : second[i - 10];
        }
        Arrays.setAll(dy, i -> second[i] - first[i]);
        Arrays.setAll(dx, i -> speed[i + 10] - speed[i]);
        MeanDecomposition plain = MeanDecomposition.withDefaults();
        MeanDecomposition.Result blocks = plain.withBase(Design.of(20).withFactor("pair", "0", pair))
                .decompose("Alder", club, Map.of("speed", speed), y);
        MeanDecomposition.Result pairs = plain.decomposePairs(Map.of("speed", dx), dy);
        assertEquals(0.002833, blocks.difference().pValue(), 5e-7);
        assertEquals(0.002833, pairs.difference().pValue(), 5e-7);
        for (String name : List.of("difference", "direct", "speed")) {
            Coefficient a = part(blocks, name);
            Coefficient b = part(pairs, name);
            assertEquals(b.estimate().value(), a.estimate().value(), 1e-12, name);
            assertEquals(b.standardError().orElseThrow(), a.standardError().orElseThrow(), 1e-12, name);
            assertEquals(b.degreesOfFreedom(), a.degreesOfFreedom(), name);
        }
        MeanDecomposition based = plain.withBase(Design.of(20).withFactor("pair", "0", pair));
        assertThrows(IllegalArgumentException.class, () -> based.decomposePairs(Map.of("speed", dx), dy));
        MeanDecomposition wrong = plain.withBase(Design.of(19));
        assertThrows(IllegalArgumentException.class, () -> wrong.decompose("Alder", club, Map.of("speed", speed), y));
    }

    /** Equal means, 10 shots of spread 1 and 5 of spread 2; a rate of 5 % has a standard deviation of 0.154 points. */
    @Test
    @Tag("sweep")
    void unequalClubsThatDoNotDiffer() {
        SplittableRandom random = new SplittableRandom(11L);
        int[] found = new int[4];
        String[] club = new String[15];
        Arrays.setAll(club, i -> i < 10 ? "Alder" : "Rowan");
        MeanDecomposition usual = MeanDecomposition.withDefaults();
        MeanDecomposition pooled = usual.withErrors(ErrorModel.CONSTANT);
        for (int r = 0; r < REPLICATES; r++) {
            double[] x = new double[15];
            double[] y = new double[15];
            Arrays.setAll(x, i -> random.nextGaussian());
            Arrays.setAll(y, i -> (i < 10 ? 1.0 : 2.0) * random.nextGaussian());
            MeanDecomposition.Result now = usual.decompose("Alder", club, Map.of("speed", x), y);
            MeanDecomposition.Result old = pooled.decompose("Alder", club, Map.of("speed", x), y);
            found[0] += now.difference().pValue() <= 0.05 ? 1 : 0;
            found[1] += old.difference().pValue() <= 0.05 ? 1 : 0;
            found[2] += now.direct().pValue() <= 0.05 ? 1 : 0;
            found[3] += old.direct().pValue() <= 0.05 ? 1 : 0;
        }
        double[] rate =
                Arrays.stream(found).mapToDouble(f -> f / (double) REPLICATES).toArray();
        System.err.printf(
                Locale.ROOT,
                "SWEEP unequal clubs called different, total HC3 %.4f, pooled %.4f; direct HC3 %.4f, pooled %.4f%n",
                rate[0],
                rate[1],
                rate[2],
                rate[3]);
        assertTrue(rate[1] > 0.1 && rate[3] > 0.09, "one common variance");
        assertTrue(rate[0] < 0.065 && rate[2] < 0.065, "HC3");
    }
}
