package dev.teeward.fitting.gapping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Intervals and probabilities of a bag against SciPy 1.17.1 (bag_reference.csv, made by bag_reference.py; R 4 gives the same
 * Welch and paired intervals, bag_reference.R): computed, to the ten decimals printed.
 */
class BagReferenceTest {
    private static final double PRINTED = 2e-10;

    private static final Gapping PROCEDURE = Gapping.withDefaults()
            .withWanted(Length.ofMeters(12.0), Length.ofMeters(3.0))
            .withCover(Length.ofMeters(7.0), 0.5);

    private final Map<String, Double> expected = read();
    private final Set<String> seen = new TreeSet<>();

    private static Map<String, Double> read() {
        try (InputStream in = BagReferenceTest.class.getResourceAsStream("bag_reference.csv")) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            Map<String, Double> rows = new HashMap<>();
            text.lines().skip(2).forEach(line -> {
                String[] cells = line.split(",", -1);
                rows.put(cells[0], Double.parseDouble(cells[1]));
            });
            return rows;
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private void check(String key, double value) {
        seen.add(key);
        assertEquals(Objects.requireNonNull(expected.get(key), key), value, PRINTED, key);
    }

    private void check(String key, Interval interval) {
        check(key + "lower", interval.lower());
        check(key + "upper", interval.upper());
    }

    @Test
    void everyRowIsMet() {
        Bag rounds = PROCEDURE.measure(InventedBag.rounds(InventedBag.REFERENCE));
        Bag blocks = PROCEDURE.measure(InventedBag.blocks(InventedBag.REFERENCE));
        assertEquals(
                List.of("six", "seven", "nine"),
                rounds.clubs().stream().map(BagClub::name).toList());
        for (BagClub club : rounds.clubs()) {
            check(club.name() + "/mean", club.carry().value());
            check(club.name() + "/", club.carry().interval());
            check(club.name() + "/sd", club.deviation().value());
            check(club.name() + "/next_", club.nextShot().orElseThrow());
            check(club.name() + "/covers_to", club.covers().orElseThrow().to().meters());
        }
        for (int i = 0; i < 2; i++) {
            Gap paired = rounds.gaps().get(i);
            Gap welch = blocks.gaps().get(i);
            String key = paired.longer() + "-" + paired.shorter() + "/";
            assertEquals(1, paired.difference().sampleSizes().size());
            assertEquals(2, welch.difference().sampleSizes().size());
            check(key + "overlap", paired.overlap().orElseThrow());
            assertEquals(paired.overlap(), welch.overlap());
            check(key + "rounds_", paired.difference().estimate().interval());
            check(key + "blocks_", welch.difference().estimate().interval());
            check(key + "rounds_together_", paired.together());
            check(key + "blocks_together_", welch.together());
            check(key + "rounds_smaller", paired.smaller().orElseThrow());
            check(key + "rounds_larger", paired.larger().orElseThrow());
            check(key + "rounds_ordered", paired.ordered().orElseThrow());
            check(key + "blocks_smaller", welch.smaller().orElseThrow());
            check(key + "blocks_larger", welch.larger().orElseThrow());
        }
        assertEquals(new TreeSet<>(expected.keySet()), seen);
        assertTrue(blocks.warns("clubs-in-blocks"));
    }

    @Test
    void whatNobodyCoversLiesBetweenTheStretches() {
        Bag bag = PROCEDURE.measure(InventedBag.rounds(InventedBag.REFERENCE));
        // By symmetry each club covers as far below its mean as above, as bag_reference.csv has it.
        double above = Objects.requireNonNull(expected.get("nine/covers_to"));
        double below = 2.0 * Objects.requireNonNull(expected.get("seven/mean"))
                - Objects.requireNonNull(expected.get("seven/covers_to"));
        assertEquals(1, bag.uncovered().size());
        assertEquals(above, bag.uncovered().get(0).from().meters(), PRINTED);
        assertEquals(below, bag.uncovered().get(0).to().meters(), 3.0 * PRINTED);
    }
}
