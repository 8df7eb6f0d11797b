package dev.teeward.fitting.choose;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.complete.SessionFlights;
import dev.teeward.fitting.summary.TargetRegion;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a golfer wants of a club, as one number for each shot whose mean is compared between clubs.
 *
 * <p>{@link #distance}: carry [m]. {@link #total}: carry and run on a stated turf [m]. {@link #closeness}: distance of the landing point from a target [m], smaller is better.
 * {@link #tightness}: distance of the landing point from the middle of that club's shots, times sqrt(n / (n - 1)) so that few
 * shots do not look tight [m], smaller is better. {@link #holding}: 1 for a ball on the green, else 0. {@link #strokes}:
 * strokes still to expect after the shot, smaller is better. {@link #mixture}: the sum of weight times number over scale of
 * several, larger is better; a scale is the amount of one goal that is worth as much as the scales of the others.
 *
 * <p>x along the target line, z right positive, the target line straight through the ball; the same numbers for both hands.
 *
 * <pre>{@code
 * Goal far = Goal.distance();
 * Goal near = Goal.closeness(Length.ofYards(165.0));
 * Goal both = Goal.mixture(List.of(new Goal.Part(far, 0.3, 5.0), new Goal.Part(near, 0.7, 3.0))); // 5 m of carry or 3 m closer
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Goal {
    private static final String FROM_THE_MIDDLE = "distance from the middle of the pattern";

    private final String words;
    private final Unit unit;
    private final boolean smallest;
    private final boolean shares;
    private final Scorer scorer;

    private Goal(String words, Unit unit, boolean smallest, boolean shares, Scorer scorer) {
        this.words = words;
        this.unit = unit;
        this.smallest = smallest;
        this.shares = shares;
        this.scorer = scorer;
    }

    /** One number for each shot of one club, or nothing for a shot that lacks what is needed. */
    private interface Scorer {
        List<Optional<Double>> score(Session session, List<Shot> shots);
    }

    /**
     * One goal of a mixture.
     *
     * @param goal the goal
     * @param weight how much it counts, above 0
     * @param scale the amount of it that is worth as much as the scales of the others, above 0 [SI unit of the goal]
     */
    public record Part(Goal goal, double weight, double scale) {
        /**
         * Takes weights and scales above 0.
         *
         * @param goal the goal
         * @param weight how much it counts, above 0
         * @param scale the amount that is worth as much as the scales of the others, above 0 [SI unit of the goal]
         * @throws IllegalArgumentException if weight or scale is not finite and above 0
         */
        public Part {
            if (!(weight > 0.0
                    && weight < Double.POSITIVE_INFINITY
                    && scale > 0.0
                    && scale < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("weight and scale of " + goal.words
                        + " must be finite and above 0, but were " + weight + " and " + scale);
            }
        }
    }

    /**
     * As far as possible through the air.
     *
     * @return the goal [m]
     */
    public static Goal distance() {
        return new Goal("carry", LengthUnit.METER, false, false, each(shot -> value(shot, Metric.CARRY)));
    }

    /**
     * As far as possible, the run on a given turf included: the carry as measured or computed, plus the run from flying and rolling
     * the launch. A measured total is not used: it is one of the turf and slope of its place, which a session does not say. No
     * turf's numbers are validated.
     *
     * @param ground turf and slope of the landing area, taken to reach as far as the balls run
     * @return the goal [m]; shots whose launch was not measured in full or whose rest is not known are left out
     */
    public static Goal total(Ground ground) {
        return new Goal("total, run included", LengthUnit.METER, false, false, (session, shots) -> {
            SessionFlights flights =
                    SessionFlights.of(session, FlightModel.standard().withGround(ground));
            return shots.stream()
                    .map(shot -> value(shot, Metric.CARRY)
                            .flatMap(carry ->
                                    flights.fly(shot).flatMap(Flight::run).map(run -> carry + run.meters())))
                    .toList();
        });
    }

    /**
     * As close as possible to a target on the target line.
     *
     * @param target its distance
     * @return the goal [m]
     */
    public static Goal closeness(Length target) {
        double at = target.meters();
        return new Goal(
                "distance from the target",
                LengthUnit.METER,
                true,
                false,
                each(shot -> landing(shot).map(p -> Math.hypot(p[0] - at, p[1]))));
    }

    /**
     * As tight a pattern as possible, wherever it lies.
     *
     * @return the goal [m]
     */
    public static Goal tightness() {
        return new Goal(FROM_THE_MIDDLE, LengthUnit.METER, true, false, (session, shots) -> {
            List<Optional<double[]>> points = shots.stream().map(Goal::landing).toList();
            List<double[]> known = points.stream().flatMap(Optional::stream).toList();
            int n = known.size();
            double[] middle = new double[2];
            known.forEach(p -> {
                middle[0] += p[0] / n;
                middle[1] += p[1] / n;
            });
            double factor = n > 1 ? Math.sqrt(n / (n - 1.0)) : 0.0;
            return points.stream()
                    .map(point -> point.map(p -> factor * Math.hypot(p[0] - middle[0], p[1] - middle[1])))
                    .toList();
        });
    }

    /**
     * As many balls as possible landing on a green.
     *
     * @param green the green: distance along the target line and offset, right positive [m]
     * @return the goal, the share of the balls
     */
    public static Goal holding(TargetRegion green) {
        return new Goal(
                "share of the balls on the green",
                RatioUnit.ONE,
                false,
                true,
                each(shot -> landing(shot).map(p -> green.contains(p[0], p[1]) ? 1.0 : 0.0)));
    }

    /**
     * As many balls as possible coming to rest on a green of a given firmness: each shot is flown and rolled to rest, and the
     * way from its landing to its rest is added to its landing point as measured. No turf's numbers are validated.
     *
     * @param green the green: distance along the target line and offset, right positive [m]
     * @param ground turf and slope of the green, taken to reach as far as the balls run
     * @return the goal, the share of the balls; shots whose launch was not measured in full or whose rest is not known are left
     *     out
     */
    public static Goal holding(TargetRegion green, Ground ground) {
        return new Goal("share of the balls that stay on the green", RatioUnit.ONE, false, true, (session, shots) -> {
            SessionFlights flights =
                    SessionFlights.of(session, FlightModel.standard().withGround(ground));
            return shots.stream()
                    .map(shot -> rest(flights, shot).map(p -> green.contains(p[0], p[1]) ? 1.0 : 0.0))
                    .toList();
        });
    }

    /**
     * As few strokes as possible after the shot.
     *
     * @param approach the target, the green, and the baseline
     * @return the goal, strokes still to expect
     */
    public static Goal strokes(ApproachStrokes approach) {
        return new Goal(
                "strokes still to expect",
                RatioUnit.ONE,
                true,
                false,
                each(shot -> landing(shot).map(p -> approach.after(p[0], p[1]))));
    }

    /**
     * Several goals weighed against each other.
     *
     * @param parts at least one
     * @return the goal, a pure number, larger is better
     * @throws IllegalArgumentException if there is none
     */
    public static Goal mixture(List<Part> parts) {
        List<Part> all = List.copyOf(parts);
        if (all.isEmpty()) {
            throw new IllegalArgumentException("a mixture needs at least one goal");
        }
        String words = String.join(
                " and ",
                all.stream()
                        .map(p -> p.weight() + " times " + p.goal().words + " in units of " + p.scale() + " "
                                + p.goal().unit.symbol())
                        .map(String::strip)
                        .toList());
        return new Goal("mixture of " + words, RatioUnit.ONE, false, false, (session, shots) -> {
            List<Optional<Double>> sum =
                    new ArrayList<>(shots.stream().map(s -> Optional.of(0.0)).toList());
            for (Part part : all) {
                double factor = (part.goal().smallest ? -1.0 : 1.0) * part.weight() / part.scale();
                List<Optional<Double>> scores = part.goal().scorer.score(session, shots);
                for (int i = 0; i < sum.size(); i++) {
                    Optional<Double> more = scores.get(i);
                    sum.set(i, sum.get(i).flatMap(so -> more.map(m -> so + factor * m)));
                }
            }
            return sum;
        });
    }

    private interface OfShot {
        Optional<Double> score(Shot shot);
    }

    private static Scorer each(OfShot one) {
        return (session, shots) -> shots.stream().map(one::score).toList();
    }

    private static Optional<Double> value(Shot shot, Metric metric) {
        return shot.has(metric) ? Optional.of(shot.value(metric)) : Optional.empty();
    }

    private static Optional<double[]> landing(Shot shot) {
        return shot.has(Metric.CARRY) && shot.has(Metric.SIDE)
                ? Optional.of(new double[] {shot.value(Metric.CARRY), shot.value(Metric.SIDE)})
                : Optional.empty();
    }

    private static Optional<double[]> rest(SessionFlights flights, Shot shot) {
        Optional<double[]> landing = landing(shot);
        if (landing.isEmpty()) {
            return Optional.empty();
        }
        Optional<RollOut> run = flights.fly(shot).flatMap(Flight::rollOut).filter(r -> r.atRest() && r.restKnown());
        return run.map(r -> new double[] {
            landing.get()[0]
                    + r.rest().downrange().meters()
                    - r.landing().downrange().meters(),
            landing.get()[1] + r.rest().side().meters() - r.landing().side().meters()
        });
    }

    /**
     * The numbers of one club.
     *
     * @param session the session, for its air
     * @param shots used shots of one club
     * @return a number for each shot that has what is needed, in order
     */
    double[] scores(Session session, List<Shot> shots) {
        return scorer.score(session, shots).stream()
                .flatMap(Optional::stream)
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    /**
     * What is wanted, in words.
     *
     * @return such as {@code carry}
     */
    public String words() {
        return words;
    }

    /**
     * The unit of the numbers.
     *
     * @return metres, or a pure number
     */
    public Unit unit() {
        return unit;
    }

    /**
     * Whether the smallest mean is the best.
     *
     * @return true for distances from something and for strokes
     */
    public boolean smallestIsBest() {
        return smallest;
    }

    /**
     * Whether each shot counts 0 or 1, so that the mean is a share of the balls.
     *
     * @return true for holding a green
     */
    public boolean shares() {
        return shares;
    }

    /** Whether the numbers of a club hang together by the middle of its own shots, all or as a part of a mixture. */
    boolean ofSpread() {
        return words.contains(FROM_THE_MIDDLE);
    }

    @Override
    public String toString() {
        return words;
    }
}
