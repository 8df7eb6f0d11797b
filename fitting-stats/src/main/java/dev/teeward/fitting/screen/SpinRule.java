package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import java.util.ArrayList;
import java.util.List;

/**
 * Spin readings near half or double of what the club usually shows, while the rest of the launch is as usual: a device that
 * follows a mark on the ball may count every turn twice or every other one (common practice, no source).
 *
 * <p>The bands are 0.45 to 0.55 of the median spin of the club and their reciprocals, 1.82 to 2.22; a choice of this library.
 */
final class SpinRule {
    static final double LOWER = 0.45;
    static final double UPPER = 0.55;

    /** As usual means within this many robust standard deviations of the median of the club. */
    private static final double USUAL_SD = 3.0;

    private static final double USUAL_SPEED_SHARE = 0.03;
    private static final double USUAL_ANGLE = Math.toRadians(2.0);

    /** Where good spin rates scatter so much, half of the median may be one of them. */
    private static final double LARGEST_SPREAD_SHARE = 0.15;

    private SpinRule() {}

    static void apply(Screening screening) {
        double[] rates = screening.measured(Metric.SPIN_RATE);
        screening.byClub().forEach((club, all) -> {
            int[] shots = Screening.present(all, rates);
            if (shots.length == 0) {
                return;
            }
            if (shots.length < Screening.FEWEST) {
                screening.warn(
                        "too-few-shots",
                        "spin rates that halve or double cannot be told with " + shots.length + " shots with " + club
                                + "; it needs " + Screening.FEWEST);
                return;
            }
            double[] spins = Screening.pick(rates, shots);
            double median = Screening.median(spins);
            if (!(median > 0.0) || Screening.robustSd(spins) > LARGEST_SPREAD_SHARE * median) {
                screening.warn(
                        "spin-too-uneven",
                        "the spin rates with " + club
                                + " scatter too much to tell readings that halve or double from others");
                return;
            }
            List<Usual> launch = Usual.of(screening, all);
            String middle = Screening.words(Metric.SPIN_RATE, median);
            for (int index : shots) {
                double ratio = rates[index] / median;
                boolean half = ratio >= LOWER && ratio <= UPPER;
                boolean twice = ratio >= 1.0 / UPPER && ratio <= 1.0 / LOWER;
                if ((half || twice) && usual(launch, index)) {
                    flag(screening, index, club, rates[index], middle, ratio, half);
                }
            }
        });
    }

    private static void flag(
            Screening screening, int index, String club, double rate, String median, double ratio, boolean half) {
        screening.rule(
                index,
                "spin that halves or doubles",
                List.of(Metric.SPIN_RATE),
                Screening.format(
                        "spin rate %s is %.2f times the median of %s with %s, near %s, while the launch is as usual",
                        Screening.words(Metric.SPIN_RATE, rate), ratio, median, club, half ? "half" : "double"),
                ratio,
                half ? UPPER : 1.0 / UPPER);
    }

    /** What is usual for one launch reading of a club; its column has NaN where a shot has none. */
    private static final class Usual {
        private final double[] column;
        private final double median;
        private final double limit;

        private Usual(double[] column, double median, double limit) {
            this.column = column;
            this.median = median;
            this.limit = limit;
        }

        /** For the launch readings that the club has. */
        static List<Usual> of(Screening screening, int[] club) {
            List<Usual> usual = new ArrayList<>();
            for (Metric metric : List.of(Metric.BALL_SPEED, Metric.LAUNCH_ANGLE)) {
                double[] column = screening.measured(metric);
                double[] values = Screening.pick(column, Screening.present(club, column));
                if (values.length > 0) {
                    double median = Screening.median(values);
                    double floor = metric == Metric.BALL_SPEED ? USUAL_SPEED_SHARE * median : USUAL_ANGLE;
                    usual.add(new Usual(column, median, Math.max(floor, USUAL_SD * Screening.robustSd(values))));
                }
            }
            return usual;
        }

        boolean knows(int shot) {
            return !Double.isNaN(column[shot]);
        }

        boolean holds(int shot) {
            return Math.abs(column[shot] - median) <= limit;
        }
    }

    /** Whether ball speed and launch angle are as usual; at least one must be there. */
    private static boolean usual(List<Usual> launch, int shot) {
        int known = 0;
        for (Usual usual : launch) {
            if (usual.knows(shot)) {
                if (!usual.holds(shot)) {
                    return false;
                }
                known++;
            }
        }
        return known > 0;
    }
}
