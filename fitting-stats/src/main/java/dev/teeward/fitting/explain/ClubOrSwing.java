package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.MetricComparison;
import dev.teeward.fitting.compare.PValueAdjustment;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.linear.Coefficient;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Club or swing, in one word for one outcome: did the swings differ, in what the golfer brings, and is there a difference at
 * equal swing?
 *
 * <p><b>What counts as the swing.</b> Only covariates of the golfer's side ({@link TotalAndDirect#ofGolferSide()}): club speed
 * and attack angle for carry, club path and club speed for start, curve and side. Face, loft, lie and strike are how club and
 * golfer meet, {@link SwingSide#MEETING}: what goes with them stays with the club, and {@link Explanation#effects()} and
 * {@link Explanation#flights()} show how much that is. So a club that opens the face is named in the curve, and so is one whose
 * face the golfer happened to leave open with it alone: shots cannot tell these two apart. With a face opened by 1.8 deg the club is
 * named in the curve in 20, 76 and 95 % of 400 simulated sessions of 12, 20 and 30 pairs, the swing in 0.3, 0 and 0 %.
 *
 * <p><b>The two verdicts.</b> {@link #swing()}: different if such a covariate of the outcome differs between the clubs, by Holm (1979)
 * over the covariates; practically the same if each of them passes the equivalence test against its margin, which needs no
 * adjustment because all must pass (Berger 1982, from memory). {@link #club()}: different if the direct difference is not 0 by t;
 * practically the same if it passes two one-sided t tests against the margin of the outcome. Its error is HC3 without pairs. Of
 * pairs it is the textbook one: a difference within a pair has one variance even if the clubs scatter differently, and HC3 would
 * leave up to 13 in 100 sessions more undecided at twelve pairs. Practically the same goes before different. A covariate that was not
 * measured leaves the club undecided, and the swing not the same.
 *
 * <p><b>The interval of the verdict.</b> {@link TotalAndDirect.Result#direct()} is what is judged, and its interval has the level of the
 * comparison. Two one-sided tests at half of 1 minus the level are that very interval: practically the same is an interval within
 * the margin, and different is one without 0, more strictly, as p must not exceed half of 1 minus the level.
 *
 * <p><b>The budget.</b> Each verdict spends half of 1 minus the level, 2.5 % of 5 %. Of one question only one error is possible
 * whatever the truth: to call a difference that is 0 different, or one beyond its margin the same (to call the wrong side is
 * rarer still). Each word is so wrong in at most 2.5 %, the answer in at most 5 %, if the model of the direct difference holds:
 * straight lines, scatter near normal, covariates read without error. What the swing names can err both ways where one of two
 * covariates differs by its margin and the other by 0: it is called the same, or the wrong one is called different, in at most 5 %
 * (with the speed at its margin and the attack angle equal 3.8, 4.8 and 4.9 % at 12, 20 and 40 simulated pairs).
 *
 * <p><b>Reading errors.</b> A covariate that differs and is read with error is given too little, and the club is named too
 * often, more so with more shots. Where the session states the error of a covariate ({@link dev.teeward.fitting.Session#tolerance}),
 * the club has a verdict only if the direct difference says it both as it is and corrected for the error
 * ({@link TotalAndDirect.Result#corrected()}); where less than half of the variance of the readings is left without the error, it has
 * none ({@link dev.teeward.fitting.linear.ReadingErrorCorrection}). A stated error that is too large corrects too much without being
 * believed alone. Simulated, 10,000 sessions each, a speed that differs by 2 mph and scatters by 0.9 mph, and a club that does
 * nothing: with an error of 1 mph the club is named in 0.9, 1.1, 1.1 and 1.1 % at 12, 20, 30 and 60 pairs (in 9.6, 17.4 and 27.4 % of 2,000
 * sessions of 12, 20 and 30 pairs where the error is not stated), with 1.3 mph in 0.8, 0.9, 0.6 and 0.7 %, with 1.8 mph in 0.9, 0.7, 0.5 and
 * 0.1 %; without the limit the last would be 2.0, 2.7, 4.1 and 4.4 %. The worst cell found, with errors up to three times the scatter and
 * a speed up to 11 mph apart, has 2.2 %. The price is that an error as large as the scatter leaves three of four sessions without a verdict of the
 * club, and a larger one nearly all. Where no
 * error is stated, {@link TotalAndDirect} can only warn ({@code covariate-moved}).
 *
 * <p><b>Air.</b> While the comparison warns {@code airs-differ}, nothing tells the club from the air in what a flight's air
 * moves ({@link UnevenAir#concerns}): there the club has no verdict, and {@link #warnings()} says why.
 *
 * <p>"Swing" is speed, attack angle and path as they were, not who brought them: if the club makes the golfer swing faster, this
 * says swing.
 *
 * <pre>{@code
 * ClubOrSwing carry = ClubOrSwing.of(result, why, Metric.CARRY).orElseThrow();
 * carry.answer();         // CLUB, SWING, BOTH, NEITHER or CAN_NOT_TELL
 * carry.swingDiffers();   // the covariates that differ, such as the club speed
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param outcome whose difference is asked
 * @param answer both verdicts in one word
 * @param swing whether what the golfer brings, as far as it is held equal, differed
 * @param club whether there is a difference at equal swing
 * @param swingDiffers the covariates that are called different, possibly none
 * @param alpha what each verdict spends: half of 1 minus the level of the comparison
 * @param warnings why the club has no verdict whatever the shots say: {@code airs-differ}, or none
 */
public record ClubOrSwing(
        Metric outcome,
        Answer answer,
        Verdict swing,
        Verdict club,
        List<Metric> swingDiffers,
        double alpha,
        List<Warning> warnings) {
    /** The answer in one word. */
    public enum Answer {
        /** A difference at equal swing, and swings that were practically the same. */
        CLUB,

        /** Swings that differed, and practically no difference at equal swing. */
        SWING,

        /** Swings that differed, and a difference at equal swing. */
        BOTH,

        /** Swings that were practically the same, and practically no difference at equal swing. */
        NEITHER,

        /** At least one of the two can't be told. */
        CAN_NOT_TELL
    }

    /**
     * Copies the lists.
     *
     * @param outcome whose difference is asked
     * @param answer both verdicts in one word
     * @param swing whether what the golfer brings differed
     * @param club whether there is a difference at equal swing
     * @param swingDiffers the covariates that are called different, possibly none
     * @param alpha what each verdict spends
     * @param warnings why the club has no verdict, possibly none
     */
    public ClubOrSwing {
        Objects.requireNonNull(outcome, "outcome");
        Objects.requireNonNull(answer, "answer");
        Objects.requireNonNull(swing, "swing");
        Objects.requireNonNull(club, "club");
        swingDiffers = List.copyOf(swingDiffers);
        warnings = List.copyOf(warnings);
    }

    /**
     * Answers from what was explained.
     *
     * @param result the comparison that was explained; its level is spent, its margins are taken where the balance has none
     * @param why its explanation
     * @param outcome which outcome, by its own question: several outcomes are several budgets
     * @return the answer, or empty if there is no difference at equal swing of that outcome
     */
    public static Optional<ClubOrSwing> of(HeadToHeadResult result, Explanation why, Metric outcome) {
        return why.atEqualSwing(outcome).map(effect -> of(result, why.balance(), effect));
    }

    static ClubOrSwing of(HeadToHeadResult result, Balance.Result balance, TotalAndDirect.Result effect) {
        double alpha = 0.5 * (1.0 - result.level());
        boolean whole = effect.warnings().stream().noneMatch(w -> w.code().equals("covariate-not-measured"));
        List<Metric> covariates = effect.covariates();
        double[] different = new double[covariates.size()];
        boolean same = whole;
        for (int j = 0; j < different.length; j++) {
            Metric covariate = covariates.get(j);
            MetricComparison compared = result.find(covariate).orElseThrow();
            different[j] = compared.difference().pValue();
            Optional<TostTest.Result> equivalence =
                    balance.find(covariate).map(Balance.Input::equivalence).orElse(compared.equivalence());
            same &= equivalence.filter(e -> e.pValue() < alpha).isPresent();
        }
        double[] adjusted = PValueAdjustment.HOLM.adjust(different);
        List<Metric> differing = new ArrayList<>();
        for (int j = 0; j < adjusted.length; j++) {
            if (!same && adjusted[j] <= alpha) {
                differing.add(covariates.get(j));
            }
        }
        Verdict swing = verdict(!differing.isEmpty(), same);
        OptionalDouble margin = result.find(effect.outcome()).orElseThrow().margin();
        List<Warning> airs = airs(result, effect.outcome());
        Verdict club = whole && airs.isEmpty() ? atEqualSwing(effect, margin, alpha) : Verdict.UNDECIDED;
        return new ClubOrSwing(effect.outcome(), answer(swing, club), swing, club, differing, alpha, airs);
    }

    /** That the clubs met different airs, if air moves the outcome. */
    private static List<Warning> airs(HeadToHeadResult result, Metric outcome) {
        return result.warnings().stream()
                .filter(w -> w.code().equals(UnevenAir.CODE) && UnevenAir.concerns(outcome))
                .toList();
    }

    /** Where covariates are stated to be read with error, only what is said with and without the correction for it. */
    private static Verdict atEqualSwing(TotalAndDirect.Result effect, OptionalDouble margin, double alpha) {
        Verdict plain = atEqualSwing(effect.direct(), margin, alpha);
        if (effect.readWithError().isEmpty()) {
            return plain;
        }
        double direct = effect.direct().estimate().value();
        return effect.corrected()
                .filter(c -> atEqualSwing(c, margin, alpha) == plain)
                .filter(c -> plain != Verdict.DIFFERENT || c.estimate().value() * direct > 0.0)
                .map(c -> plain)
                .orElse(Verdict.UNDECIDED);
    }

    private static Verdict atEqualSwing(Coefficient direct, OptionalDouble margin, double alpha) {
        return verdict(direct.pValue() <= alpha, margin.isPresent() && beyond(direct, margin.getAsDouble()) < alpha);
    }

    /** The larger p of two one-sided t tests against a margin. */
    private static double beyond(Coefficient c, double margin) {
        return c.standardError().isEmpty()
                ? 1.0
                : Distributions.tUpperTail(
                        (margin - Math.abs(c.estimate().value()))
                                / c.standardError().getAsDouble(),
                        c.degreesOfFreedom());
    }

    static Verdict verdict(boolean different, boolean same) {
        if (same) {
            return Verdict.PRACTICALLY_THE_SAME;
        }
        return different ? Verdict.DIFFERENT : Verdict.UNDECIDED;
    }

    static Answer answer(Verdict swing, Verdict club) {
        if (swing == Verdict.UNDECIDED || club == Verdict.UNDECIDED) {
            return Answer.CAN_NOT_TELL;
        }
        if (swing == Verdict.DIFFERENT) {
            return club == Verdict.DIFFERENT ? Answer.BOTH : Answer.SWING;
        }
        return club == Verdict.DIFFERENT ? Answer.CLUB : Answer.NEITHER;
    }
}
