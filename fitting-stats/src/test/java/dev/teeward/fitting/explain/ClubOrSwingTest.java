package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.explain.ClubOrSwing.Answer;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Swings whose truth is known; p of the direct difference against Commons Math. */
class ClubOrSwingTest {
    private static final double DEG = Math.PI / 180.0;

    private static HeadToHeadResult compare(InventedSwings swings) {
        return HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(swings.session());
    }

    private static ClubOrSwing carry(HeadToHeadResult result, Balance balance) {
        TotalAndDirect.Result effect =
                TotalAndDirect.withDefaults().explain(result, Metric.CARRY).orElseThrow();
        return ClubOrSwing.of(result, balance.compare(result), effect);
    }

    private static ClubOrSwing carry(InventedSwings swings) {
        return carry(compare(swings), Balance.withDefaults());
    }

    /** The launches are drawn without regard to the delivery, so that ball speed is the club's and club speed the swing's. */
    @Test
    void manyPairsTellClubFromSwing() {
        assertEquals(Answer.NEITHER, carry(InventedSwings.of(3, 60)).answer());
        ClubOrSwing club = carry(InventedSwings.of(3, 60).more(Metric.BALL_SPEED, 3.0));
        assertEquals(Answer.CLUB, club.answer());
        assertEquals(List.of(), club.swingDiffers());
        ClubOrSwing swing = carry(InventedSwings.of(3, 60).more(Metric.CLUB_SPEED, 0.6));
        assertEquals(Answer.SWING, swing.answer());
        assertEquals(List.of(Metric.CLUB_SPEED), swing.swingDiffers());
        assertEquals(0.025, swing.alpha(), 1e-12);
        ClubOrSwing both =
                carry(InventedSwings.of(3, 60).more(Metric.BALL_SPEED, 3.0).more(Metric.ATTACK_ANGLE, 2.0 * DEG));
        assertEquals(Answer.BOTH, both.answer());
        assertEquals(List.of(Metric.ATTACK_ANGLE), both.swingDiffers());
    }

    /** How often simulated golfers of forty pairs are answered in this word. */
    private static int answered(Answer word, SimulatedGolfer golfer, int sessions) {
        HeadToHead procedure = HeadToHead.withDefaults()
                .withClubs(InventedSwings.A, InventedSwings.B)
                .withPrimary(Metric.CARRY)
                .withMargin(Metric.CARRY, SimulatedGolfer.MARGIN)
                .withMargin(Metric.CLUB_SPEED, SimulatedGolfer.SPEED_MARGIN)
                .withMargin(Metric.ATTACK_ANGLE, SimulatedGolfer.ATTACK_MARGIN);
        SplittableRandom random = new SplittableRandom(word.name().hashCode());
        int count = 0;
        for (int i = 0; i < sessions; i++) {
            HeadToHeadResult result =
                    procedure.compare(golfer.withPairs(40).hit(random.split()).session());
            count += carry(result, Balance.withDefaults()).answer() == word ? 1 : 0;
        }
        return count;
    }

    /**
     * The effects are many standard errors large (club 8, speed 10, and 5 within the margins), so that each answer is the truth
     * but for the 5 % that may be wrong: fewer than 9 of 12 less often than once in 400 (binomial).
     */
    @Test
    void clearTruthsAreCalledByTheirName() {
        SimulatedGolfer none = SimulatedGolfer.steady();
        assertTrue(answered(Answer.CLUB, none.withClub(1), 12) >= 9);
        assertTrue(answered(Answer.BOTH, none.withClub(1).withSwing(), 12) >= 9);
        assertTrue(answered(Answer.BOTH, none.withClub(-1).withSwing(), 12) >= 9);
    }

    /**
     * The club does nothing, is swung faster, and its speed is read with an error as large as the golfer's scatter: at 2.5 % more
     * than 6 of 60 are wrong less often than once in 1,000 (binomial), where without the correction a quarter is.
     */
    @Test
    void aStatedReadingErrorIsNotGivenToTheClub() {
        TruthTable table = new TruthTable();
        table.run("misread", TruthTable.misreadByMore(30), 60);
        assertTrue(table.cells().get("misread").get(TruthTable.Question.CLUB).wrong() <= 0.1, table.markdown());
    }

