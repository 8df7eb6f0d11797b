package dev.teeward.fitting.report;

import dev.teeward.fitting.Session;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** The air of the session: what was stated, and what had to be assumed. */
final class AirWords {
    /** What combining sessions remarks when they disagree. */
    private static final Pattern DISAGREEMENT =
            Pattern.compile("(elevation|temperature|humidity|pressure|wind) differs between the combined sessions.*");

    private static final List<String> NUMBERS =
            List.of("first session", "second session", "third session", "fourth session", "another session");

    private final Subject subject;
    private final Session session;
    private final String place;

    AirWords(Subject subject) {
        this(subject, subject.result().session(), "/session");
    }

    private AirWords(Subject subject, Session session, String place) {
        this.subject = subject;
        this.session = session;
        this.place = place;
    }

    List<Sentence> sentences() {
        List<Sentence> sentences = new ArrayList<>();
        boolean differs = session.remarks().stream()
                .map(DISAGREEMENT::matcher)
                .anyMatch(remark -> remark.matches() && !states(remark.group(1)));
        if (!session.parts().isEmpty()) {
            days(sentences);
        }
        if (!differs) {
            one("", sentences);
            return sentences;
        }
        if (session.parts().isEmpty()) {
            sentences.add(subject.words()
                    .say(
                            "the air was not the same in all the sessions that were combined, so what they disagree about is"
                                    + " left out, and whether the clubs met the same air is not known.")
                    .sentence());
            one("", sentences);
            return sentences;
        }
        sentences.add(subject.words()
                .say("the air was not the same each time: what is computed is computed in that of its own session, "
                        + (bothInEach() ? "in which both clubs were hit." : "and not in each were both clubs hit."))
                .sentence());
        for (int i = 0; i < session.parts().size(); i++) {
            Session part = session.parts().get(i);
            new AirWords(subject, part, "/session/parts/" + i)
                    .one(
                            part.date().map(Object::toString).orElse(NUMBERS.get(Math.min(i, NUMBERS.size() - 1))),
                            sentences);
        }
        return sentences;
    }

    /** What is stated now is the same for all shots, whatever the remark says of how they were hit. */
    private boolean states(String quantity) {
        return switch (quantity) {
            case "elevation" -> session.elevation().isPresent();
            case "temperature" -> session.temperature().isPresent();
            case "humidity" -> session.humidity().isPresent();
            case "pressure" -> session.pressure().isPresent();
            default -> session.windSpeed().isPresent();
        };
    }

    private boolean bothInEach() {
        return IntStream.range(0, session.parts().size())
                .allMatch(part -> hit(subject.first(), part) && hit(subject.second(), part));
    }

    private boolean hit(String club, int part) {
        return session.shots().club(club).used().stream()
                .anyMatch(shot -> shot.part().isPresent() && shot.part().getAsInt() == part);
    }

    /** The days, and how many pairs of each. */
    private void days(List<Sentence> sentences) {
        boolean dated = session.parts().stream().allMatch(part -> part.date().isPresent());
        Wording w = subject.words().say(dated ? "the days: " : "the sessions: ");
        int parts = session.parts().size();
        for (int i = 0; i < parts; i++) {
            w.say(i == 0 ? "" : i == parts - 1 ? " and " : ", ");
            if (dated) {
                w.quote(session.parts().get(i).date().orElseThrow().toString()).say(" with ");
            }
            w.count("/session/parts/" + i + "/pairs", "pair", "pairs");
        }
        sentences.add(w.say("; no pair spans two of them.").sentence());
    }

    private void one(String of, List<Sentence> sentences) {
        List<String> stated = new ArrayList<>();
        List<String> assumed = new ArrayList<>();
        (session.temperature().isPresent() ? stated : assumed).add("temperature");
        (session.humidity().isPresent() ? stated : assumed).add("humidity");
        (session.pressure().isPresent() ? stated : assumed).add("pressure");
        (session.windSpeed().isPresent() && session.windFrom().isPresent() ? stated : assumed).add("wind");
        if (session.elevation().isPresent()) {
            stated.add("elevation");
        } else if (session.pressure().isEmpty()) {
            assumed.add("elevation");
        }
        list(of, "the air, as stated: ", stated, sentences);
        list(of, "not stated, so assumed: ", assumed, sentences);
        sentences.add(opening(of)
                .say(
                        assumed.isEmpty()
                                ? "in it a ball flies as in standard air at an altitude of "
                                : "with that assumed, a ball flies as in standard air at an altitude of ")
                .number(place + "/air/density_altitude/value", 0)
                .say(" " + unit("density_altitude") + ".")
                .sentence());
    }

    private Wording opening(String of) {
        return of.isEmpty() ? subject.words() : subject.words().quote(of).say(": ");
    }

    private void list(String of, String opening, List<String> parts, List<Sentence> sentences) {
        if (parts.isEmpty()) {
            return;
        }
        Wording w = opening(of).say(opening);
        for (int i = 0; i < parts.size(); i++) {
            w.say(i == 0 ? "" : i == parts.size() - 1 ? " and " : ", ");
            part(w, parts.get(i));
        }
        sentences.add(w.say(".").sentence());
    }

    private void part(Wording w, String name) {
        switch (name) {
            case "temperature" -> w.number(place + "/air/temperature/value", 0).say(" " + unit("temperature"));
            case "humidity" -> w.number(place + "/air/humidity_percent", 0).say(" % humidity");
            case "pressure" ->
                w.say("a pressure at the place of ")
                        .number(
                                place + "/air/station_pressure/value",
                                unit("station_pressure").equals("inHg") ? 2 : 0)
                        .say(" " + unit("station_pressure"));
            case "elevation" -> elevation(w);
            default -> wind(w);
        }
    }

    private void elevation(Wording w) {
        if (session.elevation().isEmpty()) {
            w.say("sea level");
        } else {
            w.say("an elevation of ")
                    .number(place + "/elevation/value", 0)
                    .say(" " + subject.data().value(place + "/elevation/unit"));
        }
    }

    private void wind(Wording w) {
        if (subject.data().number(place + "/wind_speed/value").orElse(0.0) == 0.0) {
            w.say("no wind");
            return;
        }
        w.say("wind of ")
                .number(place + "/wind_speed/value", 1)
                .say(" " + subject.data().value(place + "/wind_speed/unit") + " from ")
                .number(place + "/wind_from/value", 0)
                .say(" deg, where zero is straight against and ninety from the right");
    }

    private String unit(String name) {
        return String.valueOf(subject.data().value(place + "/air/" + name + "/unit"));
    }
}
