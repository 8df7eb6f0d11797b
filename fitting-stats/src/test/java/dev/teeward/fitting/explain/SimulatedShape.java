package dev.teeward.fitting.explain;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.SpeedUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * An invented golfer whose start, curve and side follow face and path, with the two invented 6-irons Alder and Rowan in ABBA
 * order: start = 0.75 face + 0.25 path, curve = 2.5 m for each degree of face to path, side = 150 m times start + curve, each
 * with a scatter of its own (0.4 deg, 2 m, 2 m). The golfer scatters by 0.4 m/s in club speed, 0.8 deg in path and 0.9 deg in face.
 *
 * @param face by how much Alder's face is more open to the target [rad]
 * @param path by how much Alder's path is more to the right [rad]
 * @param pairs how many pairs are hit
 */
record SimulatedShape(double face, double path, int pairs) {
    private static final double DEG = Math.PI / 180.0;
    private static final double CURVE_PER_RADIAN = 2.5 / DEG;
    private static final double CARRY = 150.0;
    private static final HeadToHead COMPARE = HeadToHead.withDefaults()
            .withClubs(InventedSwings.A, InventedSwings.B)
            .withPrimary(Metric.CURVE)
            .withMargin(Metric.CURVE, LengthUnit.YARD.toSi(5.0))
            .withMargin(Metric.SIDE, LengthUnit.YARD.toSi(5.0))
            .withMargin(Metric.START_DIRECTION, DEG)
            .withMargin(Metric.CLUB_SPEED, SpeedUnit.MILE_PER_HOUR.toSi(1.0))
            .withMargin(Metric.CLUB_PATH, DEG);

    /** The club opens the face by 1.8 deg, and the golfer swings both alike. */
    static SimulatedShape openedByTheClub(int pairs) {
        return new SimulatedShape(1.8 * DEG, 0.0, pairs);
    }

    /** The golfer swings Alder 2 deg farther to the right and brings the face to the target as with Rowan. */
    static SimulatedShape anotherPath(int pairs) {
        return new SimulatedShape(0.0, 2.0 * DEG, pairs);
    }

    /** What the club does at equal swing: to start [rad], curve and side [m]. */
    double club(Metric outcome) {
        return switch (outcome) {
            case START_DIRECTION -> 0.75 * face;
            case CURVE -> CURVE_PER_RADIAN * face;
            case SIDE -> (CARRY * 0.75 + CURVE_PER_RADIAN) * face;
            default -> throw new IllegalArgumentException(outcome.key());
        };
    }

    Session hit(SplittableRandom random) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            boolean alder = i % 4 == 0 || i % 4 == 3;
            double swung = DEG * (1.0 + 0.8 * random.nextGaussian()) + (alder ? path : 0.0);
            double open = DEG * (0.5 + 0.9 * random.nextGaussian()) + (alder ? face : 0.0);
            double start = 0.75 * open + 0.25 * swung + DEG * 0.4 * random.nextGaussian();
            double curve = CURVE_PER_RADIAN * (open - swung) + 2.0 * random.nextGaussian();
            shots.add(Shot.builder(alder ? InventedSwings.A : InventedSwings.B)
                    .number(i + 1)
                    .measured(Metric.CLUB_SPEED, 38.0 + SimulatedGolfer.SPEED_SD * random.nextGaussian())
                    .measured(Metric.CLUB_PATH, swung)
                    .measured(Metric.FACE_ANGLE, open)
                    .measured(Metric.START_DIRECTION, start)
                    .measured(Metric.CURVE, curve)
                    .measured(Metric.SIDE, CARRY * start + curve + 2.0 * random.nextGaussian())
                    .build());
        }
        return Session.builder().shots(ShotSet.of(shots)).build();
    }

    /** The answers of many sessions in one outcome, and how often one of both verdicts is wrong. */
    static final class Counted {
        private final Map<ClubOrSwing.Answer, Integer> answers = new EnumMap<>(ClubOrSwing.Answer.class);
        private int wrong;

        int of(ClubOrSwing.Answer answer) {
            return answers.getOrDefault(answer, 0);
        }

        int wrong() {
            return wrong;
        }

        @Override
        public String toString() {
            return answers + ", wrong " + wrong;
        }
    }

    /** Counts curve, side and start direction, each by its own question. */
    Map<Metric, Counted> count(int sessions, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Map<Metric, Counted> counts = new EnumMap<>(Metric.class);
        for (int i = 0; i < sessions; i++) {
            HeadToHeadResult result = COMPARE.compare(hit(random.split()));
            Balance.Result balance = Balance.withDefaults().compare(result);
            for (Metric outcome : List.of(Metric.CURVE, Metric.SIDE, Metric.START_DIRECTION)) {
                count(result, balance, outcome, counts.computeIfAbsent(outcome, m -> new Counted()));
            }
        }
        return counts;
    }

    private void count(HeadToHeadResult result, Balance.Result balance, Metric outcome, Counted counted) {
        TotalAndDirect.Result effect =
                TotalAndDirect.ofGolferSide().explain(result, outcome).orElseThrow();
        ClubOrSwing found = ClubOrSwing.of(result, balance, effect);
        counted.answers.merge(found.answer(), 1, Integer::sum);
        boolean wrongClub = TruthTable.wrong(
                found.club(),
                effect.direct().estimate().value(),
                club(outcome),
                result.find(outcome).orElseThrow().margin().orElseThrow());
        boolean wrongSwing = path == 0.0
                ? !found.swingDiffers().isEmpty()
                : !found.swingDiffers().equals(List.of(Metric.CLUB_PATH)) && TruthTable.decided(found.swing());
        counted.wrong += found.answer() != ClubOrSwing.Answer.CAN_NOT_TELL && (wrongClub || wrongSwing) ? 1 : 0;
    }
}
