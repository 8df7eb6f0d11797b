package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Finds what would mend the gaps of a bag, and remembers what to warn of. */
final class Mender {
    private final ShotSet used;
    private final Map<String, ClubHead> heads;
    private final Set<String> own;
    private final ImpactModel impact;
    private final SessionFlights flights;
    private final String longest;
    private final Map<String, Optional<MendSearch>> searches = new HashMap<>();
    private final Set<String> untold = new LinkedHashSet<>();
    private final Set<String> implied = new LinkedHashSet<>();
    private boolean asked;
    private boolean told;

    /** The heads of the clubs that have one, typical ones but for those that are their own; and the longest club of the bag. */
    Mender(
            Session session,
            Map<String, ClubHead> heads,
            Set<String> own,
            ImpactModel impact,
            SessionFlights flights,
            String longest) {
        this.used = session.shots().used().with(Metric.CARRY);
        this.heads = heads;
        this.own = own;
        this.impact = impact;
        this.flights = flights;
        this.longest = longest;
    }

    /** Nobody is told to swing slower. */
    private static boolean sensible(Mend mend) {
        return mend.means() == Mend.Means.LOFT || mend.change().value() > 0.0;
    }

    List<Mend> mends(Gap gap, double wanted) {
        asked = true;
        Interval interval = gap.difference().estimate().interval();
        double missing = wanted - gap.difference().estimate().value();
        double df = gap.difference().degreesOfFreedom().stream().findFirst().orElse(1.0);
        List<Mend> mends = new ArrayList<>();
        for (Mend.Means means : Mend.Means.values()) {
            find(gap.longer(), means, missing, interval, df)
                    .filter(Mender::sensible)
                    .ifPresent(mends::add);
            find(gap.shorter(), means, -missing, interval, df)
                    .filter(Mender::sensible)
                    .ifPresent(mends::add);
        }
        told |= !mends.isEmpty();
        return mends;
    }

    /** Nobody gives away length at the top of the bag to close a gap below it. */
    private Optional<Mend> find(String club, Mend.Means means, double wanted, Interval gap, double df) {
        if (wanted < 0.0 && club.equals(longest)) {
            return Optional.empty();
        }
        return searches.computeIfAbsent(club, this::search).flatMap(search -> search.find(means, wanted, gap, df));
    }

    private Optional<MendSearch> search(String club) {
        ClubHead head = heads.get(club);
        if (head == null) {
            untold.add(club);
            return Optional.empty();
        }
        ClubSwings swings = ClubSwings.of(used.club(club), head, impact, flights);
        if (swings.size() < 2) {
            untold.add(club);
            return Optional.empty();
        }
        if (swings.implied() > 0) {
            implied.add(club);
        }
        return Optional.of(new MendSearch(club, swings));
    }

    List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        if (!asked) {
            return warnings;
        }
        if (!untold.isEmpty()) {
            warnings.add(Warning.of(
                    "mend-not-told",
                    "what a change of " + String.join(", ", untold)
                            + " would do cannot be told: it needs the club's loft in the session (or its head) and two swings"
                            + " with a delivery or a launch"));
        }
        if (!implied.isEmpty()) {
            warnings.add(Warning.of(
                    "delivery-implied",
                    "the delivery of " + String.join(", ", implied)
                            + " was not measured; it is the one that the launch implies for a central strike"));
        }
        if (told) {
            if (searches.keySet().stream().anyMatch(club -> !own.contains(club))) {
                warnings.add(Warning.of(
                        "typical-head", "the heads are typical ones for the lofts written down, not these clubs' own"));
            }
            warnings.add(SetUpEffect.BUILDER);
        }
        return warnings;
    }
}
