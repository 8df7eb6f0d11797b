package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * An invented golfer whose truth is known, with the two invented 6-irons Alder and Rowan, twelve pairs in ABBA order unless
 * changed.
 *
 * <p>Carry = 150 m + 4.5 m for each m/s of club speed over 38 m/s + 0.8 m for each degree of attack above -4 deg + what the
 * strike does (sd 3 m) + what both shots of a pair share (sd 2 m) + what the club does. The golfer scatters by 0.4 m/s in club
 * speed, by 0.3 m/s more from pair to pair, and by 0.6 deg in attack angle.
 *
 * @param club how much farther Alder goes at the same swing [m]
 * @param swing how much faster Alder is swung [m/s]
 * @param drift of the carry over the session [m]
 * @param slowing of the club speed over the session [m/s]
 * @param mishit whether one shot of one club, by lot, is struck 20 mm off the toe and falls 25 m short
 * @param spread how much wider the carries of Alder scatter through the strike
 * @param misread sd of the error with which the club speed is read [m/s]
 * @param stated whether the session states that error
 * @param pairs how many pairs are hit
 */
record SimulatedGolfer(
        double club,
        double swing,
        double drift,
        double slowing,
        boolean mishit,
        double spread,
        double misread,
        boolean stated,
        int pairs) {
    static final int PAIRS = 12;
    static final double MARGIN = LengthUnit.YARD.toSi(5.0);
    static final double SPEED_MARGIN = SpeedUnit.MILE_PER_HOUR.toSi(1.0);
    static final double ATTACK_MARGIN = Math.toRadians(1.0);
    static final double SPEED_SD = 0.4;
    static final double ATTACK_SD = Math.toRadians(0.6);

    private static final double PER_SPEED = 4.5;
    private static final double PER_ATTACK = 0.8 / Math.toRadians(1.0);
    private static final double STRIKE = 3.0;

    /** No effect at all. */
    static SimulatedGolfer steady() {
        return new SimulatedGolfer(0.0, 0.0, 0.0, 0.0, false, 1.0, 0.0, false, PAIRS);
    }

    /** Alder goes 6 yd farther at the same swing. */
    SimulatedGolfer withClub(int sign) {
        return new SimulatedGolfer(
                sign * LengthUnit.YARD.toSi(6.0), swing, drift, slowing, mishit, spread, misread, stated, pairs);
    }

    /** Alder is swung 2 mph faster. */
    SimulatedGolfer withSwing() {
        return new SimulatedGolfer(
                club, SpeedUnit.MILE_PER_HOUR.toSi(2.0), drift, slowing, mishit, spread, misread, stated, pairs);
    }

    /** Tiring: 1 m/s slower at the end, and 5 yd shorter besides. */
    SimulatedGolfer withDrift() {
        return new SimulatedGolfer(
                club, swing, -LengthUnit.YARD.toSi(5.0), -1.0, mishit, spread, misread, stated, pairs);
    }

    SimulatedGolfer withMishit() {
        return new SimulatedGolfer(club, swing, drift, slowing, true, spread, misread, stated, pairs);
    }

    /** Alder is struck twice as unevenly. */
    SimulatedGolfer withSpread() {
        return new SimulatedGolfer(club, swing, drift, slowing, mishit, 2.0, misread, stated, pairs);
    }

    /** The club speed is read with error. */
    SimulatedGolfer withMisread(double milesPerHour) {
        double sd = SpeedUnit.MILE_PER_HOUR.toSi(milesPerHour);
        return new SimulatedGolfer(club, swing, drift, slowing, mishit, spread, sd, stated, pairs);
    }

    /** The session says with what error the club speed is read. */
    SimulatedGolfer withStated() {
        return new SimulatedGolfer(club, swing, drift, slowing, mishit, spread, misread, true, pairs);
    }

    SimulatedGolfer withPairs(int number) {
        return new SimulatedGolfer(club, swing, drift, slowing, mishit, spread, misread, stated, number);
    }

    /** The true difference in carry, Alder minus Rowan [m]. */
    double total() {
        return club + PER_SPEED * swing;
    }

    /** The sd of a difference in carry within a pair, at equal delivery [m]. */
    double directSd() {
        return STRIKE * Math.sqrt(1.0 + spread * spread);
    }

    /** The sd of a difference in carry within a pair [m]. */
    double totalSd() {
        double delivery = Math.sqrt(2.0) * Math.hypot(PER_SPEED * SPEED_SD, PER_ATTACK * ATTACK_SD);
        return Math.hypot(directSd(), delivery);
    }

    /** A session, and what only an oracle sees: differences within pairs, without drift and without the pair of the mishit. */
    static final class Hit {
        private final Session session;
        private final List<double[]> seen;

        private Hit(Session session, List<double[]> seen) {
            this.session = session;
            this.seen = seen;
        }

        /** The shots as read. */
        Session session() {
            return session;
        }

        /** True differences in carry [m]. */
        double[] carry() {
            return column(0);
        }

        /** True differences in club speed [m/s]. */
        double[] speed() {
            return column(1);
        }

        /** True differences in attack angle [rad]. */
        double[] attack() {
            return column(2);
        }

        private double[] column(int column) {
            return seen.stream().mapToDouble(row -> row[column]).toArray();
        }
    }

    Hit hit(SplittableRandom random) {
        int bad = mishit ? random.nextInt(2 * pairs) : -1;
        List<Shot> shots = new ArrayList<>();
        List<double[]> seen = new ArrayList<>();
        for (int pair = 0; pair < pairs; pair++) {
            double form = 0.3 * random.nextGaussian();
            double shared = 2.0 * random.nextGaussian();
            double[] difference = new double[3];
            for (int k = 0; k < 2; k++) {
                boolean alder = (pair % 2 == 0) == (k == 0);
                int index = shots.size();
                double time = index / (2.0 * pairs - 1.0);
                double speed = 38.0 + form + SPEED_SD * random.nextGaussian() + (alder ? swing : 0.0);
                double attack = Math.toRadians(-4.0) + ATTACK_SD * random.nextGaussian();
                double carry = 150.0
                        + PER_SPEED * (speed - 38.0)
                        + PER_ATTACK * (attack - Math.toRadians(-4.0))
                        + shared
                        + STRIKE * (alder ? spread : 1.0) * random.nextGaussian()
                        + (alder ? club : 0.0);
                double sign = alder ? 1.0 : -1.0;
                difference[0] += sign * carry;
                difference[1] += sign * speed;
                difference[2] += sign * attack;
                double slower = slowing * time;
                shots.add(shot(
                        alder ? InventedSwings.A : InventedSwings.B,
                        index,
                        speed + slower,
                        attack,
                        carry + drift * time + PER_SPEED * slower,
                        index == bad,
                        random));
            }
            if (bad / 2 != pair || bad < 0) {
                seen.add(difference);
            }
        }
        Session.Builder session = Session.builder().shots(ShotSet.of(shots));
        if (stated) {
            session.tolerance(Metric.CLUB_SPEED, misread);
        }
        return new Hit(session.build(), seen);
    }

    private Shot shot(
            String name, int index, double speed, double attack, double carry, boolean bad, SplittableRandom random) {
        return Shot.builder(name)
                .number(index + 1)
                .measured(Metric.CLUB_SPEED, speed + misread * random.nextGaussian())
                .measured(Metric.ATTACK_ANGLE, attack)
                .measured(Metric.CLUB_PATH, Math.toRadians(1.0 + 0.8 * random.nextGaussian()))
                .measured(Metric.FACE_ANGLE, Math.toRadians(0.5 + 0.9 * random.nextGaussian()))
                .measured(Metric.STRIKE_TOE, 0.001 + 0.004 * random.nextGaussian() + (bad ? 0.02 : 0.0))
                .measured(Metric.BALL_SPEED, 1.37 * speed + 0.4 * random.nextGaussian() - (bad ? 7.0 : 0.0))
                .measured(Metric.LAUNCH_ANGLE, Math.toRadians(17.0 + 0.6 * random.nextGaussian()))
                .measured(Metric.START_DIRECTION, Math.toRadians(0.5 + 0.8 * random.nextGaussian()))
                .measured(Metric.CARRY, carry - (bad ? 25.0 : 0.0))
                .build();
    }
}
