package dev.teeward.fitting.report;

import dev.teeward.fitting.compare.Exclusion;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.RatioUnit;
import dev.teeward.quantity.Unit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** An object of the tree while it grows. What is absent is there, as null. */
final class Branch {
    private final Map<String, @Nullable Object> map = new LinkedHashMap<>();

    Branch text(String name, @Nullable String text) {
        map.put(name, text);
        return this;
    }

    Branch text(String name, Optional<String> text) {
        return text(name, text.orElse(null));
    }

    Branch word(String name, Enum<?> constant) {
        return text(name, word(constant));
    }

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(java.util.Locale.ROOT);
    }

    Branch count(String name, int count) {
        map.put(name, count);
        return this;
    }

    Branch truth(String name, boolean truth) {
        map.put(name, truth);
        return this;
    }

    /** A number, null if it is infinite. */
    Branch number(String name, double number) {
        map.put(name, finite(number));
        return this;
    }

    Branch number(String name, OptionalDouble number) {
        map.put(name, number.isPresent() ? finite(number.getAsDouble()) : null);
        return this;
    }

    private static @Nullable Object finite(double number) {
        return Double.isFinite(number) ? Double.valueOf(number + 0.0) : null;
    }

    Branch numbers(String name, List<Double> numbers) {
        map.put(name, List.copyOf(numbers));
        return this;
    }

    Branch whole(String name, List<Integer> numbers) {
        map.put(name, List.copyOf(numbers));
        return this;
    }

    Branch quantity(String name, double si, Unit shown) {
        return branch(name, new Branch().number("value", shown.fromSi(si)).text("unit", shown.symbol()));
    }

    Branch nothing(String name) {
        map.put(name, null);
        return this;
    }

    Branch branch(String name, @Nullable Branch branch) {
        map.put(name, branch == null ? null : branch.toMap());
        return this;
    }

    /** An object that is put together when it is first looked into. */
    Branch later(String name, Supplier<Branch> branch) {
        map.put(name, new LaterMap(() -> branch.get().toMap()));
        return this;
    }

    Branch branches(String name, List<Branch> branches) {
        map.put(name, branches.stream().map(Branch::toMap).toList());
        return this;
    }

    Branch texts(String name, List<String> texts) {
        map.put(name, List.copyOf(texts));
        return this;
    }

    Branch warnings(List<Warning> warnings) {
        return branches(
                "warnings",
                warnings.stream()
                        .map(w -> new Branch().text("code", w.code()).text("message", w.message()))
                        .toList());
    }

    Branch exclusions(List<Exclusion> exclusions) {
        return branches(
                "exclusions",
                exclusions.stream()
                        .map(e -> new Branch().count("count", e.count()).text("reason", e.reason()))
                        .toList());
    }

    Branch estimate(String name, Estimate estimate, Unit shown) {
        return branch(name, of(estimate, shown));
    }

    Branch estimate(String name, Optional<Estimate> estimate, Unit shown) {
        return branch(name, estimate.map(e -> of(e, shown)).orElse(null));
    }

    static Branch of(Estimate estimate, Unit shown) {
        Estimate converted = estimate.convertTo(shown);
        return new Branch()
                .number("value", converted.value())
                .number("lower", converted.interval().lower())
                .number("upper", converted.interval().upper())
                .number("level", converted.interval().level())
                .text("unit", shown.symbol());
    }

    /** A share of shots in percent. */
    Branch share(String name, Estimate share) {
        return branch(
                name,
                new Branch()
                        .number("value", 100.0 * share.value())
                        .number("lower", 100.0 * share.interval().lower())
                        .number("upper", 100.0 * share.interval().upper())
                        .number("level", share.interval().level())
                        .text("unit", "%"));
    }

    Branch test(String name, TestResult test, Unit shown) {
        return branch(name, test(of(test.estimate(), shown), test, shown::fromSi));
    }

    /** A test whose estimate has no unit of its own. */
    Branch ratio(String name, TestResult test) {
        return test(name, test, RatioUnit.ONE);
    }

    /** A test with its estimate multiplied by a factor above 0, which gives it a unit. */
    Branch scaled(String name, TestResult test, double factor, String unit) {
        Estimate e = test.estimate();
        Branch estimate = new Branch()
                .number("value", factor * e.value())
                .number("lower", factor * e.interval().lower())
                .number("upper", factor * e.interval().upper())
                .number("level", e.interval().level())
                .text("unit", unit);
        return branch(name, test(estimate, test, x -> factor * x));
    }

    private static Branch test(Branch estimate, TestResult test, DoubleUnaryOperator shown) {
        // A statistic that is itself a mean of differences is in the unit of the estimate; any other is a pure number.
        OptionalDouble statistic =
                test.statisticName().startsWith("mean") && test.statistic().isPresent()
                        ? OptionalDouble.of(shown.applyAsDouble(test.statistic().getAsDouble()))
                        : test.statistic();
        estimate.map.put("df", List.copyOf(test.degreesOfFreedom()));
        estimate.map.put("n", List.copyOf(test.sampleSizes()));
        return estimate.number("p", test.pValue())
                .number("null_value", shown.applyAsDouble(test.nullValue()))
                .word("alternative", test.alternative())
                .text("statistic_name", test.statisticName())
                .number("statistic", statistic)
                .text("method", test.method())
                .exclusions(test.exclusions())
                .warnings(test.warnings());
    }

    Map<String, @Nullable Object> toMap() {
        return Collections.unmodifiableMap(map);
    }

    static <T> List<Branch> each(Iterable<T> items, java.util.function.Function<T, Branch> form) {
        List<Branch> branches = new ArrayList<>();
        items.forEach(item -> branches.add(form.apply(item)));
        return branches;
    }
}
