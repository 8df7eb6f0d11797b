package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.PValueAdjustment;
import dev.teeward.fitting.compare.Verdict;
import dev.teeward.fitting.explain.InputShare;
import dev.teeward.fitting.explain.OutcomeShares;
import dev.teeward.fitting.explain.TotalAndDirect;
import dev.teeward.fitting.linear.Coefficient;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Which parts of a difference may be named. The intervals that are shown hold one by one; where clubs do not differ at all, one
 * of the many leaves out zero in some 15 of 100 sessions. A part is therefore named only if the outcome is called different,
 * the reading differs among all readings whose parts of that outcome are asked (Holm 1979), and the part is not zero even among
 * all of these parts (Bonferroni): all three at the level of the comparison.
 */
final class NamedParts {
    private final HeadToHeadResult result;

    NamedParts(HeadToHeadResult result) {
        this.result = result;
    }

    /** The inputs whose shares by flights are named. */
    Set<Metric> of(OutcomeShares outcome) {
        Set<Metric> named = differing(
                outcome.outcome(),
                outcome.shares().stream().map(InputShare::input).toList());
        outcome.shares().stream()
                .filter(s -> !s.together().bounded() || !DifferenceWords.leavesOut(s.together(), 0.0))
                .map(InputShare::input)
                .forEach(named::remove);
        return named;
    }

    /** The covariates whose parts by slopes are named. */
    Set<Metric> of(TotalAndDirect.Result effect) {
        Set<Metric> named = differing(effect.outcome(), effect.covariates());
        double alpha = (1.0 - result.level()) / effect.covariates().size();
        named.removeIf(m -> Optional.ofNullable(effect.explained().get(m))
                .map(Coefficient::pValue)
                .filter(p -> p <= alpha)
                .isEmpty());
        return named;
    }

    /** Of readings asked together those that differ; none of an outcome that does not. */
    private Set<Metric> differing(Metric outcome, List<Metric> readings) {
        Set<Metric> differing = new LinkedHashSet<>();
        boolean different = result.find(outcome)
                .filter(c -> c.verdict().verdict() == Verdict.DIFFERENT)
                .isPresent();
        if (different) {
            List<Metric> asked = new ArrayList<>(readings);
            asked.removeIf(m -> result.find(m).isEmpty());
            double[] adjusted = PValueAdjustment.HOLM.adjust(asked.stream()
                    .mapToDouble(m -> result.find(m).orElseThrow().difference().pValue())
                    .toArray());
            for (int i = 0; i < adjusted.length; i++) {
                if (adjusted[i] <= 1.0 - result.level()) {
                    differing.add(asked.get(i));
                }
            }
        }
        return differing;
    }
}
