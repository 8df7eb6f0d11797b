package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The shots of a session that stand out, and what the screen could and could not look at.
 *
 * <pre>{@code
 * ScreenReport report = SessionScreen.withDefaults().screen(session);
 * report.flags();
 * Session other = report.flaggedExcluded();   // for the answer without the flagged shots
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ScreenReport {
    private final Session session;
    private final List<ShotFlag> flags;
    private final double falseAlarmRate;
    private final List<Warning> warnings;

    ScreenReport(Session session, List<ShotFlag> flags, double falseAlarmRate, List<Warning> warnings) {
        this.session = session;
        this.flags = List.copyOf(flags);
        this.falseAlarmRate = falseAlarmRate;
        this.warnings = List.copyOf(warnings);
    }

    /**
     * The session that was screened.
     *
     * @return the session, unchanged
     */
    public Session session() {
        return session;
    }

    /**
     * The flags.
     *
     * @return in the order of the shots; a shot may have several; unmodifiable
     */
    public List<ShotFlag> flags() {
        return flags;
    }

    /**
     * The flags of one shot.
     *
     * @param index the index of the shot in the session, from 0
     * @return its flags, often none
     */
    public List<ShotFlag> flags(int index) {
        return flags.stream().filter(flag -> flag.index() == index).toList();
    }

    /**
     * Which shots are flagged.
     *
     * @return their indices in the session in ascending order, from 0, unmodifiable
     */
    public Set<Integer> flagged() {
        Set<Integer> indices = new TreeSet<>();
        flags.forEach(flag -> indices.add(flag.index()));
        return Collections.unmodifiableSet(indices);
    }

    /**
     * What to tell where flagged shots count like the others.
     *
     * @param clubs the names of the clubs that are looked at
     * @return {@code flagged-shots}, or empty if no shot with these clubs is flagged
     */
    public Optional<Warning> flaggedWarning(Collection<String> clubs) {
        List<Shot> shots = session.shots().shots();
        List<Integer> indices = flagged().stream()
                .filter(index -> clubs.contains(shots.get(index).club()))
                .toList();
        if (indices.isEmpty()) {
            return Optional.empty();
        }
        boolean byCarry = flags.stream()
                .anyMatch(
                        flag -> indices.contains(flag.index()) && flag.metrics().contains(Metric.CARRY));
        return Optional.of(Warning.of(
                "flagged-shots",
                indices.size() + (indices.size() == 1 ? " shot stands" : " shots stand")
                        + " out as a possible mishit or misread and counts all the same; exclude it with a reason if it was"
                        + " one"
                        + (byCarry
                                ? ", which the carry alone does not tell: leaving out shots by what is compared makes"
                                        + " differences look surer than they are"
                                : "")));
    }

    /**
     * How often a good session, normally spread, raises at least one flag of any statistical test that was used here: at
     * most this. The rules are not tests and have no rate.
     *
     * @return the sum of the rates of the tests, in [0, 1); 0 if none could be used
     */
    public double falseAlarmRate() {
        return falseAlarmRate;
    }

    /**
     * The session as it would be if the fitter excluded every flagged shot, to show the answer without them beside the
     * answer with them.
     *
     * @return a copy in which each flagged shot is excluded, with the reasons of its flags as the reason
     */
    public Session flaggedExcluded() {
        if (flags.isEmpty()) {
            return session;
        }
        Map<Integer, String> reasons = new TreeMap<>();
        flags.forEach(flag -> reasons.merge(flag.index(), flag.reason(), (one, next) -> one + "; " + next));
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        reasons.forEach((index, reason) -> shots.set(index, shots.get(index).withExclusion("flagged: " + reason)));
        return session.withShots(ShotSet.of(shots));
    }

    /**
     * What the screen could not look at, and why.
     *
     * @return the warnings, unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }
}
