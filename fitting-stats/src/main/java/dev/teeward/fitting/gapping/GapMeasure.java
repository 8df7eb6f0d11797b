package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.PairedTTest;
import dev.teeward.fitting.compare.ShotOrderKind;
import dev.teeward.fitting.compare.ShotPairing;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.compare.WelchTTest;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.ScaledT;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** Measures the gaps of a bag one by one, and remembers what to warn of. */
final class GapMeasure {
    private static final double SURE = 0.95;

    private final ShotSet shots;
    private final double level;
    private final int gaps;
    private final List<String> blocked = new ArrayList<>();
    private final List<String> unsure = new ArrayList<>();

    /** The shots of the session, of which those without a carry are excluded. */
    GapMeasure(ShotSet shots, double level, int gaps) {
        this.shots = shots;
        this.level = level;
        this.gaps = gaps;
    }

    /** A gap before it is held against a wanted one. */
    record Draft(Gap gap, Optional<DoubleUnaryOperator> above) {
        Gap against(double wanted, double tolerance, Mender mender) {
            return new Gap(
                    gap.longer(),
                    gap.shorter(),
                    gap.difference(),
                    gap.together(),
                    gap.ordered(),
                    gap.overlap(),
                    probability(above.map(tail -> 1.0 - tail.applyAsDouble(wanted - tolerance))),
                    probability(above.map(tail -> tail.applyAsDouble(wanted + tolerance))),
                    mender.mends(gap, wanted));
        }
    }

    Draft of(BagClub longer, BagClub shorter) {
        ShotPairing pairing = ShotPairing.of(shots, longer.name(), shorter.name());
        String pair = longer.name() + " and " + shorter.name();
        if (pairing.order() == ShotOrderKind.BLOCKED) {
            blocked.add(pair);
        }
        Sample first = carries(longer);
        Sample second = carries(shorter);
        boolean paired = pairing.enough();
        TestResult difference;
        TestResult together;
        Optional<DoubleUnaryOperator> above;
        double all = 1.0 - (1.0 - level) / gaps;
        if (paired) {
            double[] x = carries(pairing, true);
            double[] y = carries(pairing, false);
            PairedTTest test = PairedTTest.withDefaults().withUnit(LengthUnit.METER);
            difference = test.withLevel(level).test(x, y);
            together = test.withLevel(all).test(x, y);
            Sample d = Sample.differences(longer.name(), x, shorter.name(), y);
            above = d.variance() > 0.0
                    ? Optional.of(ScaledT.meanBehind(d.size(), d.mean(), d.variance())::above)
                    : Optional.empty();
        } else {
            WelchTTest test = WelchTTest.withDefaults().withUnit(LengthUnit.METER);
            difference = test.withLevel(level).test(first.toArray(), second.toArray());
            together = test.withLevel(all).test(first.toArray(), second.toArray());
            above = first.variance() > 0.0 && second.variance() > 0.0
                    ? Optional.of(at -> ScaledT.differenceAbove(at, mean(first), mean(second)))
                    : Optional.empty();
        }
        OptionalDouble ordered = probability(above.map(tail -> tail.applyAsDouble(0.0)));
        if (!(ordered.orElse(0.0) >= SURE)) {
            unsure.add(pair);
        }
        Optional<Double> overlap = ClubMeasure.next(first)
                .flatMap(one -> ClubMeasure.next(second).map(other -> ScaledT.differenceAbove(0.0, other, one)));
        Interval simultaneous = together.estimate().interval();
        Gap gap = new Gap(
                longer.name(),
                shorter.name(),
                difference,
                simultaneous,
                ordered,
                probability(overlap),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
        return new Draft(gap, above);
    }

    private static ScaledT mean(Sample sample) {
        return ScaledT.meanBehind(sample.size(), sample.mean(), sample.variance());
    }

    private static Sample carries(BagClub club) {
        return Sample.of(
                club.name(),
                club.carries().stream().mapToDouble(Double::doubleValue).toArray());
    }

    private static double[] carries(ShotPairing pairing, boolean first) {
        return pairing.pairs().stream()
                .map(first ? ShotPair::first : ShotPair::second)
                .mapToDouble(shot -> shot.value(Metric.CARRY))
                .toArray();
    }

    /** The quadrature may overstep 0 or 1 by a rounding. */
    private static OptionalDouble probability(Optional<Double> value) {
        return value.isPresent()
                ? OptionalDouble.of(Math.min(1.0, Math.max(0.0, value.get())))
                : OptionalDouble.empty();
    }

    List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        if (gaps > 1) {
            warnings.add(
                    Warning.of(
                            "several-gaps",
                            "each interval holds by itself; of " + gaps
                                    + " gaps some may lie outside theirs, so there is a wider one that holds for all together"));
        }
        if (!blocked.isEmpty()) {
            warnings.add(Warning.of(
                    "clubs-in-blocks",
                    "each club was hit in one go (" + String.join("; ", blocked)
                            + "), so warming up or tiring is in the gaps; hit the clubs in rounds"));
        }
        if (!unsure.isEmpty()) {
            warnings.add(
                    Warning.of(
                            "order-not-sure",
                            "which of " + String.join("; ", unsure)
                                    + " carries farther is not sure, and a gap between them is shown too large rather than too small"));
        }
        return warnings;
    }
}
