package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.VisibleText;
import dev.teeward.fitting.gapping.Bag;
import dev.teeward.fitting.gapping.BagClub;
import dev.teeward.fitting.gapping.Gap;
import dev.teeward.fitting.gapping.Mend;
import dev.teeward.fitting.gapping.Stretch;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The sentences about a bag. */
final class BagWords {
    /** From this probability on a gap is called too small or too large. */
    static final double LIKELY = 0.8;

    /** From this probability on a gap counts as one to mend. */
    private static final double DOUBTFUL = 0.5;

    private static final double NOTICEABLE_OVERLAP = 0.2;

    private final Bag bag;
    private final UnitSystem units;
    private final Unit unit;

    BagWords(Bag bag, UnitSystem units) {
        this.bag = bag;
        this.units = units;
        this.unit = Metric.CARRY.unit(units);
    }

    static Unit unit(Mend mend, UnitSystem units) {
        return mend.means() == Mend.Means.LOFT ? Metric.DYNAMIC_LOFT.unit(units) : Metric.CLUB_SPEED.unit(units);
    }

    static String level(double level) {
        double percent = 100.0 * level;
        return NumberText.fixed(percent, NumberText.percentDecimals(percent)) + " %";
    }

    /** A probability in percent that is never called sure or impossible. */
    static String percent(double probability) {
        if (probability < 0.01) {
            return "<1";
        }
        return probability > 0.99 ? ">99" : NumberText.fixed(100.0 * probability, 0);
    }

    /** What a gap is likely to be, in a word, or nothing. */
    static String verdict(Gap gap) {
        if (gap.larger().orElse(0.0) >= LIKELY) {
            return "large";
        }
        return gap.smaller().orElse(0.0) >= LIKELY ? "small" : "";
    }

    private static String name(String club) {
        return VisibleText.line(club);
    }

    private String length(double meters) {
        return NumberText.fixed(unit.fromSi(meters), 1);
    }

    private String length(Length length) {
        return length(length.meters()) + " " + unit.symbol();
    }

    private String interval(Estimate estimate) {
        return estimate.interval().bounded()
                ? " (" + level(estimate.interval().level()) + " interval "
                        + length(estimate.interval().lower()) + " to "
                        + length(estimate.interval().upper()) + ")"
                : " (no interval can be told)";
    }

    Section inShort() {
        List<String> said = new ArrayList<>();
        BagClub longest = bag.clubs().get(0);
        BagClub shortest = bag.clubs().get(bag.clubs().size() - 1);
        said.add("From " + name(longest.name()) + ", " + length(longest.meanCarry()) + ", to " + name(shortest.name())
                + ", " + length(shortest.meanCarry()) + ".");
        if (bag.wanted().isPresent()) {
            gaps(said);
        }
        for (Stretch stretch : bag.uncovered()) {
            said.add("No club covers " + length(stretch.from().meters()) + " to " + length(stretch.to())
                    + doubt(stretch) + ".");
        }
        if (bag.uncovered().isEmpty()) {
            said.add("Every distance between them is covered by swings at full speed.");
        }
        for (Gap gap : bag.gaps()) {
            if (gap.overlap().orElse(0.0) >= NOTICEABLE_OVERLAP) {
                said.add("Of two single shots, " + percent(gap.overlap().getAsDouble()) + " in 100 times the one with "
                        + name(gap.shorter()) + " carries farther than the one with " + name(gap.longer()) + ".");
            }
        }
        return Sentences.section("in-short", "In short", said);
    }

    /** A stretch that is narrower than its neighbours' means are sure may not be there at all. */
    private String doubt(Stretch stretch) {
        if (bag.settled(stretch)) {
            return "";
        }
        BagClub above = bag.neighbours(stretch).get(0);
        BagClub below = bag.neighbours(stretch).get(1);
        Interval one = below.carry().interval();
        Interval other = above.carry().interval();
        if (!one.bounded() || !other.bounded()) {
            return " by the estimates, of which it cannot be told how sure they are";
        }
        return " by the estimates, which is less than they are sure: " + name(below.name()) + " to "
                + length(one.halfWidth()) + " and " + name(above.name()) + " to "
                + length(Length.ofMeters(other.halfWidth()));
    }

    private void gaps(List<String> said) {
        String wanted = length(bag.wanted().orElseThrow().meters()) + " " + unit.symbol() + ", give or take "
                + length(bag.tolerance().orElseThrow().meters());
        boolean any = false;
        for (Gap gap : bag.gaps()) {
            String verdict = verdict(gap);
            if (verdict.isEmpty()) {
                continue;
            }
            any = true;
            double probability = (verdict.equals("large") ? gap.larger() : gap.smaller()).orElseThrow();
            Estimate estimate = gap.difference().estimate();
            said.add("Between " + name(gap.longer()) + " and " + name(gap.shorter()) + " lie "
                    + length(estimate.value()) + " "
                    + unit.symbol() + interval(estimate) + ": with a probability of " + percent(probability) + " % "
                    + (verdict.equals("large") ? "more" : "less") + " than the wanted " + wanted + ".");
        }
        if (!any) {
            said.add("No gap is likely to be smaller or larger than the wanted " + wanted + ".");
        }
    }

    Section mend() {
        List<String> said = new ArrayList<>();
        boolean changes = false;
        for (Gap gap : bag.gaps()) {
            boolean doubtful =
                    gap.smaller().orElse(0.0) >= DOUBTFUL || gap.larger().orElse(0.0) >= DOUBTFUL;
            String between = "Between " + name(gap.longer()) + " and " + name(gap.shorter());
            OptionalDouble halved = bag.halved(gap);
            if (halved.isPresent()) {
                said.add(between + " one more club, half-way, would leave two gaps of " + length(halved.getAsDouble())
                        + " " + unit.symbol() + ".");
            }
            if (doubtful && !gap.mends().isEmpty()) {
                changes = true;
                said.add(between + " the wanted gap would come, by the models, from "
                        + gap.mends().stream().map(this::change).collect(Collectors.joining(", or from ")) + ".");
            }
        }
        if (changes) {
            said.add("Each by itself, all else as it is; a change to one club moves both of its gaps.");
        }
        return Sentences.section("mend", "What would mend it", said);
    }

    private String change(Mend mend) {
        boolean loft = mend.means() == Mend.Means.LOFT;
        Estimate change = mend.change().convertTo(unit(mend, units));
        String more = loft ? change.value() < 0.0 ? "less loft" : "more loft" : "more club speed";
        // Told by its size; the interval turns with the sign.
        boolean less = change.value() < 0.0;
        double lower = less ? -change.interval().upper() : change.interval().lower();
        double upper = less ? -change.interval().lower() : change.interval().upper();
        return name(mend.club()) + " with " + NumberText.fixed(Math.abs(change.value()), 1) + " "
                + change.unit().symbol() + " " + more
                + (change.interval().bounded()
                        ? " (" + NumberText.fixed(lower, 1) + " to " + NumberText.fixed(upper, 1) + ")"
                        : "");
    }

    Section method() {
        List<String> said = new ArrayList<>();
        said.add(bag.method() + ".");
        said.add("A club covers a distance if at least " + level(bag.coverShare())
                + " of its full shots carry to within " + length(bag.coverTolerance()) + " of it.");
        return Sentences.section("method", "How it was worked out", said);
    }

    Section warnings() {
        return Sentences.warnings(bag.warnings());
    }
}
