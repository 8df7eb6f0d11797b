package dev.teeward.fitting.explain;

import dev.teeward.fitting.compare.PValueAdjustment;
import dev.teeward.fitting.compare.ThreeWayVerdict;
import dev.teeward.fitting.compare.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Several questions of one family: each answered by its p adjusted by Holm (1979), then all of them together. */
final class Verdicts {
    private final double[] difference;
    private final double[] equivalence;
    private final List<ThreeWayVerdict> each;

    /**
     * Answers.
     *
     * @param difference the p of no difference, one for each question
     * @param equivalence the p of the equivalence test, 1 where there is none
     * @param alpha what they are held against
     */
    Verdicts(double[] difference, double[] equivalence, double alpha) {
        this.difference = PValueAdjustment.HOLM.adjust(difference);
        this.equivalence = PValueAdjustment.HOLM.adjust(equivalence);
        List<ThreeWayVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < difference.length; i++) {
            boolean different = this.difference[i] <= alpha;
            boolean same = this.equivalence[i] < alpha;
            verdicts.add(
                    same
                            ? new ThreeWayVerdict(Verdict.PRACTICALLY_THE_SAME, different)
                            : new ThreeWayVerdict(different ? Verdict.DIFFERENT : Verdict.UNDECIDED, false));
        }
        each = List.copyOf(verdicts);
    }

    double difference(int i) {
        return difference[i];
    }

    double equivalence(int i) {
        return equivalence[i];
    }

    ThreeWayVerdict verdict(int i) {
        return each.get(i);
    }

    /** Different if one is, the same only if all are; nothing of no questions. */
    static Optional<Verdict> together(List<Verdict> verdicts) {
        if (verdicts.isEmpty()) {
            return Optional.empty();
        }
        if (verdicts.contains(Verdict.DIFFERENT)) {
            return Optional.of(Verdict.DIFFERENT);
        }
        return Optional.of(verdicts.contains(Verdict.UNDECIDED) ? Verdict.UNDECIDED : Verdict.PRACTICALLY_THE_SAME);
    }
}
