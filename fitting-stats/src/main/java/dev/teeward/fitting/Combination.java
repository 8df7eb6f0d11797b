package dev.teeward.fitting;

import dev.teeward.fitting.Session.Details;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Makes one session of several: agreement is kept, disagreement is left out and remarked, contradiction is refused. */
final class Combination {
    /** What each part keeps, and what is computed with it. */
    private static final Set<String> AIR = Set.of("elevation", "temperature", "humidity", "pressure", "wind");

    private final List<Session> sessions;
    private final Session.Builder result = Session.builder();

    private Combination(List<Session> sessions) {
        this.sessions = sessions;
    }

    static Session of(List<Session> sessions) {
        if (sessions.isEmpty()) {
            throw new IllegalArgumentException("there must be at least one session to combine");
        }
        if (sessions.size() == 1) {
            return sessions.get(0);
        }
        return new Combination(List.copyOf(sessions)).build();
    }

    private Session build() {
        hand();
        ifAgreed("aim offset", d -> d.aimOffset, result::aimOffset);
        ifAgreed("ball", d -> d.ball, result::ball);
        ifAgreed("elevation", d -> d.elevation, result::elevation);
        ifAgreed("temperature", d -> d.temperature, result::temperature);
        ifAgreed("humidity", d -> d.humidity, result::humidity);
        pressureAndWind();
        // No remark on the date: every shot carries its day.
        if (sessions.stream().map(Session::date).distinct().count() == 1) {
            sessions.get(0).date().ifPresent(result::date);
        }
        ifAgreed("place", d -> d.place, result::place);
        for (Metric metric : Metric.values()) {
            ifAgreed("tolerance " + metric.key(), d -> d.tolerances.get(metric), v -> result.tolerance(metric, v));
            sessions.stream()
                    .flatMap(s -> s.unit(metric).stream())
                    .findFirst()
                    .ifPresent(unit -> result.unit(metric, unit));
        }
        clubs();
        Set<String> names = new HashSet<>();
        sessions.forEach(s -> names.addAll(s.other().keySet()));
        names.stream().sorted().forEach(n -> ifAgreed(n, d -> d.other.get(n), v -> result.other(n, v)));
        Set<String> remarks = new HashSet<>();
        sessions.forEach(s -> s.remarks().stream().filter(remarks::add).forEach(result::remark));
        List<Session> parts = new ArrayList<>();
        sessions.forEach(s -> parts.addAll(s.parts().isEmpty() ? List.of(s) : s.parts()));
        return result.shots(shots()).parts(parts).build();
    }

    private void hand() {
        Set<Object> hands = new HashSet<>();
        sessions.forEach(s -> s.hand().ifPresent(hands::add));
        if (hands.size() > 1) {
            throw new IllegalArgumentException(
                    "sessions of a right-handed and a left-handed golfer cannot be combined into one");
        }
        sessions.stream().flatMap(s -> s.hand().stream()).findFirst().ifPresent(result::hand);
    }

    private void pressureAndWind() {
        Details first = sessions.get(0).details();
        if (agreed(
                        "pressure",
                        d -> d.pressure == null ? null : List.of(d.pressure, Objects.requireNonNull(d.pressureKind)))
                && first.pressure != null) {
            // An altimeter setting means nothing without the elevation; each part keeps both.
            boolean oneElevation =
                    sessions.stream().map(Session::elevation).distinct().count() == 1;
            if (first.pressureKind == PressureKind.STATION) {
                result.stationPressure(first.pressure);
            } else if (oneElevation) {
                result.altimeterPressure(first.pressure);
            }
        }
        if (agreed("wind", d -> d.windSpeed == null ? null : List.of(d.windSpeed, Objects.requireNonNull(d.windFrom)))
                && first.windSpeed != null
                && first.windFrom != null) {
            result.wind(first.windFrom, first.windSpeed);
        }
    }

    private void clubs() {
        Map<String, Club> known = new HashMap<>();
        for (Session session : sessions) {
            for (Club club : session.clubs().values()) {
                Club before = known.putIfAbsent(club.name(), club);
                if (before != null && !before.equals(club)) {
                    throw new IllegalArgumentException("club " + club.name()
                            + " is described in two ways; give the club its own name after each change of build");
                }
                result.club(club);
            }
        }
    }

    private ShotSet shots() {
        Map<String, Integer> sessionsOfPair = new HashMap<>();
        for (Session session : sessions) {
            Set<String> pairs = new HashSet<>();
            session.shots().forEach(shot -> shot.pair().ifPresent(pairs::add));
            pairs.forEach(pair -> sessionsOfPair.merge(pair, 1, Integer::sum));
        }
        boolean clash = sessionsOfPair.values().stream().anyMatch(count -> count > 1);
        List<Shot> shots = new ArrayList<>();
        int before = 0;
        for (int i = 0; i < sessions.size(); i++) {
            Session session = sessions.get(i);
            String prefix = (i + 1) + "/";
            for (Shot shot : session.shots()) {
                Shot.Builder copy = shot.toBuilder().part(before + shot.part().orElse(0));
                if (shot.day().isEmpty()) {
                    session.date().ifPresent(copy::day);
                }
                if (clash) {
                    shot.pair().ifPresent(pair -> copy.pair(prefix + pair));
                }
                shots.add(copy.build());
            }
            before += Math.max(1, session.parts().size());
        }
        return ShotSet.of(shots);
    }

    private <T> void ifAgreed(String name, Function<Details, @Nullable T> of, java.util.function.Consumer<T> setter) {
        T value = of.apply(sessions.get(0).details());
        if (agreed(name, of) && value != null) {
            setter.accept(value);
        }
    }

    private boolean agreed(String name, Function<Details, ? extends @Nullable Object> of) {
        Object first = of.apply(sessions.get(0).details());
        boolean same = sessions.stream().allMatch(s -> Objects.equals(first, of.apply(s.details())));
        if (!same) {
            result.remark(
                    name + " differs between the combined sessions" + (AIR.contains(name) ? "" : " and is left out"));
        }
        return same;
    }
}
