package dev.teeward.fitting.gapping;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Bags of which only carries are known. */
final class InventedBag {
    /** The carries of bag_reference.py [m]. */
    static final Map<String, double[]> REFERENCE = new LinkedHashMap<>();

    static {
        REFERENCE.put("seven", new double[] {141.0, 138.2, 143.9, 136.1, 139.5, 142.2, 140.8, 135.9});
        REFERENCE.put("six", new double[] {152.1, 149.8, 155.0, 147.9, 151.2, 153.6, 150.4, 148.8});
        REFERENCE.put("nine", new double[] {118.3, 121.1, 116.2, 119.9, 117.5, 122.4, 118.8, 120.3});
    }

    private InventedBag() {}

    /** Hit in turn, a shot with each club a round; each club as often as the first. */
    static Session rounds(Map<String, double[]> carries) {
        List<Shot> shots = new ArrayList<>();
        int rounds = carries.values().iterator().next().length;
        for (int round = 0; round < rounds; round++) {
            for (Map.Entry<String, double[]> club : carries.entrySet()) {
                shots.add(shot(shots.size(), club.getKey(), club.getValue()[round]));
            }
        }
        return session(shots);
    }

    /** Each club hit in one go. */
    static Session blocks(Map<String, double[]> carries) {
        List<Shot> shots = new ArrayList<>();
        carries.forEach((club, values) -> {
            for (double carry : values) {
                shots.add(shot(shots.size(), club, carry));
            }
        });
        return session(shots);
    }

    private static Shot shot(int before, String club, double carry) {
        return Shot.builder(club)
                .number(before + 1)
                .measured(Metric.CARRY, carry)
                .build();
    }

    static Session session(List<Shot> shots) {
        return Session.builder().shots(ShotSet.of(shots)).build();
    }
}