    /** A small stated error changes the verdict of no clear session; one that leaves nothing certain leaves the club open. */
    @Test
    void aStatedReadingErrorLeavesClearVerdictsAlone() {
        Session session = InventedSwings.of(3, 60).more(Metric.BALL_SPEED, 3.0).session();
        Answer without = carry(stating(session, 0.0), Balance.withDefaults()).answer();
        assertEquals(Answer.CLUB, without);
        assertEquals(
                without, carry(stating(session, 0.05), Balance.withDefaults()).answer());
        HeadToHeadResult wide = stating(session, 0.6);
        assertEquals(Verdict.UNDECIDED, carry(wide, Balance.withDefaults()).club());
        TotalAndDirect.Result effect =
                TotalAndDirect.withDefaults().explain(wide, Metric.CARRY).orElseThrow();
        assertTrue(effect.corrected().isEmpty());
        assertEquals(List.of(Metric.CLUB_SPEED), effect.readWithError());
        assertTrue(effect.correctedMethod().isEmpty());
        assertTrue(effect.warnings().stream().anyMatch(w -> w.code().equals("covariate-read-with-error")));
    }

    private static HeadToHeadResult stating(Session session, double error) {
        Session.Builder copy = session.toBuilder();
        if (error > 0.0) {
            copy.tolerance(Metric.CLUB_SPEED, error);
        }
        return HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(copy.build());
    }

    /** Face to path is the difference of two readings, so that its error is that of both. */
    @Test
    void theErrorOfFaceToPathIsThatOfFaceAndPath() {
        Session session = InventedSwings.of(3, 30).session();
        Session parts = session.toBuilder()
                .tolerance(Metric.FACE_ANGLE, 0.3 * DEG)
                .tolerance(Metric.CLUB_PATH, 0.4 * DEG)
                .build();
        Session whole =
                session.toBuilder().tolerance(Metric.FACE_TO_PATH, 0.5 * DEG).build();
        TotalAndDirect.Result[] found = new TotalAndDirect.Result[2];
        for (int i = 0; i < 2; i++) {
            HeadToHeadResult result = HeadToHead.withDefaults()
                    .withPrimary(Metric.CARRY)
                    .compare(List.of(parts, whole).get(i));
            found[i] =
                    TotalAndDirect.withDefaults().explain(result, Metric.CURVE).orElseThrow();
        }
        assertTrue(found[0].correctedMethod().orElseThrow().contains("one variance of the differences"));
        assertEquals(
                found[1].corrected().orElseThrow().estimate().value(),
                found[0].corrected().orElseThrow().estimate().value(),
                1e-9);
    }

    /**
     * A face that the club opens is where club and golfer meet, and no swing that differed: at 2.5 % path or speed are called
     * different in more than 5 of 40 sessions less often than once in 1,000 (binomial), and what the club does is many standard errors large.
     */
    @Test
    void aFaceThatTheClubOpensIsNotCalledSwing() {
        SimulatedShape.openedByTheClub(30).count(40, 11).forEach((outcome, counted) -> {
            assertTrue(counted.of(Answer.SWING) + counted.of(Answer.BOTH) <= 5, outcome + ": " + counted);
            assertTrue(counted.of(Answer.CLUB) >= 20, outcome + ": " + counted);
        });
    }

    /** A path that differs with a face that does not is the swing's curve. */
    @Test
    void aPathThatDiffersIsCalledSwing() {
        SimulatedShape.Counted counted = Objects.requireNonNull(
                SimulatedShape.anotherPath(30).count(40, 12).get(Metric.CURVE));
        assertTrue(counted.of(Answer.CLUB) + counted.of(Answer.BOTH) <= 5, counted.toString());
        assertTrue(counted.of(Answer.SWING) >= 20, counted.toString());
    }

