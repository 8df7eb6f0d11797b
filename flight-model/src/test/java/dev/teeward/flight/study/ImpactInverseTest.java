package dev.teeward.flight.study;

import static dev.teeward.flight.study.ImpactQuantity.ATTACK_ANGLE;
import static dev.teeward.flight.study.ImpactQuantity.AXIS_TILT;
import static dev.teeward.flight.study.ImpactQuantity.BALL_SPEED;
import static dev.teeward.flight.study.ImpactQuantity.CLUB_PATH;
import static dev.teeward.flight.study.ImpactQuantity.CLUB_SPEED;
import static dev.teeward.flight.study.ImpactQuantity.DYNAMIC_LOFT;
import static dev.teeward.flight.study.ImpactQuantity.FACE_ANGLE;
import static dev.teeward.flight.study.ImpactQuantity.LAUNCH_ANGLE;
import static dev.teeward.flight.study.ImpactQuantity.SPIN_RATE;
import static dev.teeward.flight.study.ImpactQuantity.START_DIRECTION;
import static dev.teeward.flight.study.ImpactQuantity.STRIKE_TOE;
import static dev.teeward.flight.study.ImpactQuantity.STRIKE_UP;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpliedDelivery;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.flight.impact.TypicalHead;
import dev.teeward.quantity.AngleUnit;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.SpeedUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Backwards through the impact, and whether a launch follows from a delivery. */
class ImpactInverseTest {
    private static final ClubHead DRIVER = TypicalHead.driver();
    private static final ClubHead IRON =
            TypicalHead.iron(7).toBuilder().tangentialRestitution(0.0).build();

    /** Standard deviations of an invented device, in the units of the quantities. */
    private static final double[] DEVIATIONS = {0.4, 0.6, 0.5, 0.7, 0.8, 2.0, 2.0, 0.4, 0.4, 0.3, 120.0, 1.2};

    private static final double[] DRIVE = {45.0, 1.5, -1.0, 1.2, 13.0, 6.0, -4.0};
    private static final double[] SEVEN = {37.0, -4.0, 1.0, 2.0, 25.0, 0.0, 0.0};

    private static double[] all(double[] delivery, ClubHead head) {
        double[] launch = ImpactEquations.launch(RigidImpact.standard(), head, delivery);
        double[] all = new double[12];
        System.arraycopy(delivery, 0, all, 0, 7);
        System.arraycopy(launch, 0, all, 7, 5);
        return all;
    }

    private static MeasuredImpact measured(double[] values, ImpactQuantity... quantities) {
        MeasuredImpact shot = MeasuredImpact.empty();
        for (ImpactQuantity q : quantities) {
            shot = shot.with(q, values[q.index()], DEVIATIONS[q.index()], q.unit());
        }
        return shot;
    }

    private static MeasuredImpact central(MeasuredImpact shot) {
        return shot.assuming(STRIKE_TOE, 0.0, LengthUnit.MILLIMETER).assuming(STRIKE_UP, 0.0, LengthUnit.MILLIMETER);
    }

    private static double value(ImpactInverse.Result result, ImpactQuantity quantity) {
        return result.estimate(quantity).orElseThrow().value();
    }

    /** Against the closed form of a central impact on a head without inertia. */
    @Test
    void aWholeLaunchGivesTheClosedForm() {
        ClubHead plain =
                ClubHead.builder().mass(Mass.ofGrams(270.0)).restitution(0.78).build();
        double[] values = all(SEVEN, plain);
        ImpactInverse.Result result = ImpactInverse.withDefaults()
                .solve(measured(values, BALL_SPEED, LAUNCH_ANGLE, START_DIRECTION, SPIN_RATE, AXIS_TILT), plain);
        ImpliedDelivery implied = ImpliedDelivery.of(
                RigidImpact.standard()
                        .strike(ImpactEquations.delivery(SEVEN), plain)
                        .launch(),
                plain);
        assertEquals(implied.faceAngle().degrees(), value(result, FACE_ANGLE), 1e-6);
        assertEquals(implied.dynamicLoft().degrees(), value(result, DYNAMIC_LOFT), 1e-6);
        for (ImpactQuantity q : List.of(CLUB_SPEED, ATTACK_ANGLE, CLUB_PATH)) {
            assertEquals(SEVEN[q.index()], value(result, q), 1e-6);
        }
        assertEquals(List.of("strike-assumed-central"), codes(result.warnings()));
        assertEquals(5, result.rank());
        assertEquals(0, result.degreesOfFreedom());
        assertEquals(0.0, result.chiSquare(), 1e-12);
        assertEquals(29.0, result.spinLoft().orElseThrow().value(), 0.1);
        assertEquals(1.0, result.faceToPath().orElseThrow().value(), 1e-6);
    }

