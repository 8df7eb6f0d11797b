package dev.teeward.examples;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.io.SessionWriter;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.air.Atmosphere;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;

/**
 * Invents the session of the demo: random swings around the means of {@link DemoTruth}, struck by the rigid impact, flown
 * through the air of the studio, read by an imperfect device.
 *
 * <p>Spreads, errors, builds and ratings are invented: spreads as of a steady amateur, errors as of a usual device (common
 * practice, no source). Nothing is wild but one strike and one reading, which are put in on purpose. The generator is that of {@link Random}, whose normal deviates are specified to the bit.
 */
final class DemoSession {
    /** The year in which the session was invented, taken as it is: no seed was chosen for what its session shows. */
    static final long SEED = 2026L;

    private static final double ELEVATION_FEET = 5_200.0;
    private static final double FAHRENHEIT = 70.0;
    private static final double HUMIDITY = 0.25;

    private static final String INVENTED =
            "# This session is invented. No golfer, club or device was measured; the impact and"
                    + " flight models of this library made every number, from random swings of a steady golfer with the seed ";

    /** A head as in the header, its inertia and liveliness invented. */
    private static final ClubHead HEAD = ClubHead.builder()
            .mass(Mass.ofGrams(265.0))
            .restitution(0.78)
            .tangentialRestitution(0.2)
            .massCenterDepth(Length.ofMillimeters(4.0))
            .inertia(2.6e-4, 0.7e-4, 3.1e-4)
            .handedness(DemoTruth.HAND)
            .build();

    /** Face and path of one swing have this part of their standard deviation of 1 deg in common; see face to path [deg]. */
    private static final double COMMON = Math.sqrt(0.75);

    private static final double OWN = Math.sqrt(0.25);

    private static final Map<Metric, Device> DEVICE = device();

    private final Random random;

    private DemoSession(long seed) {
        random = new Random(seed);
    }

    /** How a metric is read: standard deviation of the error in the US unit, and the decimals shown. */
    private record Device(double error, int decimals) {}

    private static Map<Metric, Device> device() {
        Map<Metric, Device> device = new EnumMap<>(Metric.class);
        device.put(Metric.CLUB_SPEED, new Device(0.3, 1));
        device.put(Metric.ATTACK_ANGLE, new Device(0.3, 1));
        device.put(Metric.CLUB_PATH, new Device(0.3, 1));
        device.put(Metric.FACE_ANGLE, new Device(0.3, 1));
        device.put(Metric.DYNAMIC_LOFT, new Device(0.3, 1));
        device.put(Metric.DYNAMIC_LIE, new Device(0.3, 1));
        device.put(Metric.STRIKE_TOE, new Device(0.8, 0));
        device.put(Metric.STRIKE_UP, new Device(0.8, 0));
        device.put(Metric.BALL_SPEED, new Device(0.2, 1));
        device.put(Metric.LAUNCH_ANGLE, new Device(0.2, 1));
        device.put(Metric.START_DIRECTION, new Device(0.2, 1));
        device.put(Metric.SPIN_RATE, new Device(50.0, 0));
        device.put(Metric.AXIS_TILT, new Device(0.4, 1));
        device.put(Metric.CURVE, new Device(0.5, 1));
        device.put(Metric.APEX, new Device(0.5, 0));
        device.put(Metric.FLIGHT_TIME, new Device(0.02, 2));
        device.put(Metric.CARRY, new Device(0.8, 1));
        device.put(Metric.SIDE, new Device(0.5, 1));
        device.put(Metric.DESCENT_ANGLE, new Device(0.3, 1));
        device.put(Metric.LANDING_SPEED, new Device(0.3, 1));
        return Collections.unmodifiableMap(device);
    }

    /** The model of the air in the studio. */
    static FlightModel model() {
        return FlightModel.standard()
                .withAir(Atmosphere.standardAt(Length.ofFeet(ELEVATION_FEET))
                        .withTemperature(Temperature.ofFahrenheit(FAHRENHEIT))
                        .withRelativeHumidity(HUMIDITY));
    }

    /** The flight of a swing that has the mean of everything. */
    static Flight meanFlight(String club) {
        return model().fly(launch(metric -> DemoTruth.mean(club, metric)));
    }

    /** The session of a seed. */
    static Session create(long seed) {
        return new DemoSession(seed).session();
    }

