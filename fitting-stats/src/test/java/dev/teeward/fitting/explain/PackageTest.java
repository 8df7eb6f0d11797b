package dev.teeward.fitting.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.compare.Verdict;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The example of the package's text. */
class PackageTest {
    @Test
    void theExampleOfThePackageRuns() {
        Session session = InventedSwings.of(2, 30)
                .more(Metric.AXIS_TILT, Math.toRadians(6.0))
                .session();

        HeadToHeadResult result =
                HeadToHead.withDefaults().withPrimary(Metric.CURVE).compare(session);
        Explanation why = Explain.withDefaults()
                .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                .explain(result);
        Optional<Verdict> golfer = why.balance().side(SwingSide.GOLFER);
        Optional<TotalAndDirect.Result> effect = why.effect(Metric.CURVE);
        Optional<OutcomeShares> curve = why.flights().flatMap(f -> f.of(Metric.CURVE));

        assertEquals(Optional.of(Verdict.PRACTICALLY_THE_SAME), golfer);
        assertTrue(effect.isPresent(), "the metric that decides is explained");
        InputShare tilt = curve.orElseThrow().share(Metric.AXIS_TILT).orElseThrow();
        assertTrue(tilt.share().interval().lower() > 0.0, tilt.toString());
        assertTrue(curve.orElseThrow().rest().isPresent());
    }
}
