package dev.teeward.flight.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.flight.air.Roughness;
import dev.teeward.flight.air.Wind;
import dev.teeward.flight.air.WindProfile;
import dev.teeward.flight.ground.Terrain;
import dev.teeward.flight.internal.FlightPath.Ending;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Landings and interior states against {@link Referee}, an independent integrator and event finder (Hipparchus 4.0.2,
 * Dormand and Prince 8(5,3), tolerances 1e-11), over seeded random launches: 20-80 m/s, 5-45 deg up, 8 deg to either side,
 * 1,500-10,000 rpm, tilt up to 20 deg, wind up to 8 m/s in both components, landing up to 10 m higher or lower.
 */
class RefereeComparisonTest {
    /** The promise of the flight model [m]. */
    private static final double LANDING_BOUND = 1e-4;

    /** The promise of the trajectory for positions and velocities between the steps [m], [m/s], and the relative one for spin. */
    private static final double INTERIOR_BOUND = 1e-4;

    private static final double INTERIOR_VELOCITY_BOUND = 1e-3;
    private static final double INTERIOR_SPIN_BOUND = 1e-5;

    /** Below this angle of descent the landing point is ill-conditioned, and states at equal times are compared instead. */
    private static final double GRAZING = StrictMath.toRadians(3.0);

    @Test
    void tenThousandLandingsOfTheRationalBall() {
        Comparison result = new Comparison(new RationalAerodynamics(), 1L).run(10_000);
        result.check(10_000);
        assertEquals(0, result.rejections, "smooth forces need no guard");
    }

    @Test
    void aThousandLandingsOfTheSineBall() {
        new Comparison(new SineAerodynamics(), 2L).run(1_000).check(1_000);
    }

    @Test
    @Tag("sweep")
    void aHundredThousandLandingsOfEitherBall() {
        new Comparison(new RationalAerodynamics(), 3L).run(100_000).check(100_000);
        new Comparison(new SineAerodynamics(), 4L).run(100_000).check(100_000);
    }

    @Test
    void aThousandLandingsOfTheTypicalBall() {
        new Comparison(TypicalAerodynamics.of(), 6L).run(1_000).check(1_000);
    }

    /** Profiles have heights at which their curvature jumps; the guard is tighter for them. */
    @Test
    void landingsInAWindThatGrowsWithHeight() {
        for (Roughness roughness : new Roughness[] {Roughness.OPEN, Roughness.ROUGHLY_OPEN}) {
            new Comparison(TypicalAerodynamics.of(), 7L, (from, speed) -> WindProfile.logLaw(from, speed, roughness))
                    .run(2_000)
                    .check(2_000);
        }
        new Comparison(TypicalAerodynamics.of(), 8L, (from, speed) -> WindProfile.powerLaw(from, speed, 1.0 / 7.0))
                .run(2_000)
                .check(2_000);
    }

    /** Planes of up to 6 deg both ways, in a steady wind. */
    @Test
    void landingsOnSlopes() {
        slopes(11L, 2_000);
    }

    @Test
    @Tag("sweep")
    void tenThousandLandingsEachInProfilesAndOnSlopes() {
        for (Roughness roughness : new Roughness[] {Roughness.OPEN, Roughness.ROUGHLY_OPEN}) {
            new Comparison(TypicalAerodynamics.of(), 12L, (from, speed) -> WindProfile.logLaw(from, speed, roughness))
                    .run(10_000)
                    .check(10_000);
        }
        new Comparison(TypicalAerodynamics.of(), 13L, (from, speed) -> WindProfile.powerLaw(from, speed, 1.0 / 7.0))
                .run(10_000)
                .check(10_000);
        slopes(14L, 10_000);
    }

    private static void slopes(long seed, int launches) {
        Comparison result = new Comparison(TypicalAerodynamics.of(), seed)
                .over(random -> Terrain.plane(
                        Angle.ofDegrees(random.nextDouble(-6.0, 6.0)), Angle.ofDegrees(random.nextDouble(-6.0, 6.0))))
                .run(launches);
        result.check(launches);
    }

    /** Planes of up to 6 deg both ways, in a wind that grows with height. */
    @Test
    void landingsOnSlopesInAWindThatGrowsWithHeight() {
        Comparison result = new Comparison(
                        TypicalAerodynamics.of(), 9L, (from, speed) -> WindProfile.logLaw(from, speed, Roughness.OPEN))
                .over(random -> Terrain.plane(
                        Angle.ofDegrees(random.nextDouble(-6.0, 6.0)), Angle.ofDegrees(random.nextDouble(-6.0, 6.0))))
                .run(2_000);
        result.check(2_000);
    }

