package dev.teeward.fitting.io;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.PressureKind;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.io.ColumnTable.HeaderLine;
import dev.teeward.fitting.io.UnitText.Amount;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.MassUnit;
import dev.teeward.quantity.Pressure;
import dev.teeward.quantity.PressureUnit;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Temperature;
import dev.teeward.quantity.TemperatureUnit;
import dev.teeward.quantity.Unit;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the header block of a session. Holds the state of one reading. */
final class SessionHeader {
    static final List<String> NAMES = List.of(
            "hand",
            "aim offset",
            "ball",
            "elevation",
            "temperature",
            "humidity",
            "pressure",
            "wind",
            "date",
            "place",
            "club",
            "tolerance",
            "parts");

    /** A line about one of the sessions that were combined: {@code part 2 wind}; without a name it is a remark. */
    private static final Pattern PART = Pattern.compile("part ([0-9]{1,4})(?: +(.+))?", Pattern.CASE_INSENSITIVE);

    private static final int MOST_PARTS = 9_999;

    /** The units in which what was stated is written again; SI is among them, so that one of them is always exact. */
    static final List<LengthUnit> ELEVATIONS = List.of(LengthUnit.FOOT, LengthUnit.METER);

    static final List<LengthUnit> CLUB_LENGTHS = List.of(LengthUnit.INCH, LengthUnit.CENTIMETER, LengthUnit.METER);

    static final List<LengthUnit> LENGTHS = List.of(LengthUnit.values());
    static final List<AngleUnit> ANGLES = List.of(AngleUnit.DEGREE, AngleUnit.RADIAN);
    static final List<SpeedUnit> SPEEDS = List.of(SpeedUnit.values());
    static final List<PressureUnit> PRESSURES = List.of(PressureUnit.values());
    static final List<MassUnit> MASSES = List.of(MassUnit.values());

    private final String file;
    private final Decimal decimal;
    private final Session.Builder session;
    private final Set<String> given = new HashSet<>();
    private final Map<Integer, SessionHeader> parts = new TreeMap<>();
    private int partCount;

    SessionHeader(String file, boolean commaAllowed, Session.Builder session) {
        this(file, new Decimal(commaAllowed), session);
    }

    private SessionHeader(String file, Decimal decimal, Session.Builder session) {
        this.file = file;
        this.decimal = decimal;
        this.session = session;
    }

    /** The unit of a metric, of the whole and of every part. */
    void unit(Metric metric, Unit unit) {
        session.unit(metric, unit);
        parts.values().forEach(part -> part.session.unit(metric, unit));
    }

    /** After all else, because air and wind of the whole forget the parts. Returns how many there are. */
    int addParts() {
        int last = parts.keySet().stream().mapToInt(n -> n).max().orElse(0);
        if (last > partCount) {
            throw InputException.at(
                    file,
                    "header line part " + last,
                    partCount == 0
                            ? "needs the line parts, which says how many there are, as in: parts: " + last
                            : "is beyond the " + partCount + " of the line parts");
        }
        if (partCount > 0) {
            session.parts(
                    parts.values().stream().map(part -> part.session.build()).toList());
        }
        return partCount;
    }

    private SessionHeader part(int number) {
        return parts.computeIfAbsent(number, n -> new SessionHeader(file, decimal, Session.builder()));
    }

    void read(List<HeaderLine> lines) {
        for (HeaderLine line : lines) {
            int colon = line.text().indexOf(':');
            if (line.text().isEmpty()) {
                continue;
            }
            String name = colon < 0 ? "" : line.text().substring(0, colon).strip();
            try {
                if (name.isEmpty()) {
                    session.remark(line.text().replace(":", " "));
                } else {
                    read(name, line.text().substring(colon + 1).strip());
                }
            } catch (DateTimeException | IllegalArgumentException e) {
                String place = "header line " + line.number() + (name.isEmpty() ? "" : ", " + name);
                InputException failure = InputException.at(file, place, String.valueOf(e.getMessage()));
                failure.initCause(e);
                throw failure;
            }
        }
    }

