package dev.teeward.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Shots in the order of hitting, with the few ways of choosing among them.
 *
 * <pre>{@code
 * ShotSet alder = session.shots().used().club("Alder");
 * double[] speeds = alder.values(Metric.BALL_SPEED); // metres per second, of the shots that have one
 * int measured = alder.with(Metric.SPIN_RATE).size();
 * }</pre>
 *
 * <p>Choosing keeps the order. Immutable and thread-safe.
 */
public final class ShotSet implements Iterable<Shot> {
    private final List<Shot> shots;

    private ShotSet(List<Shot> shots) {
        this.shots = shots;
    }

    /**
     * A set of shots.
     *
     * @param shots the shots in the order of hitting
     * @return the set
     */
    public static ShotSet of(List<Shot> shots) {
        return new ShotSet(List.copyOf(shots));
    }

    /**
     * A set of shots.
     *
     * @param shots the shots in the order of hitting
     * @return the set
     */
    public static ShotSet of(Shot... shots) {
        return new ShotSet(List.of(shots));
    }

    /**
     * The shots themselves.
     *
     * @return the shots in order, unmodifiable
     */
    public List<Shot> shots() {
        return shots;
    }

    /**
     * How many there are.
     *
     * @return the number of shots
     */
    public int size() {
        return shots.size();
    }

    /**
     * Whether there is none.
     *
     * @return true if there is no shot
     */
    public boolean isEmpty() {
        return shots.isEmpty();
    }

    @Override
    public Iterator<Shot> iterator() {
        return shots.iterator();
    }

    /**
     * The shots as a stream.
     *
     * @return a sequential stream in order
     */
    public Stream<Shot> stream() {
        return shots.stream();
    }

    /**
     * The shots that satisfy a condition.
     *
     * @param condition which to keep
     * @return the chosen shots
     */
    public ShotSet filter(Predicate<Shot> condition) {
        List<Shot> kept = new ArrayList<>(shots.size());
        for (Shot shot : shots) {
            if (condition.test(shot)) {
                kept.add(shot);
            }
        }
        return new ShotSet(kept.size() == shots.size() ? shots : List.copyOf(kept));
    }

    /**
     * The shots with one club.
     *
     * @param name the name of the club, exactly
     * @return the chosen shots; empty if the club was not hit
     */
    public ShotSet club(String name) {
        Objects.requireNonNull(name, "name");
        return filter(shot -> shot.club().equals(name));
    }

    /**
     * The shots that count.
     *
     * @return those without a reason to exclude them
     */
    public ShotSet used() {
        return filter(Shot::used);
    }

    /**
     * The shots that do not count.
     *
     * @return those with a reason to exclude them
     */
    public ShotSet excluded() {
        return filter(shot -> !shot.used());
    }

    /**
     * The shots that have a reading.
     *
     * @param metric of what
     * @return the chosen shots
     */
    public ShotSet with(Metric metric) {
        return filter(shot -> shot.has(metric));
    }

    /**
     * The same shots and one more at the end.
     *
     * @param shot the shot
     * @return the longer set
     */
    public ShotSet append(Shot shot) {
        List<Shot> longer = new ArrayList<>(shots);
        longer.add(Objects.requireNonNull(shot, "shot"));
        return new ShotSet(Collections.unmodifiableList(longer));
    }

    /**
     * The clubs that were hit.
     *
     * @return their names in the order of first appearance, unmodifiable
     */
    public List<String> clubs() {
        Set<String> names = new LinkedHashSet<>();
        shots.forEach(shot -> names.add(shot.club()));
        return List.copyOf(names);
    }

    /**
     * What at least one shot has a reading of.
     *
     * @return the metrics in their own order, unmodifiable
     */
    public Set<Metric> metrics() {
        Set<Metric> all = EnumSet.noneOf(Metric.class);
        shots.forEach(shot -> all.addAll(shot.metrics()));
        return Collections.unmodifiableSet(all);
    }

    /**
     * The numbers of one metric.
     *
     * @param metric which
     * @return the numbers in order, of those shots that have one; a new array [SI unit of the metric]
     */
    public double[] values(Metric metric) {
        double[] values = new double[shots.size()];
        int count = 0;
        for (Shot shot : shots) {
            if (shot.has(metric)) {
                values[count++] = shot.value(metric);
            }
        }
        return Arrays.copyOf(values, count);
    }

    /**
     * The alternated pairs of two clubs. A pair of which either shot is missing or excluded is left out.
     *
     * @param first the name of a club
     * @param second the name of another club
     * @return the complete pairs, in the order in which they begin, unmodifiable
     * @throws IllegalArgumentException if the names are equal or a pair has more than one used shot with the same club
     */
    public List<ShotPair> pairs(String first, String second) {
        if (first.equals(second)) {
            throw new IllegalArgumentException("a pair needs two clubs, but both were \"" + first + "\"");
        }
        Map<String, Shot> firsts = new LinkedHashMap<>();
        Map<String, Shot> seconds = new LinkedHashMap<>();
        Set<String> ids = new LinkedHashSet<>();
        for (Shot shot : shots) {
            String id = shot.pair().orElse(null);
            boolean ofFirst = shot.club().equals(first);
            if (id == null || !shot.used() || !(ofFirst || shot.club().equals(second))) {
                continue;
            }
            ids.add(id);
            if ((ofFirst ? firsts : seconds).put(id, shot) != null) {
                throw new IllegalArgumentException(
                        "pair " + id + " has more than one used shot with " + shot.club() + "; exclude all but one");
            }
        }
        List<ShotPair> pairs = new ArrayList<>();
        for (String id : ids) {
            Shot one = firsts.get(id);
            Shot two = seconds.get(id);
            if (one != null && two != null) {
                pairs.add(ShotPair.of(id, one, two));
            }
        }
        return Collections.unmodifiableList(pairs);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof ShotSet that && shots.equals(that.shots);
    }

    @Override
    public int hashCode() {
        return shots.hashCode();
    }

    @Override
    public String toString() {
        return shots.size() + " shots with " + String.join(", ", clubs());
    }
}
