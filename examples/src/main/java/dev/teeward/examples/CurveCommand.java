package dev.teeward.examples;

import dev.teeward.fitting.io.WholeFile;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.DPlane;
import dev.teeward.flight.impact.Delivery;
import dev.teeward.flight.impact.LieEffect;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.Speed;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What face, path and lie do to start and curve. */
@Command(
        name = "curve",
        description = "Shows what a face, a path and a lie do to start and curve, in closed form and flown.",
        sortOptions = false,
        footer = {
            "",
            "Right of the target is positive for both hands. The strike is central. A face angle as measured holds the lie"
                    + " already; --lie-deg asks what another lie would do. Have any change of a club made and checked by a"
                    + " qualified club builder."
        })
final class CurveCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    @Option(
            names = "--club-speed-mph",
            required = true,
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Club speed.")
    private double clubSpeed;

    @Option(
            names = "--loft-deg",
            required = true,
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Dynamic loft, as delivered.")
    private double loft;

    @Option(
            names = "--attack-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Attack angle, upwards positive; 0 if not given.")
    private double attack;

    @Option(
            names = "--path-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Club path; 0 if not given.")
    private double path;

    @Option(
            names = "--face-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "Face angle to the target; 0 if not given.")
    private double face;

    @Option(
            names = "--lie-deg",
            paramLabel = "N",
            converter = DecimalConverter.class,
            description = "First turn the face by a lie so much more upright; 0 if not given.")
    private double lie;

    @Option(
            names = "--head",
            paramLabel = "KIND",
            converter = HeadConverter.class,
            defaultValue = "iron-6",
            description = "A typical head: " + HeadConverter.NAMES + "; ${DEFAULT-VALUE} if not given.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private ClubHead head;

    @Option(names = "--left", description = "The golfer is left-handed.")
    private boolean left;

    @Option(names = "--json", paramLabel = "FILE", description = "Also write every number.")
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
        Handedness hand = left ? Handedness.LEFT : Handedness.RIGHT;
        ClubHead struck = head.toBuilder().handedness(hand).build();
        Delivery delivery;
        DPlane plane;
        Flight flight;
        try {
            FlightModel model = air.applyTo(FlightModel.standard());
            delivery = LieEffect.of(Angle.ofDegrees(lie), hand).applyTo(delivery());
            plane = DPlane.of(delivery, struck);
            flight = model.fly(RigidImpact.standard().strike(delivery, struck).launch());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
        OptionalDouble straightStart = upright(() -> LieEffect.removingStart(delivery, struck));
        OptionalDouble noCurve = upright(() -> LieEffect.removingCurve(delivery, hand));
        if (json != null) {
            Map<String, @Nullable Object> tree = tree(delivery, plane, flight, straightStart, noCurve);
            WholeFile.write(json, text -> text.write(JsonText.of(tree)));
        }
        PrintWriter out = spec.commandLine().getOut();
        double curve = flight.curve().yards();
        double estimate = plane.curveEstimate(flight.carry()).yards();
        say(
                out,
                "face %s of the target, %s of the path; spin loft %.1f deg",
                side(delivery.faceAngle().degrees(), "deg"),
                side(plane.faceToPath().degrees(), "deg"),
                plane.spinLoft().degrees());
        say(
                out,
                "closed form: starts %s, %.0f %% of the way from path to face; spin axis tilted %s",
                side(plane.launch().startDirection().degrees(), "deg"),
                100.0 * plane.faceShare(),
                side(plane.launch().axisTilt().degrees(), "deg"));
        say(
                out,
                "flown: starts %s, carries %.1f yd, curves %s (%s), lands %s of the target line",
                side(flight.launch().startDirection().degrees(), "deg"),
                flight.carry().yards(),
                side(curve, "yd"),
                hand.curveWord(curve),
                side(flight.side().yards(), "yd"));
        say(
                out,
                "curve by the closed form %s, %.1f yd off the flight; it may be off by %.0f %%",
                side(estimate, "yd"),
                Math.abs(estimate - curve),
                100.0 * DPlane.CURVE_RELATIVE_ERROR);
        say(out, "to start on the target line: %s", change(straightStart));
        say(out, "to fly without curve: %s", change(noCurve));
        say(out, "have a lie changed, and checked afterwards, by a qualified club builder");
        return 0;
    }

    private Delivery delivery() {
        return Delivery.builder()
                .clubSpeed(Speed.ofMph(clubSpeed))
                .attackAngle(Angle.ofDegrees(attack))
                .clubPath(Angle.ofDegrees(path))
                .faceAngle(Angle.ofDegrees(face))
                .dynamicLoft(Angle.ofDegrees(loft))
                .build();
    }

    /** How much more upright, or nothing where no lie does it. */
    private static OptionalDouble upright(Supplier<LieEffect> change) {
        try {
            return OptionalDouble.of(change.get().upright().degrees());
        } catch (IllegalArgumentException e) {
            return OptionalDouble.empty();
        }
    }

    private static void say(PrintWriter out, String pattern, Object... values) {
        out.println(String.format(Locale.ROOT, pattern, values));
    }

    private static String side(double rightPositive, String unit) {
        String number = String.format(Locale.ROOT, "%.1f %s", Math.abs(rightPositive), unit);
        return Math.abs(rightPositive) < 0.05 ? number : number + (rightPositive > 0.0 ? " right" : " left");
    }

    private static String change(OptionalDouble upright) {
        if (upright.isEmpty()) {
            return "no change of lie up to 20 deg does it; look at face and path";
        }
        double degrees = upright.getAsDouble();
        return String.format(
                Locale.ROOT, "a lie %.1f deg %s", Math.abs(degrees), degrees < 0.0 ? "flatter" : "more upright");
    }

    private static Map<String, @Nullable Object> tree(
            Delivery delivery, DPlane plane, Flight flight, OptionalDouble straightStart, OptionalDouble noCurve) {
        Map<String, @Nullable Object> tree = new LinkedHashMap<>();
        tree.put("schema", "teeward-curve/1");
        tree.put("face_angle_deg", delivery.faceAngle().degrees());
        tree.put("dynamic_loft_deg", delivery.dynamicLoft().degrees());
        tree.put("face_to_path_deg", plane.faceToPath().degrees());
        tree.put("spin_loft_deg", plane.spinLoft().degrees());
        tree.put("face_share", plane.faceShare());
        tree.put("closed_start_direction_deg", plane.launch().startDirection().degrees());
        tree.put("closed_axis_tilt_deg", plane.launch().axisTilt().degrees());
        tree.put("closed_curve_yd", plane.curveEstimate(flight.carry()).yards());
        tree.put("start_direction_deg", flight.launch().startDirection().degrees());
        tree.put("axis_tilt_deg", flight.launch().axisTilt().degrees());
        tree.put("carry_yd", flight.carry().yards());
        tree.put("curve_yd", flight.curve().yards());
        tree.put("side_yd", flight.side().yards());
        tree.put("lie_to_start_straight_deg", straightStart.isPresent() ? straightStart.getAsDouble() : null);
        tree.put("lie_to_fly_straight_deg", noCurve.isPresent() ? noCurve.getAsDouble() : null);
        tree.put("warning", "have a lie changed, and checked afterwards, by a qualified club builder");
        return tree;
    }
}
