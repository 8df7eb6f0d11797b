package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotPair;
import dev.teeward.fitting.compare.PairedTTest;
import dev.teeward.fitting.compare.PracticalMargins;
import dev.teeward.fitting.compare.TestResult;
import dev.teeward.fitting.compare.TostTest;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.flight.Flight;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.quantity.Angle;
import dev.teeward.quantity.Speed;
import dev.teeward.quantity.SpinRate;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bundled session is what the generator makes, and what was put in is in it. */
class DemoSessionTest {
    private static final List<String> CLUBS = List.of(DemoTruth.ALDER, DemoTruth.ROWAN);

    @TempDir
    private Path folder = Path.of("");

    private static byte[] bundled() throws IOException {
        try (InputStream file = Objects.requireNonNull(
                DemoSessionTest.class.getResourceAsStream("demo_session.csv"), "demo_session.csv")) {
            return file.readAllBytes();
        }
    }

    private static Session session() throws IOException {
        return SessionReader.withDefaults().read(new String(bundled(), StandardCharsets.UTF_8), "demo_session.csv");
    }

    private static double faceToPath(Shot shot) {
        return shot.value(Metric.FACE_ANGLE) - shot.value(Metric.CLUB_PATH);
    }

    private static double value(Shot shot, Metric metric) {
        return metric == Metric.FACE_TO_PATH ? faceToPath(shot) : shot.value(metric);
    }

    private static boolean odd(Shot shot) {
        return shot.number() == DemoTruth.MISHIT_SHOT || shot.number() == DemoTruth.MISREAD_SHOT;
    }

    private static double mean(Session session, String club, ToDoubleFunction<Shot> value) {
        return session.shots().club(club).stream()
                .filter(shot -> !odd(shot))
                .mapToDouble(value)
                .average()
                .orElseThrow();
    }

    @Test
    void theFileIsWhatTheGeneratorMakes() throws IOException {
        Path again = folder.resolve("again.csv");
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        assertEquals(
                0,
                TeewardExamples.run(
                        new PrintWriter(out), new PrintWriter(err), "make-demo", "--out", again.toString()));
        assertArrayEquals(bundled(), Files.readAllBytes(again));
        assertEquals(again + ": an invented session of 24 shots", out.toString().strip());
        assertEquals("", err.toString());
    }

    @Test
    void anotherSeedIsAnotherDraw() throws IOException {
        Path other = folder.resolve("other.csv");
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        assertEquals(0, TeewardExamples.run(nowhere, nowhere, "make-demo", "--out", other.toString(), "--seed", "7"));
        String text = Files.readString(other);
        assertTrue(text.contains("with the seed 7."), text);
        assertEquals(2026L, DemoSession.SEED, "a plain year, not a search");
        assertNotEquals(new String(bundled(), StandardCharsets.UTF_8), text);
        assertEquals(24, SessionReader.withDefaults().read(other).shots().size());
    }

    @Test
    void saysFirstThatItIsInvented() throws IOException {
        String first = new String(bundled(), StandardCharsets.UTF_8)
                .lines()
                .findFirst()
                .orElseThrow();
        assertTrue(first.startsWith("# This session is invented."), first);
        assertTrue(session().remarks().get(0).startsWith("This session is invented."));
    }

    @Test
    void alternatesTwoClubsOfOneBuild() throws IOException {
        Session session = session();
        assertEquals(DemoTruth.HAND, session.hand().orElseThrow());
        assertEquals(DemoTruth.SHOTS, session.shots().used().size());
        StringBuilder order = new StringBuilder();
        session.shots().forEach(shot -> order.append(shot.club().charAt(0)));
        assertEquals("ARRA".repeat(6), order.toString());
        List<ShotPair> pairs = session.shots().pairs(DemoTruth.ALDER, DemoTruth.ROWAN);
        assertEquals(DemoTruth.PAIRS, pairs.size());
        Club alder = session.club(DemoTruth.ALDER).orElseThrow();
        Club rowan = session.club(DemoTruth.ROWAN).orElseThrow();
        assertEquals(
                alder.toString().substring("Alder".length()), rowan.toString().substring("Rowan".length()));
        for (Shot shot : session.shots()) {
            assertEquals(odd(shot), shot.note().isPresent());
            for (Rating rating : Rating.values()) {
                assertTrue(shot.rating(rating).isPresent());
            }
        }
    }

    /** 18 means of 11 or 12 shots, each within 3.5 of its standard errors: by chance one fails in 1 of 120 seeds. */
    @Test
    void theMeansAreThoseThatWerePutIn() throws IOException {
        Session session = session();
        for (Metric metric : DemoTruth.metrics()) {
            for (String club : CLUBS) {
                double error = metric == Metric.FACE_TO_PATH
                        ? Math.hypot(tolerance(session, Metric.FACE_ANGLE), tolerance(session, Metric.CLUB_PATH))
                        : tolerance(session, metric);
                double standardError = Math.hypot(DemoTruth.deviation(metric), error) / Math.sqrt(11.0);
                assertEquals(
                        DemoTruth.mean(club, metric),
                        mean(session, club, shot -> value(shot, metric)),
                        3.5 * standardError,
                        club + " " + metric);
            }
        }
    }

