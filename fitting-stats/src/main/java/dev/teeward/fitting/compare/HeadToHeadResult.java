package dev.teeward.fitting.compare;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.complete.Completion;
import dev.teeward.fitting.complete.SessionAir;
import dev.teeward.fitting.screen.ScreenReport;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Two clubs compared: everything that a report needs. Differences are first minus second, numbers in SI.
 *
 * <pre>{@code
 * HeadToHeadResult r = HeadToHead.withDefaults().withPrimary(Metric.CARRY).compare(session);
 * r.primary().verdict().verdict();          // DIFFERENT, PRACTICALLY_THE_SAME or UNDECIDED
 * r.find(Metric.CURVE).orElseThrow().difference().estimate();
 * r.withoutFlagged();                       // the same without the flagged shots, if any shot is flagged
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class HeadToHeadResult {
    private final Completion completion;
    private final ScreenReport screening;
    private final Session session;
    private final ClubShots first;
    private final ClubShots second;
    private final ShotPairing pairing;
    private final List<MetricComparison> metrics;
    private final boolean primaryDeclared;
    private final double level;
    private final List<BuildDifference> buildDifferences;
    private final Optional<PatternComparison> patterns;
    private volatile @Nullable List<Association> associations; // looked for when first asked for
    private final List<Warning> warnings;
    private final @Nullable HeadToHeadResult withoutFlagged;

    HeadToHeadResult(
            Completion completion, ScreenReport screening, Parts parts, @Nullable HeadToHeadResult withoutFlagged) {
        this.completion = completion;
        this.screening = screening;
        this.session = parts.session;
        this.first = parts.first;
        this.second = parts.second;
        this.pairing = parts.pairing;
        this.metrics = List.copyOf(parts.metrics);
        this.primaryDeclared = parts.primaryDeclared;
        this.level = parts.level;
        this.buildDifferences = parts.buildDifferences;
        this.patterns = parts.patterns;
        this.warnings = List.copyOf(parts.warnings);
        this.withoutFlagged = withoutFlagged;
    }

    /** What one computation gives. */
    record Parts(
            Session session,
            ClubShots first,
            ClubShots second,
            ShotPairing pairing,
            List<MetricComparison> metrics,
            boolean primaryDeclared,
            double level,
            List<BuildDifference> buildDifferences,
            Optional<PatternComparison> patterns,
            List<Warning> warnings) {
        Parts with(Warning warning) {
            List<Warning> more = new ArrayList<>(warnings);
            more.add(warning);
            return new Parts(
                    session, first, second, pairing, metrics, primaryDeclared, level, buildDifferences, patterns, more);
        }
    }

    /**
     * The session that was compared, with derived and computed readings filled in.
     *
     * @return the session
     */
    public Session session() {
        return session;
    }

    /**
     * How derived and computed readings were filled in.
     *
     * @return the completion, with its warnings
     */
    public Completion completion() {
        return completion;
    }

    /**
     * The air that computed readings were computed in.
     *
     * @return the air, described in words, with what was assumed
     */
    public SessionAir air() {
        return completion.air();
    }

    /**
     * Which shots stand out, of all clubs. No shot is left out of this result because of it.
     *
     * @return the screening of the completed session
     */
    public ScreenReport screening() {
        return screening;
    }

    /**
     * The club that comes first in every difference.
     *
     * @return its shots
     */
    public ClubShots first() {
        return first;
    }

    /**
     * The club that is subtracted.
     *
     * @return its shots
     */
    public ClubShots second() {
        return second;
    }

    /**
     * In which order the clubs were hit.
     *
     * @return the kind of order; {@link ShotOrderKind#BLOCKED} has a warning
     */
    public ShotOrderKind order() {
        return pairing.order();
    }

    /**
     * Which shots belong together, and which pairs are broken.
     *
     * @return the pairing
     */
    public ShotPairing pairing() {
        return pairing;
    }

    /**
     * In what the clubs are built differently, as far as both are described.
     *
     * @return the differences, possibly none
     */
    public List<BuildDifference> buildDifferences() {
        return buildDifferences;
    }

    /**
     * All metrics that have at least two used readings with each club.
     *
     * @return the comparisons in the order in which a shot runs, at least one, unmodifiable
     */
    public List<MetricComparison> metrics() {
        return metrics;
    }

    /**
     * One metric.
     *
     * @param metric which
     * @return its comparison, or empty if it was not compared
     */
    public Optional<MetricComparison> find(Metric metric) {
        return metrics.stream().filter(m -> m.metric() == metric).findFirst();
    }

    /**
     * The metric that decides.
     *
     * @return its comparison
     */
    public MetricComparison primary() {
        return metrics.stream().filter(MetricComparison::primary).findFirst().orElseThrow();
    }

    /**
     * Whether the primary metric was declared, rather than chosen for want of a declaration.
     *
     * @return true if it was declared
     */
    public boolean primaryDeclared() {
        return primaryDeclared;
    }

    /**
     * The drift of the primary metric over the session.
     *
     * @return the slope per ten shots [SI per ten shots]
     */
    public TestResult drift() {
        return primary().drift();
    }

    /**
     * The landing patterns.
     *
     * @return the comparison, or empty unless both clubs have three used shots with carry and side
     */
    public Optional<PatternComparison> patterns() {
        return patterns;
    }

    /**
     * What goes with the differences of start direction, curve, side, carry and ball speed.
     *
     * @return the associations, by outcome and within an outcome by the size of their part, the largest first
     */
    public List<Association> associations() {
        List<Association> found = associations;
        if (found == null) {
            found = List.copyOf(new AssociationSearch(this).find());
            associations = found;
        }
        return found;
    }

    /**
     * The same computed without the shots that screening flagged, with the warning {@code selected-after-looking}: its p and
     * intervals are too confident.
     *
     * @return the other result, or empty if no used shot of the two clubs is flagged or too few remain, for which there is
     *     the warning {@code too-few-without-flagged}
     */
    public Optional<HeadToHeadResult> withoutFlagged() {
        return Optional.ofNullable(withoutFlagged);
    }

    /**
     * The metrics {@linkplain MetricComparison#inFamily() of the family} whose verdict is another
     * {@linkplain #withoutFlagged() without the flagged shots}.
     *
     * @return the changes in the order of {@link #metrics()}; none if no shot is flagged, or too few remain
     */
    public List<VerdictChange> changedVerdicts() {
        if (withoutFlagged == null) {
            return List.of();
        }
        List<VerdictChange> changes = new ArrayList<>();
        for (MetricComparison without : withoutFlagged.metrics) {
            if (!without.inFamily()) {
                continue;
            }
            find(without.metric())
                    .map(with -> new VerdictChange(
                            with.metric(),
                            with.verdict().verdict(),
                            without.verdict().verdict()))
                    .filter(change -> change.with() != change.without())
                    .ifPresent(changes::add);
        }
        return List.copyOf(changes);
    }

    /**
     * The level of all intervals; a difference is called at 1 minus this.
     *
     * @return the level, in [0.8, 0.999]
     */
    public double level() {
        return level;
    }

    /**
     * What to know about the session as a whole: shot order, builds, pairs, margins, a primary metric not declared.
     *
     * @return the warnings, possibly none
     */
    public List<Warning> warnings() {
        return warnings;
    }

    @Override
    public String toString() {
        return first.name() + " minus " + second.name() + ", " + primary();
    }
}