    @Test
    void onlyTheApproachCountsAsTheSwing() {
        TotalAndDirect face = TotalAndDirect.ofGolferSide().withCovariates(Metric.CURVE, Metric.FACE_TO_PATH);
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> Explain.withDefaults().withGolferSide(face))
                .getMessage();
        assertTrue(message.contains("face_to_path"), message);
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withPrimary(Metric.CURVE)
                .compare(SimulatedShape.openedByTheClub(12).hit(new SplittableRandom(5)));
        Explanation why = Explain.withDefaults()
                .withGolferSide(TotalAndDirect.ofGolferSide().withCovariates(Metric.CURVE, Metric.CLUB_PATH))
                .explain(result);
        assertEquals(
                List.of(Metric.CLUB_PATH),
                why.atEqualSwing(Metric.CURVE).orElseThrow().covariates());
        assertEquals(
                List.of(Metric.FACE_TO_PATH, Metric.CLUB_SPEED),
                why.effect(Metric.CURVE).orElseThrow().covariates());
        assertEquals(List.of(Metric.CLUB_SPEED), TotalAndDirect.ofGolferSide().covariates(Metric.BALL_SPEED));
    }

    /** Equal clubs, each hit in an air of its own: the carry cannot be given to the club, the start direction can. */
    @Test
    void whatAirMovesIsNotGivenToTheClub() {
        List<Session> days = new ArrayList<>();
        Session session = InventedSwings.of(3, 60).more(Metric.BALL_SPEED, 3.0).session();
        for (String club : List.of(InventedSwings.A, InventedSwings.B)) {
            days.add(session.toBuilder()
                    .shots(session.shots().club(club))
                    .elevation(Length.ofFeet(club.equals(InventedSwings.A) ? 6_000.0 : 0.0))
                    .build());
        }
        HeadToHeadResult result =
                HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(Session.combine(days));
        assertTrue(result.warnings().stream().anyMatch(w -> w.code().equals("airs-differ")));
        Balance.Result balance = Balance.withDefaults().compare(result);
        TotalAndDirect procedure = TotalAndDirect.ofGolferSide();
        ClubOrSwing carry = ClubOrSwing.of(
                result, balance, procedure.explain(result, Metric.CARRY).orElseThrow());
        assertEquals(Answer.CAN_NOT_TELL, carry.answer());
        assertEquals(Verdict.UNDECIDED, carry.club());
        assertEquals("airs-differ", carry.warnings().get(0).code());
        ClubOrSwing speed = ClubOrSwing.of(
                result, balance, procedure.explain(result, Metric.BALL_SPEED).orElseThrow());
        assertEquals(Answer.CLUB, speed.answer());
        assertEquals(List.of(), speed.warnings());
    }

    @Test
    void oneVerdictThatIsOpenLeavesTheAnswerOpen() {
        for (Verdict verdict : Verdict.values()) {
            assertEquals(Answer.CAN_NOT_TELL, ClubOrSwing.answer(Verdict.UNDECIDED, verdict));
            assertEquals(Answer.CAN_NOT_TELL, ClubOrSwing.answer(verdict, Verdict.UNDECIDED));
        }
        assertEquals(
                Answer.CAN_NOT_TELL,
                carry(InventedSwings.of(5, 6).input(Metric.CLUB_SPEED, 38.0, 2.0, 0.0))
                        .answer());
    }

    @Test
    void whatWasNotMeasuredIsNotHeldEqual() {
        ClubOrSwing r =
                carry(InventedSwings.of(3, 60).more(Metric.BALL_SPEED, 3.0).without(Metric.ATTACK_ANGLE));
        assertEquals(Verdict.UNDECIDED, r.club());
        assertEquals(Verdict.UNDECIDED, r.swing());
        assertEquals(Answer.CAN_NOT_TELL, r.answer());
    }

    @Test
    void theMarginsOfTheBalanceGoFirst() {
        HeadToHeadResult result = compare(InventedSwings.of(3, 60));
        assertEquals(
                Verdict.PRACTICALLY_THE_SAME,
                carry(result, Balance.withDefaults()).swing());
        assertEquals(
                Verdict.UNDECIDED,
                carry(result, Balance.withDefaults().withMargin(Metric.CLUB_SPEED, 1e-3))
                        .swing());
        assertEquals(
                Verdict.PRACTICALLY_THE_SAME,
                carry(result, Balance.withDefaults().withoutInput(Metric.CLUB_SPEED))
                        .swing());
    }

    @Test
    void comesFromAnExplanation() {
        HeadToHeadResult result = compare(InventedSwings.of(3, 12));
        Explanation why = Explain.withDefaults()
                .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                .explain(result);
        ClubOrSwing found = ClubOrSwing.of(result, why, Metric.CARRY).orElseThrow();
        assertEquals(carry(result, Balance.withDefaults()), found);
        assertTrue(ClubOrSwing.of(result, why, Metric.FLIGHT_TIME).isEmpty());
    }

    /** The textbook error of the differences within pairs, whose p Commons Math gives. */
    @Test
    void pairsAreTestedWithOneVariance() {
        HeadToHeadResult result = compare(InventedSwings.of(7, 12).more(Metric.BALL_SPEED, 1.0));
        TotalAndDirect.Result effect =
                TotalAndDirect.withDefaults().explain(result, Metric.CARRY).orElseThrow();
        double[] speed = differences(result, Metric.CLUB_SPEED);
        double[] attack = differences(result, Metric.ATTACK_ANGLE);
        double[][] x = new double[12][];
        Arrays.setAll(x, i -> new double[] {speed[i], 100.0 * attack[i]});
        OLSMultipleLinearRegression squares = new OLSMultipleLinearRegression();
        squares.newSampleData(differences(result, Metric.CARRY), x);
        double t = squares.estimateRegressionParameters()[0] / squares.estimateRegressionParametersStandardErrors()[0];
        double p = 2.0 * new TDistribution(9.0).cumulativeProbability(-Math.abs(t));
        assertEquals(p, effect.direct().pValue(), 1e-9);
    }

    /**
     * What is printed beside a verdict says the same: without 0 where the clubs are called different, within the margin where they are
     * called practically the same, whose two tests at 2.5 % are this interval of 95 %.
     */
    @Test
    void theVerdictIsThatOfTheIntervalPrintedForIt() {
        SimulatedGolfer none = SimulatedGolfer.steady();
        HeadToHead procedure = HeadToHead.withDefaults()
                .withClubs(InventedSwings.A, InventedSwings.B)
                .withPrimary(Metric.CARRY)
                .withMargin(Metric.CARRY, SimulatedGolfer.MARGIN);
        Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
        for (HeadToHead how : List.of(procedure, procedure.withoutPairing())) {
            for (SimulatedGolfer golfer :
                    List.of(none, none.withClub(1), none.withMisread(0.2).withStated())) {
                SplittableRandom random = new SplittableRandom(12);
                for (int i = 0; i < 20; i++) {
                    HeadToHeadResult result =
                            how.compare(golfer.hit(random.split()).session());
                    TotalAndDirect.Result effect = TotalAndDirect.withDefaults()
                            .explain(result, Metric.CARRY)
                            .orElseThrow();
                    Verdict verdict = ClubOrSwing.of(
                                    result, Balance.withDefaults().compare(result), effect)
                            .club();
                    counts.merge(verdict, 1, Integer::sum);
                    agrees(verdict, effect.direct().estimate().interval());
                    effect.corrected()
                            .ifPresent(c -> agrees(verdict, c.estimate().interval()));
                }
            }
        }
        assertTrue(counts.getOrDefault(Verdict.DIFFERENT, 0) > 10, counts.toString());
        assertTrue(counts.getOrDefault(Verdict.PRACTICALLY_THE_SAME, 0) > 10, counts.toString());
    }

    private static void agrees(Verdict verdict, Interval printed) {
        if (verdict == Verdict.DIFFERENT) {
            assertFalse(printed.contains(0.0), printed.toString());
        }
        if (verdict == Verdict.PRACTICALLY_THE_SAME) {
            assertTrue(
                    printed.lower() > -SimulatedGolfer.MARGIN && printed.upper() < SimulatedGolfer.MARGIN,
                    printed.toString());
        }
    }

    private static double[] differences(HeadToHeadResult result, Metric metric) {
        MetricComparison c = result.find(metric).orElseThrow();
        double[] first = c.pairedFirst();
        Arrays.setAll(first, i -> first[i] - c.pairedSecond()[i]);
        return first;
    }

    /**
     * A few rows of the truth table. At 5 % more than 8 of 50 would be wrong once in 1,000, and at the 94 % of the exact t test
     * fewer than 19 of 25 be decided as seldom (binomial).
     */
    @Test
    void simulatedGolfersAreSeldomJudgedWrongly() {
        TruthTable table = new TruthTable();
        for (String cell : List.of("no effect", "club only")) {
            table.run(cell, Objects.requireNonNull(TruthTable.golfers().get(cell)), 25);
        }
        for (TruthTable.Question question : TruthTable.Question.values()) {
            double wrong = 0.0;
            for (Map<TruthTable.Question, TruthTable.Count> cell : table.cells().values()) {
                wrong += 25.0 * cell.get(question).wrong();
            }
            assertTrue(wrong <= 8.0, table.markdown());
        }
        assertTrue(table.cells().get("club only").get(TruthTable.Question.TOTAL).decided() >= 19.0 / 25.0);
    }
}
