package dev.teeward.fitting.screen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.numbers.arrays.Selection;
import org.apache.commons.statistics.descriptive.Median;

/** Finds the h points whose covariance has the smallest determinant. */
final class McdSearch {
    /** Every subset is tried up to this many: 20 points always fit. */
    static final long LARGEST_ENUMERATION = 200_000L;

    /** Random starts of the search beyond the enumeration. */
    static final int STARTS = 500;

    /** Up to this many points the starts are tried on all of them, beyond on groups. */
    static final int LARGEST_WHOLE = 600;

    private static final int MOST_GROUPS = 5;
    private static final int GROUP_SIZE = 300;

    private static final int KEPT = 10;

    private McdSearch() {}

    /** The best h of all subsets, in ascending order; the first in lexicographic order among equals. */
    static int[] enumerate(double[][] columns, int h) {
        int[] all = IntStream.range(0, columns[0].length).toArray();
        Scatter whole = Scatter.of(columns, all, all.length);
        // The bulk that concentration finds goes last, so that the first subset looked at is nearly the best.
        Scatter bulk = whole.singular() ? whole : settle(columns, whole, h).scatter();
        double[] distances = bulk.singular() ? new double[all.length] : bulk.squaredDistances(columns);
        int[] farFirst = Arrays.stream(all)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -distances[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        return new McdEnumeration(standardized(columns), farFirst, h).best();
    }

    /** One metric: the best h are neighbours when sorted, so n - h + 1 windows are all there is to try. */
    static int[] window(double[] values, int h) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        double center = sorted[n / 2];
        double scale = Math.max(sorted[n - 1] - center, center - sorted[0]);
        int start = 0;
        double smallest = Double.POSITIVE_INFINITY;
        double sum = 0.0;
        double squares = 0.0;
        for (int k = 0; k < n; k++) {
            double z = scale > 0.0 ? (sorted[k] - center) / scale : 0.0;
            sum += z;
            squares += z * z;
            if (k >= h) {
                double gone = scale > 0.0 ? (sorted[k - h] - center) / scale : 0.0;
                sum -= gone;
                squares -= gone * gone;
            }
            double scatter = squares - sum * sum / h;
            if (k >= h - 1 && scatter < smallest) {
                smallest = scatter;
                start = k - h + 1;
            }
        }
        return between(values, sorted, start, h);
    }

    /** The places of the h values from one on in ascending order, equal ones in the order in which they stand. */
    private static int[] between(double[] values, double[] sorted, int start, int h) {
        double lower = sorted[start];
        double upper = sorted[start + h - 1];
        int skipped = 0;
        while (skipped < start && sorted[start - 1 - skipped] == lower) {
            skipped++;
        }
        int atUpper = h;
        for (int k = start; k < start + h && sorted[k] < upper; k++) {
            atUpper--;
        }
        int[] best = new int[h];
        int filled = 0;
        for (int i = 0; i < values.length; i++) {
            double value = values[i];
            boolean within = value > lower && value < upper;
            if (value == lower) {
                within = --skipped < 0 && (lower < upper || atUpper-- > 0);
            } else if (value == upper) {
                within = atUpper-- > 0;
            }
            if (within) {
                best[filled++] = i;
            }
        }
        return best;
    }

    /**
     * Concentration from random starts, for more points than can be enumerated (Rousseeuw and Van Driessen 1999,
     * Technometrics 41). Up to 600 points: two steps from each start, and the ten best until they settle. Beyond: the starts
     * are shared out among up to five disjoint random groups of about 300; the ten best of each take two steps on the groups
     * together, the ten best of these two steps on all points, and the best of these settles.
     */
    static int[] concentrate(double[][] columns, int h, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        if (columns[0].length > LARGEST_WHOLE) {
            return nested(columns, h, random);
        }
        int[] best = {};
        double smallest = Double.POSITIVE_INFINITY;
        for (Scatter scatter : stepped(starts(columns, STARTS, random), columns, h)) {
            Candidate last = settle(columns, scatter, h);
            if (last.subset().length == h && last.determinant() < smallest) {
                smallest = last.determinant();
                best = last.subset();
            }
        }
        return best;
    }

    private static int[] nested(double[][] columns, int h, SplittableRandom random) {
        int n = columns[0].length;
        int groups = Math.min(MOST_GROUPS, n / GROUP_SIZE);
        int[] merged = sample(random, n, Math.min(n, MOST_GROUPS * GROUP_SIZE));
        List<Scatter> candidates = new ArrayList<>();
        for (int group = 0; group < groups; group++) {
            int[] part =
                    Arrays.copyOfRange(merged, group * merged.length / groups, (group + 1) * merged.length / groups);
            double[][] own = pick(columns, part);
            candidates.addAll(stepped(starts(own, STARTS / groups, random), own, share(h, part.length, n)));
        }
        candidates = stepped(candidates, pick(columns, merged), share(h, merged.length, n));
        Candidate last = settle(columns, stepped(candidates, columns, h).get(0), h);
        return last.subset();
    }

