package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The order in which two or more clubs were hit, and what it does to the comparison.
 *
 * <p>Best is alternation with the order reversed in every other pair (ABBA), which cancels a steady drift; ABAB leaves one
 * shot of drift in the difference; AAAA..BBBB leaves half a session: at a drift of 0.1 standard deviations a shot the
 * Welch test then rejects a true null in half of all sessions (simulated).
 *
 * <pre>{@code
 * ShotOrder order = ShotOrder.of(0, 1, 1, 0, 0, 1);
 * order.alternated(); // true: each two shots hold both clubs
 * order.warnings();   // clubs-in-blocks, drift-not-cancelled or none
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ShotOrder {
    /** ABAB lags by 1 shot, ABBA with an odd number of pairs, from three, by at most 1/3. */
    private static final double BALANCED = 0.5;

    private final int[] clubs;
    private final int[] counts;
    private final double[] meanPositions;
    private final int runs;

    private ShotOrder(int[] clubs, int[] counts, double[] meanPositions, int runs) {
        this.clubs = clubs;
        this.counts = counts;
        this.meanPositions = meanPositions;
        this.runs = runs;
    }

    /**
     * The order of a session.
     *
     * @param clubs for each shot, in the order hit, the number of its club from 0; at least one shot
     * @return the order
     * @throws IllegalArgumentException if there is no shot, a number is negative or a number below the largest is missing
     */
    public static ShotOrder of(int... clubs) {
        int most = -1;
        for (int club : clubs) {
            if (club < 0) {
                throw new IllegalArgumentException("club numbers must be at least 0, but one was " + club);
            }
            most = Math.max(most, club);
        }
        if (most < 0) {
            throw new IllegalArgumentException("clubs must hold at least 1 shot, but is empty");
        }
        if (most >= clubs.length) {
            throw new IllegalArgumentException(
                    "club numbers must run from 0 without gaps, but the largest of " + clubs.length + " was " + most);
        }
        int[] counts = new int[most + 1];
        double[] positions = new double[most + 1];
        int runs = 0;
        for (int i = 0; i < clubs.length; i++) {
            counts[clubs[i]]++;
            positions[clubs[i]] += i + 1.0;
            runs += i == 0 || clubs[i] != clubs[i - 1] ? 1 : 0;
        }
        for (int c = 0; c <= most; c++) {
            if (counts[c] == 0) {
                throw new IllegalArgumentException("club numbers must run from 0 without gaps, but no shot has " + c);
            }
            positions[c] /= counts[c];
        }
        return new ShotOrder(clubs.clone(), counts, positions, runs);
    }

    /**
     * Whether there are two clubs and each two shots (first and second, third and fourth, ...) hold both.
     *
     * @return true if the shots are pairs as they stand
     */
    public boolean alternated() {
        if (counts.length != 2 || clubs.length % 2 != 0) {
            return false;
        }
        for (int i = 0; i < clubs.length; i += 2) {
            if (clubs[i] == clubs[i + 1]) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether each club was hit in one go, more than one shot each, so that club and time cannot be told apart.
     *
     * @return true for AAAA..BBBB
     */
    public boolean blocked() {
        if (counts.length < 2 || runs != counts.length) {
            return false;
        }
        for (int count : counts) {
            if (count > 1) {
                return true;
            }
        }
        return false;
    }

    /**
     * How many shots later on average one club was hit than another: the drift per shot times this is in their difference.
     *
     * @param club the number of the one
     * @param other the number of the other
     * @return the difference of their mean positions [shots]
     * @throws IndexOutOfBoundsException if there is no such club
     */
    public double lag(int club, int other) {
        return meanPositions[club] - meanPositions[other];
    }

    /**
     * The number of clubs.
     *
     * @return at least 1
     */
    public int clubs() {
        return counts.length;
    }

    /**
     * What the order spoils. A lag of up to half a shot, such as ABBA leaves with an odd number of pairs, is passed over.
     *
     * @return {@code clubs-in-blocks}, {@code drift-not-cancelled} or nothing
     */
    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        double widest = 0.0;
        for (double a : meanPositions) {
            for (double b : meanPositions) {
                widest = Math.max(widest, a - b);
            }
        }
        if (blocked()) {
            warnings.add(Warning.of(
                    "clubs-in-blocks",
                    "each club was hit in one go, so warming up or tiring cannot be told from the club;"
                            + " alternate as ABBA"));
        } else if (widest > BALANCED) {
            warnings.add(Warning.of(
                    "drift-not-cancelled",
                    String.format(
                            Locale.ROOT,
                            "one club was hit %.1f shots later on average, so that many shots of drift are in the"
                                    + " difference; ABBA cancels it",
                            widest)));
        }
        return List.copyOf(warnings);
    }

    int club(int shot) {
        return clubs[shot];
    }

    int size() {
        return clubs.length;
    }

    /** Each value less the mean of its club, tied as far as the values' rounding. */
    Sample residuals(double[] values) {
        if (values.length != clubs.length) {
            throw new IllegalArgumentException("values and order must be of one length, but there are " + values.length
                    + " values and " + clubs.length + " shots");
        }
        double[] levels = new double[counts.length];
        for (int i = 0; i < values.length; i++) {
            levels[clubs[i]] += values[i] / counts[clubs[i]];
        }
        double[] rest = new double[counts.length];
        for (int i = 0; i < values.length; i++) {
            rest[clubs[i]] += (values[i] - levels[clubs[i]]) / counts[clubs[i]];
        }
        double[] means = new double[values.length];
        Arrays.setAll(means, i -> levels[clubs[i]] + rest[clubs[i]]);
        return Sample.differences("values", values, "the clubs' means", means);
    }

    /** What a single shot of a club does to residuals. */
    List<Warning> residualWarnings() {
        return Arrays.stream(counts).anyMatch(c -> c == 1)
                ? List.of(Warning.of(
                        "one-shot-club", "the only shot of a club has the residual 0 whatever it was; leave it out"))
                : List.of();
    }

    double meanPosition(int club) {
        return meanPositions[club];
    }
}
