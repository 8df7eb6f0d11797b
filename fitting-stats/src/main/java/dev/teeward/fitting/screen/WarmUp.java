package dev.teeward.fitting.screen;

import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The first shots with each club declared as warming up, so that they count for nothing afterwards.
 *
 * <p>A golfer who warms up and then tires drifts one way and then the other, which no straight line removes; leaving out a
 * number of shots that was fixed before hitting does. The number is a rule made beforehand, never chosen by how the shots
 * look. The shots stay in the session, excluded with {@link #REASON}, and every result counts them among what it left out.
 *
 * <p>The count starts anew with each club on each day and in each file of a combined session. Shots excluded for another
 * reason are counted, and keep that reason.
 *
 * <pre>{@code
 * Session warm = WarmUp.ofFirst(2).exclude(session);
 * warm.shots().excluded(); // the first two shots with each club, "warm-up"
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class WarmUp {
    /** What the shots are excluded with. */
    public static final String REASON = "warm-up";

    private final int shots;

    private WarmUp(int shots) {
        this.shots = shots;
    }

    /**
     * The number of shots that warm up.
     *
     * @param shots how many with each club, at least 0
     * @return the rule
     * @throws IllegalArgumentException if the number is negative
     */
    public static WarmUp ofFirst(int shots) {
        if (shots < 0) {
            throw new IllegalArgumentException(
                    "number of warm-up shots must be at least 0, but was " + shots + "; 0 for none");
        }
        return new WarmUp(shots);
    }

    /**
     * How many shots with each club warm up.
     *
     * @return the number
     */
    public int shots() {
        return shots;
    }

    /**
     * Excludes them.
     *
     * @param session the session, its shots in the order of hitting
     * @return the same session with the first shots of each club excluded
     */
    public Session exclude(Session session) {
        if (shots == 0) {
            return session;
        }
        Map<List<Object>, Integer> hit = new HashMap<>();
        List<Shot> changed = new ArrayList<>();
        for (Shot shot : session.shots()) {
            int number = hit.merge(List.of(shot.club(), shot.day(), shot.part()), 1, Integer::sum);
            changed.add(number <= shots && shot.used() ? shot.withExclusion(REASON) : shot);
        }
        return session.withShots(ShotSet.of(changed));
    }

    @Override
    public String toString() {
        return "the first " + shots + " shots with each club warm up";
    }
}
