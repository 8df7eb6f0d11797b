package dev.teeward.flight.internal;

/** Where backspin pushes some balls down instead of lifting them: Lyu, Kensrud, Smith 2020, abstract. */
public final class ReverseLift {
    private ReverseLift() {}

    /**
     * Whether a launch lies where it has been measured.
     *
     * @param re the Reynolds number at launch
     * @param s the spin ratio at launch
     * @return true for Re 5e4 to 7.5e4 and S 0.07 to 0.29
     */
    public static boolean possible(double re, double s) {
        return re >= 5e4 && re <= 7.5e4 && s >= 0.07 && s <= 0.29;
    }
}
