package dev.teeward.flight.study;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.CoefficientSpread;
import dev.teeward.flight.batch.FlightBatch;
import dev.teeward.flight.batch.LaunchTable;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfSpread;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.Impact;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.RigidImpact;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * From how well the delivery of a club, its head, the ball and the turf are known to how well launch, flight and rest are.
 *
 * <p>Each draw is a delivery, a head, a ball and a turf of its own, struck by the impact model and flown to its rest (JCGM
 * 101:2008, propagation of distributions by Monte Carlo). What is not stated is taken as known: without {@link #withDelivery} the
 * delivery, without {@link #withHeadSpread} the head, without {@link #withBallSpread} the ball, without {@link #withTurfSpread}
 * the turf; of the last the result warns ({@code turf-taken-as-known}), because total and run depend on it most. Air and wind are
 * those of the model, and what the models themselves get wrong is in no interval.
 *
 * <p>An estimate's value is the median of the draws, its interval holds the middle share of them, the level. With n draws of a
 * normal number the standard error of an end of a 95 percent interval is {@code 2.67/sqrt(n)} standard deviations, 6 percent of
 * one with the 2,000 draws of the defaults. A total is told of the balls that came to a known rest; how many did not is told too.
 *
 * <pre>{@code
 * DeliveryPropagationResult result = DeliveryPropagation.withDefaults()
 *     .withDelivery(DeliveryTolerance.typical()).withTurfSpread(TurfSpread.typical())
 *     .propagate(FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY)), TypicalHead.iron(6), delivery);
 * result.estimate(FlightOutput.TOTAL);          // [m]
 * result.estimate(ImpactQuantity.SPIN_RATE);    // [rpm]
 * }</pre>
 *
 * <p>Immutable and thread-safe, if the models are. The same seed gives the same result for any number of threads.
 */
public final class DeliveryPropagation {
    private static final int FEWEST_DRAWS = 100;
    private static final int MOST_DRAWS = 100_000;
    private static final DeliveryPropagation DEFAULTS = new DeliveryPropagation(new Known(), 2_000, 0.95, 1L, 1);

