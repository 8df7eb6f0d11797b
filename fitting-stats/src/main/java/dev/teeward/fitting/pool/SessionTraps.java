package dev.teeward.fitting.pool;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.complete.SameAir;
import dev.teeward.fitting.complete.UnevenAir;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What makes the difference of a session doubtful as one of the clubs, with one golfer and counted over all. */
final class SessionTraps {
    private static final String AIRS = "airs-differ";

    /** The code of the warning of a session, and what to say of the golfers it was found with. */
    private static final Map<String, String> SAID = new LinkedHashMap<>();

    static {
        SAID.put(
                "clubs-in-blocks",
                "each club was hit in one go, so warming up or tiring cannot be told from the club; where most hit the"
                        + " clubs in the same order, the mean over golfers holds it too; alternate as ABBA");
        SAID.put(
                "drift-not-cancelled",
                "one club was hit later on average, so that some drift is in the difference; ABBA cancels it");
        SAID.put(
                "flagged-shots",
                "shots stand out as possible mishits or misreads and count all the same; exclude them with a reason if"
                        + " they were");
        SAID.put(
                AIRS,
                "the clubs were not hit in the same air, so the difference is partly the air's; bring all shots into one"
                        + " air first");
    }

    private SessionTraps() {}

    /** The warnings of one session, each code once. */
    static List<Warning> of(HeadToHeadResult result, Session session) {
        List<String> clubs = List.of(result.first().name(), result.second().name());
        Metric metric = result.primary().metric();
        boolean moved = metric == Metric.TOTAL || SameAir.metrics().contains(metric);
        Map<String, Warning> found = new LinkedHashMap<>();
        Stream.of(
                        result.warnings().stream(),
                        result.screening().flaggedWarning(clubs).stream(),
                        UnevenAir.warning(session, clubs).stream())
                .flatMap(warnings -> warnings)
                .filter(warning -> SAID.containsKey(warning.code()))
                .filter(warning -> moved || !warning.code().equals(AIRS))
                .forEach(warning -> found.putIfAbsent(warning.code(), warning));
        return List.copyOf(found.values());
    }

    /** One warning for each code that any golfer has. */
    static List<Warning> over(List<GolferEffect> golfers) {
        List<Warning> counted = new ArrayList<>();
        SAID.forEach((code, words) -> {
            List<String> names = golfers.stream()
                    .filter(golfer ->
                            golfer.warnings().stream().anyMatch(w -> w.code().equals(code)))
                    .map(golfer -> VisibleText.line(golfer.golfer()))
                    .toList();
            if (!names.isEmpty()) {
                String who = names.size() == golfers.size() ? "" : " (" + String.join(", ", names) + ")";
                counted.add(Warning.of(
                        code, "with " + names.size() + " of " + golfers.size() + " golfers" + who + " " + words));
            }
        });
        return List.copyOf(counted);
    }
}
