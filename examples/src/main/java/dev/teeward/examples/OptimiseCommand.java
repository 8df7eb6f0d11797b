package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.TurfClass;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.flight.study.LaunchOptimizer;
import dev.teeward.flight.study.LaunchOptimum;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import dev.teeward.quantity.SpinRateUnit;
import dev.teeward.quantity.Unit;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Finds the launch, or the delivery of a driver, that carries farthest, and how far one may be from it. */
@Command(
        name = "optimise",
        description =
                "Finds the launch angle and spin, or the loft and attack angle, that carry farthest, or end farthest.",
        sortOptions = false,
        footer = {
            "",
            "With a club speed a typical --head strikes the ball at the centre of its face; its constants are common practice or"
                    + " from memory, as TypicalHead tells. The region is every launch that loses at most the loss; it matters more than its"
                    + " middle."
        })
final class OptimiseCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = "--ball-speed-mph",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Ball speed, up to 246 mph: the best launch angle and spin.")
    private @Nullable Double ballSpeed;

    @Option(
            names = "--club-speed-mph",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Club speed instead: the best dynamic loft and attack angle.")
    private @Nullable Double clubSpeed;

    @Option(
            names = "--head",
            paramLabel = "HEAD",
            converter = HeadConverter.class,
            description = "With a club speed, the head: " + HeadConverter.NAMES + "; driver if not given.")
    private @Nullable ClubHead head;

    @Option(
            names = "--loss-yd",
            paramLabel = "N",
            converter = DecimalConverter.class,
            defaultValue = "1",
            description = "The carry, or total, that may be lost in the region, ${DEFAULT-VALUE} yd if not given.")
    private Double loss = 1.0;

    @Option(
            names = "--turf",
            paramLabel = "KIND",
            converter = TurfConverter.class,
            description =
                    "Makes the total as great as possible instead of the carry, on level turf of this kind: fairway,"
                            + " firm-fairway, soft-fairway, rough, green, firm-green or soft-green. No turf's numbers are validated.")
    private @Nullable TurfClass turf;

    @Option(names = "--json", paramLabel = "FILE", description = "Write the optimum and the contour as JSON too.")
    private @Nullable Path json;

    @Mixin
    private AirOptions air = new AirOptions();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help message and exit.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Override
    public Integer call() {
        FlightModel model = air.applyTo(FlightModel.standard());
        LaunchOptimum best;
        try {
            LaunchOptimizer optimizer = turf == null
                    ? LaunchOptimizer.of(model)
                    : LaunchOptimizer.of(model.withGround(Ground.of(turf))).withTotal();
            best = optimum(optimizer.withLoss(Length.ofYards(loss)));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(String.format(
                Locale.ROOT,
                "carry %.1f yd%s, descent %.1f deg",
                best.flight().carry().yards(),
                best.flight()
                        .total()
                        .map(total -> String.format(Locale.ROOT, ", total %.1f yd", total.yards()))
                        .orElse(""),
                best.flight().descentAngle().degrees()));
        out.println(line(best.first()));
        out.println(line(best.second()));
        out.println(String.format(Locale.ROOT, "in brackets what loses at most %.1f yd", loss));
        best.warnings().forEach(w -> out.println("warning: " + w.message()));
        if (json != null) {
            WholeFile.write(json, text -> text.write(JsonText.of(tree(best))));
        }
        return 0;
    }

    private LaunchOptimum optimum(LaunchOptimizer optimizer) {
        if (head != null && clubSpeed == null) {
            throw new IllegalArgumentException("--head needs --club-speed-mph");
        }
        if (ballSpeed != null && clubSpeed == null) {
            return optimizer.launch(LaunchConditions.builder()
                    .ballSpeed(Speed.ofMph(ballSpeed))
                    .launchAngle(Angle.ofDegrees(12.0))
                    .spinRate(SpinRate.ofRpm(2_600.0))
                    .build());
        }
        if (clubSpeed != null && ballSpeed == null) {
            Angle none = Angle.ofDegrees(0.0);
            return optimizer.delivery(
                    Delivery.builder()
                            .clubSpeed(Speed.ofMph(clubSpeed))
                            .attackAngle(none)
                            .clubPath(none)
                            .faceAngle(none)
                            .dynamicLoft(Angle.ofDegrees(14.0))
                            .build(),
                    head == null ? TypicalHead.driver() : head,
                    RigidImpact.standard());
        }
        throw new IllegalArgumentException("give either --ball-speed-mph or --club-speed-mph");
    }

    private static Unit shown(LaunchOptimum.Variable v) {
        return v.unit() instanceof SpinRateUnit ? SpinRateUnit.REVOLUTION_PER_MINUTE : AngleUnit.DEGREE;
    }

    private static String line(LaunchOptimum.Variable v) {
        Unit unit = shown(v);
        return String.format(
                Locale.ROOT,
                unit == AngleUnit.DEGREE ? "%s %.1f %s (%.1f to %.1f)" : "%s %.0f %s (%.0f to %.0f)",
                v.name().replace('_', ' '),
                unit.fromSi(v.value()),
                unit.symbol(),
                unit.fromSi(v.lowest()),
                unit.fromSi(v.highest()));
    }

    private static Map<String, @Nullable Object> tree(LaunchOptimum best) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-optimum/1");
        tree.put("carry_yd", best.flight().carry().yards());
        tree.put("total_yd", best.flight().total().map(Length::yards).orElse(null));
        for (LaunchOptimum.Variable v : new LaunchOptimum.Variable[] {best.first(), best.second()}) {
            Unit unit = shown(v);
            Map<String, @Nullable Object> variable = new LinkedHashMap<>();
            variable.put("value", unit.fromSi(v.value()));
            variable.put("lowest", unit.fromSi(v.lowest()));
            variable.put("highest", unit.fromSi(v.highest()));
            tree.put(v.name() + "_" + unit.suffix(), variable);
        }
        tree.put("rests_on", best.restsOn());
        tree.put(
                "contour",
                best.region().stream()
                        .map(p -> List.of(
                                shown(best.first()).fromSi(p.first()),
                                shown(best.second()).fromSi(p.second())))
                        .toList());
        return tree;
    }
}