    private static List<String> codes(List<Warning> warnings) {
        return warnings.stream().map(Warning::code).toList();
    }

    /** Seven unknowns, five numbers: on a head that turns, the face is still determined but for bulge and roll. */
    @Test
    void aLaunchAloneLeavesTheStrikeOpen() {
        double[] values = all(SEVEN, IRON);
        ImpactInverse.Result result = ImpactInverse.withDefaults()
                .solve(measured(values, BALL_SPEED, LAUNCH_ANGLE, START_DIRECTION, SPIN_RATE, AXIS_TILT), IRON);
        assertEquals(5, result.rank());
        assertTrue(result.undetermined().containsAll(List.of(STRIKE_TOE, STRIKE_UP, CLUB_PATH)), result::toString);
        // The face is flat, so every impulse tells the normal: velocity and spin alone.
        assertEquals(2.0, value(result, FACE_ANGLE), 1e-5);
        assertEquals(25.0, value(result, DYNAMIC_LOFT), 1e-5);
        assertTrue(result.estimate(STRIKE_TOE).isEmpty());
        assertTrue(codes(result.warnings()).contains("delivery-not-determined"));
        assertTrue(result.estimate(BALL_SPEED).isEmpty(), "one of the launch");
    }

    /** With the head's velocity measured, what is left tells the strike by its gear effect; everything comes back. */
    @Test
    void theStrikeComesBackThroughTheGearEffect() {
        double[] values = all(DRIVE, DRIVER);
        ImpactInverse.Result result = ImpactInverse.withDefaults()
                .solve(
                        measured(
                                values,
                                CLUB_SPEED,
                                ATTACK_ANGLE,
                                CLUB_PATH,
                                BALL_SPEED,
                                LAUNCH_ANGLE,
                                START_DIRECTION,
                                SPIN_RATE,
                                AXIS_TILT),
                        DRIVER);
        assertEquals(List.of(), result.undetermined());
        assertEquals(7, result.rank());
        assertEquals(1, result.degreesOfFreedom());
        for (ImpactQuantity q : ImpactQuantity.values()) {
            if (q.isDelivery()) {
                assertEquals(DRIVE[q.index()], value(result, q), 1e-3, q.label());
            }
        }
    }

    /** Spin, launch and ball speed say nothing of the path when the directions are missing. */
    @Test
    void whatNothingMeasuresIsNotInvented() {
        double[] values = all(SEVEN, IRON);
        ImpactInverse.Result result = ImpactInverse.withDefaults()
                .withLevel(0.9)
                .solve(central(measured(values, BALL_SPEED, CLUB_SPEED, LAUNCH_ANGLE)), IRON);
        assertTrue(result.undetermined().contains(CLUB_PATH), result::toString);
        assertTrue(result.undetermined().contains(FACE_ANGLE), result::toString);
        assertThrows(
                IllegalArgumentException.class,
                () -> ImpactInverse.withDefaults().solve(measured(values, CLUB_SPEED), IRON));
        assertThrows(
                IllegalArgumentException.class,
                () -> ImpactInverse.withDefaults().withLevel(1.0));
    }

    /**
     * 95 percent intervals over 400 noisy shots, everything measured but face and loft: between 92.2 and 97.8 percent cover
     * with probability 0.99 each if they are right (binomial, 2.58 standard errors).
     */
    @Test
    void intervalsCover() {
        SplittableRandom random = new SplittableRandom(20_260_501L);
        double[] truth = all(SEVEN, IRON);
        int n = 400;
        int face = 0;
        int loft = 0;
        for (int i = 0; i < n; i++) {
            ImpactInverse.Result result = ImpactInverse.withDefaults()
                    .solve(
                            central(measured(
                                    noisy(truth, random),
                                    CLUB_SPEED,
                                    ATTACK_ANGLE,
                                    CLUB_PATH,
                                    BALL_SPEED,
                                    LAUNCH_ANGLE,
                                    START_DIRECTION,
                                    SPIN_RATE,
                                    AXIS_TILT)),
                            IRON);
            face += covers(result, FACE_ANGLE, 2.0);
            loft += covers(result, DYNAMIC_LOFT, 25.0);
        }
        assertEquals(0.95, (double) face / n, 0.028);
        assertEquals(0.95, (double) loft / n, 0.028);
    }

