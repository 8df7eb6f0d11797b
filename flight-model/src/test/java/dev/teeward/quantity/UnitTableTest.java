package dev.teeward.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Every unit against a value typed from its source, and every unit there and back. */
class UnitTableTest {
    private static final List<Unit[]> ALL = Stream.of(Unit.class.getPermittedSubclasses())
            .map(type -> (Unit[]) type.getEnumConstants())
            .toList();

    private static final Map<String, Unit> BY_NAME = ALL.stream()
            .flatMap(Stream::of)
            .collect(Collectors.toMap(u -> ((Enum<?>) u).getDeclaringClass().getSimpleName() + "." + u, u -> u));

    @ParameterizedTest(name = "{0}.{1}")
    @CsvFileSource(resources = "units.csv", useHeadersInDisplayName = true)
    void matchesItsSource(
            String enumeration,
            String constant,
            String symbol,
            String suffix,
            String accessor,
            double one,
            double zero,
            String source)
            throws ReflectiveOperationException {
        Unit unit = BY_NAME.get(enumeration + "." + constant);
        assertEquals(symbol == null ? "" : symbol, unit.symbol(), source);
        assertEquals(suffix == null ? "" : suffix, unit.suffix(), source);
        // Half a unit of the sixteenth digit of the value typed, plus the rounding of one multiplication.
        assertEquals(one, unit.toSi(1.0), 2.0 * Math.ulp(one), source);
        assertEquals(zero, unit.toSi(0.0), 2.0 * Math.ulp(zero), source);
        // The inverse from the typed values alone: a unit that converts upside down cannot pass.
        assertEquals(1.0, unit.fromSi(one), 4.0 * Math.ulp(one) / (one - zero) + 2.0 * Math.ulp(1.0), source);
        assertEquals(0.0, unit.fromSi(zero), zero == 0.0 ? 0.0 : 4.0 * Math.ulp(zero) / (one - zero), source);
        if (accessor != null) {
            String quantity =
                    "dev.teeward.quantity." + enumeration.substring(0, enumeration.length() - "Unit".length());
            matchesItsSource(Class.forName(quantity), accessor, unit.siUnit(), one);
        }
    }

    /** The factory, the accessor and the short form, found by name and not by what they do. */
    private static void matchesItsSource(Class<?> quantity, String accessor, Unit siUnit, double one)
            throws ReflectiveOperationException {
        String factory = "of" + Character.toUpperCase(accessor.charAt(0)) + accessor.substring(1);
        Object made = quantity.getMethod(factory, double.class).invoke(null, 1.0);
        Object si = quantity.getMethod(
                        "value",
                        siUnit.getClass().isEnum()
                                ? siUnit.getClass()
                                : siUnit.getClass().getSuperclass())
                .invoke(made, siUnit);
        assertEquals(one, (double) si, 2.0 * Math.ulp(one), factory);
        assertEquals(made, Units.class.getMethod(accessor, double.class).invoke(null, 1.0), accessor);
        double back = (double) quantity.getMethod(accessor).invoke(made);
        assertEquals(1.0, back, 1e-12, accessor);
    }

    @Test
    void everyUnitStandsInTheTable() throws Exception {
        Set<String> rows = new TreeSet<>();
        try (var in = UnitTableTest.class.getResourceAsStream("units.csv")) {
            new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8)
                    .lines()
                    .filter(l -> !l.startsWith("#") && !l.startsWith("enumeration"))
                    .forEach(l -> rows.add(l.split(",", -1)[0] + "." + l.split(",", -1)[1]));
        }
        assertEquals(new TreeSet<>(BY_NAME.keySet()), rows);
    }

    @Test
    void roundTripStaysWithinTwoUlp() {
        forEachUnitAndValue((unit, value) -> {
            double si = unit.toSi(value);
            double back = unit.fromSi(si);
            // Temperature scales have their own zero: what can be kept is the value in kelvins.
            double allowed = unit instanceof TemperatureUnit
                    ? 2.0 * Math.ulp(si) / (unit.toSi(1.0) - unit.toSi(0.0))
                    : 2.0 * Math.ulp(value);
            assertEquals(value, back, allowed, () -> value + " " + unit + " came back as " + back);
            assertEquals(si, unit.toSi(back), 2.0 * Math.ulp(si), () -> value + " " + unit + " changed in SI");
        });
    }

    @Test
    void biggerInTheUnitIsBiggerInSi() {
        forEachUnitAndValue((unit, value) -> assertTrue(unit.toSi(value + Math.abs(value) + 1.0) > unit.toSi(value)));
    }

    @Test
    void symbolsAndSuffixesAreUniqueWithinADimension() {
        for (Unit[] units : ALL) {
            assertEquals(
                    units.length, Stream.of(units).map(Unit::symbol).distinct().count());
            assertEquals(
                    units.length, Stream.of(units).map(Unit::suffix).distinct().count());
            for (Unit unit : units) {
                assertSame(unit.siUnit(), unit.siUnit().siUnit());
                assertEquals(3.25, unit.siUnit().toSi(3.25), 0.0);
                assertTrue(unit.suffix().matches("[a-z]*"), unit.suffix());
            }
        }
    }

    private static void forEachUnitAndValue(BiConsumer<Unit, Double> check) {
        java.util.SplittableRandom random = new java.util.SplittableRandom(20_261_124L);
        for (Unit[] units : ALL) {
            for (Unit unit : units) {
                for (int i = 0; i < 2_000; i++) {
                    check.accept(
                            unit,
                            (unit instanceof TemperatureUnit ? 1.0 : random.nextInt(2) * 2 - 1)
                                    * random.nextDouble(0.0, 1.0)
                                    * Math.pow(10.0, random.nextInt(-6, 7)));
                }
            }
        }
    }
}
