package dev.teeward.fitting.screen;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented sessions of alternated, normally spread shots with two 6-irons. */
final class SimulatedSession {
    private static final String[] CLUBS = {"Alder", "Rowan"};

    private SimulatedSession() {}

    static Session of(int shotsPerClub, long seed) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * shotsPerClub; i++) {
            double clubSpeed = 37.0 + 0.5 * random.nextGaussian();
            double smash = 1.38 + 0.01 * random.nextGaussian() + 0.01 * (i % 2);
            shots.add(Shot.builder(CLUBS[i % 2])
                    .number(i + 1)
                    .pair(String.valueOf(i / 2 + 1))
                    .measured(Metric.CLUB_SPEED, clubSpeed)
                    .measured(Metric.BALL_SPEED, clubSpeed * smash)
                    .measured(Metric.LAUNCH_ANGLE, Math.toRadians(17.0 + random.nextGaussian() + i % 2))
                    .measured(Metric.SPIN_RATE, 650.0 + 30.0 * random.nextGaussian())
                    .measured(Metric.STRIKE_TOE, 0.002 + 0.006 * random.nextGaussian() + 0.003 * (i % 2))
                    .measured(Metric.STRIKE_UP, -0.001 + 0.004 * random.nextGaussian())
                    .build());
        }
        return Session.builder()
                .elevation(Length.ofFeet(5_280.0))
                .shots(ShotSet.of(shots))
                .build();
    }

    /** The session with another reading of one shot. */
    static Session with(Session session, int index, Metric metric, double value) {
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        shots.set(index, shots.get(index).toBuilder().measured(metric, value).build());
        return session.withShots(ShotSet.of(shots));
    }
}