    private static int covers(ImpactInverse.Result result, ImpactQuantity quantity, double truth) {
        Estimate estimate = result.estimate(quantity).orElseThrow();
        return estimate.interval().contains(truth) ? 1 : 0;
    }

    private static double[] noisy(double[] truth, SplittableRandom random) {
        double[] values = truth.clone();
        for (int k = 0; k < values.length; k++) {
            values[k] += DEVIATIONS[k] * random.nextGaussian();
        }
        return values;
    }

    /**
     * Chi-square of 400 honest shots: mean 5 and variance 10 for 5 degrees of freedom, within four standard errors; the
     * p-values below 0.05 are 5 percent within 2.58.
     */
    @Test
    void honestShotsAreConsistent() {
        SplittableRandom random = new SplittableRandom(20_260_502L);
        double[] truth = all(DRIVE, DRIVER);
        int n = 400;
        double mean = 0.0;
        int alarms = 0;
        for (int i = 0; i < n; i++) {
            ImpactConsistency.Result result = ImpactConsistency.withDefaults()
                    .check(measured(noisy(truth, random), ImpactQuantity.values()), DRIVER);
            assertEquals(5, result.degreesOfFreedom());
            mean += result.chiSquare() / n;
            alarms += result.pValue() < 0.05 ? 1 : 0;
        }
        assertEquals(5.0, mean, 4.0 * Math.sqrt(10.0 / n));
        assertEquals(0.05, (double) alarms / n, 0.028);
    }

    @Test
    void aMisreadIsFoundAndBlamed() {
        double[] values = all(SEVEN, IRON);
        values[SPIN_RATE.index()] -= 1_500.0;
        ImpactConsistency.Result spin =
                ImpactConsistency.withDefaults().check(measured(values, ImpactQuantity.values()), IRON);
        assertTrue(spin.pValue() < 1e-3, spin::toString);
        assertEquals(List.of(SPIN_RATE), spin.mostToBlame(), spin::toString);
        double w = spin.standardized(SPIN_RATE).orElseThrow();
        double without = ImpactConsistency.withDefaults()
                .check(measured(values, ImpactQuantity.values()).without(SPIN_RATE), IRON)
                .chiSquare();
        assertEquals(spin.chiSquare() - w * w, without, 0.05 * spin.chiSquare());
        assertTrue(spin.adjustment(SPIN_RATE).orElseThrow() > 3.0);

        double[] path = all(SEVEN, IRON);
        path[CLUB_PATH.index()] += 5.0;
        ImpactConsistency.Result wrongPath =
                ImpactConsistency.withDefaults().check(measured(path, ImpactQuantity.values()), IRON);
        assertTrue(wrongPath.pValue() < 0.01, wrongPath::toString);
        assertEquals(List.of(CLUB_PATH), wrongPath.mostToBlame(), wrongPath::toString);
    }

    /** Closed form of the upper tail for 5 degrees of freedom, which stays above zero where 1 - F does not. */
    @Test
    void worseMisreadsHaveSmallerProbabilities() {
        double before = 1.0;
        for (double wrong : new double[] {1_500.0, 3_000.0, 5_000.0}) {
            double[] values = all(SEVEN, IRON);
            values[SPIN_RATE.index()] -= wrong;
            ImpactConsistency.Result result =
                    ImpactConsistency.withDefaults().check(measured(values, ImpactQuantity.values()), IRON);
            assertEquals(5, result.degreesOfFreedom());
            double x = result.chiSquare();
            double tail =
                    Erf.erfc(Math.sqrt(0.5 * x)) + Math.sqrt(2.0 * x / Math.PI) * Math.exp(-0.5 * x) * (1.0 + x / 3.0);
            assertEquals(tail, result.pValue(), 1e-10 * tail);
            assertTrue(result.pValue() > 0.0 && result.pValue() < before, result::toString);
            before = result.pValue();
        }
        assertTrue(before < 1e-17, "p " + before);
    }

