package dev.teeward.fitting.choose;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.fitting.summary.TargetRegion;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Length;
import java.util.Objects;

/**
 * What approach shots are worth in strokes: a baseline applied to where the balls lie.
 *
 * <p>A ball at (x, z) is on the green if the region holds it, else in the surrounding lie; what is left is the baseline from
 * that lie at its distance from the hole. A shot gains baseline(start) - 1 - baseline(after) (Broadie 2012). The hole lies on
 * the target line. Balls count where they land unless positions at rest are given; water, bunkers and slopes are not there
 * unless the user's lies say so.
 *
 * <p>The mean over the shots has the t interval of those shots. It holds what these shots tell of the pattern, not the error of
 * the baseline, which is somebody else's average and not this golfer's.
 *
 * <pre>{@code
 * ApproachStrokes approach = ApproachStrokes.of(StrokesTable.example(), Length.ofYards(150.0), green)
 *         .withLies("fairway", "green", "rough");
 * approach.gained(carry, side).value(); // strokes a shot against the baseline
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ApproachStrokes {
    private final StrokesTable table;
    private final Length hole;
    private final TargetRegion green;
    private final String start;
    private final String on;
    private final String off;

    private ApproachStrokes(StrokesTable table, Length hole, TargetRegion green, String start, String on, String off) {
        this.table = table;
        this.hole = hole;
        this.green = green;
        this.start = start;
        this.on = on;
        this.off = off;
        for (String lie : new String[] {start, on, off}) {
            if (!table.lies().contains(lie)) {
                throw new IllegalArgumentException(
                        "the table has no lie \"" + lie + "\"; it has " + String.join(", ", table.lies()));
            }
        }
    }

    /**
     * From the fairway to a green with rough around it: lies of these names.
     *
     * @param table the baseline
     * @param hole how far the hole is
     * @param green the green: distance along the target line and offset, right positive [m]
     * @return the approach
     * @throws IllegalArgumentException if the table lacks one of the lies
     */
    public static ApproachStrokes of(StrokesTable table, Length hole, TargetRegion green) {
        return new ApproachStrokes(
                Objects.requireNonNull(table, "table"),
                Objects.requireNonNull(hole, "hole"),
                Objects.requireNonNull(green, "green"),
                "fairway",
                "green",
                "rough");
    }

    /**
     * With other lies.
     *
     * @param from where the shots are hit from
     * @param onGreen the lie on the green
     * @param around the lie around it
     * @return a changed copy
     * @throws IllegalArgumentException if the table lacks one of them
     */
    public ApproachStrokes withLies(String from, String onGreen, String around) {
        return new ApproachStrokes(table, hole, green, from, onGreen, around);
    }

    /**
     * The strokes left after one shot.
     *
     * @param x where the ball lies along the target line [m]
     * @param z how far right of it [m]
     * @return the baseline from there
     * @throws IllegalArgumentException if that is farther than the table goes
     */
    public double after(double x, double z) {
        return table.strokes(green.contains(x, z) ? on : off, Length.ofMeters(Math.hypot(x - hole.meters(), z)));
    }

    /**
     * The strokes to expect before the shot.
     *
     * @return the baseline from the start
     */
    public double before() {
        return table.strokes(start, hole);
    }

    /**
     * The strokes that the shots left on average.
     *
     * @param carry where the balls lie along the target line, at least one [m]
     * @param side how far right of it, one for each [m]
     * @return the mean with its t interval
     * @throws IllegalArgumentException if there is no shot, the columns differ in length, a value is not finite or too far off
     */
    public Estimate after(double[] carry, double[] side) {
        return SampleSummary.withDefaults().summarize(each(carry, side)).mean();
    }

    /**
     * The strokes gained a shot against the baseline.
     *
     * @param carry where the balls lie along the target line, at least one [m]
     * @param side how far right of it, one for each [m]
     * @return the mean of before - 1 - after with its t interval, positive if better than the baseline
     * @throws IllegalArgumentException if there is no shot, the columns differ in length, a value is not finite or too far off
     */
    public Estimate gained(double[] carry, double[] side) {
        double[] gained = each(carry, side);
        for (int i = 0; i < gained.length; i++) {
            gained[i] = before() - 1.0 - gained[i];
        }
        return SampleSummary.withDefaults().summarize(gained).mean();
    }

    private double[] each(double[] carry, double[] side) {
        Data.check("carry", carry, 1);
        Data.checkSameLength("side", side, carry.length);
        Data.check("side", side, 1);
        double[] left = new double[carry.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = after(carry[i], side[i]);
        }
        return left;
    }

    @Override
    public String toString() {
        return "approach of " + hole + " from " + start;
    }
}