    private static double tolerance(Session session, Metric metric) {
        return session.tolerance(metric).orElseThrow();
    }

    @Test
    void aLeftHanderFadesBothAndRowanLess() throws IOException {
        Session session = session();
        for (String club : CLUBS) {
            double path = mean(session, club, shot -> shot.value(Metric.CLUB_PATH));
            double face = mean(session, club, DemoSessionTest::faceToPath);
            double tilt = mean(session, club, shot -> shot.value(Metric.AXIS_TILT));
            double curve = mean(session, club, shot -> shot.value(Metric.CURVE));
            assertEquals("out-to-in", DemoTruth.HAND.pathWord(path));
            assertEquals("open", DemoTruth.HAND.faceWord(face));
            assertEquals("fade", DemoTruth.HAND.curveWord(curve));
            assertTrue(tilt < 0.0, club + " tilt " + tilt);
        }
        double alder = mean(session, DemoTruth.ALDER, shot -> shot.value(Metric.CURVE));
        double rowan = mean(session, DemoTruth.ROWAN, shot -> shot.value(Metric.CURVE));
        assertTrue(alder < rowan, alder + " " + rowan);
        assertTrue(DemoSession.meanFlight(DemoTruth.ALDER).curve().meters()
                < DemoSession.meanFlight(DemoTruth.ROWAN).curve().meters());
    }

    @Test
    void theDifferenceInFaceToPathShows() throws IOException {
        List<ShotPair> pairs = session().shots().pairs(DemoTruth.ALDER, DemoTruth.ROWAN);
        TestResult test = PairedTTest.withDefaults()
                .test(
                        pairs.stream().mapToDouble(p -> faceToPath(p.first())).toArray(),
                        pairs.stream().mapToDouble(p -> faceToPath(p.second())).toArray());
        assertTrue(test.pValue() < 0.01, test.toString());
        double truth = DemoTruth.difference(Metric.FACE_TO_PATH);
        assertEquals(-1.8, Math.toDegrees(truth), 1e-12);
        assertTrue(test.estimate().interval().contains(truth), test.toString());
    }

    @Test
    void whatIsPracticallyTheSameShowsSo() throws IOException {
        assertEquals(Set.of(Metric.CLUB_SPEED), DemoTruth.practicallySame().keySet());
        assertTrue(clubSpeed(session(), margin(Metric.CLUB_SPEED)).equivalent());
    }

    private static TostTest.Result clubSpeed(Session session, double margin) {
        List<ShotPair> pairs = session.shots().pairs(DemoTruth.ALDER, DemoTruth.ROWAN);
        return TostTest.withinMargin(margin)
                .testPairs(
                        pairs.stream()
                                .mapToDouble(p -> p.first().value(Metric.CLUB_SPEED))
                                .toArray(),
                        pairs.stream()
                                .mapToDouble(p -> p.second().value(Metric.CLUB_SPEED))
                                .toArray());
    }

    private static double margin(Metric metric) {
        return PracticalMargins.defaults().of(metric).orElseThrow();
    }

    /** The margins are those that the program takes by itself, and the true means differ by less than a fifth of them. */
    @Test
    void theMeanFlightsAreNearlyTheSame() {
        Flight alder = DemoSession.meanFlight(DemoTruth.ALDER);
        Flight rowan = DemoSession.meanFlight(DemoTruth.ROWAN);
        assertEquals(0.0, DemoTruth.difference(Metric.CLUB_SPEED));
        DemoTruth.practicallySame().forEach((metric, si) -> assertEquals(margin(metric), si, 0.0, metric.key()));
        assertEquals(
                alder.launch().ballSpeed().metersPerSecond(),
                rowan.launch().ballSpeed().metersPerSecond(),
                margin(Metric.BALL_SPEED) / 5.0);
        assertEquals(alder.carry().meters(), rowan.carry().meters(), margin(Metric.CARRY) / 5.0);
    }

    @Test
    void oneShotIsAMishit() throws IOException {
        Session session = session();
        Shot mishit = session.shots().shots().get(DemoTruth.MISHIT_SHOT - 1);
        assertEquals(DemoTruth.ROWAN, mishit.club());
        assertEquals("low on the toe", mishit.note().orElseThrow());
        assertTrue(mishit.used());
        // Three standard deviations of the reading, and half of the last digit.
        assertEquals(DemoTruth.MISHIT_TOE, 1_000.0 * mishit.value(Metric.STRIKE_TOE), 2.9);
        assertEquals(DemoTruth.MISHIT_UP, 1_000.0 * mishit.value(Metric.STRIKE_UP), 2.9);
        double usual = mean(session, DemoTruth.ROWAN, s -> s.value(Metric.BALL_SPEED) / s.value(Metric.CLUB_SPEED));
        double smash = mishit.value(Metric.BALL_SPEED) / mishit.value(Metric.CLUB_SPEED);
        assertTrue(smash < 0.92 * usual, smash + " " + usual);
        for (Shot shot : session.shots()) {
            assertTrue(
                    shot.equals(mishit) || shot.value(Metric.CARRY) > mishit.value(Metric.CARRY) + 5.0,
                    shot.toString());
        }
    }

