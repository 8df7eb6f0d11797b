package dev.teeward.fitting.report;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.ClubShots;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.summary.Ellipse;
import dev.teeward.fitting.summary.LandingPattern;
import dev.teeward.fitting.summary.ShotShapes;
import dev.teeward.fitting.summary.StrikePattern;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Handedness;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Unit;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The numbers of landings, shapes and strikes. */
final class PatternBranch {
    private static final double CENTIMETRE = 0.01;

    private PatternBranch() {}

    static Branch patterns(HeadToHeadResult result, UnitSystem units) {
        Unit length = Metric.CARRY.unit(units);
        Optional<Handedness> hand = result.session().hand();
        Branch branch = new Branch()
                .branch("first", club(result.first(), hand, length))
                .branch("second", club(result.second(), hand, length));
        if (result.patterns().isEmpty()) {
            return branch.nothing("ratio").nothing("mean_distance").nothing("tighter");
        }
        var compared = result.patterns().get();
        return branch.ratio("ratio", compared.ratio())
                .test("mean_distance", compared.meanDistance(), length)
                .text("tighter", compared.tighter());
    }

    private static Branch club(ClubShots club, Optional<Handedness> hand, Unit length) {
        return new Branch()
                .branch("landing", club.pattern().map(p -> landing(p, length)).orElse(null))
                .branch(
                        "shapes",
                        club.shapes().map(s -> shapes(s, club, hand, length)).orElse(null));
    }

    private static Branch landing(LandingPattern.Result p, Unit length) {
        return new Branch()
                .count("n", p.n())
                .branch(
                        "center",
                        new Branch()
                                .estimate("carry", p.centerCarry(), length)
                                .estimate("side", p.centerSide(), length))
                .branch("bias", bias(p, length))
                .branch("ellipse", ellipse(p.ellipse(), length))
                .estimate("r50_center", p.radiusAboutCenter(0.5), length)
                .estimate("r90_center", p.radiusAboutCenter(0.9), length)
                .estimate("r50_target", p.radiusAboutTarget(0.5), length)
                .estimate("r90_target", p.radiusAboutTarget(0.9), length)
                .text("method", p.method())
                .warnings(p.warnings());
    }

    private static @Nullable Branch bias(LandingPattern.Result p, Unit length) {
        if (p.biasCarry().isEmpty() || p.biasSide().isEmpty()) {
            return null;
        }
        return new Branch().estimate("carry", p.biasCarry(), length).estimate("side", p.biasSide(), length);
    }

    private static Branch ellipse(Ellipse e, Unit length) {
        double perArea = length.fromSi(1.0) * length.fromSi(1.0);
        return new Branch()
                .word("kind", e.kind())
                .number("level", e.level())
                .number("level_percent", 100.0 * e.level())
                .number("center_carry", length.fromSi(e.centerX()))
                .number("center_side", length.fromSi(e.centerY()))
                .number("semi_major", length.fromSi(e.semiMajor()))
                .number("semi_minor", length.fromSi(e.semiMinor()))
                .text("unit", length.symbol())
                .quantity("angle", e.angle(), AngleUnit.DEGREE)
                .branch("area", new Branch().number("value", e.area() * perArea).text("unit", length.symbol() + "2"));
    }

    private static Branch shapes(ShotShapes.Result s, ClubShots club, Optional<Handedness> hand, Unit length) {
        return new Branch()
                .count("n", s.n())
                .branches(
                        "table",
                        Branch.each(
                                s.table().entrySet(),
                                entry -> new Branch()
                                        .word("start", entry.getKey().start())
                                        .word("curve", entry.getKey().curve())
                                        .text(
                                                "words",
                                                hand.map(h -> entry.getKey().words(h)))
                                        .count("count", entry.getValue())))
                .count("misses_left", s.missesLeft())
                .count("misses_right", s.missesRight())
                .quantity("miss_angle", s.missThreshold(), AngleUnit.DEGREE)
                .branch(
                        "miss_limit",
                        club.pattern()
                                .map(p -> new Branch()
                                        .number(
                                                "value",
                                                length.fromSi(Math.tan(s.missThreshold())
                                                        * p.centerCarry().value()))
                                        .text("unit", length.symbol()))
                                .orElse(null))
                .word("miss", s.miss())
                .share("crossing_share", s.crossingShare())
                .text("method", s.method())
                .warnings(s.warnings());
    }

    static @Nullable Branch strike(HeadToHeadResult result, UnitSystem units) {
        if (result.first().strike().isEmpty() && result.second().strike().isEmpty()) {
            return null;
        }
        return new Branch()
                .branch(
                        "first",
                        result.first().strike().map(s -> strike(s, units)).orElse(null))
                .branch(
                        "second",
                        result.second().strike().map(s -> strike(s, units)).orElse(null));
    }

    private static Branch strike(StrikePattern.Result s, UnitSystem units) {
        Unit length = LengthUnit.MILLIMETER;
        Unit speed = Metric.BALL_SPEED.unit(units);
        return new Branch()
                .count("n", s.n())
                .estimate("center_toe", s.centerToe(), length)
                .estimate("center_up", s.centerUp(), length)
                .quantity("sd_toe", s.deviationToe(), length)
                .quantity("sd_up", s.deviationUp(), length)
                .quantity("rms_offset", s.rmsOffset(), length)
                .branch(
                        "cost",
                        s.cost()
                                .map(c -> new Branch()
                                        .estimate("at_ten_millimeters", c.at(CENTIMETRE), speed)
                                        .estimate("mean", c.mean(), speed)
                                        .number("statistic", c.statistic())
                                        .count("df", c.degreesOfFreedom())
                                        .number("p", c.pValue())
                                        .number("determination", c.determination())
                                        .text("method", c.method()))
                                .orElse(null))
                .warnings(s.warnings());
    }
}
