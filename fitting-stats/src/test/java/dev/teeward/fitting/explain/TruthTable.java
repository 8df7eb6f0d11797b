package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Verdicts on simulated golfers, counted: wrong, decided, and decided by an {@link Oracle}.
 *
 * <p>Four verdicts of a session. <b>Total</b>: the three-way verdict of the carry, declared as the metric that decides, margin
 * 5 yd. Wrong: different if the true difference is 0, or with the wrong sign; practically the same if the true difference is
 * 5 yd or more. <b>Swing</b>: {@link ClubOrSwing#swing()}. Wrong: a covariate called different that truly does not differ, or
 * with the wrong sign; the same if the speed truly differs by its margin (1 mph) or more. <b>Club</b>:
 * {@link ClubOrSwing#club()}. Wrong: as for the total, of the true effect of the club. <b>Answer</b>:
 * {@link ClubOrSwing#answer()}, decided unless it can't be told. Wrong: decided, and one of swing and club is wrong. Undecided is
 * never wrong.
 */
final class TruthTable {
    /** What is counted. */
    enum Question {
        TOTAL,
        SWING,
        CLUB,
        ANSWER
    }

    /** Counts of one question in one cell. */
    static final class Count {
        private int sessions;
        private int wrong;
        private int decided;
        private int oracle;

        void add(boolean isDecided, boolean isWrong, boolean byOracle) {
            sessions++;
            decided += isDecided ? 1 : 0;
            wrong += isDecided && isWrong ? 1 : 0;
            oracle += byOracle ? 1 : 0;
        }

        double wrong() {
            return (double) wrong / sessions;
        }

        double decided() {
            return (double) decided / sessions;
        }

        double oracle() {
            return (double) oracle / sessions;
        }
    }

    private static final HeadToHead COMPARE = HeadToHead.withDefaults()
            .withClubs(InventedSwings.A, InventedSwings.B)
            .withPrimary(Metric.CARRY)
            .withMargin(Metric.CARRY, SimulatedGolfer.MARGIN)
            .withMargin(Metric.CLUB_SPEED, SimulatedGolfer.SPEED_MARGIN)
            .withMargin(Metric.ATTACK_ANGLE, SimulatedGolfer.ATTACK_MARGIN);

    private final Map<String, Map<Question, Count>> cells = new LinkedHashMap<>();

    /** Every cell by name. */
    static Map<String, SimulatedGolfer> golfers() {
        SimulatedGolfer none = SimulatedGolfer.steady();
        Map<String, SimulatedGolfer> map = new LinkedHashMap<>();
        map.put("no effect", none);
        map.put("club only", none.withClub(1));
        map.put("swing only", none.withSwing());
        map.put("both", none.withClub(1).withSwing());
        map.put("both, against each other", none.withClub(-1).withSwing());
        map.put("drift", none.withDrift());
        map.put("drift, club only", none.withClub(1).withDrift());
        map.put("one gross mishit", none.withMishit());
        map.put("one gross mishit, club only", none.withClub(1).withMishit());
        map.put("unequal spread", none.withSpread());
        map.put("unequal spread, club only", none.withClub(1).withSpread());
        map.put("swing only, speed misread", none.withSwing().withMisread(0.5));
        map.put(
                "swing only, speed misread, stated",
                none.withSwing().withMisread(0.5).withStated());
        map.put("swing only, speed misread by more, stated", misreadByMore(SimulatedGolfer.PAIRS));
        return map;
    }

    /** The club speed is read with an error of 1 mph, as large as the golfer's scatter, and the session says so. */
    static SimulatedGolfer misreadByMore(int pairs) {
        return misread(1.0, pairs);
    }

    /** The club is swung 2 mph faster, and the session says with what error in mph its speed is read. */
    static SimulatedGolfer misread(double milesPerHour, int pairs) {
        return SimulatedGolfer.steady()
                .withSwing()
                .withMisread(milesPerHour)
                .withStated()
                .withPairs(pairs);
    }

    /** Simulates a cell; with a mishit a second cell has the answers without the flagged shots. */
    void run(String name, SimulatedGolfer golfer, int sessions) {
        SplittableRandom random = new SplittableRandom(name.hashCode());
        for (int i = 0; i < sessions; i++) {
            SimulatedGolfer.Hit hit = golfer.hit(random.split());
            HeadToHeadResult result = COMPARE.compare(hit.session());
            count(name, golfer, hit, result);
            if (golfer.mishit()) {
                count(
                        name + ", without flagged",
                        golfer,
                        hit,
                        result.withoutFlagged().orElse(result));
            }
        }
    }

    private void count(String name, SimulatedGolfer golfer, SimulatedGolfer.Hit hit, HeadToHeadResult result) {
        Map<Question, Count> cell = cells.computeIfAbsent(name, n -> new EnumMap<>(Question.class));
        MetricComparison carry = result.primary();
        Verdict total = carry.verdict().verdict();
        double estimate = carry.difference().estimate().value();
        Verdict oracleSwing = Oracle.swing(hit);
        Verdict oracleClub = Oracle.club(golfer, hit);
        add(
                cell,
                Question.TOTAL,
                decided(total),
                wrong(total, estimate, golfer.total(), SimulatedGolfer.MARGIN),
                decided(Oracle.total(golfer, hit)));
        TotalAndDirect.Result effect =
                TotalAndDirect.withDefaults().explain(result, Metric.CARRY).orElseThrow();
        ClubOrSwing found = ClubOrSwing.of(result, Balance.withDefaults().compare(result), effect);
        boolean wrongSwing = wrongSwing(found, golfer, result);
        boolean wrongClub =
                wrong(found.club(), effect.direct().estimate().value(), golfer.club(), SimulatedGolfer.MARGIN);
        add(cell, Question.SWING, decided(found.swing()), wrongSwing, decided(oracleSwing));
        add(cell, Question.CLUB, decided(found.club()), wrongClub, decided(oracleClub));
        add(
                cell,
                Question.ANSWER,
                found.answer() != ClubOrSwing.Answer.CAN_NOT_TELL,
                wrongSwing || wrongClub,
                decided(oracleSwing) && decided(oracleClub));
    }

    private static void add(
            Map<Question, Count> cell, Question question, boolean decided, boolean wrong, boolean oracle) {
        cell.computeIfAbsent(question, q -> new Count()).add(decided, wrong, oracle);
    }

    static boolean decided(Verdict verdict) {
        return verdict != Verdict.UNDECIDED;
    }

    static boolean wrong(Verdict verdict, double estimate, double truth, double margin) {
        return switch (verdict) {
            case DIFFERENT -> !(estimate * truth > 0.0);
            case PRACTICALLY_THE_SAME -> Math.abs(truth) >= margin;
            case UNDECIDED -> false;
        };
    }

    private static boolean wrongSwing(ClubOrSwing found, SimulatedGolfer golfer, HeadToHeadResult result) {
        if (found.swing() == Verdict.PRACTICALLY_THE_SAME) {
            return Math.abs(golfer.swing()) >= SimulatedGolfer.SPEED_MARGIN;
        }
        for (Metric metric : found.swingDiffers()) {
            double estimate =
                    result.find(metric).orElseThrow().difference().estimate().value();
            double truth = metric == Metric.CLUB_SPEED ? golfer.swing() : 0.0;
            if (wrong(Verdict.DIFFERENT, estimate, truth, 0.0)) {
                return true;
            }
        }
        return false;
    }

    Map<String, Map<Question, Count>> cells() {
        return cells;
    }

    /** In per cent: wrong; decided (by the oracle). */
    String markdown() {
        StringBuilder text = new StringBuilder("| cell |");
        for (String head : List.of("clubs differ", "swings differ", "differ at equal delivery", "club or swing")) {
            text.append(' ').append(head).append(" |");
        }
        text.append("\n|---|---|---|---|---|\n");
        cells.forEach((name, counts) -> {
            text.append("| ").append(name).append(" |");
            counts.forEach((question, c) -> text.append(String.format(
                    Locale.ROOT, " %.1f; %.0f (%.0f) |", 100.0 * c.wrong(), 100.0 * c.decided(), 100.0 * c.oracle())));
            text.append('\n');
        });
        return text.toString();
    }
}
