package dev.teeward.examples;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.io.SessionWriter;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Invents the bag of {@code gap}: a right-handed golfer hits ten clubs in rounds, up and down the bag in turn. What was put in:
 * the 7-iron is 2 deg strong, so that it comes close to the 6-iron, and between the two wedges one is missing. Swings are random
 * about the means below, struck by the rigid impact with typical heads, flown in standard air; nobody and nothing was measured.
 */
final class BagSession {
    /** The year, taken as it is: no seed was chosen for what its session shows. */
    static final long SEED = 2026L;

    private static final int ROUNDS = 10;

    /** Loft and lie [deg], length [in], club speed [mph], attack angle and dynamic loft [deg]. */
    private record Stick(
            String name,
            ClubHead head,
            double loft,
            double lie,
            double length,
            double speed,
            double attack,
            double dynamicLoft) {}

    private static final List<Stick> BAG = List.of(
            new Stick("Driver", TypicalHead.driver(), 10.5, 58.0, 45.0, 95.0, 0.0, 13.5),
            new Stick("5-wood", TypicalHead.fairwayWood(5), 18.0, 57.5, 42.0, 88.5, -1.5, 16.0),
            new Stick("4-hybrid", TypicalHead.hybrid(4), 22.0, 59.5, 39.5, 84.5, -2.5, 18.5),
            new Stick("5-iron", TypicalHead.iron(5), 26.0, 61.0, 38.0, 81.5, -3.0, 20.5),
            new Stick("6-iron", TypicalHead.iron(6), 29.0, 61.5, 37.5, 80.0, -3.3, 23.0),
            new Stick("7-iron", TypicalHead.iron(7), 31.0, 62.0, 37.0, 78.5, -3.6, 24.5),
            new Stick("8-iron", TypicalHead.iron(8), 37.0, 62.5, 36.5, 76.5, -4.0, 29.5),
            new Stick("9-iron", TypicalHead.iron(9), 41.0, 63.0, 36.0, 75.0, -4.3, 33.5),
            new Stick("Wedge 46", TypicalHead.wedge(46.0), 46.0, 63.5, 35.5, 73.0, -4.5, 38.0),
            new Stick("Wedge 58", TypicalHead.wedge(58.0), 58.0, 64.0, 35.0, 70.0, -4.8, 49.5));

    private final Random random;

    private BagSession(long seed) {
        random = new Random(seed);
    }

    /** The session of a seed. */
    static Session create(long seed) {
        return new BagSession(seed).session();
    }

    /** The session of a seed as a file. */
    static String text(long seed) {
        StringWriter text = new StringWriter();
        text.write(
                "# This bag is invented. No golfer, club or device was measured; the impact and flight models of this"
                        + " library made every number, from random swings with the seed " + seed + ".\n");
        try {
            SessionWriter.withDefaults().write(text, create(seed));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private Session session() {
        Session.Builder session = Session.builder()
                .hand(Handedness.RIGHT)
                .place("an invented range")
                .elevation(Length.ofMeters(0.0))
                .temperature(Atmosphere.standardAt(Length.ofMeters(0.0)).temperature())
                .humidity(0.0)
                .wind(Angle.ofDegrees(0.0), Speed.ofMph(0.0));
        BAG.forEach(stick -> session.club(Club.builder(stick.name())
                .loft(Angle.ofDegrees(stick.loft()))
                .lie(Angle.ofDegrees(stick.lie()))
                .length(Length.ofInches(stick.length()))
                .build()));
        List<Shot> shots = new ArrayList<>();
        for (int round = 1; round <= ROUNDS; round++) {
            for (int i = 0; i < BAG.size(); i++) {
                Stick stick = BAG.get(round % 2 == 1 ? i : BAG.size() - 1 - i);
                shots.add(shot(shots.size() + 1, round, stick));
            }
        }
        return session.shots(ShotSet.of(shots)).build();
    }

    private double about(double mean, double deviation) {
        return mean + deviation * random.nextGaussian();
    }

    private Shot shot(int number, int round, Stick stick) {
        double path = about(-1.0, 1.2);
        Delivery delivery = Delivery.builder()
                .clubSpeed(Speed.ofMph(about(stick.speed(), 0.012 * stick.speed())))
                .attackAngle(Angle.ofDegrees(about(stick.attack(), 0.7)))
                .clubPath(Angle.ofDegrees(path))
                .faceAngle(Angle.ofDegrees(about(0.5 * path, 1.0)))
                .dynamicLoft(Angle.ofDegrees(about(stick.dynamicLoft(), 0.8)))
                .strikeToe(Length.ofMillimeters(about(0.0, 4.0)))
                .strikeUp(Length.ofMillimeters(about(0.0, 2.5)))
                .build();
        Flight flight = FlightModel.standard()
                .withAir(Atmosphere.standardAt(Length.ofMeters(0.0)))
                .fly(RigidImpact.standard().strike(delivery, stick.head()).launch());
        Shot.Builder shot = Shot.builder(stick.name()).number(number).pair(Integer.toString(round));
        read(shot, Metric.CLUB_SPEED, delivery.clubSpeed().metersPerSecond());
        read(shot, Metric.ATTACK_ANGLE, delivery.attackAngle().radians());
        read(shot, Metric.CLUB_PATH, delivery.clubPath().radians());
        read(shot, Metric.FACE_ANGLE, delivery.faceAngle().radians());
        read(shot, Metric.DYNAMIC_LOFT, delivery.dynamicLoft().radians());
        read(shot, Metric.BALL_SPEED, flight.launch().ballSpeed().metersPerSecond());
        read(shot, Metric.LAUNCH_ANGLE, flight.launch().launchAngle().radians());
        read(shot, Metric.START_DIRECTION, flight.launch().startDirection().radians());
        read(shot, Metric.SPIN_RATE, flight.launch().spinRate().radiansPerSecond());
        read(shot, Metric.AXIS_TILT, flight.launch().axisTilt().radians());
        read(shot, Metric.CARRY, flight.carry().meters());
        read(shot, Metric.SIDE, flight.side().meters());
        return shot.build();
    }

    /** To a tenth of the unit, as a device would show it. */
    private static void read(Shot.Builder shot, Metric metric, double si) {
        Unit unit = metric.unit(UnitSystem.US);
        shot.measured(metric, unit.toSi(Math.rint(10.0 * unit.fromSi(si)) / 10.0));
    }
}
