package dev.teeward.fitting.summary;

import dev.teeward.fitting.internal.Data;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.fitting.internal.TailDraws;
import dev.teeward.fitting.internal.WilsonInterval;
import dev.teeward.flight.Flight;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * The probability that the next ball lands on a target region <em>and</em> comes to rest there, from where the shots so far
 * landed and where they came to rest, as the ground model or a measurement says.
 *
 * <p>{@link HoldProbability} of the landing points says how many balls land there, of the resting points how many rest there;
 * a ball that lands short and runs on is only in the second. Here both must hold. Landing points are one bivariate normal
 * sample, as there; the roll (rest less landing) is a linear regression on the landing point with normal errors. The estimate
 * is the share of 9,999 seeded draws: the landing point from its predictive bivariate t with n - 2 degrees of freedom and scale
 * (n + 1) (n - 1) / (n (n - 2)) S, then the roll from its predictive given that landing u standard deviations from the mean, a t
 * with n - 2 - q degrees of freedom and scale (1 + 1/n + u^2 / (n - 1)) E / (n - 2 - q), with E the residual products and q the
 * number of roll components, 2 or fewer, that the landing does not settle (reference priors; Geisser and Cornfield 1963, Zellner
 * 1971, from memory). So a ball that does not roll stays with the probability that it lands there. The standard error is at
 * most half a point. The interval is for the unknown true probability, found as in {@link HoldProbability} from posterior draws
 * of the same two steps corrected for median bias, each probability by the same 999 normal points, whose common error is taken
 * out, and widened where need be to hold the estimate.
 * Measured coverage at 95 %, 200 samples each (standard error 1.5 points), 7 shots with roll, truth 0.79: 96 %; 7 shots
 * without roll, truth 0.85: 93 %; other numbers of shots have not been measured. A level takes
 * at least 2 / (1 - level) - 1 draws, up to 9,999; beyond that there is the warning {@code beyond-resamples}.
 *
 * <p>Balls that all stop where they land have no roll and are as good as any. Where every ball rolls depends on how it lands, in
 * a straight line here: a region near a slope or an edge of the green, where rolls differ in kind, is beyond this; look at the
 * count. Shots whose landing points lie on a line give the count only, and the warning {@code no-spread}.
 *
 * <pre>{@code
 * FlightModel model = FlightModel.standard().withGround(Ground.of(TurfClass.FAIRWAY)); // where it stops, by the ground model
 * List<Flight> flights = launches.stream().map(model::fly).toList();
 * TargetRegion green = TargetRegion.circle(150.0, 0.0, 12.0);
 * StayProbability.Result r = StayProbability.withDefaults().estimate(green, flights);
 * r.probability().orElseThrow(); // lands and stays, with the interval of the true probability
 * r.share();                     // of the shots so far, with its Wilson interval
 * }</pre>
 *
 * <p>Immutable and thread-safe; the same seed gives the same bits.
 */
public final class StayProbability {
    private static final int DIMENSIONS = 4;
    /** Of these, the first are those of the landing point. */
    private static final int LANDING = 2;

    private static final int FEWEST = 7;
    private static final int PREDICTED = 9_999;
    private static final int POINTS = 999;
    private static final int MANY_POINTS = 19_999;
    private static final double FLAT = 1e-12;
    private static final StayProbability DEFAULTS = new StayProbability(0.95, 20_261_124L, 399);

    private final double level;
    private final long seed;
    private final int draws;

    private StayProbability(double level, long seed, int draws) {
        this.level = level;
        this.seed = seed;
        this.draws = draws;
    }

