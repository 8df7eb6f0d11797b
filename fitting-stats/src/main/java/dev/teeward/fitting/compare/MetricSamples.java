package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The used numbers of one metric: of each club, of the pairs, and in the order of hitting. Its arrays are never changed. */
final class MetricSamples {
    private final Metric metric;
    private final double[] first;
    private final double[] second;
    private final double[] ordered;
    private final int[] clubs;
    private final @Nullable ShotOrder order;
    private final double[] pairedFirst;
    private final double[] pairedSecond;
    private final OriginCounts firstOrigins;
    private final OriginCounts secondOrigins;
    private final boolean paired;
    private final boolean pairsPassedOver;
    private final List<Exclusion> exclusions;

    MetricSamples(
            Metric metric,
            double[] first,
            double[] second,
            double[] ordered,
            int[] clubs,
            @Nullable ShotOrder order,
            double[] pairedFirst,
            double[] pairedSecond,
            OriginCounts firstOrigins,
            OriginCounts secondOrigins,
            boolean paired,
            boolean pairsPassedOver,
            List<Exclusion> exclusions) {
        this.metric = metric;
        this.first = first;
        this.second = second;
        this.ordered = ordered;
        this.clubs = clubs;
        this.order = order;
        this.pairedFirst = pairedFirst;
        this.pairedSecond = pairedSecond;
        this.firstOrigins = firstOrigins;
        this.secondOrigins = secondOrigins;
        this.paired = paired;
        this.pairsPassedOver = pairsPassedOver;
        this.exclusions = List.copyOf(exclusions);
    }

    Metric metric() {
        return metric;
    }

    boolean comparable() {
        return first.length >= 2 && second.length >= 2;
    }

    double[] firstValues() {
        return first;
    }

    double[] secondValues() {
        return second;
    }

    /** The first of each pair with the metric. */
    double[] pairedFirst() {
        return pairedFirst;
    }

    double[] pairedSecond() {
        return pairedSecond;
    }

    double[] orderedValues() {
        return ordered;
    }

    /** The order of the clubs, the first one 0. */
    ShotOrder order() {
        return order == null ? ShotOrder.of(clubs) : order;
    }

    OriginCounts firstOrigins() {
        return firstOrigins;
    }

    OriginCounts secondOrigins() {
        return secondOrigins;
    }

    boolean paired() {
        return paired;
    }

    boolean pairsPassedOver() {
        return pairsPassedOver;
    }

    List<Exclusion> exclusions() {
        return exclusions;
    }
}