    /** The size of the subset of some of the points: the same share as of all. */
    private static int share(int h, int size, int n) {
        return Math.min(size, (int) Math.ceil((double) h * size / n));
    }

    private static List<Scatter> starts(double[][] columns, int count, SplittableRandom random) {
        List<Scatter> starts = new ArrayList<>();
        for (int start = 0; start < count; start++) {
            starts.add(startingScatter(columns, random));
        }
        return starts;
    }

    /** Two steps from each; the best ten, in ascending order of their determinants. */
    private static List<Scatter> stepped(List<Scatter> candidates, double[][] columns, int h) {
        List<Candidate> later = new ArrayList<>();
        for (Scatter candidate : candidates) {
            Scatter scatter = candidate;
            for (int step = 0; step < 2 && !scatter.singular(); step++) {
                scatter = concentrateOnce(columns, scatter, h).scatter();
            }
            later.add(new Candidate(scatter, new int[0]));
        }
        later.sort(Comparator.comparingDouble(Candidate::determinant));
        return later.stream().limit(KEPT).map(Candidate::scatter).toList();
    }

    /** Concentrates until the determinant no longer falls; it falls at every step, so this ends. */
    private static Candidate settle(double[][] columns, Scatter from, int h) {
        Candidate current = new Candidate(from, new int[0]);
        double before = Double.POSITIVE_INFINITY;
        while (!current.scatter().singular()) {
            Candidate next = concentrateOnce(columns, current.scatter(), h);
            if (!(next.determinant() < before)) {
                return current.subset().length == h ? current : next;
            }
            before = next.determinant();
            current = next;
        }
        return current;
    }

    private static Candidate concentrateOnce(double[][] columns, Scatter scatter, int h) {
        double[] distances = scatter.squaredDistances(columns);
        double[] ordered = distances.clone();
        Selection.select(ordered, h - 1);
        double limit = ordered[h - 1];
        int below = 0;
        for (double distance : distances) {
            below += distance < limit ? 1 : 0;
        }
        int atLimit = h - below; // the first of those that lie there together
        int[] subset = new int[h];
        int filled = 0;
        for (int i = 0; i < distances.length; i++) {
            if (distances[i] < limit || (distances[i] == limit && atLimit-- > 0)) {
                subset[filled++] = i;
            }
        }
        return new Candidate(Scatter.of(columns, subset, h), subset);
    }

    /** p + 1 random points, and more until they are not on a line or plane. */
    private static Scatter startingScatter(double[][] columns, SplittableRandom random) {
        int n = columns[0].length;
        int p = columns.length;
        int[] order = sample(random, n, n);
        int count = p + 1;
        Scatter scatter = Scatter.of(columns, order, count);
        while (scatter.singular() && count < n) {
            count = Math.min(n, count + Math.max(1, count / 2));
            scatter = Scatter.of(columns, order, count);
        }
        return scatter;
    }

    private static int[] sample(SplittableRandom random, int n, int size) {
        int[] order = new int[n];
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        for (int i = 0; i < size; i++) {
            int other = i + random.nextInt(n - i);
            int swap = order[i];
            order[i] = order[other];
            order[other] = swap;
        }
        return Arrays.copyOf(order, size);
    }

    private static double[][] pick(double[][] columns, int[] indices) {
        double[][] picked = new double[columns.length][];
        for (int j = 0; j < columns.length; j++) {
            picked[j] = Screening.pick(columns[j], indices);
        }
        return picked;
    }

    /** About the median and by the largest deviation, so that squares neither overflow nor cancel; ratios stay. */
    private static double[][] standardized(double[][] columns) {
        double[][] z = new double[columns.length][];
        for (int j = 0; j < columns.length; j++) {
            double center = Median.withDefaults().evaluate(columns[j].clone());
            double scale = 0.0;
            for (double value : columns[j]) {
                scale = Math.max(scale, Math.abs(value - center));
            }
            double divisor = scale > 0.0 ? scale : 1.0;
            z[j] = Arrays.stream(columns[j]).map(v -> (v - center) / divisor).toArray();
        }
        return z;
    }

    /** A scatter on the way, and its points if they are known. */
    private static final class Candidate {
        private final Scatter scatter;
        private final int[] subset;

        Candidate(Scatter scatter, int[] subset) {
            this.scatter = scatter;
            this.subset = subset;
        }

        Scatter scatter() {
            return scatter;
        }

        int[] subset() {
            return subset;
        }

        double determinant() {
            return scatter.singular() ? 0.0 : scatter.determinant();
        }
    }
}
