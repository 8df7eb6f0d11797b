package dev.teeward.fitting.report;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.VisibleText;
import dev.teeward.quantity.Warning;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** How much text of a session holds characters that do not show. */
final class HiddenText {
    private HiddenText() {}

    /** What to know about it, nothing if all text shows. */
    static Optional<Warning> warning(Session session) {
        int texts = of(session);
        return texts == 0
                ? Optional.empty()
                : Optional.of(Warning.of(
                        "hidden-characters",
                        texts
                                + (texts == 1
                                        ? " name or note of the session holds"
                                        : " names or notes of the session hold")
                                + " characters that do not show or would steer a screen; pages leave them out"));
    }

    /** The number of different texts that a page may print, with such characters. */
    private static int of(Session session) {
        List<Shot> shots = session.shots().shots();
        Stream<String> ofShots = shots.stream()
                .flatMap(shot -> Stream.of(Optional.of(shot.club()), shot.pair(), shot.note(), shot.exclusion())
                        .flatMap(Optional::stream));
        Stream<String> ofClubs = session.clubs().values().stream()
                .flatMap(club ->
                        Stream.of(Optional.of(club.name()), club.shaft()).flatMap(Optional::stream));
        Stream<String> ofSession = Stream.concat(
                Stream.of(session.place(), session.ball()).flatMap(Optional::stream), session.remarks().stream());
        return (int) Stream.of(ofShots, ofClubs, ofSession)
                .flatMap(texts -> texts)
                .filter(VisibleText::hides)
                .distinct()
                .count();
    }
}