    /** One check alone cannot tell which of its two sides is wrong. */
    @Test
    void whatChecksOnlyEachOtherIsBlamedTogether() {
        double[] values = all(SEVEN, IRON);
        values[BALL_SPEED.index()] += 4.0;
        MeasuredImpact shot =
                central(measured(values, CLUB_SPEED, BALL_SPEED, LAUNCH_ANGLE, START_DIRECTION, SPIN_RATE, AXIS_TILT));
        ImpactConsistency.Result result = ImpactConsistency.withDefaults().check(shot, IRON);
        assertEquals(1, result.degreesOfFreedom());
        assertTrue(result.mostToBlame().containsAll(List.of(CLUB_SPEED, BALL_SPEED)), result::toString);
        assertTrue(result.adjustment(FACE_ANGLE).isEmpty());
        assertTrue(result.standardized(FACE_ANGLE).isEmpty());
        assertThrows(
                IllegalArgumentException.class,
                () -> ImpactConsistency.withDefaults().check(shot.without(CLUB_SPEED), IRON));
    }

    /**
     * A path and a strike of the toe whose curves cancel: the tilt reads zero, where left and right do not show in club speed
     * and loft to first order; yet they are not those of a straight shot. What may be wrong is left open; a toe that is known
     * determines it.
     */
    @Test
    void aStraightBallDoesNotProveAStraightDelivery() {
        double[] crooked = {45.0, 1.0, 0.0, 0.0, 13.0, 18.0, 0.0};
        double low = -20.0;
        double high = 20.0;
        for (int i = 0; i < 60; i++) {
            crooked[2] = 0.5 * (low + high);
            if (all(crooked, DRIVER)[AXIS_TILT.index()] < 0.0) {
                high = crooked[2];
            } else {
                low = crooked[2];
            }
        }
        double[] values = all(crooked, DRIVER);
        assertEquals(0.0, values[AXIS_TILT.index()], 1e-6);
        assertTrue(Math.abs(crooked[2]) > 0.5, "path " + crooked[2]);
        MeasuredImpact shot = measured(values, BALL_SPEED, LAUNCH_ANGLE, START_DIRECTION, SPIN_RATE, AXIS_TILT)
                .assuming(STRIKE_UP, 0.0, LengthUnit.MILLIMETER);
        ImpactInverse.Result open = ImpactInverse.withDefaults().solve(shot, DRIVER);
        ImpactInverse.Result known = ImpactInverse.withDefaults()
                .solve(shot.with(STRIKE_TOE, values[STRIKE_TOE.index()], 0.001, LengthUnit.MILLIMETER), DRIVER);
        for (ImpactQuantity q : List.of(CLUB_SPEED, ATTACK_ANGLE, CLUB_PATH, FACE_ANGLE, DYNAMIC_LOFT)) {
            assertTrue(open.undetermined().contains(q), q.label() + " of " + open);
            assertEquals(values[q.index()], value(known, q), 1e-3, q.label());
        }
        assertTrue(codes(open.warnings()).contains("delivery-not-determined"));
        assertFalse(codes(open.warnings()).contains("axis-tilt-not-measured"));
    }

    /** Spin and speeds tell how far face and path part, not on which side; nor do they if a direction but no path is known. */
    @Test
    void withoutTheTiltTheSideIsLeftOpen() {
        double[] values = all(new double[] {37.0, -4.0, 1.0, 5.0, 25.0, 0.0, 0.0}, IRON);
        for (ImpactQuantity direction : List.of(CLUB_PATH, START_DIRECTION)) {
            ImpactInverse.Result result = ImpactInverse.withDefaults()
                    .solve(
                            central(measured(
                                    values,
                                    CLUB_SPEED,
                                    ATTACK_ANGLE,
                                    DYNAMIC_LOFT,
                                    direction,
                                    BALL_SPEED,
                                    LAUNCH_ANGLE,
                                    SPIN_RATE)),
                            IRON);
            assertTrue(result.undetermined().contains(FACE_ANGLE), result::toString);
            assertTrue(result.faceToPath().isEmpty());
            assertTrue(codes(result.warnings()).contains("axis-tilt-not-measured"));
        }
    }

