package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.explain.Explanation;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Interval;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often a part of a difference is named between clubs that do not differ at all, twelve pairs. */
class NamedPartsTest {
    private static final Pattern NAMED = Pattern.compile("with that goes|[;,] with [a-z ]+ goes ");
    private static final Explain EXPLAIN = Explain.withDefaults()
            .withFlights(FlightCounterfactual.withDefaults().withResamples(199));

    private int named;
    private int outside;
    private int sessions;

    private void count(Metric primary, double faceDegrees, int number) {
        for (int seed = 1; seed <= number; seed++) {
            Session session = ExplainedSessions.result(seed, 12, Handedness.RIGHT, faceDegrees, 1.0)
                    .session();
            HeadToHeadResult result = HeadToHead.withDefaults()
                    .withClubs("Alder", "Rowan")
                    .withPrimary(primary)
                    .compare(session);
            Explanation why = EXPLAIN.explain(result);
            sessions++;
            named += HeadToHeadReport.of(result).withExplanation(why).sections().stream()
                            .filter(s -> s.id().equals("explained"))
                            .flatMap(s -> s.sentences().stream())
                            .anyMatch(s -> NAMED.matcher(s.text()).find())
                    ? 1
                    : 0;
            outside += why.flights().orElseThrow().outcomes().stream()
                            .filter(o -> ExplainedWords.outcomes(primary).contains(o.outcome()))
                            .flatMap(o -> o.shares().stream())
                            .map(s -> s.share().interval())
                            .anyMatch(NamedPartsTest::leavesOutZero)
                    ? 1
                    : 0;
        }
    }

    private static boolean leavesOutZero(Interval interval) {
        return interval.bounded() && (interval.lower() > 0.0 || interval.upper() < 0.0);
    }

    /** At 5 % more than 10 of 80 name one less often than once in 300 (binomial), whereas more of them have an interval beside zero. */
    @Test
    void seldomIsAPartNamedWhereNothingDiffers() {
        count(Metric.CURVE, 0.0, 80);
        assertTrue(named <= 10, named + " of " + sessions);
        assertTrue(outside > named, outside + " intervals beside zero");
    }

    /** Faces 1.5 deg apart tilt the axis by 4.5 deg, which is three standard errors of the curve and more. */
    @Test
    void whatIsThereIsNamed() {
        count(Metric.CURVE, 1.5, 10);
        assertTrue(named >= 8, named + " of " + sessions);
    }

    @Test
    @Tag("sweep")
    void notMoreThanOneInTwentyNameAPart() {
        for (Metric primary : new Metric[] {Metric.CURVE, Metric.FACE_TO_PATH, Metric.CARRY, Metric.AXIS_TILT}) {
            named = 0;
            outside = 0;
            sessions = 0;
            count(primary, 0.0, 2_000);
            System.err.printf(
                    Locale.ROOT,
                    "SWEEP %s decides: a part named in %.1f %%, a share by flights beside zero in %.1f %% of %d%n",
                    primary.key(),
                    100.0 * named / sessions,
                    100.0 * outside / sessions,
                    sessions);
            // 5 % and three binomial standard errors
            double most = 0.05 + 3.0 * Math.sqrt(0.05 * 0.95 / sessions);
            assertTrue(named <= most * sessions, primary + ": " + named + " of " + sessions);
        }
    }
}
