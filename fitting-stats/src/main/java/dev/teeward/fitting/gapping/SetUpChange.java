package dev.teeward.fitting.gapping;

import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;

/**
 * A change of a club: lie, loft, length, each 0 unless set.
 *
 * <pre>{@code
 * SetUpChange flatter = SetUpChange.none().withLie(degrees(-2.0));
 * SetUpChange strong = flatter.withLoft(degrees(-1.0)).withLength(inches(0.5));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class SetUpChange {
    private static final SetUpChange NONE =
            new SetUpChange(Angle.ofDegrees(0.0), Angle.ofDegrees(0.0), Length.ofMeters(0.0));

    private final Angle lie;
    private final Angle loft;
    private final Length length;

    private SetUpChange(Angle lie, Angle loft, Length length) {
        this.lie = lie;
        this.loft = loft;
        this.length = length;
    }

    /**
     * No change.
     *
     * @return the club as it is
     */
    public static SetUpChange none() {
        return NONE;
    }

    /**
     * With another lie.
     *
     * @param upright by how much more upright, in [-10, 10] deg
     * @return a changed copy
     * @throws IllegalArgumentException if the angle lies outside
     */
    public SetUpChange withLie(Angle upright) {
        return new SetUpChange(angle("lie", upright), loft, length);
    }

    /**
     * With another loft.
     *
     * @param more by how much more loft, in [-10, 10] deg
     * @return a changed copy
     * @throws IllegalArgumentException if the angle lies outside
     */
    public SetUpChange withLoft(Angle more) {
        return new SetUpChange(lie, angle("loft", more), length);
    }

    /**
     * With another length.
     *
     * @param longer by how much longer, in [-0.1, 0.1] m
     * @return a changed copy
     * @throws IllegalArgumentException if the length lies outside
     */
    public SetUpChange withLength(Length longer) {
        if (!(Math.abs(longer.meters()) <= 0.1)) {
            throw new IllegalArgumentException("length must change by [-0.1, 0.1] m (-3.9 to 3.9 in), but was "
                    + longer.meters() + " m (" + longer.inches() + " in); it is the change, not the length");
        }
        return new SetUpChange(lie, loft, longer);
    }

    private static Angle angle(String name, Angle value) {
        if (!(Math.abs(value.degrees()) <= 10.0 + 1e-9)) {
            throw new IllegalArgumentException(name + " must change by [-10, 10] deg ([-0.175, 0.175] rad), but was "
                    + value.degrees() + " deg; it is the change, not the angle");
        }
        return value;
    }

    /**
     * The change of lie.
     *
     * @return more upright, toe up, positive
     */
    public Angle lie() {
        return lie;
    }

    /**
     * The change of loft.
     *
     * @return more loft positive
     */
    public Angle loft() {
        return loft;
    }

    /**
     * The change of length.
     *
     * @return longer positive
     */
    public Length length() {
        return length;
    }

    @Override
    public String toString() {
        return "lie " + lie + ", loft " + loft + ", length " + length;
    }
}