    @Test
    void oneSpinIsMisread() throws IOException {
        Shot misread = session().shots().shots().get(DemoTruth.MISREAD_SHOT - 1);
        assertEquals(DemoTruth.ALDER, misread.club());
        assertEquals("spin reading looked odd", misread.note().orElseThrow());
        assertTrue(misread.used());
        assertTrue(apexError(misread, 1.0) > LARGEST_APEX_ERROR, "as read " + apexError(misread, 1.0));
        for (Shot shot : session().shots()) {
            double usual = Math.abs(shot.value(Metric.SPIN_RATE)
                            / DemoSession.meanFlight(shot.club())
                                    .launch()
                                    .spinRate()
                                    .radiansPerSecond()
                    - 1.0);
            assertEquals(shot.number() == DemoTruth.MISREAD_SHOT, usual > 0.25, shot.toString());
        }
    }

    /**
     * Four standard deviations: 0.8 yd of the carry's own error, 0.35 yd for 0.2 mph, 0.3 yd for 0.2 deg and 0.2 yd for 50
     * rpm make 0.95 yd [m].
     */
    private static final double LARGEST_CARRY_ERROR = 4.0 * 0.95 * 0.9144;

    /**
     * Four standard deviations: 0.6 ft of the apex's own error and its rounding to 1 ft, 1.3 ft for 0.2 deg, 0.3 ft for 0.2 mph
     * and 0.4 ft for 50 rpm make 1.5 ft [m].
     */
    private static final double LARGEST_APEX_ERROR = 4.0 * 1.5 * 0.3048;

    @Test
    void everyFlightFollowsFromItsLaunch() throws IOException {
        for (Shot shot : session().shots()) {
            double factor = shot.number() == DemoTruth.MISREAD_SHOT ? 2.0 : 1.0;
            assertTrue(carryError(shot, factor) < LARGEST_CARRY_ERROR, shot + " " + carryError(shot, factor));
            assertTrue(apexError(shot, factor) < LARGEST_APEX_ERROR, shot + " " + apexError(shot, factor));
        }
    }

    private static double carryError(Shot shot, double spinFactor) {
        return Math.abs(flightAsRead(shot, spinFactor).carry().meters() - shot.value(Metric.CARRY));
    }

    private static double apexError(Shot shot, double spinFactor) {
        return Math.abs(flightAsRead(shot, spinFactor).apex().meters() - shot.value(Metric.APEX));
    }

    private static Flight flightAsRead(Shot shot, double spinFactor) {
        return DemoSession.model()
                .fly(LaunchConditions.builder()
                        .ballSpeed(Speed.ofMetersPerSecond(shot.value(Metric.BALL_SPEED)))
                        .launchAngle(Angle.ofRadians(shot.value(Metric.LAUNCH_ANGLE)))
                        .startDirection(Angle.ofRadians(shot.value(Metric.START_DIRECTION)))
                        .spinRate(SpinRate.ofRadiansPerSecond(spinFactor * shot.value(Metric.SPIN_RATE)))
                        .axisTilt(Angle.ofRadians(shot.value(Metric.AXIS_TILT)))
                        .build());
    }

    /**
     * How often other seeds show what was put in, against theory. A normal deviate cut off at 2 has a variance of 0.77374.
     * Noncentral t for the paired test (SciPy 1.17, stats.nct, difference 1.8 deg, standard deviation
     * sqrt(2 (0.5 0.77374 + 0.18)) deg, 11 degrees of freedom: 0.86573 at 1 in 1000) and an integral over the chi
     * distribution for equivalence (SciPy 1.17, integrate.quad, standard deviation sqrt(2 (0.25 0.77374 + 0.09)) mph, margin
     * 0.7 mph: 0.82897). 400 seeds, within 3.5 standard errors. Half the last digit shown (0.05) is left out of account.
     */
    @Test
    void otherSeedsShowItAsOftenAsTheyShould() {
        int seeds = 400;
        int different = 0;
        int same = 0;
        double narrow = 0.7 * margin(Metric.CLUB_SPEED);
        for (int seed = 1; seed <= seeds; seed++) {
            Session session = DemoSession.create(seed);
            List<ShotPair> pairs = session.shots().pairs(DemoTruth.ALDER, DemoTruth.ROWAN);
            TestResult test = PairedTTest.withDefaults()
                    .test(
                            pairs.stream()
                                    .mapToDouble(p -> faceToPath(p.first()))
                                    .toArray(),
                            pairs.stream()
                                    .mapToDouble(p -> faceToPath(p.second()))
                                    .toArray());
            different += test.pValue() < 0.001 ? 1 : 0;
            same += clubSpeed(session, narrow).equivalent() ? 1 : 0;
        }
        assertShare(0.86573, different, seeds);
        assertShare(0.82897, same, seeds);
        assertFalse(different == seeds || same == seeds);
    }

    private static void assertShare(double expected, int count, int of) {
        assertEquals(expected, (double) count / of, 3.5 * Math.sqrt(expected * (1.0 - expected) / of));
    }
}
