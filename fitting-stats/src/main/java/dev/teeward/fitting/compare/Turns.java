package dev.teeward.fitting.compare;

import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * The shots of two clubs on one day, dealt into turns: groups of two shots with both clubs, or of one that is left over or
 * waits for its partner at the end.
 *
 * @param shots the shots that were dealt, all of the day or the used ones
 * @param groups the groups in order, each of one or two shots
 * @param taken whether few enough are left over to believe that the clubs were hit in turn
 */
record Turns(List<Shot> shots, List<List<Shot>> groups, boolean taken) {
    /** Ends the name of a shot that is left over: 3+ was hit after pair 3, 3++ after that. */
    static final String LEFT_OVER = "+";

    /** A random order leaves a third over. */
    private static final int ONE_IN = 10;

    private record Day(Optional<String> file, Optional<LocalDate> day, OptionalInt part) {
        static Day of(Shot shot) {
            return new Day(shot.file(), shot.day(), shot.part());
        }

        boolean holds(Shot shot) {
            return shot.part().equals(part)
                    && shot.day().equals(day)
                    && shot.file().equals(file);
        }
    }

    /** One for each day and file, in the order of their first shots. */
    static List<Turns> ofEachDay(ShotSet both) {
        return days(both).stream().map(Turns::ofDay).toList();
    }

    private static List<ShotSet> days(ShotSet both) {
        Map<Day, List<Shot>> days = new LinkedHashMap<>();
        @Nullable Day today = null;
        List<Shot> shots = List.of();
        for (Shot shot : both) {
            if (today == null || !today.holds(shot)) {
                today = Day.of(shot);
                shots = days.computeIfAbsent(today, key -> new ArrayList<>());
            }
            shots.add(shot);
        }
        return days.values().stream().map(ShotSet::of).toList();
    }

    private static Turns ofDay(ShotSet day) {
        Turns all = deal(day.shots());
        Turns used = deal(day.used().shots());
        if (all.leftOver() == 0) {
            return all;
        }
        if (used.leftOver() == 0 || !all.taken) {
            return used;
        }
        // Equally many: excluded shots keep their place.
        return used.taken && used.complete() > all.complete() ? used : all;
    }

    /** Two that differ are a turn; one that is followed by its like is left over. */
    private static Turns deal(List<Shot> shots) {
        List<List<Shot>> groups = new ArrayList<>();
        int single = 0;
        int i = 0;
        while (i < shots.size()) {
            int size = i + 1 < shots.size()
                            && !shots.get(i).club().equals(shots.get(i + 1).club())
                    ? 2
                    : 1;
            groups.add(shots.subList(i, i + size));
            single += size == 1 ? 1 : 0;
            i += size;
        }
        boolean waits = single == 1 && groups.get(groups.size() - 1).size() == 1;
        boolean taken = groups.size() > single && (waits || single <= Math.max(1, shots.size() / ONE_IN));
        return new Turns(shots, groups, taken);
    }

    /** How many are followed by their like; the last one is not. */
    private long leftOver() {
        return groups.subList(0, Math.max(0, groups.size() - 1)).stream()
                .filter(group -> group.size() == 1)
                .count();
    }

    private long complete() {
        return groups.stream()
                .filter(group ->
                        group.size() == 2 && group.get(0).used() && group.get(1).used())
                .count();
    }

    /**
     * Adds the shots with the names of their pairs, those of no pair without one.
     *
     * @param to where to add them
     * @param number how many pairs were named before
     * @return how many pairs are named now
     */
    int name(List<Shot> to, int number) {
        if (!taken) {
            to.addAll(shots);
            return number;
        }
        int named = number;
        String surplus = "";
        for (int g = 0; g < groups.size(); g++) {
            boolean over = groups.get(g).size() == 1 && g < groups.size() - 1;
            if (over && !groups.get(g).get(0).used()) {
                continue;
            }
            named += over ? 0 : 1;
            surplus = over ? surplus + LEFT_OVER : "";
            String id = named + surplus;
            for (Shot shot : groups.get(g)) {
                to.add(shot.toBuilder().pair(id).build());
            }
        }
        return named;
    }

    /** In which order the clubs were hit, each day for itself, so many shots in all. */
    static ShotOrderKind kind(List<Turns> days, int size) {
        boolean taken = true;
        boolean reversed = true;
        boolean blocked = size > 2;
        for (Turns turns : days) {
            taken &= turns.taken || turns.shots.size() < 2;
            reversed &= turns.reversed();
            blocked &= turns.runs() <= 2;
        }
        if (taken && size >= 4) {
            return reversed ? ShotOrderKind.ALTERNATED_ABBA : ShotOrderKind.ALTERNATED;
        }
        return blocked ? ShotOrderKind.BLOCKED : ShotOrderKind.MIXED;
    }

    /** Whether each turn is led by the club that came second in the turn before. */
    private boolean reversed() {
        Optional<String> lead = Optional.empty();
        for (List<Shot> group : groups) {
            if (group.size() == 2) {
                String club = group.get(0).club();
                if (lead.isPresent() && lead.get().equals(club)) {
                    return false;
                }
                lead = Optional.of(club);
            }
        }
        return true;
    }

    private int runs() {
        int runs = 0;
        for (int i = 0; i < shots.size(); i++) {
            runs += i == 0 || !shots.get(i).club().equals(shots.get(i - 1).club()) ? 1 : 0;
        }
        return runs;
    }
}