    /**
     * Noisy shots of which everything is measured but loft and strike: the strike is weakly seen, with standard deviations of
     * several millimetres, and yet rank 7 of 7 with 2 checks left leaves nothing open, shot by shot. (Of the first 100 shots the
     * 92nd was once left open, whose searches end in one place, 0.0008 mm apart.)
     */
    @Test
    void aDeterminedStrikeIsNotLeftOpen() {
        SplittableRandom random = new SplittableRandom(11L);
        ClubHead head = TypicalHead.iron(7);
        double[] truth = all(DRIVE, head);
        List<ImpactQuantity> known = new ArrayList<>(List.of(ImpactQuantity.values()));
        known.removeAll(List.of(DYNAMIC_LOFT, STRIKE_TOE, STRIKE_UP));
        for (int i = 0; i < 100; i++) {
            double[] values = noisy(truth, random);
            if (i < 88 || i > 93) {
                continue;
            }
            ImpactInverse.Result result =
                    ImpactInverse.withDefaults().solve(measured(values, known.toArray(ImpactQuantity[]::new)), head);
            assertEquals(7, result.rank());
            assertEquals(2, result.degreesOfFreedom());
            assertEquals(List.of(), result.undetermined(), "shot " + i);
        }
    }

    /** Where the profile is straight it is first order; where it is not, chi-square at its ends says how far it may go. */
    @Test
    void anIntervalOfTheStrikeEndsWhereChiSquareHasRisen() {
        ClubHead head = TypicalHead.iron(7);
        double[] truth = all(new double[] {37.0, -4.0, 1.0, 2.0, 25.0, 8.0, 0.0}, head);
        MeasuredImpact shot = measured(
                truth,
                CLUB_SPEED,
                ATTACK_ANGLE,
                CLUB_PATH,
                BALL_SPEED,
                LAUNCH_ANGLE,
                START_DIRECTION,
                SPIN_RATE,
                AXIS_TILT);
        Estimate toe = ImpactInverse.withDefaults()
                .solve(shot, head)
                .estimate(STRIKE_TOE)
                .orElseThrow();
        double quantile = 1.959963984540054; // of the standard normal distribution, 97.5 percent
        for (double end : new double[] {toe.interval().lower(), toe.interval().upper()}) {
            double there = ImpactInverse.withDefaults()
                    .solve(shot.with(STRIKE_TOE, end, 0.001, LengthUnit.MILLIMETER), head)
                    .chiSquare();
            assertEquals(quantile * quantile, there, 0.1, () -> toe + " at " + end);
        }
    }

    /**
     * The strike along an iron's face shows through the loss of ball speed, by its square: straight intervals covered 80 percent
     * at 6 mm and 92 at none, profiles cover at least 95 but for 2.58 standard errors, 400 shots each. Where the side is
     * hidden, too, they may cover more.
     */
    @Test
    @Tag("sweep")
    void strikesOfIronsAreCovered() {
        SplittableRandom random = new SplittableRandom(20_260_503L);
        ClubHead head = TypicalHead.iron(7);
        int n = 400;
        for (double[] delivery : List.of(DRIVE, new double[] {37.0, -4.0, 1.0, 2.0, 25.0, 8.0, 0.0}, SEVEN)) {
            double[] truth = all(delivery, head);
            int[] held = new int[7];
            for (int i = 0; i < n; i++) {
                ImpactInverse.Result result = ImpactInverse.withDefaults()
                        .solve(
                                measured(
                                        noisy(truth, random),
                                        CLUB_SPEED,
                                        ATTACK_ANGLE,
                                        CLUB_PATH,
                                        BALL_SPEED,
                                        LAUNCH_ANGLE,
                                        START_DIRECTION,
                                        SPIN_RATE,
                                        AXIS_TILT),
                                head);
                for (ImpactQuantity q : ImpactQuantity.values()) {
                    if (q.isDelivery()) {
                        held[q.index()] += covers(result, q, delivery[q.index()]);
                    }
                }
            }
            double least = 0.95 - 2.58 * Math.sqrt(0.95 * 0.05 / n);
            for (ImpactQuantity q : List.of(STRIKE_TOE, STRIKE_UP, FACE_ANGLE, DYNAMIC_LOFT)) {
                double share = (double) held[q.index()] / n;
                assertTrue(share >= least, delivery[STRIKE_TOE.index()] + " mm, " + q.label() + ": " + share);
            }
        }
    }

