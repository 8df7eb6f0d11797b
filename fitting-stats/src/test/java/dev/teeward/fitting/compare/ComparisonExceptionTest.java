package dev.teeward.fitting.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.ComparisonException.Reason;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sessions that cannot be compared, each with its one line; and choices made for want of a declaration. */
class ComparisonExceptionTest {
    private static final double[] FOUR = {150.0, 151.0, 152.0, 149.0};

    private static void refuses(Reason reason, String message, HeadToHead procedure, Session session) {
        ComparisonException e = assertThrows(ComparisonException.class, () -> procedure.compare(session));
        assertEquals(message, e.getMessage());
        assertEquals(reason, e.reason());
    }

    @Test
    void oneLineForEachBadSession() {
        HeadToHead procedure = HeadToHead.withDefaults();
        Session none = Session.builder().build();
        refuses(Reason.NO_SHOTS, "the session has no shots", procedure, none);
        Session two = InventedSession.carries("ABBAABBA", FOUR, FOUR);
        Session excluded = two.withShots(ShotSet.of(
                two.shots().stream().map(s -> s.withExclusion("rain")).toList()));
        refuses(Reason.ALL_EXCLUDED, "all 8 shots of the session are excluded", procedure, excluded);
        refuses(
                Reason.ONE_CLUB,
                "only one club was hit, Alder; a comparison needs two",
                procedure,
                InventedSession.carries("AAAA", FOUR, FOUR));
        Session three =
                two.append(Shot.builder("Hazel").measured(Metric.CARRY, 140.0).build());
        refuses(
                Reason.CLUBS_NOT_CHOSEN,
                "the session has 3 clubs; choose two of Alder, Rowan, Hazel",
                procedure,
                three);
        assertEquals(
                "Alder",
                procedure.withClubs("Alder", "Rowan").compare(three).first().name());
        refuses(
                Reason.TOO_FEW_SHOTS,
                "Hazel has only one used shot; each club needs at least two",
                procedure.withClubs("Hazel", "Rowan"),
                three);
        refuses(
                Reason.UNKNOWN_CLUB,
                "no shot was hit with \"Elm\"; the session has Alder, Rowan",
                procedure.withClubs("Elm", "Rowan"),
                two);
        Session one = InventedSession.carries("ABAA", FOUR, FOUR);
        Shot rowan = one.shots().shots().get(1);
        refuses(
                Reason.TOO_FEW_SHOTS,
                "Rowan has no used shot (1 excluded); each club needs at least two",
                procedure,
                one.withShots(ShotSet.of(one.shots().stream()
                        .map(s -> s.equals(rowan) ? s.withExclusion("topped") : s)
                        .toList())));
        refuses(
                Reason.PRIMARY_NOT_AVAILABLE,
                "the primary metric spin_rate has 0 numbers with Alder and 0 with Rowan, but needs two with each; there"
                        + " are carry",
                procedure.withPrimary(Metric.SPIN_RATE),
                two);
        Session apart = two.withShots(ShotSet.of(two.shots().stream()
                .map(s -> s.club().equals("Alder")
                        ? s
                        : s.toBuilder().build().without(Metric.CARRY).toBuilder()
                                .measured(Metric.TOTAL, 160.0)
                                .build())
                .toList()));
        refuses(
                Reason.NO_METRIC_IN_COMMON,
                "no metric was measured at least twice with both Alder and Rowan",
                procedure,
                apart);
    }

    @Test
    void badMargins() {
        for (double bad :
                new double[] {-1.0, 0.0, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 126.0}) {
            ComparisonException e = assertThrows(
                    ComparisonException.class, () -> HeadToHead.withDefaults().withMargin(Metric.CARRY, bad));
            assertEquals(Reason.BAD_MARGIN, e.reason());
            String message = String.valueOf(e.getMessage());
            assertTrue(message.startsWith("margin of carry must be in (0, 125] m (0-136.7 yd), but was"), message);
            assertFalse(message.contains("\n"));
        }
        assertThrows(
                IllegalArgumentException.class, () -> HeadToHead.withDefaults().withLevel(0.5));
        assertThrows(
                IllegalArgumentException.class, () -> HeadToHead.withDefaults().withLevel(Double.NaN));
        assertThrows(
                IllegalArgumentException.class, () -> HeadToHead.withDefaults().withClubs("Alder", "Alder"));
    }

    @Test
    void everyMetricHasACommonMargin() {
        for (Metric metric : Metric.values()) {
            double margin = PracticalMargins.defaults().of(metric).orElseThrow();
            assertTrue(margin > 0.0 && margin <= 0.25 * (metric.upper() - metric.lower()), metric.key());
            assertFalse(PracticalMargins.defaults().declared(metric));
        }
        PracticalMargins own = PracticalMargins.none().with(Metric.CARRY, LengthUnit.YARD.toSi(3.0));
        assertEquals(2.7432, own.of(Metric.CARRY).orElseThrow(), 1e-12);
        assertTrue(own.declared(Metric.CARRY));
        assertTrue(own.of(Metric.SIDE).isEmpty());
        assertEquals(1, own.toMap().size());
    }

    @Test
    void choicesNotDeclaredAreWarnedOf() {
        Session session = InventedSession.carries("ABBAABBA", FOUR, FOUR);
        HeadToHeadResult r = HeadToHead.withDefaults().compare(session);
        assertEquals(Metric.CARRY, r.primary().metric());
        assertFalse(r.primaryDeclared());
        assertEquals(
                List.of("primary-not-declared", "margin-not-declared"),
                r.warnings().stream().map(Warning::code).toList());
        HeadToHeadResult bare = HeadToHead.withDefaults()
                .withMargins(PracticalMargins.none())
                .withPrimary(Metric.CARRY)
                .compare(session);
        assertTrue(bare.primary().equivalence().isEmpty() && bare.warnings().isEmpty());
        assertEquals(Verdict.UNDECIDED, bare.primary().verdict().verdict());
        HeadToHeadResult total = HeadToHead.withDefaults()
                .withPrimary(Metric.CARRY)
                .withMargin(Metric.CARRY, 3.0)
                .withMargin(Metric.TOTAL, 1.0)
                .compare(session);
        assertEquals(
                List.of("margin-not-used"),
                total.warnings().stream().map(Warning::code).toList());
        assertTrue(total.warnings().get(0).message().contains("declared for total"));
        Session speeds = InventedSession.full(1, 4, 0.0, 0.0);
        Session noCarry = speeds.withShots(ShotSet.of(speeds.shots().stream()
                .map(s -> s.without(Metric.CARRY).without(Metric.START_DIRECTION))
                .toList()));
        assertEquals(
                Metric.BALL_SPEED,
                HeadToHead.withDefaults().compare(noCarry).primary().metric());
    }
}
