package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.LongFunction;

/** Invented good sessions of two clubs that differ in the number and the spread of their shots. */
final class UnequalClubs {
    private UnequalClubs() {}

    /** Normally spread strikes only, the second club {@code ratio} times as wide. */
    static Session strikes(int first, int second, double ratio, long seed) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < first + second; i++) {
            double spread = i < first ? 0.005 : 0.005 * ratio;
            shots.add(Shot.builder(i < first ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.STRIKE_TOE, 0.002 + spread * random.nextGaussian())
                    .measured(Metric.STRIKE_UP, -0.001 + spread * random.nextGaussian())
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** Smash factors that fall with the square of the strike's distance: 1.39 - 0.012 (u^2 + v^2) in spreads of the strike. */
    static Session quadraticSmash(int shotsPerClub, long seed) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * shotsPerClub; i++) {
            double u = random.nextGaussian();
            double v = random.nextGaussian();
            double clubSpeed = 37.0 + 0.5 * random.nextGaussian();
            double smash = 1.39 - 0.012 * (u * u + v * v) + 0.005 * random.nextGaussian();
            shots.add(Shot.builder(i % 2 == 0 ? "Alder" : "Rowan")
                    .number(i + 1)
                    .measured(Metric.CLUB_SPEED, clubSpeed)
                    .measured(Metric.BALL_SPEED, clubSpeed * smash)
                    .measured(Metric.STRIKE_TOE, 0.006 * u)
                    .measured(Metric.STRIKE_UP, 0.006 * v)
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** The share of the sessions that raise a flag. */
    static double rate(SessionScreen screen, int replicates, LongFunction<Session> sessions) {
        int flagged = 0;
        for (int r = 0; r < replicates; r++) {
            flagged += screen.screen(sessions.apply(23L + 7919L * r)).flags().isEmpty() ? 0 : 1;
        }
        return (double) flagged / replicates;
    }
}