    /** The session of a seed as a file. */
    static String text(long seed) {
        StringWriter text = new StringWriter();
        text.write(INVENTED + seed + ".\n");
        try {
            SessionWriter.withDefaults().write(text, create(seed));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private Session session() {
        Session.Builder session = Session.builder()
                .hand(DemoTruth.HAND)
                .place("an invented studio")
                .elevation(Length.ofFeet(ELEVATION_FEET))
                .temperature(Temperature.ofFahrenheit(FAHRENHEIT))
                .humidity(HUMIDITY)
                .wind(Angle.ofDegrees(0.0), Speed.ofMph(0.0))
                .club(club(DemoTruth.ALDER))
                .club(club(DemoTruth.ROWAN));
        DEVICE.forEach((metric, device) ->
                session.tolerance(metric, metric.unit(UnitSystem.US).toSi(device.error())));
        List<Shot> shots = new ArrayList<>();
        for (int pair = 1; pair <= DemoTruth.PAIRS; pair++) {
            boolean alderFirst = pair % 2 == 1;
            shots.add(shot(shots.size() + 1, pair, alderFirst ? DemoTruth.ALDER : DemoTruth.ROWAN));
            shots.add(shot(shots.size() + 1, pair, alderFirst ? DemoTruth.ROWAN : DemoTruth.ALDER));
        }
        return session.shots(ShotSet.of(shots)).build();
    }

    private static Club club(String name) {
        return Club.builder(name)
                .loft(Angle.ofDegrees(28.0))
                .lie(Angle.ofDegrees(62.0))
                .length(Length.ofInches(37.5))
                .headMass(HEAD.mass())
                .shaft("steel, regular")
                .build();
    }

    private Shot shot(int number, int pair, String club) {
        Map<Metric, Double> swing = swing(club);
        boolean mishit = number == DemoTruth.MISHIT_SHOT;
        boolean misread = number == DemoTruth.MISREAD_SHOT;
        if (mishit) {
            swing.put(
                    Metric.STRIKE_TOE,
                    Length.ofMillimeters(DemoTruth.MISHIT_TOE).meters());
            swing.put(
                    Metric.STRIKE_UP, Length.ofMillimeters(DemoTruth.MISHIT_UP).meters());
        }
        Shot.Builder shot = Shot.builder(club).number(number).pair(Integer.toString(pair));
        for (Map.Entry<Metric, Double> part : swing.entrySet()) {
            shot.measured(part.getKey(), read(part.getKey(), part.getValue()));
        }
        Flight flight = model().fly(launch(metric -> Objects.requireNonNull(swing.get(metric))));
        LaunchConditions launch = flight.launch();
        double spin = launch.spinRate().radiansPerSecond();
        read(shot, Metric.BALL_SPEED, launch.ballSpeed().metersPerSecond());
        read(shot, Metric.LAUNCH_ANGLE, launch.launchAngle().radians());
        read(shot, Metric.START_DIRECTION, launch.startDirection().radians());
        read(shot, Metric.SPIN_RATE, misread ? spin / 2.0 : spin);
        read(shot, Metric.AXIS_TILT, launch.axisTilt().radians());
        read(shot, Metric.CURVE, flight.curve().meters());
        read(shot, Metric.APEX, flight.apex().meters());
        read(shot, Metric.FLIGHT_TIME, flight.flightTimeSeconds());
        read(shot, Metric.CARRY, flight.carry().meters());
        read(shot, Metric.SIDE, flight.side().meters());
        read(shot, Metric.DESCENT_ANGLE, flight.descentAngle().radians());
        read(shot, Metric.LANDING_SPEED, flight.landingSpeed().metersPerSecond());
        boolean alder = club.equals(DemoTruth.ALDER);
        rate(shot, Rating.FEEL, mishit ? 1.0 : alder ? 3.7 : 4.0);
        rate(shot, Rating.SOUND, mishit ? 2.0 : alder ? 4.1 : 3.6);
        rate(shot, Rating.LOOK, alder ? 4.0 : 3.8);
        if (mishit) {
            shot.note("low on the toe");
        } else if (misread) {
            shot.note("spin reading looked odd");
        }
        return shot.build();
    }

    /** The true swing [SI]. */
    private Map<Metric, Double> swing(String club) {
        Map<Metric, Double> swing = new EnumMap<>(Metric.class);
        double aim = COMMON * deviate();
        for (Metric metric : DemoTruth.metrics()) {
            if (metric == Metric.FACE_TO_PATH) {
                continue; // follows from the two
            }
            boolean aimed = metric == Metric.FACE_ANGLE || metric == Metric.CLUB_PATH;
            double deviate = aimed ? aim + OWN * deviate() : deviate();
            swing.put(metric, DemoTruth.mean(club, metric) + DemoTruth.deviation(metric) * deviate);
        }
        return swing;
    }

    /** A normal deviate, drawn again beyond {@link DemoTruth#LARGEST_DEVIATE}: the one wild swing is the mishit. */
    private double deviate() {
        double deviate;
        do {
            deviate = random.nextGaussian();
        } while (Math.abs(deviate) > DemoTruth.LARGEST_DEVIATE);
        return deviate;
    }

    /** One part of a swing [SI]. */
    private interface Part {
        double of(Metric metric);
    }

    private static LaunchConditions launch(Part swing) {
        Delivery delivery = Delivery.builder()
                .clubSpeed(Speed.ofMetersPerSecond(swing.of(Metric.CLUB_SPEED)))
                .attackAngle(Angle.ofRadians(swing.of(Metric.ATTACK_ANGLE)))
                .clubPath(Angle.ofRadians(swing.of(Metric.CLUB_PATH)))
                .faceAngle(Angle.ofRadians(swing.of(Metric.FACE_ANGLE)))
                .dynamicLoft(Angle.ofRadians(swing.of(Metric.DYNAMIC_LOFT)))
                .strikeToe(Length.ofMeters(swing.of(Metric.STRIKE_TOE)))
                .strikeUp(Length.ofMeters(swing.of(Metric.STRIKE_UP)))
                .build();
        return RigidImpact.standard().strike(delivery, HEAD).launch();
    }

    private void read(Shot.Builder shot, Metric metric, double si) {
        shot.measured(metric, read(metric, si));
    }

    private double read(Metric metric, double si) {
        Device device = DEVICE.get(metric);
        if (device == null) {
            throw new IllegalStateException(metric.key() + " is not read");
        }
        Unit unit = metric.unit(UnitSystem.US);
        double scale = Math.pow(10.0, device.decimals());
        double value = unit.fromSi(si) + device.error() * random.nextGaussian();
        return unit.toSi(Math.round(scale * value) / scale);
    }

    private void rate(Shot.Builder shot, Rating rating, double mean) {
        long value = Math.round(mean + 0.5 * random.nextGaussian());
        shot.rating(rating, (int) Math.max(1L, Math.min(5L, value)));
    }
}