    /** What was stated of how well things are known; empty where a thing is taken as known. */
    private record Known(
            Optional<ImpactModel> impact,
            DeliveryTolerance delivery,
            Optional<HeadSpread> head,
            Optional<CoefficientSpread> ball,
            Optional<TurfSpread> turf) {
        Known() {
            this(Optional.empty(), DeliveryTolerance.none(), Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    private final Known known;
    private final int draws;
    private final double level;
    private final long seed;
    private final int threads;

    private DeliveryPropagation(Known known, int draws, double level, long seed, int threads) {
        this.known = known;
        this.draws = draws;
        this.level = level;
        this.seed = seed;
        this.threads = threads;
    }

    /**
     * Everything known exactly, {@link RigidImpact} on the ball that flies, 2,000 draws, level 0.95, seed 1, one thread.
     *
     * @return the procedure
     */
    public static DeliveryPropagation withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy with another impact model.
     *
     * @param value the model; it must strike the ball of the flight model
     * @return the copy
     */
    public DeliveryPropagation withImpact(ImpactModel value) {
        return with(new Known(Optional.of(value), known.delivery, known.head, known.ball, known.turf));
    }

    /**
     * A copy that knows the delivery only so well.
     *
     * @param value how well
     * @return the copy
     */
    public DeliveryPropagation withDelivery(DeliveryTolerance value) {
        Objects.requireNonNull(value, "value");
        return with(new Known(known.impact, value, known.head, known.ball, known.turf));
    }

    /**
     * A copy that knows the coefficients of the head only so well.
     *
     * @param value how well
     * @return the copy
     */
    public DeliveryPropagation withHeadSpread(HeadSpread value) {
        return with(new Known(known.impact, known.delivery, Optional.of(value), known.ball, known.turf));
    }

    /**
     * A copy for a ball that is one of its kind.
     *
     * @param value how much balls differ, as {@link dev.teeward.flight.aero.AerodynamicModel#spread()} states it
     * @return the copy
     */
    public DeliveryPropagation withBallSpread(CoefficientSpread value) {
        return with(new Known(known.impact, known.delivery, known.head, Optional.of(value), known.turf));
    }

    /**
     * A copy that knows the turf of the flight model's ground only so well.
     *
     * @param value how well
     * @return the copy
     */
    public DeliveryPropagation withTurfSpread(TurfSpread value) {
        return with(new Known(known.impact, known.delivery, known.head, known.ball, Optional.of(value)));
    }

    private DeliveryPropagation with(Known value) {
        return new DeliveryPropagation(value, draws, level, seed, threads);
    }

    /**
     * A copy with another number of draws.
     *
     * @param value how many, in [100, 100000]
     * @return the copy
     * @throws IllegalArgumentException if the number lies outside
     */
    public DeliveryPropagation withDraws(int value) {
        if (value < FEWEST_DRAWS || value > MOST_DRAWS) {
            throw new IllegalArgumentException(
                    "draws must be in [" + FEWEST_DRAWS + ", " + MOST_DRAWS + "], but was " + value);
        }
        return new DeliveryPropagation(known, value, level, seed, threads);
    }

    /**
     * A copy with another level.
     *
     * @param value the share of the draws within an interval, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public DeliveryPropagation withLevel(double value) {
        if (!(value > 0.0 && value < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + value);
        }
        return new DeliveryPropagation(known, draws, value, seed, threads);
    }

    /**
     * A copy with another seed.
     *
     * @param value any number
     * @return the copy
     */
    public DeliveryPropagation withSeed(long value) {
        return new DeliveryPropagation(known, draws, level, value, threads);
    }

    /**
     * A copy that flies in several threads; the same result for any number.
     *
     * @param value how many, in [1, 1024]
     * @return the copy
     */
    public DeliveryPropagation withThreads(int value) {
        return new DeliveryPropagation(known, draws, level, seed, value);
    }

    /**
     * Strikes, flies and sums up.
     *
     * @param model ball, air, wind and place; its ground, if there is to be a total
     * @param head what arrives
     * @param delivery how it arrives
     * @return launch, flight and rest with their intervals
     * @throws IllegalArgumentException if the delivery itself gives no launch, or fewer than two draws fly
     * @throws dev.teeward.flight.FlightException if the launch itself has no flight
     */
    public DeliveryPropagationResult propagate(FlightModel model, ClubHead head, Delivery delivery) {
        ImpactModel striking =
                known.impact.orElseGet(() -> RigidImpact.standard().withBall(model.ball()));
        Impact impact = striking.strike(delivery, head);
        Flight middle = model.fly(impact.launch());
        SplittableRandom random = new SplittableRandom(seed);
        int[] places = known.delivery.errors().inputs().stream()
                .mapToInt(ImpactQuantity::index)
                .toArray();
        double[][] axes = known.delivery.errors().axes();
        boolean alike =
                known.ball.isEmpty() && (known.turf.isEmpty() || model.ground().isEmpty());
        List<FlightModel> models = new ArrayList<>(List.of(model));
        double[][] launches = new double[5][draws];
        int struck = 0;
        @Nullable String reason = null;
        for (int draw = 0; draw < draws; draw++) {
            double[] swing = ImpactEquations.numbers(delivery);
            for (double[] axis : axes) {
                double gauss = random.nextGaussian();
                for (int i = 0; i < places.length; i++) {
                    swing[places[i]] += gauss * axis[i];
                }
            }
            ClubHead club = known.head
                    .map(s -> s.at(head, random.nextGaussian(), random.nextGaussian(), random.nextGaussian()))
                    .orElse(head);
            FlightModel place = alike ? model : drawn(model, random);
            try {
                LaunchConditions launch =
                        striking.strike(ImpactEquations.delivery(swing), club).launch();
                double[] numbers = si(launch);
                for (int c = 0; c < numbers.length; c++) {
                    launches[c][struck] = numbers[c];
                }
            } catch (IllegalArgumentException e) {
                reason = Objects.requireNonNullElse(reason, String.valueOf(e.getMessage()));
                continue;
            }
            if (!alike) {
                models.add(place);
            }
            struck++;
        }
        if (struck < 2) {
            throw new IllegalArgumentException(
                    "fewer than two of " + draws + " draws of the delivery give a launch: " + reason);
        }
        LaunchTable table = table(launches, struck, alike);
        return new DeliveryPropagationResult(
                impact,
                middle,
                table,
                FlightBatch.of(models).withThreads(threads).fly(table),
                draws,
                level,
                model.ground().isPresent(),
                known.turf.isEmpty(),
                Optional.ofNullable(reason));
    }

    private FlightModel drawn(FlightModel model, SplittableRandom random) {
        FlightModel place = model;
        if (known.ball.isPresent()) {
            Ball ball = model.ball();
            place = place.withBall(
                    ball.withAerodynamics(known.ball.orElseThrow().draw(ball.aerodynamics(), random)));
        }
        if (known.turf.isPresent() && model.ground().isPresent()) {
            Ground ground = model.ground().orElseThrow();
            place = place.withGround(
                    ground.withTurf(known.turf.orElseThrow().at(ground.turf(), random.nextGaussian())));
        }
        return place;
    }

    /** Model 0 is the one in the middle; each draw after it has its own, unless all are alike. */
    private static LaunchTable table(double[][] launches, int rows, boolean alike) {
        return LaunchTable.builder()
                .ballSpeed(Arrays.copyOf(launches[0], rows))
                .launchAngle(Arrays.copyOf(launches[1], rows))
                .startDirection(Arrays.copyOf(launches[2], rows))
                .spinRate(Arrays.copyOf(launches[3], rows))
                .axisTilt(Arrays.copyOf(launches[4], rows))
                .model(alike ? new int[rows] : IntStream.rangeClosed(1, rows).toArray())
                .build();
    }

    private static double[] si(LaunchConditions launch) {
        return new double[] {
            launch.ballSpeed().metersPerSecond(),
            launch.launchAngle().radians(),
            launch.startDirection().radians(),
            launch.spinRate().radiansPerSecond(),
            launch.axisTilt().radians()
        };
    }

    @Override
    public String toString() {
        return draws + " draws with seed " + seed + ", delivery: " + known.delivery + ", head "
                + known.head.map(Object::toString).orElse("known") + ", ball "
                + known.ball.map(Object::toString).orElse("known") + ", turf "
                + known.turf.map(Object::toString).orElse("known");
    }
}
