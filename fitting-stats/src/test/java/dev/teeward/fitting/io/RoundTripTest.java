package dev.teeward.fitting.io;

import static dev.teeward.quantity.Units.degrees;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Intent;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.MassUnit;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.TemperatureUnit;
import dev.teeward.quantity.Unit;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What is written comes back the same, to the last bit and letter. */
class RoundTripTest {
    private static final String FILE = "session.csv";

    @Provide
    Arbitrary<Session> sessions() {
        return Arbitraries.randomValue(RoundTripTest::session);
    }

    @Property(tries = 300)
    void sessionsComeBack(@ForAll("sessions") Session session) throws IOException {
        StringWriter text = new StringWriter();
        SessionWriter.withDefaults().write(text, session);
        Session back = SessionReader.withDefaults().read(text.toString(), FILE);
        assertEquals(session, back, text.toString());
    }

    @Property(tries = 100)
    void otherUnitsChangeNothingButTheLastBits(@ForAll("sessions") Session session) throws IOException {
        for (UnitSystem system : UnitSystem.values()) {
            StringWriter text = new StringWriter();
            SessionWriter.withDefaults().withUnits(system).write(text, session);
            Session back = SessionReader.withDefaults().read(text.toString(), FILE);
            for (Metric metric : Metric.values()) {
                double[] before = session.shots().values(metric);
                double[] after = back.shots().values(metric);
                assertEquals(before.length, after.length);
                for (int i = 0; i < before.length; i++) {
                    assertEquals(before[i], after[i], 4.0 * Math.ulp(before[i]));
                }
            }
        }
    }

    private static Session session(Random random) {
        Session.Builder session = Session.builder();
        header(random, session);
        Map<Metric, Unit> units = new EnumMap<>(Metric.class);
        for (Metric metric : Metric.values()) {
            if (random.nextBoolean()) {
                Unit unit = pick(random, metric.units());
                units.put(metric, unit);
                session.unit(metric, unit);
            }
        }
        List<String> others =
                random.nextBoolean() ? List.of("coach", "=1+2", "a;b;c;d", "#x", "dash — \"q\"") : List.of();
        List<Shot> shots = new ArrayList<>();
        int count = 1 + random.nextInt(6);
        for (int row = 1; row <= count; row++) {
            shots.add(shot(random, row, units, others));
        }
        return session.shots(ShotSet.of(shots)).build();
    }

    private static Shot shot(Random random, int row, Map<Metric, Unit> units, List<String> others) {
        Shot.Builder shot = Shot.builder(pick(random, List.of("Alder", "Rowan", "#7", "=cmd", "a,b", "\"q\"")))
                .number(1 + random.nextInt(99))
                .source(FILE, row);
        if (random.nextBoolean()) {
            shot.pair(row + "," + random.nextInt(9));
        }
        if (random.nextInt(4) == 0) {
            shot.exclusion("topped" + hostile(random));
        }
        shot.note(hostile(random));
        for (Rating rating : Rating.values()) {
            if (random.nextBoolean()) {
                shot.rating(rating, 1 + random.nextInt(5));
            }
        }
        if (random.nextBoolean()) {
            shot.day(LocalDate.of(2026, 1 + random.nextInt(12), 1 + random.nextInt(28)));
        }
        if (random.nextBoolean()) {
            shot.intent(pick(random, List.of(Intent.values())));
        }
        units.forEach((metric, unit) -> {
            if (random.nextInt(5) > 0) {
                measure(random, shot, metric, unit);
            }
        });
        for (String name : others) {
            shot.other(name, hostile(random));
        }
        return shot.build();
    }

    /** A decimal of a few digits in the unit, as a device would write it. */
    private static void measure(Random random, Shot.Builder shot, Metric metric, Unit unit) {
        double low = unit.fromSi(metric.lower());
        double high = unit.fromSi(metric.upper());
        double raw = low + (high - low) * random.nextDouble();
        double value = new BigDecimal(raw)
                .round(new java.math.MathContext(1 + random.nextInt(8)))
                .doubleValue();
        double si = unit.toSi(value);
        if (metric.allows(si)) {
            shot.measured(metric, si);
        }
    }

    private static String hostile(Random random) {
        String[] pieces = {
            "\"", ",", ";", "\n", "\r\n", "\t", "=1+1", " ", "#", "x", "\u00E4", "\uD83C\uDFCC", "@", "-", "''"
        };
        StringBuilder text = new StringBuilder();
        int count = random.nextInt(6);
        for (int i = 0; i < count; i++) {
            text.append(pieces[random.nextInt(pieces.length)]);
        }
        return text.toString();
    }

    private static void header(Random random, Session.Builder session) {
        if (random.nextBoolean()) {
            session.hand(random.nextBoolean() ? Handedness.LEFT : Handedness.RIGHT)
                    .ball("white, \"soft\": three")
                    .place("Stüdio, upstairs")
                    .date(LocalDate.of(2026, 5, 14))
                    .remark("invented, of course")
                    .other("mat", "worn, but: ok")
                    .other("empty", "");
        }
        if (random.nextBoolean()) {
            session.aimOffset(Angle.of(random.nextInt(90) / 10.0, AngleUnit.DEGREE))
                    .elevation(
                            Length.of(random.nextInt(9_000), pick(random, List.of(LengthUnit.FOOT, LengthUnit.METER))))
                    .temperature(Temperature.of(
                            random.nextInt(500) / 10.0,
                            pick(random, List.of(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT))))
                    .humidity(0.01 * random.nextInt(101))
                    .wind(
                            degrees(random.nextInt(360)),
                            Speed.of(random.nextInt(30), pick(random, List.of(SpeedUnit.values()))))
                    .tolerance(Metric.BALL_SPEED, SpeedUnit.MILE_PER_HOUR.toSi(0.5))
                    .tolerance(Metric.SMASH_FACTOR, 0.015);
        }
        if (random.nextBoolean()) {
            Pressure pressure = Pressure.of(30.05, PressureUnit.INCH_OF_MERCURY);
            if (random.nextBoolean()) {
                session.stationPressure(pressure);
            } else {
                session.altimeterPressure(pressure);
            }
            session.club(Club.builder("Alder")
                    .loft(degrees(29.5))
                    .lie(degrees(61.0))
                    .length(Length.of(37.25, LengthUnit.INCH))
                    .headMass(Mass.of(268.0, MassUnit.GRAM))
                    .shaft("graphite, 75 g, regular")
                    .build());
            session.club(Club.builder("Rowan").build());
        }
    }

    private static <T> T pick(Random random, List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
