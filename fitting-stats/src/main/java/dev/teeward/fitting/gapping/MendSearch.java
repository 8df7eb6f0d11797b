package dev.teeward.fitting.gapping;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.NoncentralT;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.flight.Flight;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import java.util.List;
import java.util.Optional;

/**
 * The change of one club that moves its mean carry by a wanted amount, and its interval.
 *
 * <p>R(c) is the mean over the swings of carry with the change c less carry without; the change solves R(c) = wanted. Its
 * standard error is that of the gap and that of R, which are taken as independent, over the slope of R there (delta method),
 * with the degrees of freedom of the gap. A change of which not even the sign is known is none to offer, and limits end where
 * the search does.
 */
final class MendSearch {
    private static final double STEP_DEGREES = 0.5;
    private static final double LARGEST_DEGREES = 6.0;
    private static final double STEP_SHARE = 0.02;
    private static final double LARGEST_SHARE = 0.2;

    private final String club;
    private final ClubSwings swings;
    private final double[] now;

    MendSearch(String club, ClubSwings swings) {
        this.club = club;
        this.swings = swings;
        this.now = carries(swings.fly(delivery -> delivery).orElseThrow());
    }

    private static double[] carries(List<Flight> flights) {
        return flights.stream().mapToDouble(flight -> flight.carry().meters()).toArray();
    }

    private static Delivery changed(Mend.Means means, double by, Delivery delivery) {
        return switch (means) {
            case LOFT ->
                delivery.toBuilder()
                        .dynamicLoft(Angle.ofRadians(delivery.dynamicLoft().radians() + by))
                        .build();
            case CLUB_SPEED ->
                delivery.toBuilder()
                        .clubSpeed(Speed.ofMetersPerSecond(delivery.clubSpeed().metersPerSecond() + by))
                        .build();
        };
    }

    /** The differences that a change makes, swing by swing; empty where the models cannot tell. */
    private Optional<Sample> response(Mend.Means means, double by) {
        return swings.fly(delivery -> changed(means, by, delivery))
                .map(MendSearch::carries)
                .map(then -> Sample.differences("then", then, "now", now));
    }

    /**
     * The change, or nothing if none within reach does it or its interval holds 0.
     *
     * @param wanted what the mean carry is to change by [m]
     * @param gap the interval of the gap [m]
     * @param degreesOfFreedom those of the gap
     */
    Optional<Mend> find(Mend.Means means, double wanted, Interval gap, double degreesOfFreedom) {
        boolean loft = means == Mend.Means.LOFT;
        double step = loft ? Math.toRadians(STEP_DEGREES) : STEP_SHARE * swings.meanClubSpeed();
        double largest = loft ? Math.toRadians(LARGEST_DEGREES) : LARGEST_SHARE * swings.meanClubSpeed();
        double forward = mean(means, step);
        double back = mean(means, -step);
        if (!Double.isFinite(forward) || !Double.isFinite(back) || forward == back) {
            return Optional.empty();
        }
        // Carry may turn round, as with less and less loft; the nearest change is the one to make.
        double sign = Math.signum(wanted);
        double direction = sign * Math.signum(forward - back);
        double near = 0.0;
        double far = 0.0;
        double reached = 0.0;
        while (reached < Math.abs(wanted)) {
            near = far;
            far += direction * step;
            double next = sign * mean(means, far);
            if (!(next > reached) || Math.abs(far) > largest * (1.0 + 1e-9)) {
                return Optional.empty();
            }
            reached = next;
        }
        double change = near == far
                ? 0.0
                : NoncentralT.root(by -> mean(means, by) - wanted, Math.min(near, far), Math.max(near, far));
        Interval interval = interval(means, change, step, gap, degreesOfFreedom);
        if (interval.contains(0.0)) {
            return Optional.empty();
        }
        Interval cut = Interval.of(
                Math.min(change, Math.max(interval.lower(), -largest)),
                Math.max(change, Math.min(interval.upper(), largest)),
                interval.level());
        return Optional.of(new Mend(
                club,
                means,
                Estimate.of(change, cut, loft ? AngleUnit.RADIAN : SpeedUnit.METER_PER_SECOND),
                swings.size()));
    }

    private double mean(Mend.Means means, double by) {
        return response(means, by).map(Sample::mean).orElse(Double.NaN);
    }

    private Interval interval(Mend.Means means, double change, double step, Interval gap, double df) {
        double slope = (mean(means, change + 0.2 * step) - mean(means, change - 0.2 * step)) / (0.4 * step);
        if (!gap.bounded() || !(Math.abs(slope) > 0.0)) {
            return Interval.unbounded(gap.level());
        }
        double quantile = Distributions.tQuantile(0.5 + 0.5 * gap.level(), df);
        double error = gap.halfWidth() / quantile;
        double own = response(means, change)
                .map(sample -> sample.variance() / sample.size())
                .orElse(0.0);
        double reach = quantile * Math.sqrt(error * error + own) / Math.abs(slope);
        return Interval.of(change - reach, change + reach, gap.level());
    }
}
