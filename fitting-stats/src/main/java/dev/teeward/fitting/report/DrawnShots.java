package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.fitting.screen.SessionScreen;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * The shots that a picture shows, and how each is marked. Of very many shots only some are drawn, evenly chosen in the order of
 * hitting; means, intervals and ellipses rest on all.
 */
final class DrawnShots {
    /** Fewer shots make a prediction ellipse so wide that it tells nothing; a choice of this library. */
    static final int FEWEST_FOR_OUTLINE = PatternWords.FEW;

    /** What a picture without an ellipse says instead. */
    static final String NO_OUTLINE = "no outline: under " + FEWEST_FOR_OUTLINE + " shots a club";

    private final HeadToHeadResult result;
    private final Set<Shot> flagged;

    private DrawnShots(HeadToHeadResult result, Set<Shot> flagged) {
        this.result = result;
        this.flagged = flagged;
    }

    static DrawnShots of(HeadToHeadResult result) {
        return of(result, screening(result).flagged());
    }

    /** The screen of the comparison; of the answer without the flagged shots, which is about other used shots, a new one. */
    @SuppressWarnings(
            "ReferenceEquality") // equal sessions have equal screens, and comparing thousands of shots takes longer
    static ScreenReport screening(HeadToHeadResult result) {
        ScreenReport known = result.screening();
        return known.session() == result.session()
                ? known
                : SessionScreen.withDefaults().screen(result.session());
    }

    /** With flags by the index of the shot in the session. */
    static DrawnShots of(HeadToHeadResult result, Set<Integer> flagged) {
        Set<Shot> shots = Collections.newSetFromMap(new IdentityHashMap<>());
        flagged.forEach(i -> shots.add(result.session().shots().shots().get(i)));
        return new DrawnShots(result, shots);
    }

    HeadToHeadResult result() {
        return result;
    }

    ClubShots club(ClubMark mark) {
        return mark == ClubMark.FIRST ? result.first() : result.second();
    }

    /** Names of the clubs, the first first. */
    List<String> names() {
        return List.of(result.first().name(), result.second().name());
    }

    PlacedShot.Kind kind(Shot shot) {
        if (!shot.used()) {
            return PlacedShot.Kind.EXCLUDED;
        }
        return flagged.contains(shot) ? PlacedShot.Kind.FLAGGED : PlacedShot.Kind.USED;
    }

    /** The shots of a club that have all of some metrics. */
    List<Shot> all(ClubMark mark, boolean excludedToo, Metric... metrics) {
        ClubShots club = club(mark);
        List<Shot> all = new ArrayList<>(complete(club.used(), metrics).shots());
        if (excludedToo) {
            all.addAll(complete(club.excluded(), metrics).shots());
        }
        return Collections.unmodifiableList(all);
    }

    private static ShotSet complete(ShotSet shots, Metric... metrics) {
        ShotSet complete = shots;
        for (Metric metric : metrics) {
            complete = complete.with(metric);
        }
        return complete;
    }

    /** At most so many of them, evenly chosen. */
    static <T> List<T> thinned(List<T> shots, int most) {
        if (shots.size() <= most) {
            return shots;
        }
        List<T> kept = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            kept.add(shots.get((int) ((long) i * shots.size() / most)));
        }
        return kept;
    }

    /** What to say about shots that are not drawn; empty if all are. */
    static String thinning(int drawn, int all) {
        return drawn == all ? "" : " Of " + all + " shots " + drawn + " are drawn, evenly chosen.";
    }
}
