package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.fitting.summary.SampleSummary;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.LieEffect;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What a change of lie, loft or length would do to start, curve, side and carry, if the golfer swung as before.
 *
 * <p>Every swing with the club is struck by the impact model and flown by the flight model twice, as it was and with the
 * change; the effect is the mean of the differences, its interval Student's with one degree of freedom fewer than swings: the
 * scatter of the deliveries, and neither the error of the models nor how this golfer would answer the change. The change acts
 * so:
 *
 * <ul>
 *   <li><b>loft</b>: a degree more loft delivers a degree more dynamic loft, the face pointing where it did;
 *   <li><b>lie</b>: the delivered face is turned about the target line by the change, {@link LieEffect#applyTo};
 *   <li><b>length</b>: with the hands at the same height h = length sin(lie) a longer club lies flatter against the ground and
 *       its toe comes up, by {@code lie - asin(length sin(lie) / (length + change))}, which needs the club's length and lie; and
 *       club speed changes by a share for each inch, {@link #withSpeedShare} (1 % unless changed; common practice, no
 *       source; Kenny, Wallace and Otto 2008, Sports Biomechanics 7:322, found +1.8 m/s of ball speed from 46 to 50 in with
 *       drivers, about 0.7 % an inch). Posture and strike are left as they were.
 * </ul>
 *
 * <p>A change of a club is made, and checked afterwards, by a qualified club builder; every result says so. What was computed
 * here is a question to try out with a demo club, not an instruction.
 *
 * <p>Warnings: {@code qualified-builder}, always; {@code delivery-implied}; {@code typical-head}; {@code swings-left-out};
 * {@code start-and-curve-untold} if path or face were not measured, in which case these outcomes are absent.
 *
 * <pre>{@code
 * SetUpEffect.Result r = SetUpEffect.withDefaults().of(session, "Alder", SetUpChange.none().withLie(degrees(-2.0)));
 * r.effect(Metric.START_DIRECTION).orElseThrow().change().convertTo(AngleUnit.DEGREE);
 * r.warnings();
 * }</pre>
 *
 * <p>Immutable and thread-safe, if the plug-ins are.
 */
public final class SetUpEffect {
    static final Warning BUILDER = Warning.of(
            "qualified-builder",
            "have any change of loft, lie or length made, and checked afterwards, by a qualified club builder: a club bent too"
                    + " far can break, and bounce, lie and balance change with it");

    private static final SetUpEffect DEFAULTS =
            new SetUpEffect(0.95, FlightModel.standard(), RigidImpact.standard(), 0.01, null);

    private final double level;
    private final FlightModel model;
    private final ImpactModel impact;
    private final double speedShare;
    private final @Nullable ClubHead head;

    private SetUpEffect(
            double level, FlightModel model, ImpactModel impact, double speedShare, @Nullable ClubHead head) {
        this.level = level;
        this.model = model;
        this.impact = impact;
        this.speedShare = speedShare;
        this.head = head;
    }

    /**
     * 95 %, standard models, a typical head for the loft.
     *
     * @return the default procedure
     */
    public static SetUpEffect withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level of the intervals.
     *
     * @param value the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public SetUpEffect withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value + "; 95 percent are 0.95");
        }
        return new SetUpEffect(value, model, impact, speedShare, head);
    }

    /**
     * With another flight model.
     *
     * @param value ball, landing elevation, gravity; its air and wind are those of the session
     * @return a changed copy
     */
    public SetUpEffect withFlightModel(FlightModel value) {
        return new SetUpEffect(level, Objects.requireNonNull(value, "value"), impact, speedShare, head);
    }

    /**
     * With another impact model.
     *
     * @param value the model
     * @return a changed copy
     */
    public SetUpEffect withImpactModel(ImpactModel value) {
        return new SetUpEffect(level, model, Objects.requireNonNull(value, "value"), speedShare, head);
    }

    /**
     * With the head of the club, in the place of the typical one for its loft, as in {@link Gapping}.
     *
     * @param value the head; its hand is replaced by the golfer's
     * @return a changed copy
     */
    public SetUpEffect withHead(ClubHead value) {
        return new SetUpEffect(level, model, impact, speedShare, Objects.requireNonNull(value, "value"));
    }

    /**
     * With another answer of club speed to length.
     *
     * @param perInch the share of club speed that an inch more adds, in [-0.1, 0.1]
     * @return a changed copy
     * @throws IllegalArgumentException if the share lies outside
     */
    public SetUpEffect withSpeedShare(double perInch) {
        if (!(Math.abs(perInch) <= 0.1)) {
            throw new IllegalArgumentException(
                    "perInch must be in [-0.1, 0.1], but was " + perInch + "; 1 percent an inch is 0.01");
        }
        return new SetUpEffect(level, model, impact, perInch, head);
    }

    /**
     * One outcome.
     *
     * @param before its mean by the models, with the club as it is [SI unit of the metric]
     * @param change the mean difference, changed less unchanged, with its t interval; unbounded if all swings differ alike
     * @param deviation how much the difference varies from swing to swing, one standard deviation
     */
    public record Effect(double before, Estimate change, double deviation) {}

    /**
     * What a change would do.
     *
     * @param club the club
     * @param change the change
     * @param swings how many swings were flown
     * @param effects by outcome: start direction, curve, side, carry; an outcome that cannot be told is absent
     * @param warnings what to know, first of all who may make the change
     */
    public record Result(
            String club, SetUpChange change, int swings, Map<Metric, Effect> effects, List<Warning> warnings) {
        /**
         * Copies map and list.
         *
         * @param club the club
         * @param change the change
         * @param swings how many swings were flown
         * @param effects by outcome
         * @param warnings what to know
         */
        public Result {
            effects = java.util.Collections.unmodifiableMap(new EnumMap<>(effects));
            warnings = List.copyOf(warnings);
        }

        /**
         * One outcome.
         *
         * @param metric start direction, curve, side or carry
         * @return what the change would do to it, or empty
         */
        public Optional<Effect> effect(Metric metric) {
            return Optional.ofNullable(effects.get(metric));
        }
    }

    /**
     * Asks what a change would do to the swings of a session.
     *
     * @param session the session
     * @param club the name of a club that was hit
     * @param change the change
     * @return the effects
     * @throws IllegalArgumentException if the club was not hit, fewer than two of its used shots have a delivery (or a launch that
     *     implies one), its head or, for another length, its length or lie is not known, the changed swings cannot be flown, or as
     *     {@link dev.teeward.fitting.complete.SessionAir#of} does
     */
    public Result of(Session session, String club, SetUpChange change) {
        if (!session.shots().clubs().contains(club)) {
            throw new IllegalArgumentException("the club \"" + club + "\" was not hit; the clubs are "
                    + String.join(", ", session.shots().clubs()));
        }
        Handedness hand = session.hand().orElse(Handedness.RIGHT);
        Optional<Club> build = session.club(club);
        ClubHead struck = head == null
                ? build.flatMap(known -> HeadByLoft.of(known, hand))
                        .orElseThrow(() -> new IllegalArgumentException("the head of " + club
                                + " is not known; describe the club with its loft in the session, or give a head"))
                : head.toBuilder().handedness(hand).build();
        ShotSet used = session.shots().club(club).used();
        ClubSwings swings = ClubSwings.of(used, struck, impact, SessionFlights.of(session, model));
        if (swings.size() < 2) {
            throw new IllegalArgumentException("of " + club + " " + swings.size()
                    + " used shots have a delivery or a launch that the models can follow, and 2 are needed");
        }
        LieEffect lie = LieEffect.of(Angle.ofRadians(change.lie().radians() + toeUp(change, build, club)), hand);
        double faster = 1.0 + speedShare * change.length().inches();
        List<Flight> now = swings.fly(delivery -> delivery).orElseThrow();
        List<Flight> then = swings.fly(delivery -> lie.applyTo(changed(delivery, change, faster)))
                .orElseThrow(() -> new IllegalArgumentException(
                        "with the change (" + change + ") the swings with " + club + " leave the range of the models"));
        boolean aimed = used.stream()
                .allMatch(shot -> (shot.has(Metric.FACE_ANGLE) && shot.has(Metric.CLUB_PATH))
                        || (shot.has(Metric.START_DIRECTION) && shot.has(Metric.AXIS_TILT)));
        Map<Metric, Effect> effects = new EnumMap<>(Metric.class);
        if (aimed) {
            add(
                    effects,
                    Metric.START_DIRECTION,
                    now,
                    then,
                    flight -> flight.launch().startDirection().radians());
            add(effects, Metric.CURVE, now, then, flight -> flight.curve().meters());
            add(effects, Metric.SIDE, now, then, flight -> flight.side().meters());
        }
        add(effects, Metric.CARRY, now, then, flight -> flight.carry().meters());
        return new Result(club, change, swings.size(), effects, warnings(swings, aimed));
    }

    /** With hands at the same height a longer club comes toe up [rad]. */
    private static double toeUp(SetUpChange change, Optional<Club> build, String club) {
        double longer = change.length().meters();
        if (longer == 0.0) {
            return 0.0;
        }
        OptionalDouble length = number(build.flatMap(Club::length).map(l -> l.meters()));
        OptionalDouble lie = number(build.flatMap(Club::lie).map(Angle::radians));
        if (length.isEmpty() || lie.isEmpty()) {
            throw new IllegalArgumentException("what another length does needs the length and the lie of " + club
                    + "; describe the club in the session");
        }
        double sine = length.getAsDouble() * Math.sin(lie.getAsDouble()) / (length.getAsDouble() + longer);
        if (!(sine < 1.0)) {
            throw new IllegalArgumentException("a club of " + length.getAsDouble() + " m cannot be shortened by "
                    + -longer + " m with the hands at the same height; take a smaller change of length");
        }
        return lie.getAsDouble() - Math.asin(sine);
    }

    private static OptionalDouble number(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static Delivery changed(Delivery delivery, SetUpChange change, double faster) {
        return delivery.toBuilder()
                .dynamicLoft(Angle.ofRadians(
                        delivery.dynamicLoft().radians() + change.loft().radians()))
                .clubSpeed(Speed.ofMetersPerSecond(faster * delivery.clubSpeed().metersPerSecond()))
                .build();
    }

    private void add(
            Map<Metric, Effect> effects,
            Metric metric,
            List<Flight> now,
            List<Flight> then,
            ToDoubleFunction<Flight> outcome) {
        double[] differences = new double[now.size()];
        double before = 0.0;
        for (int i = 0; i < differences.length; i++) {
            double was = outcome.applyAsDouble(now.get(i));
            before += was / differences.length;
            differences[i] = outcome.applyAsDouble(then.get(i)) - was;
        }
        SampleSummary.Result summary = SampleSummary.withDefaults()
                .withLevel(level)
                .withUnit(metric.siUnit())
                .summarize(differences);
        effects.put(
                metric,
                new Effect(
                        before,
                        summary.mean(),
                        summary.standardDeviation().orElseThrow().value()));
    }

    private List<Warning> warnings(ClubSwings swings, boolean aimed) {
        List<Warning> warnings = new ArrayList<>();
        warnings.add(BUILDER);
        if (head == null) {
            warnings.add(Warning.of(
                    "typical-head", "the head is a typical one for the loft written down, not this club's own"));
        }
        if (swings.implied() > 0) {
            warnings.add(Warning.of(
                    "delivery-implied",
                    swings.implied() + " of " + swings.size()
                            + " deliveries are those that the launch implies for a central strike"));
        }
        if (swings.missing() > 0) {
            warnings.add(Warning.of(
                    "swings-left-out",
                    swings.missing() + " used shots have no delivery or launch that the models can follow"));
        }
        if (!aimed) {
            warnings.add(Warning.of(
                    "start-and-curve-untold",
                    "face and path were not measured with every shot, so only the carry can be told"));
        }
        return warnings;
    }
}
