package dev.teeward.flight.study;

import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Unit;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * How well a model agrees with observations of one number: bias, root mean square, and limits of agreement.
 *
 * <p>Of the differences, model less observation: {@code bias} their mean, with a t interval; {@code rms} the root of their mean
 * square; the limits of agreement {@code bias -+ 1.96 s}, which would hold 95 percent of normal differences if bias and s were
 * known, and hold 92 percent at n = 14, 82 percent at n = 4; each with the interval {@code -+ t s sqrt(3/n)} (Bland and Altman 1986, Lancet 327:307). The limits are wide guesses
 * below some 30 flights, which is what their intervals say.
 *
 * <pre>{@code
 * Agreement carry = result.agreement("typical", "all", FlightOutput.CARRY).orElseThrow();
 * carry.bias().convertTo(LengthUnit.YARD);
 * carry.upperLimit();          // empty with fewer than two differences
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Agreement {
    private static final double NORMAL = 1.96;

    private final int count;
    private final double bias;
    private final double rms;
    private final double worst;
    private final double deviation;
    private final OptionalDouble relativeRms;
    private final OptionalDouble relativeWorst;
    private final Unit unit;
    private final double level;

    private Agreement(double[] differences, double[] observed, Unit unit, double level) {
        count = differences.length;
        double sum = 0.0;
        double squares = 0.0;
        double most = 0.0;
        double shares = 0.0;
        double mostShare = 0.0;
        boolean positive = true;
        for (int i = 0; i < count; i++) {
            sum += differences[i];
            squares += differences[i] * differences[i];
            most = Math.max(most, Math.abs(differences[i]));
            positive &= observed[i] > 0.0;
            double share = differences[i] / observed[i];
            shares += share * share;
            mostShare = Math.max(mostShare, Math.abs(share));
        }
        bias = sum / count;
        rms = Math.sqrt(squares / count);
        worst = most;
        double about = 0.0;
        for (double d : differences) {
            about += (d - bias) * (d - bias);
        }
        deviation = count > 1 ? Math.sqrt(about / (count - 1)) : 0.0;
        relativeRms = positive ? OptionalDouble.of(Math.sqrt(shares / count)) : OptionalDouble.empty();
        relativeWorst = positive ? OptionalDouble.of(mostShare) : OptionalDouble.empty();
        this.unit = unit;
        this.level = level;
    }

    /** Of differences and the values observed, in SI. */
    static Agreement of(double[] differences, double[] observed, Unit unit, double level) {
        return new Agreement(differences, observed, unit, level);
    }

    /**
     * How many flights.
     *
     * @return the count, at least 1
     */
    public int count() {
        return count;
    }

    /**
     * The mean of model less observation.
     *
     * @return the mean with its t interval, unbounded for a single flight; in the SI unit
     */
    public Estimate bias() {
        return around(bias, deviation / Math.sqrt(count));
    }

    /**
     * The root of the mean square of model less observation.
     *
     * @return the root mean square, in the SI unit
     */
    public double rms() {
        return rms;
    }

    /**
     * The largest difference in size.
     *
     * @return the size, in the SI unit
     */
    public double worst() {
        return worst;
    }

    /**
     * The root mean square of the differences over what was observed.
     *
     * @return the share; empty unless every observation is positive
     */
    public OptionalDouble relativeRms() {
        return relativeRms;
    }

    /**
     * The largest difference in size over what was observed.
     *
     * @return the share; empty unless every observation is positive
     */
    public OptionalDouble relativeWorst() {
        return relativeWorst;
    }

    /**
     * The lower limit of agreement.
     *
     * @return the limit with its interval, in the SI unit; empty with fewer than two flights
     */
    public Optional<Estimate> lowerLimit() {
        return limit(-NORMAL);
    }

    /**
     * The upper limit of agreement.
     *
     * @return the limit with its interval, in the SI unit; empty with fewer than two flights
     */
    public Optional<Estimate> upperLimit() {
        return limit(NORMAL);
    }

    private Optional<Estimate> limit(double times) {
        return count < 2
                ? Optional.empty()
                : Optional.of(around(bias + times * deviation, deviation * Math.sqrt(3.0 / count)));
    }

    private Estimate around(double value, double error) {
        if (count < 2) {
            return Estimate.of(value, Interval.unbounded(level), unit);
        }
        double t = new TDistribution(count - 1.0, 1e-15).inverseCumulativeProbability(0.5 + level / 2.0);
        return Estimate.of(value, Interval.of(value - t * error, value + t * error, level), unit);
    }

    @Override
    public String toString() {
        return count + " flights, bias " + bias() + ", rms " + rms + " " + unit.symbol();
    }
}
