package dev.teeward.fitting.report;

import dev.teeward.fitting.Session;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** The air of the session: what was stated, and what had to be assumed. */
final class AirWords {
    /** What combining sessions remarks when they disagree. */
    private static final Pattern DISAGREEMENT =
            Pattern.compile("(elevation|temperature|humidity|pressure|wind) differs between the combined sessions.*");

    private static final String AIR = "/session/air";

    private final Subject subject;
    private final Session session;

    AirWords(Subject subject) {
        this.subject = subject;
        this.session = subject.result().session();
    }

    List<Sentence> sentences() {
        List<Sentence> sentences = new ArrayList<>();
        boolean differs = session.remarks().stream()
                .anyMatch(remark -> DISAGREEMENT.matcher(remark).matches());
        if (differs) {
            sentences.add(subject.words()
                    .say(
                            "the air was not the same in all the sessions that were combined, so what they disagree about is"
                                    + " left out; within one session the clubs still met the same air.")
                    .sentence());
        }
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
        list("the air, as stated: ", stated, sentences);
        list(
                differs ? "assumed for what is computed, and not measured: " : "not stated, so assumed: ",
                assumed,
                sentences);
        sentences.add(subject.words()
                .say(
                        assumed.isEmpty()
                                ? "a ball flies in it as in standard air at "
                                : "if so, a ball flies as in standard air at ")
                .number(AIR + "/density_altitude/value", 0)
                .say(" " + unit("density_altitude") + ".")
                .sentence());
        return sentences;
    }

    private void list(String opening, List<String> parts, List<Sentence> sentences) {
        if (parts.isEmpty()) {
            return;
        }
        Wording w = subject.words().say(opening);
        for (int i = 0; i < parts.size(); i++) {
            w.say(i == 0 ? "" : i == parts.size() - 1 ? " and " : ", ");
            part(w, parts.get(i));
        }
        sentences.add(w.say(".").sentence());
    }

    private void part(Wording w, String name) {
        switch (name) {
            case "temperature" -> w.number(AIR + "/temperature/value", 0).say(" " + unit("temperature"));
            case "humidity" -> w.number(AIR + "/humidity_percent", 0).say(" % humidity");
            case "pressure" ->
                w.say("a pressure at the place of ")
                        .number(
                                AIR + "/station_pressure/value",
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
                    .number("/session/elevation/value", 0)
                    .say(" " + subject.data().value("/session/elevation/unit"));
        }
    }

    private void wind(Wording w) {
        if (subject.data().number("/session/wind_speed/value").orElse(0.0) == 0.0) {
            w.say("no wind");
            return;
        }
        w.say("wind of ")
                .number("/session/wind_speed/value", 1)
                .say(" " + subject.data().value("/session/wind_speed/unit") + " from ")
                .number("/session/wind_from/value", 0)
                .say(" deg, where zero is straight against and ninety from the right");
    }

    private String unit(String name) {
        return String.valueOf(subject.data().value(AIR + "/" + name + "/unit"));
    }
}