    /**
     * What was found.
     *
     * @param method how, in words
     * @param probability that the next ball lands and stays, with the interval of the true probability, or empty if the landing
     *     points lie on a line
     * @param landed how many of the shots landed in the region
     * @param rested how many came to rest in the region, wherever they landed
     * @param count how many did both
     * @param share the share of the shots that did both, with its Wilson interval
     * @param n the number of shots
     * @param warnings what to know before using this
     */
    public record Result(
            String method,
            Optional<Estimate> probability,
            int landed,
            int rested,
            int count,
            Estimate share,
            int n,
            List<Warning> warnings) {
        /**
         * Copies the warnings.
         *
         * @param method how, in words
         * @param probability that the next ball lands and stays, with the interval of the true probability, or empty if the
         *     landing points lie on a line
         * @param landed how many of the shots landed in the region
         * @param rested how many came to rest in the region, wherever they landed
         * @param count how many did both
         * @param share the share of the shots that did both, with its Wilson interval
         * @param n the number of shots
         * @param warnings what to know before using this
         */
        public Result {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * 95 %, 399 draws from a fixed seed.
     *
     * @return the default procedure
     */
    public static StayProbability withDefaults() {
        return DEFAULTS;
    }

    /**
     * With another level.
     *
     * @param newLevel the level, in (0, 1)
     * @return a changed copy
     * @throws IllegalArgumentException if the level is not in (0, 1)
     */
    public StayProbability withLevel(double newLevel) {
        return new StayProbability(Data.checkLevel(newLevel), seed, draws);
    }

    /**
     * With another seed for the draws.
     *
     * @param newSeed the seed
     * @return a changed copy
     */
    public StayProbability withSeed(long newSeed) {
        return new StayProbability(level, newSeed, draws);
    }

    /**
     * With another number of draws for the interval; a high level takes more, as documented above.
     *
     * @param count how many, at least 99
     * @return a changed copy
     * @throws IllegalArgumentException if there are fewer than 99
     */
    public StayProbability withDraws(int count) {
        if (count < 99) {
            throw new IllegalArgumentException("draws must be at least 99, but was " + count);
        }
        return new StayProbability(level, seed, count);
    }

    /**
     * Estimates from flights over a ground.
     *
     * @param region where to land and rest [m]
     * @param flights at least 7, of a model with a ground, each with a known rest
     * @return the probability and the counts
     * @throws IllegalArgumentException if there are fewer than 7 flights, or it is not known where one comes to rest
     */
    public Result estimate(TargetRegion region, List<Flight> flights) {
        double[][] points = new double[DIMENSIONS][flights.size()];
        for (int i = 0; i < flights.size(); i++) {
            Flight flight = flights.get(i);
            int number = i + 1;
            RollOut.Point rest = flight.rollOut()
                    .filter(run -> run.restKnown() && run.atRest())
                    .map(RollOut::rest)
                    .orElseThrow(() -> new IllegalArgumentException(
                            "flights must all come to rest where it is known, but flight " + number
                                    + " does not; give the flight model a ground, and see the warnings of the flight"));
            points[0][i] = flight.landing().downrange().meters();
            points[1][i] = flight.landing().side().meters();
            points[2][i] = rest.downrange().meters();
            points[3][i] = rest.side().meters();
        }
        return estimate(region, points[0], points[1], points[2], points[3]);
    }

    /**
     * Estimates.
     *
     * @param region where to land and rest, in the unit of the shots
     * @param carry where the balls land along the target line, at least 7 finite values
     * @param side where they land across it, right positive, one for each shot
     * @param restCarry where they come to rest along the target line, one for each shot
     * @param restSide where they come to rest across it, one for each shot
     * @return the probability and the counts
     * @throws IllegalArgumentException if there are fewer than 7 shots, the columns differ in length, or a value is not finite
     */
    public Result estimate(TargetRegion region, double[] carry, double[] side, double[] restCarry, double[] restSide) {
        int n = carry.length;
        double[][] given = {carry, side, restCarry, restSide};
        String[] names = {"carry", "side", "restCarry", "restSide"};
        for (int j = 0; j < DIMENSIONS; j++) {
            Data.checkSameLength(names[j], given[j], n);
            Data.check(names[j], given[j], FEWEST);
        }
        int landed = 0;
        int rested = 0;
        int count = 0;
        for (int i = 0; i < n; i++) {
            boolean lands = region.contains(carry[i], side[i]);
            boolean rests = region.contains(restCarry[i], restSide[i]);
            landed += lands ? 1 : 0;
            rested += rests ? 1 : 0;
            count += lands && rests ? 1 : 0;
        }
        Estimate share = WilsonInterval.share(count, n, level);
        List<Warning> warnings = new ArrayList<>();
        Normal fitted = Normal.of(given);
        if (!(fitted.root[0][0] > 0.0 && fitted.root[1][1] > 0.0)) {
            warnings.add(Warning.of(
                    "no-spread", "the landing points lie on a line or in a point, so only the count is given"));
            return new Result("count only", Optional.empty(), landed, rested, count, share, n, warnings);
        }
        TailDraws tail = TailDraws.of(draws, level);
        if (tail.beyond()) {
            warnings.add(Warning.of(
                    "beyond-resamples", "a limit lies at or beyond the most extreme draw; ask for more draws"));
        }
        SplittableRandom random = new SplittableRandom(seed);
        double predicted = predicted(region, fitted, n, random);
        String roll = fitted.free() > 0
                ? ", of roll given landing with " + (n - 2 - fitted.free()) + ", "
                : ", roll settled by landing, ";
        return new Result(
                "predictive t of landing with " + (n - 2) + " degrees of freedom" + roll + PREDICTED
                        + " draws; interval from " + tail.draws() + " posterior draws, corrected for bias, seed "
                        + seed,
                Optional.of(
                        Estimate.of(predicted, interval(region, fitted, n, predicted, random, tail), RatioUnit.ONE)),
                landed,
                rested,
                count,
                share,
                n,
                warnings);
    }

    /** Landing first, then roll given landing, each by the predictive of its own regression. */
    private static double predicted(TargetRegion region, Normal fitted, int n, SplittableRandom random) {
        int df = n - LANDING - fitted.free();
        int held = 0;
        for (int r = 0; r < PREDICTED; r++) {
            double[] z = gaussians(random);
            double stretch = Math.sqrt((n + 1.0) / n * (n - 1.0) / chiSquare(random, n - LANDING));
            z[0] *= stretch;
            z[1] *= stretch;
            double leverage = 1.0 + 1.0 / n + (z[0] * z[0] + z[1] * z[1]) / (n - 1.0);
            double error = Math.sqrt(leverage * (n - 1.0) / chiSquare(random, df));
            z[2] *= error;
            z[3] *= error;
            held += fitted.stays(region, z) ? 1 : 0;
        }
        return held / (double) PREDICTED;
    }

    private Interval interval(
            TargetRegion region, Normal fitted, int n, double estimate, SplittableRandom random, TailDraws tail) {
        double[][] points = new double[POINTS][];
        Arrays.setAll(points, i -> gaussians(random));
        double[] posterior = new double[tail.draws()];
        double[] sampled = new double[tail.draws()];
        double f = Math.sqrt(n - 1.0);
        for (int d = 0; d < tail.draws(); d++) {
            double[][] a = bartlett(random, DIMENSIONS, n - 1);
            double[] z = gaussians(random);
            for (int j = 0; j < DIMENSIONS; j++) {
                z[j] /= Math.sqrt(n);
            }
            // With Bartlett's factor A: a sampled covariance is L A A' L' / (n - 1).
            Normal drawn = fitted.turned(posterior(fitted, n, random), f);
            posterior[d] = logit(drawn.moved(drawn, z).probability(region, points));
            sampled[d] = logit(fitted.turned(a, 1.0 / f).moved(fitted, z).probability(region, points));
        }
        Arrays.sort(posterior);
        Arrays.sort(sampled);
        // The few points err alike for every draw: by how much is seen where many are taken.
        double[][] many = new double[MANY_POINTS][];
        Arrays.setAll(many, i -> gaussians(random));
        double shift = logit(fitted.probability(region, many))
                + logit(fitted.probability(region, points))
                - sampled[tail.draws() / 2]
                - posterior[tail.draws() / 2];
        double lower = expit(posterior[tail.rank() - 1] + shift);
        double upper = expit(posterior[tail.draws() - tail.rank()] + shift);
        return Interval.of(Math.min(estimate, lower), Math.max(estimate, upper), level);
    }

    /**
     * What the root is multiplied by, less sqrt(n - 1), for a posterior draw. With Bartlett's factors A of the landing, n - 1
     * degrees of freedom, and B of the residual roll, n - 3: the landing's root becomes L A^-T, the residual roll's T B^-T, and
     * the slopes on the standardized landing C + T B^-T Z, all normal.
     */
    private static double[][] posterior(Normal fitted, int n, SplittableRandom random) {
        double[][] landing = inverseTransposed(bartlett(random, LANDING, n - 1));
        int[] free = fitted.freeRows();
        double[][] roll = inverseTransposed(bartlett(random, free.length, n - 1 - LANDING));
        double[][] by = new double[DIMENSIONS][DIMENSIONS];
        for (int i = 0; i < LANDING; i++) {
            by[i][0] = landing[i][0];
            by[i][1] = landing[i][1];
        }
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                by[free[i]][free[j]] = roll[i][j];
            }
        }
        for (int j = 0; j < free.length; j++) {
            double first = random.nextGaussian();
            double second = random.nextGaussian();
            for (int i = 0; i < free.length; i++) {
                for (int k = 0; k < LANDING; k++) {
                    by[free[i]][k] += roll[i][j] * (first * landing[0][k] + second * landing[1][k]);
                }
            }
        }
        return by;
    }

