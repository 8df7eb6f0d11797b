package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.flight.FlightModel;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Screens the used shots of a session for misreads of the device and mishits of the golfer. It looks only at what was
 * measured or follows from measurements by definition, never at results of the flight model, and drops no shot.
 *
 * <p><b>Misreads</b>, by rules that are not statistical tests:
 *
 * <ul>
 *   <li>ball speed beyond what the club speed allows: more than {@code (1 + e) cos(spin loft) / (1 + m/M)} and the share of
 *       the friction, with e = 0.83, the mass M of the head if the session has it and otherwise 300 g, the spin loft if it is
 *       known (less 5 deg) and otherwise 0, and three tolerances of the device (1 % of ball speed and 2 % of club speed if
 *       the session has none);
 *   <li>spin between 0.45 and 0.55 of the median of the club, or between their reciprocals, while ball speed and launch angle
 *       are as usual;
 *   <li>carry or apex that contradicts the launch: measured over computed in the air of the session farther from the median
 *       of all shots than 10 % (apex 20 %), five robust standard deviations or three tolerances, and 5 m (3 m).
 * </ul>
 *
 * <p><b>Mishits</b>, by tests with a rate of false alarms for the whole session, at normally spread shots:
 *
 * <ul>
 *   <li>strike towards the toe and up together, or, where fewer than 6 strikes were measured, smash factor and launch angle:
 *       {@link MinimumCovarianceDeterminant} over the clubs pooled, each about its own mean and in its own spread, with
 *       simulated cut-offs: 5 % with one club, at most 5 % with several, whatever their spreads;
 *   <li>smash factor and ball speed (another list may be given), each club on its own: {@link GrubbsTest} below 25 shots,
 *       {@link GeneralizedEsdTest} from 25, the rate divided by the number of tests: at most 5 % together. That
 *       holds for normal spread only. Smash factor falls with the square of the distance of the strike from the centre of the
 *       face; where the strikes were measured this is taken out of it first. Of smash factor without strikes, and of ball
 *       speed, which is tested as it is, more good sessions than stated raise a flag where that matters much (29 % in one
 *       simulation).
 * </ul>
 *
 * <p>The tests look at both ends at the rate stated. A shot that stands out by a high speed, smash factor or carry is no
 * mishit: its flag is a possible misread, "on the fast side".
 *
 * <p>Clubs with fewer than 6 shots are not tested, and a warning says so: {@code too-few-shots}. Others are {@code
 * mishits-not-screened}, {@code unequal-spread}, {@code spin-too-uneven}, {@code air-unknown}, {@code exact-fit}, {@code
 * zero-spread}, {@code search-not-exhaustive} and {@code screened-repeatedly}.
 *
 * <p>The report is a function of the session alone: shots appended one by one give the same report as the whole file.
 *
 * <pre>{@code
 * ScreenReport report = SessionScreen.withDefaults().screen(session);
 * ScreenReport newest = SessionScreen.withDefaults().screenLatest(session.append(shot));
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class SessionScreen {
    private static final SessionScreen DEFAULTS =
            new SessionScreen(List.of(Metric.SMASH_FACTOR, Metric.BALL_SPEED), Set.of(), FlightModel.standard());

    private final List<Metric> metrics;
    private final Set<Metric> left;
    private final FlightModel model;

    private SessionScreen(List<Metric> metrics, Set<Metric> left, FlightModel model) {
        this.metrics = metrics;
        this.left = left;
        this.model = model;
    }

    /**
     * All rules and tests, smash factor and ball speed on their own, and a standard ball.
     *
     * @return the procedure
     */
    public static SessionScreen withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same procedure with other metrics to be tested on their own. Take delivery and launch rather than the result that
     * is to be compared, and few: each further one makes all of them less sensitive.
     *
     * @param values the metrics, decided before the shots are looked at; none for no such test
     * @return the procedure
     */
    public SessionScreen withMetrics(Metric... values) {
        return new SessionScreen(List.of(values).stream().distinct().toList(), left, model);
    }

    /**
     * The same procedure without a metric: no test and no check of carry or apex against the launch rests on it. Leave out
     * what is to be compared, since shots chosen by the result make differences look surer than they are. Ball speed and
     * smash factor, which follow from each other, leave together. What is left out stays so, whatever is given to
     * {@link #withMetrics}. The rules for ball speed beyond what is possible and for spin that halves or doubles remain,
     * since they tell broken readings rather than unusual shots.
     *
     * @param metric the metric
     * @return the procedure
     */
    public SessionScreen without(Metric metric) {
        EnumSet<Metric> more = EnumSet.of(metric);
        more.addAll(left);
        if (metric == Metric.BALL_SPEED || metric == Metric.SMASH_FACTOR) {
            more.addAll(List.of(Metric.BALL_SPEED, Metric.SMASH_FACTOR));
        }
        return new SessionScreen(metrics, Collections.unmodifiableSet(more), model);
    }

    /**
     * The same procedure for clubs that are compared by their carries. Without the carry, as {@link #without} says, if a used
     * shot has a ball speed or a smash factor; a session that has neither can only be screened by the carry itself.
     *
     * @param session the session to be screened
     * @return the procedure without {@link Metric#CARRY}, or with the carry as the only metric tested on its own
     */
    public SessionScreen forCarriesOf(Session session) {
        boolean struck = session.shots().used().stream()
                .anyMatch(shot -> shot.has(Metric.BALL_SPEED) || shot.has(Metric.SMASH_FACTOR));
        return struck ? without(Metric.CARRY) : withMetrics(Metric.CARRY);
    }

    /**
     * The same procedure with another flight model for the carry that follows from a launch.
     *
     * @param value ball, landing elevation and gravity; its air and wind are replaced by those of the session
     * @return the procedure
     */
    public SessionScreen withFlightModel(FlightModel value) {
        return new SessionScreen(metrics, left, Objects.requireNonNull(value, "value"));
    }

    /**
     * Screens a session.
     *
     * @param session the session
     * @return the flags of all its used shots
     */
    public ScreenReport screen(Session session) {
        Screening screening = new Screening(session);
        SpeedRule.apply(screening);
        SpinRule.apply(screening);
        FlightRule.apply(screening, model, left);
        OptionalDouble together = MishitScreen.apply(screening, left);
        OptionalDouble single = MetricScreen.apply(
                screening, metrics.stream().filter(m -> !left.contains(m)).toList());
        double rate = together.orElse(0.0) + single.orElse(0.0);
        MishitScreen.explain(screening, left, single.isPresent());
        return new ScreenReport(session, screening.flags(), rate, screening.warnings());
    }

    /**
     * Screens the last shot of a session against the others: those flags of {@link #screen} that concern it. Meant for
     * screening each shot as it is hit.
     *
     * @param session the session, the newest shot last
     * @return the flags of the last shot; none if the session is empty or that shot is excluded
     */
    public ScreenReport screenLatest(Session session) {
        ScreenReport all = screen(session);
        List<Warning> warnings = new ArrayList<>(all.warnings());
        if (all.falseAlarmRate() > 0.0) {
            warnings.add(
                    Warning.of(
                            "screened-repeatedly",
                            "the rate of false alarms is that of one look at the session: when every new shot is looked at, more"
                                    + " good sessions raise a flag at some time, which the screen of the whole session settles"));
        }
        return new ScreenReport(
                session, all.flags(session.shots().size() - 1), all.falseAlarmRate(), List.copyOf(warnings));
    }
}