    private void read(String name, String value) {
        Matcher part = PART.matcher(name);
        if (part.matches()) {
            part(whole(part.group(1))).readOfPart(part.group(2), value);
            return;
        }
        String lower = name.toLowerCase(Locale.ROOT);
        int space = name.indexOf(' ');
        String first = space < 0 ? lower : lower.substring(0, space);
        boolean prefixed = space > 0 && (first.equals("club") || first.equals("tolerance"));
        String rest = space < 0 ? "" : name.substring(space + 1).strip();
        String key = prefixed ? first + " " + rest : lower;
        if (!given.add(key)) {
            throw new IllegalArgumentException("is given twice");
        }
        if (prefixed) {
            if (first.equals("club")) {
                session.club(club(rest, value));
            } else {
                tolerance(rest, value);
            }
            return;
        }
        if (NAMES.contains(lower) && value.isEmpty()) {
            throw new IllegalArgumentException("has no value; leave the line out if it is not known");
        }
        switch (lower) {
            case "hand" -> session.hand(hand(value));
            case "aim offset" -> session.aimOffset(angle(value));
            case "ball" -> session.ball(value);
            case "elevation" -> session.elevation(length(value));
            case "temperature" -> session.temperature(temperature(value));
            case "humidity" -> session.humidity(humidity(value));
            case "pressure" -> pressure(value);
            case "wind" -> wind(value);
            case "date" -> session.date(date(value));
            case "place" -> session.place(value);
            case "parts" -> {
                partCount = whole(value);
                for (int n = 1; n <= partCount; n++) {
                    part(n);
                }
            }
            case "club" ->
                throw new IllegalArgumentException("needs the name of the club, as in: club Alder: loft 29 deg");
            case "tolerance" ->
                throw new IllegalArgumentException("needs a metric, as in: tolerance ball_speed: 0.5 mph");
            default -> {
                refuseNearMiss(name);
                session.other(name, value);
            }
        }
    }

    private void readOfPart(@Nullable String name, String value) {
        if (name == null) {
            session.remark(value.replace(":", " "));
        } else if (PART.matcher(name).matches() || name.equalsIgnoreCase("parts")) {
            throw new IllegalArgumentException("is of a part, which has no parts of its own");
        } else {
            read(name.strip(), value);
        }
    }

    /** Refuses a name that is nearly one with a meaning. */
    static void refuseNearMiss(String name) {
        if (PART.matcher(name).matches()) {
            throw new IllegalArgumentException("is the name of a line about a part of a combined session");
        }
        int space = name.indexOf(' ');
        Optional<String> meant = Names.closest(name, NAMES);
        if (meant.isEmpty() && space > 0) {
            meant = Names.closest(name.substring(0, space), List.of("club", "tolerance"));
        }
        if (meant.isPresent()) {
            throw new IllegalArgumentException("is not a known name; did you mean " + meant.get() + "?");
        }
    }

    private static int whole(String value) {
        if (!value.matches("[0-9]{1,4}") || Integer.parseInt(value) == 0) {
            throw new IllegalArgumentException(
                    InputException.quote(value) + " is not a whole number from 1 to " + MOST_PARTS);
        }
        return Integer.parseInt(value);
    }

    private static Handedness hand(String value) {
        return switch (value.toLowerCase(Locale.ROOT)) {
            case "left" -> Handedness.LEFT;
            case "right" -> Handedness.RIGHT;
            default -> throw new IllegalArgumentException(InputException.quote(value) + " is neither left nor right");
        };
    }

