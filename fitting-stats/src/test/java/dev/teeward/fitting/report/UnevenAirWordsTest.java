package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.explain.FlightCounterfactual;
import dev.teeward.quantity.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Equal clubs and swings, one club hit at 6,000 ft and the other by the sea: the air is not called a club. */
class UnevenAirWordsTest {
    private static final String SAME_AIR = "in which both clubs were hit";

    /** Each day with the clubs that were hit on it. */
    private static Session days(List<String> high, List<String> low) {
        Session even = ExplainedSessions.carries(3, 0.0, 0.0);
        List<Session> days = new ArrayList<>();
        days.add(day(even, high, 6_000.0, high.equals(low) ? 0 : -1));
        days.add(day(even, low, 0.0, high.equals(low) ? 1 : -1));
        return Session.combine(days);
    }

    /** All pairs, or every other one of them. */
    private static Session day(Session even, List<String> clubs, double feet, int turn) {
        // Results of flight are worked out anew in the air of the day.
        return even
                .withShots(ShotSet.of(even.shots().stream()
                        .filter(shot -> clubs.contains(shot.club()))
                        .filter(shot -> turn < 0 || (shot.number() - 1) / 4 % 2 == turn)
                        .map(shot -> {
                            Shot bare = shot.without(Metric.TOTAL);
                            for (Metric metric : SameAir.metrics()) {
                                bare = bare.without(metric);
                            }
                            return bare;
                        })
                        .toList()))
                .toBuilder()
                .elevation(Length.ofFeet(feet))
                .build();
    }

    private static HeadToHeadReport report(Session session) {
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withClubs("Alder", "Rowan")
                .withPrimary(Metric.CARRY)
                .compare(session);
        HeadToHeadReport report = HeadToHeadReport.of(result)
                .withExplanation(Explain.withDefaults()
                        .withFlights(FlightCounterfactual.withDefaults().withResamples(199))
                        .explain(result));
        report.sections().stream()
                .filter(section -> List.of("in-short", "explained").contains(section.id()))
                .flatMap(section -> section.sentences().stream())
                .forEach(sentence -> SpokenCheck.read(report.data()::value, sentence));
        return report;
    }

    private static String words(HeadToHeadReport report, String id) {
        return String.join(
                "\n",
                report.sections().stream()
                        .filter(section -> section.id().equals(id))
                        .flatMap(section -> section.sentences().stream())
                        .map(Sentence::text)
                        .toList());
    }

    @Test
    void eachClubInAnAirOfItsOwn() {
        HeadToHeadReport report = report(days(List.of("Alder"), List.of("Rowan")));
        String brief = words(report, "in-short");
        assertTrue(brief.contains("carry, as declared"), brief);
        assertTrue(brief.contains("they differ, but were not hit in the same air."), brief);
        assertTrue(
                brief.contains("The clubs were not hit in the same air, so club and air can't be told apart"), brief);
        assertFalse(brief.contains("the clubs differ"), brief);
        String explained = words(report, "explained");
        assertTrue(explained.contains("Club or swing, in carry, asked by itself: can't be told yet;"), explained);
        assertTrue(explained.contains("club and air can't be told apart in carry"), explained);
        String tested = words(report, "tested");
        assertFalse(tested.contains(SAME_AIR), tested);
        assertTrue(tested.contains("and not in each were both clubs hit."), tested);
        assertTrue(String.valueOf(report.data().value("/warnings")).contains("airs-differ"));
        List<?> answers = (List<?>) Objects.requireNonNull(report.data().value("/explanation/club_or_swing"));
        assertTrue(answers.toString().contains("airs-differ"), answers.toString());
    }

    @Test
    void bothClubsOnBothDays() {
        HeadToHeadReport report = report(days(List.of("Alder", "Rowan"), List.of("Alder", "Rowan")));
        String tested = words(report, "tested");
        assertTrue(tested.contains(SAME_AIR), tested);
        assertFalse(words(report, "in-short").contains("same air"), tested);
        assertFalse(String.valueOf(report.data().value("/warnings")).contains("airs-differ"));
    }

    @Test
    void oneAirIsTheMend() {
        Session brought = SameAir.standardAt(Length.ofFeet(0.0))
                .withoutIntervals()
                .bring(days(List.of("Alder"), List.of("Rowan")))
                .session();
        HeadToHeadReport report = report(brought);
        assertFalse(String.valueOf(report.data().value("/warnings")).contains("airs-differ"));
        String brief = words(report, "in-short");
        assertFalse(brief.contains("same air") || brief.contains("the clubs differ"), brief);
        String tested = words(report, "tested");
        assertFalse(tested.contains("the air was not the same"), tested);
        assertTrue(tested.contains("brought over from other air, which was not the same for all shots"), tested);
        assertEquals(1, tested.split("The air, as stated", -1).length - 1, tested);
    }
}