    /** The lower triangle A of which A A' is Wishart with the identity for scale. */
    private static double[][] bartlett(SplittableRandom random, int size, int df) {
        double[][] a = new double[size][size];
        for (int i = 0; i < size; i++) {
            a[i][i] = Math.sqrt(chiSquare(random, df - i));
            for (int j = 0; j < i; j++) {
                a[i][j] = random.nextGaussian();
            }
        }
        return a;
    }

    /** Of a lower triangle. */
    private static double[][] inverseTransposed(double[][] a) {
        int size = a.length;
        double[][] inverse = new double[size][size];
        for (int j = 0; j < size; j++) {
            inverse[j][j] = 1.0 / a[j][j];
            for (int i = j + 1; i < size; i++) {
                double sum = 0.0;
                for (int k = j; k < i; k++) {
                    sum += a[i][k] * inverse[j][k];
                }
                inverse[j][i] = -sum / a[i][i];
            }
        }
        return inverse;
    }

    private static double[] gaussians(SplittableRandom random) {
        double[] z = new double[DIMENSIONS];
        Arrays.setAll(z, j -> random.nextGaussian());
        return z;
    }

    private static double chiSquare(SplittableRandom random, int df) {
        double sum = 0.0;
        for (int i = 0; i < df; i++) {
            double z = random.nextGaussian();
            sum += z * z;
        }
        return sum;
    }