    /** Ground that rises and falls by 4 m over 60 m and more, which no plane comes near. */
    @Test
    void landingsOnRollingGround() {
        Comparison result = new Comparison(TypicalAerodynamics.of(), 10L)
                .over(random -> {
                    double phase = random.nextDouble(0.0, 2.0 * Math.PI);
                    double across = random.nextDouble(0.0, 0.05);
                    return (x, z) -> 2.0 * (Math.cos(x / 20.0 + phase + across * z) - Math.cos(phase)) - 1e-9;
                })
                .run(1_000);
        result.check(1_000);
    }

    /** Straight lines between few points: kinks that the step rule does not foresee and the error estimate must see. */
    @Test
    void theGuardKeepsKinkedCoefficientsWithinATenthOfAMillimeter() {
        Comparison result = new Comparison(new KinkedAerodynamics(), 5L).run(300);
        assertTrue(result.maxLanding <= LANDING_BOUND, result::toString);
        assertTrue(result.rejections > 0, "the guard acted");
    }

    private static final class KinkedAerodynamics implements AerodynamicModel {
        @Override
        public double dragCoefficient(double re, double s) {
            double crisis = re < 5e4 ? 0.5 : re > 9e4 ? 0.23 : 0.5 - 0.27 * (re - 5e4) / 4e4;
            return crisis + 0.2 * Math.min(s, 0.5);
        }

        @Override
        public double liftCoefficient(double re, double s) {
            return s < 0.1 ? 1.8 * s : 0.18 + 0.4 * (Math.min(s, 0.4) - 0.1);
        }
    }

    /** Flies launches both ways and keeps the largest deviations. */
    private static final class Comparison {
        private final AerodynamicModel model;
        private final @Nullable BiFunction<Angle, Speed, Wind> profile;
        private final SplittableRandom random;
        private @Nullable Function<SplittableRandom, Terrain> ground;
        private double maxLanding;
        private double maxGrazing;
        private double maxApex;
        private double maxInterior;
        private double maxVelocity;
        private double maxSpin;
        private long steps;
        private long rejections;
        private int landings;
        private int grazing;
        private int missed;

        Comparison(AerodynamicModel model, long seed) {
            this(model, seed, null);
        }

        /** With a profile of the wind instead of a steady one. */
        Comparison(AerodynamicModel model, long seed, @Nullable BiFunction<Angle, Speed, Wind> profile) {
            this.model = model;
            this.profile = profile;
            random = new SplittableRandom(seed);
        }

        /** Over a terrain instead of an elevation. */
        Comparison over(Function<SplittableRandom, Terrain> terrain) {
            ground = terrain;
            return this;
        }

        Comparison run(int launches) {
            for (int i = 0; i < launches; i++) {
                fly(i % 20 == 0);
            }
            return this;
        }

        private void fly(boolean interior) {
            double speed = random.nextDouble(20.0, 80.0);
            double up = Math.toRadians(random.nextDouble(5.0, 45.0));
            double right = Math.toRadians(random.nextDouble(-8.0, 8.0));
            double spin = random.nextDouble(1500.0, 10_000.0) * Math.PI / 30.0;
            double tilt = Math.toRadians(random.nextDouble(-20.0, 20.0));
            double along = random.nextDouble(-8.0, 8.0);
            double across = random.nextDouble(-8.0, 8.0);
            Wind wind = profile == null
                    ? steady(along, across)
                    : profile.apply(
                            Angle.ofRadians(Math.atan2(-across, -along)),
                            Speed.ofMetersPerSecond(Math.hypot(along, across)));
            double elevation = random.nextDouble(-10.0, 10.0);
            FlightEquations equations =
                    new FlightEquations(model, 0.04593, 0.04267, 8.363e-6, 1.225, 1.7894e-5, wind, 9.80665);
            double[] launch = new double[FlightEquations.STATE];
            launch[FlightEquations.VX] = speed * Math.cos(up) * Math.cos(right);
            launch[FlightEquations.VY] = speed * Math.sin(up);
            launch[FlightEquations.VZ] = speed * Math.cos(up) * Math.sin(right);
            launch[FlightEquations.SPIN] = spin;
            double[] axis = {
                Math.sin(tilt) * Math.sin(up) * Math.cos(right) - Math.cos(tilt) * Math.sin(right),
                -Math.sin(tilt) * Math.cos(up),
                Math.cos(tilt) * Math.cos(right) + Math.sin(tilt) * Math.sin(up) * Math.sin(right)
            };
            if (ground != null) {
                Terrain terrain = ground.apply(random);
                FlightPath path = new FlightIntegrator(equations, terrain).fly(launch, axis);
                if (path.ending() == Ending.LANDED_AT_ONCE) {
                    missed++;
                    return;
                }
                assertEquals(Ending.LANDED, path.ending());
                steps += path.steps();
                rejections += path.rejections();
                landings++;
                compare(path, new Referee(equations, launch, axis, terrain, interior), interior, terrain);
                return;
            }
            FlightPath path = new FlightIntegrator(equations, elevation).fly(launch, axis);
            if (path.ending() == Ending.ELEVATION_NOT_REACHED) {
                missed++;
                return;
            }
            assertEquals(Ending.LANDED, path.ending());
            steps += path.steps();
            rejections += path.rejections();
            landings++;
            compare(path, new Referee(equations, launch, axis, elevation, interior), interior, Terrain.level());
        }

