package dev.teeward.fitting.complete;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds out whether the clubs of a session met the same air, so that a difference between their flights is not taken for one
 * between the clubs.
 *
 * <p>Only a session that was {@linkplain Session#combine combined} has several airs. For each club the density of the air and the
 * wind are averaged over its used shots; two clubs met different air if the mean densities are more than 1 % apart, or the mean winds
 * more than 0.25 m/s (0.56 mph). Clubs that were hit equally often in each air have equal means, however different the airs. At sea
 * level 1 % is some 100 m (330 ft) of elevation or 3 K.
 *
 * <p>Each of the two moves a carry by something less than a yard, which is the judgement, without a source, that they rest on. By
 * {@link dev.teeward.flight.FlightModel#standard()} at sea level, ball speed, launch angle and spin rate of common practice:
 *
 * <table>
 * <caption>What the limits move the carry by</caption>
 * <tr><th>launch</th><th>carry</th><th>air 1 % thinner</th><th>0.25 m/s from ahead</th><th>from behind</th></tr>
 * <tr><td>driver: 150 mph, 12 deg, 2,700 rpm</td><td>234 yd</td><td>+0.8 yd</td><td>-0.8 yd</td><td>+0.8 yd</td></tr>
 * <tr><td>6-iron: 127 mph, 14 deg, 6,200 rpm</td><td>185 yd</td><td>+0.7 yd</td><td>-0.8 yd</td><td>+0.8 yd</td></tr>
 * <tr><td>wedge: 100 mph, 25 deg, 9,000 rpm</td><td>128 yd</td><td>+0.4 yd</td><td>-0.7 yd</td><td>+0.6 yd</td></tr>
 * </table>
 *
 * <pre>{@code
 * Session all = Session.combine(List.of(atTheSea, inTheMountains));
 * UnevenAir.warning(all, List.of("Alder", "Rowan"));    // airs-differ, if Alder was hit mostly by the sea
 * SameAir.standardAt(feet(0.0)).bring(all).session();   // the mend
 * }</pre>
 *
 * <p>Thread-safe: it has no state.
 */
public final class UnevenAir {
    /** The code of the warning. */
    public static final String CODE = "airs-differ";

    private static final double DENSITY_SHARE = 0.01;
    private static final double WIND_METERS_PER_SECOND = 0.25;

    /** The mean air of a club: density [kg/m3], wind towards target and right [m/s]. */
    private record MeanAir(String club, double density, double along, double right) {
        private double apart(MeanAir other) {
            return 2.0 * Math.abs(density - other.density) / (density + other.density);
        }

        private double winds(MeanAir other) {
            return Math.hypot(along - other.along, right - other.right);
        }
    }

    private UnevenAir() {}

    /**
     * Whether air moves a metric: {@link SameAir#metrics()} and the total.
     *
     * @param metric which
     * @return true if a difference of it is partly the air's where airs differ
     */
    public static boolean concerns(Metric metric) {
        return metric == Metric.TOTAL || SameAir.metrics().contains(metric);
    }

    /**
     * What to tell of clubs that are compared.
     *
     * @param session the session
     * @param clubs the clubs that are looked at; those without a used shot do not count
     * @return {@code airs-differ} with the two clubs whose airs are farthest apart, or empty if all met the same air
     * @throws IllegalArgumentException as {@link SessionAir#of(Session)} does
     */
    public static Optional<Warning> warning(Session session, Collection<String> clubs) {
        if (session.parts().size() < 2) {
            return Optional.empty();
        }
        List<SessionAir> airs =
                AimLine.parts(session).stream().map(SessionAir::of).toList();
        List<MeanAir> means = new ArrayList<>();
        for (String club : clubs) {
            List<SessionAir> met = session.shots().club(club).used().stream()
                    .map(Shot::part)
                    .filter(part -> part.isPresent() && part.getAsInt() < airs.size())
                    .map(part -> airs.get(part.getAsInt()))
                    .toList();
            if (!met.isEmpty()) {
                means.add(mean(club, met));
            }
        }
        MeanAir[] worst = {};
        double most = 1.0;
        for (MeanAir one : means) {
            for (MeanAir other : means) {
                double uneven = Math.max(one.apart(other) / DENSITY_SHARE, one.winds(other) / WIND_METERS_PER_SECOND);
                if (uneven > most) {
                    most = uneven;
                    worst = new MeanAir[] {one, other};
                }
            }
        }
        return worst.length == 0 ? Optional.empty() : Optional.of(told(worst[0], worst[1]));
    }

    private static MeanAir mean(String club, List<SessionAir> met) {
        double density = 0.0;
        double along = 0.0;
        double right = 0.0;
        for (SessionAir air : met) {
            density += air.atmosphere().density() / met.size();
            along += air.wind().alongTarget(0.0) / met.size();
            right += air.wind().towardsRight(0.0) / met.size();
        }
        return new MeanAir(club, density, along, right);
    }

    private static Warning told(MeanAir one, MeanAir other) {
        boolean densities = one.apart(other) > DENSITY_SHARE;
        boolean winds = one.winds(other) > WIND_METERS_PER_SECOND;
        boolean thinner = one.density() < other.density();
        MeanAir thin = thinner ? one : other;
        MeanAir thick = thinner ? other : one;
        String density = String.format(
                Locale.ROOT, "%s met air %.1f %% thinner than %s", thin.club(), 100.0 * one.apart(other), thick.club());
        String wind = String.format(
                Locale.ROOT,
                "the mean winds of %s and %s are %.2f m/s (%.1f mph) apart",
                one.club(),
                other.club(),
                one.winds(other),
                one.winds(other) / 0.44704);
        return Warning.of(
                CODE,
                "the clubs were not hit in the same air: "
                        + (densities ? density : "")
                        + (densities && winds ? ", and " : "")
                        + (winds ? wind : "")
                        + ", so a difference of flight is partly the air's; bring all shots into one air first");
    }
}