    private static LocalDate date(String value) {
        try {
            return LocalDate.parse(value);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    InputException.quote(value) + " is not a date of the form 2026-05-14", e);
        }
    }

    private double humidity(String value) {
        Amount<RatioUnit> amount = UnitText.parse(value, List.of(RatioUnit.PERCENT), decimal);
        if (!(amount.value() >= 0.0 && amount.value() <= 100.0)) {
            throw new IllegalArgumentException(InputException.quote(value) + " is outside [0, 100] %");
        }
        return amount.unit().toSi(amount.value());
    }

    private void pressure(String value) {
        int space = value.lastIndexOf(' ');
        String kind = value.substring(space + 1).toLowerCase(Locale.ROOT);
        if (space < 0 || (!kind.equals("station") && !kind.equals("altimeter"))) {
            throw new IllegalArgumentException(InputException.quote(value)
                    + " does not say which pressure it is; end it with station (at the place itself) or altimeter (reduced to"
                    + " sea level)");
        }
        Amount<PressureUnit> amount = UnitText.parse(value.substring(0, space).strip(), PRESSURES, decimal);
        Pressure pressure = Pressure.of(amount.value(), amount.unit());
        if (kind.equals(word(PressureKind.STATION))) {
            session.stationPressure(pressure);
        } else {
            session.altimeterPressure(pressure);
        }
    }

    static String word(PressureKind kind) {
        return kind == PressureKind.STATION ? "station" : "altimeter";
    }

    private void wind(String value) {
        if (value.equalsIgnoreCase("calm")) {
            session.wind(Angle.ofRadians(0.0), Speed.ofMetersPerSecond(0.0));
            return;
        }
        int from = value.indexOf(" from ");
        if (from < 0) {
            throw new IllegalArgumentException(InputException.quote(value)
                    + " is not of the form 8 mph from 30 deg (0 deg is a headwind, 90 deg from the right) or calm");
        }
        Amount<SpeedUnit> speed = UnitText.parse(value.substring(0, from).strip(), SPEEDS, decimal);
        session.wind(angle(value.substring(from + " from ".length()).strip()), Speed.of(speed.value(), speed.unit()));
    }

    private void tolerance(String key, String value) {
        Metric metric = Metric.find(key)
                .orElseThrow(() -> new IllegalArgumentException(InputException.quote(key) + " is not a metric"
                        + Names.metric(key)
                                .map(m -> "; did you mean " + m.key() + "?")
                                .orElse("")));
        if (metric.siUnit().symbol().isEmpty()) {
            double si = decimal.parse(value);
            if (Double.isNaN(si)) {
                throw new IllegalArgumentException(InputException.quote(value) + " " + decimal.problem());
            }
            session.tolerance(metric, si);
        } else {
            Amount<Unit> amount = UnitText.parse(value, metric.units(), decimal);
            session.tolerance(metric, amount.unit().toSi(amount.value()));
        }
    }

    private Club club(String name, String value) {
        Club.Builder club = Club.builder(name);
        Set<String> parts = new HashSet<>();
        for (String part : parts(value)) {
            int space = part.indexOf(' ');
            String key = space < 0 ? part : part.substring(0, space).toLowerCase(Locale.ROOT);
            String text = space < 0 ? "" : part.substring(space + 1).strip();
            if (!parts.add(key)) {
                throw new IllegalArgumentException(InputException.quote(key) + " is given twice");
            }
            switch (key) {
                case "loft" -> club.loft(angle(text));
                case "lie" -> club.lie(angle(text));
                case "length" -> club.length(length(text));
                case "mass" -> {
                    Amount<MassUnit> mass = UnitText.parse(text, MASSES, decimal);
                    club.headMass(Mass.of(mass.value(), mass.unit()));
                }
                case "shaft" -> club.shaft(text);
                default ->
                    throw new IllegalArgumentException(InputException.quote(part)
                            + " is not understood; a club has loft, lie, length, mass and, last, shaft");
            }
        }
        return club.build();
    }

    /** Divides at commas and semicolons followed by space, but not in the words on the shaft, which come last. */
    private static List<String> parts(String value) {
        List<String> parts = new ArrayList<>();
        String rest = value;
        while (!rest.isEmpty()) {
            boolean shaft = rest.toLowerCase(Locale.ROOT).startsWith("shaft ");
            int comma = shaft ? -1 : rest.indexOf(", ");
            parts.add((comma < 0 ? rest : rest.substring(0, comma)).strip());
            rest = comma < 0 ? "" : rest.substring(comma + 1).strip();
        }
        return parts;
    }

    private Length length(String text) {
        Amount<LengthUnit> amount = UnitText.parse(text, LENGTHS, decimal);
        return Length.of(amount.value(), amount.unit());
    }

    private Angle angle(String text) {
        Amount<AngleUnit> amount = UnitText.parse(text, ANGLES, decimal);
        return Angle.of(amount.value(), amount.unit());
    }

    /** Temperatures also go by their letter alone, {@code 85 F}. */
    private Temperature temperature(String text) {
        Amount<TemperatureUnit> amount = UnitText.parse(text, List.of(TemperatureUnit.values()), decimal);
        return Temperature.of(amount.value(), amount.unit());
    }
}