        private void compare(FlightPath path, Referee referee, boolean interior, Terrain terrain) {
            double[] ours = new double[FlightEquations.STATE];
            path.at(path.endTime(), ours);
            double[] theirs = referee.landing();
            double off = Math.hypot(
                    ours[FlightEquations.X] - theirs[FlightEquations.X],
                    ours[FlightEquations.Z] - theirs[FlightEquations.Z]);
            double fall = Math.max(into(terrain, theirs), into(terrain, ours));
            double speed = Math.hypot(
                    theirs[FlightEquations.VY], Math.hypot(theirs[FlightEquations.VX], theirs[FlightEquations.VZ]));
            if (Math.asin(into(terrain, theirs) / speed) < GRAZING) {
                // The height by which the ball clears or misses the ground is what can be exact: time times fall
                // rate.
                grazing++;
                maxGrazing = Math.max(maxGrazing, Math.abs(path.endTime() - referee.time()) * fall);
            } else {
                maxLanding = Math.max(maxLanding, off);
            }
            if (interior) {
                for (int j = 0; j < 50; j++) {
                    interior(path, referee, random.nextDouble() * Math.min(path.endTime(), referee.time()));
                }
                double[] top = referee.at(path.apexTime());
                maxApex = Math.max(maxApex, Math.abs(path.apexHeight() - top[FlightEquations.Y]));
            }
        }

        /** The speed into the ground at a landing. */
        private static double into(Terrain terrain, double[] s) {
            double[] n = new double[3];
            terrain.normal(s[FlightEquations.X], s[FlightEquations.Z], n);
            return Math.abs(n[0] * s[FlightEquations.VX] + n[1] * s[FlightEquations.VY] + n[2] * s[FlightEquations.VZ]);
        }

        private void interior(FlightPath path, Referee referee, double time) {
            double[] ours = new double[FlightEquations.STATE];
            path.at(time, ours);
            double[] theirs = referee.at(time);
            maxInterior = Math.max(maxInterior, distance(ours, theirs, FlightEquations.Y));
            maxVelocity = Math.max(maxVelocity, distance(ours, theirs, FlightEquations.VX));
            maxSpin = Math.max(maxSpin, Math.abs(ours[FlightEquations.SPIN] / theirs[FlightEquations.SPIN] - 1.0));
        }

        private static double distance(double[] a, double[] b, int from) {
            double sum = 0.0;
            for (int c = from; c < from + 3; c++) {
                sum += (a[c] - b[c]) * (a[c] - b[c]);
            }
            return Math.sqrt(sum);
        }

        void check(int launches) {
            assertTrue(landings > 0.9 * launches, this::toString);
            assertTrue(maxLanding <= LANDING_BOUND, this::toString);
            assertTrue(maxGrazing <= LANDING_BOUND, this::toString);
            assertTrue(maxApex <= LANDING_BOUND, this::toString);
            assertTrue(maxInterior <= INTERIOR_BOUND, this::toString);
            assertTrue(maxVelocity <= INTERIOR_VELOCITY_BOUND, this::toString);
            assertTrue(maxSpin <= INTERIOR_SPIN_BOUND, this::toString);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d landings, %d of them grazing, %d missed; landing %.3g mm, grazing %.3g mm, apex %.3g mm, inside %.3g"
                            + " mm, velocity %.3g mm/s, spin %.2g; %.2f steps a flight, %d rejections in all",
                    landings,
                    grazing,
                    missed,
                    1e3 * maxLanding,
                    1e3 * maxGrazing,
                    1e3 * maxApex,
                    1e3 * maxInterior,
                    1e3 * maxVelocity,
                    maxSpin,
                    (double) steps / landings,
                    rejections);
        }

        private static Wind steady(double along, double right) {
            return new Wind() {
                @Override
                public double alongTarget(double height) {
                    return along;
                }

                @Override
                public double towardsRight(double height) {
                    return right;
                }
            };
        }
    }
}
