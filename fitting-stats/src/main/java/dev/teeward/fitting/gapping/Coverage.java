package dev.teeward.fitting.gapping;

import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.ScaledT;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The distances to within a tolerance of which enough shots carry. */
final class Coverage {
    private Coverage() {}

    /** What a club covers: a stretch about its mean, since the predictive density falls to both sides alike. */
    static Optional<Stretch> of(ScaledT next, double tolerance, double share) {
        double mean = next.centre();
        if (next.between(mean - tolerance, mean + tolerance) < share) {
            return Optional.empty();
        }
        // At a distance d the share is below P(X above d - tolerance), so that it is small enough far out.
        double far = tolerance + next.reach(1.0 - share);
        double reach =
                NoncentralT.root(d -> share - next.between(mean + d - tolerance, mean + d + tolerance), 0.0, far);
        return Optional.of(Stretch.ofMeters(mean - reach, mean + reach));
    }

    /** What lies between the shortest and the longest mean carry and belongs to no club, nearest first. */
    static List<Stretch> uncovered(List<BagClub> clubs) {
        double[] means = clubs.stream()
                .mapToDouble(club -> club.carry().value())
                .sorted()
                .toArray();
        double last = means[means.length - 1];
        List<Stretch> covered = clubs.stream()
                .flatMap(club -> club.covers().stream())
                .sorted(Comparator.comparingDouble(stretch -> stretch.from().meters()))
                .toList();
        List<Stretch> uncovered = new ArrayList<>();
        double reached = means[0];
        for (Stretch stretch : covered) {
            double from = Math.min(last, stretch.from().meters());
            if (from > reached) {
                uncovered.add(Stretch.ofMeters(reached, from));
            }
            reached = Math.max(reached, stretch.to().meters());
        }
        if (last > reached) {
            uncovered.add(Stretch.ofMeters(reached, last));
        }
        return uncovered;
    }
}