    private static double logit(double p) {
        double least = 0.5 / POINTS;
        double inside = Math.max(least, Math.min(1.0 - least, p));
        return Math.log(inside / (1.0 - inside));
    }

    private static double expit(double l) {
        return 1.0 / (1.0 + Math.exp(-l));
    }

    /** Landing point and roll by their mean and a root of their covariance. Its arrays are never changed. */
    private static final class Normal {
        private final double[] mean;
        private final double[][] root;

        private Normal(double[] mean, double[][] root) {
            this.mean = mean;
            this.root = root;
        }

        /** From landing and resting points; the root is a lower triangle with zeros where there is no spread of its own. */
        static Normal of(double[][] given) {
            int n = given[0].length;
            double[][] columns = {given[0], given[1], new double[n], new double[n]};
            for (int j = 0; j < LANDING; j++) {
                Sample roll = Sample.differences("rest", given[LANDING + j], "landing", given[j]);
                columns[LANDING + j] = roll.toArray();
                if (roll.constant()) {
                    Arrays.fill(columns[LANDING + j], roll.mean());
                }
            }
            double[] mean = new double[DIMENSIONS];
            Arrays.setAll(mean, j -> Arrays.stream(columns[j]).average().orElseThrow());
            double[][] root = new double[DIMENSIONS][DIMENSIONS];
            for (int i = 0; i < DIMENSIONS; i++) {
                double variance = covariance(columns[i], columns[i], mean[i], mean[i]);
                for (int j = 0; j <= i; j++) {
                    double left = covariance(columns[i], columns[j], mean[i], mean[j]);
                    for (int k = 0; k < j; k++) {
                        left -= root[i][k] * root[j][k];
                    }
                    if (i == j) {
                        root[i][i] = left > FLAT * variance ? Math.sqrt(left) : 0.0;
                    } else {
                        root[i][j] = root[j][j] > 0.0 ? left / root[j][j] : 0.0;
                    }
                }
            }
            return new Normal(mean, root);
        }

        private static double covariance(double[] x, double[] y, double meanX, double meanY) {
            double sum = 0.0;
            for (int i = 0; i < x.length; i++) {
                sum += (x[i] - meanX) * (y[i] - meanY);
            }
            return sum / (x.length - 1.0);
        }

        /** The components of the roll with spread of their own. */
        int[] freeRows() {
            return IntStream.range(LANDING, DIMENSIONS)
                    .filter(j -> root[j][j] > 0.0)
                    .toArray();
        }

        int free() {
            return freeRows().length;
        }

        /** The root times a matrix times a number. */
        Normal turned(double[][] by, double factor) {
            double[][] product = new double[DIMENSIONS][DIMENSIONS];
            for (int i = 0; i < DIMENSIONS; i++) {
                for (int j = 0; j < DIMENSIONS; j++) {
                    for (int k = 0; k < DIMENSIONS; k++) {
                        product[i][j] += factor * root[i][k] * by[k][j];
                    }
                }
            }
            return new Normal(mean, product);
        }

        /** The mean moved by the root of a distribution times z. */
        Normal moved(Normal by, double[] z) {
            return new Normal(by.point(mean, z), root);
        }

        private double[] point(double[] from, double[] z) {
            double[] point = from.clone();
            for (int i = 0; i < DIMENSIONS; i++) {
                for (int j = 0; j < DIMENSIONS; j++) {
                    point[i] += root[i][j] * z[j];
                }
            }
            return point;
        }

        boolean stays(TargetRegion region, double[] z) {
            double[] at = point(mean, z);
            return region.contains(at[0], at[1]) && region.contains(at[0] + at[2], at[1] + at[3]);
        }

        double probability(TargetRegion region, double[][] points) {
            int held = 0;
            for (double[] z : points) {
                held += stays(region, z) ? 1 : 0;
            }
            return held / (double) points.length;
        }
    }
}
