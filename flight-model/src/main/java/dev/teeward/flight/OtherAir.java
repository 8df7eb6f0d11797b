package dev.teeward.flight;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * How far a shot would carry in other air, with an interval.
 *
 * <p>The launch is flown here and there; the factor is the one carry over the other. To bring over a <em>measured</em> carry,
 * multiply it by the factor ({@link Result#carry}). A factor and not a difference: a ball that flies shorter than the model's also gains
 * less. Over 12 typical shots with drag and lift off by 5 to 10 percent either way, the factor brings carries from sea level to 1600 m with
 * an error of 0.44 percent RMS, the difference with 0.49 (this class's test); so neither is bad.
 *
 * <p><b>Interval.</b> Seeded Monte Carlo: in each draw the launch has errors of the {@link LaunchTolerance}, and the ball's drag and lift
 * are multiplied by a normal number about 1 with a standard deviation of 0.05 (common practice, no source; balls on the market differ by some 18 m in
 * carry at equal launch, Lyu and others 2018), the same in both airs. The interval is the central one of the draws. It holds what is not known
 * of launch and ball, not the error of the air that was given.
 *
 * <p><b>Not modelled:</b> that a cold ball is slower off the club, that shafts, grips and people are not the same on a cold day, and that air differs
 * along the flight.
 *
 * <pre>{@code
 * FlightModel denver = FlightModel.standard().withAir(Atmosphere.standardAt(feet(5_280.0)));
 * OtherAir.Result result = OtherAir.withDefaults().fly(FlightModel.standard(), denver, launch);
 * result.carry(yards(155.0));   // where 155 yd at sea level go to, with interval
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is; the same seed gives the same bits.
 */
public final class OtherAir {
    private static final OtherAir DEFAULTS = new OtherAir(LaunchTolerance.typical(), 0.05, 0.05, 400, 0.95, 1L);

    private final LaunchTolerance tolerance;
    private final double dragSpread;
    private final double liftSpread;
    private final int draws;
    private final double level;
    private final long seed;

    private OtherAir(
            LaunchTolerance tolerance, double dragSpread, double liftSpread, int draws, double level, long seed) {
        this.tolerance = Objects.requireNonNull(tolerance, "tolerance");
        this.dragSpread = dragSpread;
        this.liftSpread = liftSpread;
        this.draws = draws;
        this.level = level;
        this.seed = seed;
        if (!(dragSpread >= 0.0 && dragSpread <= 0.2 && liftSpread >= 0.0 && liftSpread <= 0.2)) {
            throw new IllegalArgumentException(
                    "dragSpread and liftSpread must be in [0, 0.2], but were " + dragSpread + " and " + liftSpread);
        }
        if (!(draws >= 20 && draws <= 1_000_000)) {
            throw new IllegalArgumentException("draws must be in [20, 1000000], but was " + draws);
        }
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + level);
        }
    }

    /**
     * 400 draws, level 0.95, seed 1, typical tolerances, balls that differ by 5 percent in drag and in lift.
     *
     * @return the procedure
     */
    public static OtherAir withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy with another device.
     *
     * @param value how well it measures
     * @return the copy
     */
    public OtherAir withTolerance(LaunchTolerance value) {
        return new OtherAir(value, dragSpread, liftSpread, draws, level, seed);
    }

    /**
     * The device.
     *
     * @return how well it measures
     */
    public LaunchTolerance tolerance() {
        return tolerance;
    }

    /**
     * A copy for a ball that is known better or worse.
     *
     * @param drag the standard deviation of its drag over the model's, in [0, 0.2]; 0 is known
     * @param lift the same of its lift
     * @return the copy
     * @throws IllegalArgumentException if one lies outside
     */
    public OtherAir withBallSpread(double drag, double lift) {
        return new OtherAir(tolerance, drag, lift, draws, level, seed);
    }

    /**
     * A copy with another number of draws.
     *
     * @param value in [20, 1000000]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public OtherAir withDraws(int value) {
        return new OtherAir(tolerance, dragSpread, liftSpread, value, level, seed);
    }

    /**
     * A copy at another level.
     *
     * @param value the level of the interval, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public OtherAir withLevel(double value) {
        return new OtherAir(tolerance, dragSpread, liftSpread, draws, value, seed);
    }

    /**
     * A copy with other chance.
     *
     * @param value the seed
     * @return the copy
     */
    public OtherAir withSeed(long value) {
        return new OtherAir(tolerance, dragSpread, liftSpread, draws, level, value);
    }

    /**
     * Flies a launch here and there.
     *
     * @param here the model with the air, wind and ground in which it was measured
     * @param there the model with those in which it is wanted; the same ball, or the factor holds the ball's change too
     * @param launch the launch as measured
     * @return both flights, the factor and its interval
     * @throws FlightException if the launch itself does not land in one of the two, as {@link FlightModel#fly} says
     */
    public Result fly(FlightModel here, FlightModel there, LaunchConditions launch) {
        Flight first = here.fly(launch);
        Flight second = there.fly(launch);
        SplittableRandom random = new SplittableRandom(seed);
        double[] factors = new double[draws];
        double[] carries = new double[draws];
        int landed = 0;
        int lost = 0;
        for (int i = 0; i < draws; i++) {
            SplittableRandom own = random.split();
            LaunchConditions perhaps = tolerance.draw(launch, own);
            double drag = Math.max(0.1, 1.0 + dragSpread * own.nextGaussian());
            double lift = Math.max(0.1, 1.0 + liftSpread * own.nextGaussian());
            try {
                double a = spread(here, drag, lift).fly(perhaps).carry().meters();
                double b = spread(there, drag, lift).fly(perhaps).carry().meters();
                if (a <= 0.0) {
                    lost++;
                } else {
                    factors[landed] = b / a;
                    carries[landed] = b;
                    landed++;
                }
            } catch (FlightException e) {
                lost++;
            }
        }
        return new Result(first, second, interval(factors, landed, level), interval(carries, landed, level), lost);
    }

    private static FlightModel spread(FlightModel model, double drag, double lift) {
        AerodynamicModel ball = model.ball().aerodynamics();
        return model.withBall(model.ball().withAerodynamics(new BallSpread(ball, drag, lift)));
    }

    /** The central interval of draws, by the type 7 quantile of R (the default of most programs). */
    static Interval interval(double[] draws, int count, double level) {
        if (count < 20) {
            return Interval.unbounded(level);
        }
        double[] sorted = Arrays.copyOf(draws, count);
        Arrays.sort(sorted);
        return Interval.of(quantile(sorted, (1.0 - level) / 2.0), quantile(sorted, (1.0 + level) / 2.0), level);
    }

    private static double quantile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int low = (int) place;
        int high = Math.min(low + 1, sorted.length - 1);
        return sorted[low] + (place - low) * (sorted[high] - sorted[low]);
    }

    /**
     * A launch in two airs.
     *
     * <p>Immutable and thread-safe.
     */
    public static final class Result {
        private final Flight here;
        private final Flight there;
        private final Interval factors;
        private final Interval carries;
        private final int lost;

        Result(Flight here, Flight there, Interval factors, Interval carries, int lost) {
            this.here = here;
            this.there = there;
            this.factors = factors;
            this.carries = carries;
            this.lost = lost;
        }

        /**
         * The flight in the air of the measurement.
         *
         * @return the flight of the launch as measured
         */
        public Flight here() {
            return here;
        }

        /**
         * The flight in the other air.
         *
         * @return the flight of the launch as measured
         */
        public Flight there() {
            return there;
        }

        /**
         * The carry in the other air over that in the first.
         *
         * @return the factor with its interval; 1 without bounds if the ball does not carry at all
         */
        public Estimate factor() {
            double a = here.carry().meters();
            return a > 0.0
                    ? Estimate.of(there.carry().meters() / a, factors, RatioUnit.ONE)
                    : Estimate.of(1.0, Interval.unbounded(factors.level()), RatioUnit.ONE);
        }

        /**
         * The computed carry in the other air, for a shot whose carry was not measured.
         *
         * @return the carry with an interval that holds all that is not known of launch and ball
         */
        public Estimate carry() {
            return Estimate.of(there.carry().meters(), carries, LengthUnit.METER);
        }

        /**
         * A measured carry brought to the other air: multiplied by the factor.
         *
         * @param measured the carry that was measured in the first air
         * @return the carry with the interval of the factor; the error of the measurement itself is not in it
         */
        public Estimate carry(Length measured) {
            Estimate factor = factor();
            double meters = measured.meters();
            Interval f = factor.interval();
            Interval carried = f.equals(Interval.unbounded(f.level()))
                    ? f
                    : Interval.of(f.lower() * meters, f.upper() * meters, f.level());
            return Estimate.of(factor.value() * meters, carried, LengthUnit.METER);
        }

        /**
         * What to know: {@code draws-lost} if some draws did not land, and the warnings of the flight in the other air.
         *
         * @return the warnings, unmodifiable
         */
        public List<Warning> warnings() {
            if (lost == 0) {
                return there.warnings();
            }
            List<Warning> warnings = new ArrayList<>(there.warnings());
            warnings.add(Warning.of(
                    "draws-lost",
                    lost + " draws did not land and are not in the interval, which is too narrow for it"));
            return List.copyOf(warnings);
        }

        @Override
        public String toString() {
            return "factor " + factor() + ", carry " + carry();
        }
    }
}