    /** Exact measurements of random deliveries: one more takes no estimate away, and every estimate holds the truth. */
    @Test
    void moreKnowledgeTakesNoEstimateAway() {
        moreKnowledgeTakesNoEstimateAway(20_261_129L, 15);
    }

    /** The same, of many: once, seed 6 missed the true answer on the other side of the face, in its 185th delivery. */
    @Test
    @Tag("sweep")
    void moreKnowledgeTakesNoEstimateAwayFromMany() {
        moreKnowledgeTakesNoEstimateAway(20_261_129L, 300);
        moreKnowledgeTakesNoEstimateAway(6L, 200);
    }

    private static void moreKnowledgeTakesNoEstimateAway(long seed, int trials) {
        SplittableRandom random = new SplittableRandom(seed);
        int given = 0;
        for (int trial = 0; trial < trials; trial++) {
            ClubHead head = random.nextBoolean() ? DRIVER : IRON;
            double[] values = all(
                    new double[] {
                        random.nextDouble(30.0, 50.0),
                        random.nextDouble(-6.0, 4.0),
                        random.nextDouble(-6.0, 6.0),
                        random.nextDouble(-6.0, 6.0),
                        random.nextDouble(12.0, 34.0),
                        random.nextDouble(-12.0, 12.0),
                        random.nextDouble(-6.0, 6.0)
                    },
                    head);
            List<ImpactQuantity> order = new ArrayList<>(List.of(ImpactQuantity.values()));
            Collections.shuffle(order, new Random(random.nextLong()));
            int first = 5 + random.nextInt(6);
            List<ImpactQuantity> few = order.subList(0, first);
            List<ImpactQuantity> more = order.subList(0, first + 1);
            if (few.stream().allMatch(ImpactQuantity::isDelivery)) {
                continue;
            }
            ImpactInverse.Result less =
                    ImpactInverse.withDefaults().solve(measured(values, few.toArray(ImpactQuantity[]::new)), head);
            ImpactInverse.Result rich =
                    ImpactInverse.withDefaults().solve(measured(values, more.toArray(ImpactQuantity[]::new)), head);
            assertTrue(
                    less.undetermined().containsAll(rich.undetermined()),
                    () -> few + " gives " + less + "; with " + more.get(first) + " " + rich);
            for (ImpactInverse.Result result : List.of(less, rich)) {
                for (ImpactQuantity q : ImpactQuantity.values()) {
                    double truth = values[q.index()];
                    result.estimate(q)
                            .ifPresent(e -> assertTrue(
                                    e.interval().contains(truth), () -> few + ": " + q + " " + truth + " " + result));
                    given += result.estimate(q).isPresent() ? 1 : 0;
                }
            }
        }
        assertTrue(given > 3 * trials, "estimates: " + given);
    }

    @Test
    void measurementsAreChecked() {
        MeasuredImpact shot = MeasuredImpact.empty().with(CLUB_SPEED, 83.0, 1.0, SpeedUnit.MILE_PER_HOUR);
        assertEquals(83.0 * 0.44704, shot.value(CLUB_SPEED).orElseThrow(), 1e-12);
        assertTrue(shot.value(FACE_ANGLE).isEmpty());
        assertTrue(shot.without(CLUB_SPEED).quantities().isEmpty());
        assertFalse(shot.toString().isEmpty());
        assertThrows(IllegalArgumentException.class, () -> shot.with(CLUB_SPEED, 3.0, 1.0, AngleUnit.DEGREE));
        assertThrows(
                IllegalArgumentException.class, () -> shot.with(CLUB_SPEED, 300.0, 1.0, SpeedUnit.METER_PER_SECOND));
        assertThrows(
                IllegalArgumentException.class, () -> shot.with(CLUB_SPEED, 30.0, 0.0, SpeedUnit.METER_PER_SECOND));
        assertThrows(IllegalArgumentException.class, () -> shot.assuming(BALL_SPEED, 30.0, SpeedUnit.METER_PER_SECOND));
    }
}
