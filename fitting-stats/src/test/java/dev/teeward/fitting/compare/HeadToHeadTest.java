package dev.teeward.fitting.compare;

import static dev.teeward.fitting.compare.InventedSession.A;
import static dev.teeward.fitting.compare.InventedSession.B;
import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.inches;
import static dev.teeward.quantity.Units.meters;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Club;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Rating;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.Shot;
import dev.teeward.fitting.ShotSet;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.Interval;
import dev.teeward.quantity.LengthUnit;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Two clubs of a session compared, against the procedures on plain arrays, hand-worked values and independent fits. */
class HeadToHeadTest {
    private static final double[] ALDER = {151.0, 149.5, 152.5, 150.0, 153.0, 148.0, 151.5, 150.5};
    private static final double[] ROWAN = {150.0, 147.0, 149.5, 146.5, 148.5, 146.0, 150.5, 148.0};
    private static final String ABBA = "ABBAABBAABBAABBA";

    private static HeadToHead carry() {
        return HeadToHead.withDefaults().withPrimary(Metric.CARRY).withMargin(Metric.CARRY, 4.0);
    }

    private static List<String> codes(List<Warning> warnings) {
        return warnings.stream().map(Warning::code).toList();
    }

    @Test
    void theExampleOfThePackage() {
        Session session = InventedSession.full(3, 12, 2.0, 0.0);
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withClubs("Alder", "Rowan")
                .withPrimary(Metric.CARRY)
                .withMargin(Metric.CARRY, LengthUnit.YARD.toSi(5.0))
                .compare(session);
        MetricComparison carry = result.primary();
        Estimate yards = carry.difference().estimate().convertTo(LengthUnit.YARD);
        Verdict verdict = carry.verdict().verdict();
        assertEquals(LengthUnit.YARD, yards.unit());
        assertEquals(Verdict.PRACTICALLY_THE_SAME, verdict);
        assertEquals(
                Verdict.DIFFERENT,
                result.find(Metric.FACE_TO_PATH).orElseThrow().verdict().verdict());
    }

    /** Means and t of the eight differences 1, 2.5, 3, 3.5, 4.5, 2, 1, 2.5 by hand; p from SciPy 1.17 ttest_1samp. */
    @Test
    void pairsOfAHandWorkedSession() {
        HeadToHeadResult r = carry().compare(InventedSession.carries(ABBA, ALDER, ROWAN));
        MetricComparison m = r.primary();
        assertTrue(m.paired());
        assertEquals(8, m.pairs());
        assertEquals(2.5, m.difference().estimate().value(), 1e-12);
        assertEquals(Math.sqrt(10.0 / 7.0), m.differenceSd(), 1e-12);
        assertEquals(
                2.5 / Math.sqrt(10.0 / 7.0 / 8.0), m.difference().statistic().orElseThrow(), 1e-12);
        assertEquals(P_OF_HAND, m.difference().pValue(), 1e-9);
        assertEquals(2.0 / 256.0, m.exact().pValue(), 1e-12); // all differences positive: 2 of 2^8 arrangements
        assertEquals(1.0, m.superiority().estimate().value(), 1e-12);
        assertEquals(Verdict.PRACTICALLY_THE_SAME, m.verdict().verdict());
        assertTrue(m.verdict().differentButTrivial());
        assertEquals(ShotOrderKind.ALTERNATED_ABBA, r.order());
        assertEquals(List.of(), codes(r.warnings()));
    }

    private static final double P_OF_HAND = 0.0005898392224376332;

    @Test
    void everyFieldIsThatOfTheProcedureOnPlainArrays() {
        for (boolean paired : new boolean[] {true, false}) {
            Session session = InventedSession.full(11, 9, 1.0, 3.0);
            HeadToHead procedure = carry().withLevel(0.9);
            HeadToHeadResult r = (paired ? procedure : procedure.withoutPairing()).compare(session);
            for (MetricComparison m : r.metrics()) {
                assertEquals(paired, m.paired());
                double[] x = r.session().shots().club(A).values(m.metric());
                double[] y = r.session().shots().club(B).values(m.metric());
                var unit = m.metric().siUnit();
                double margin = m.margin().orElseThrow();
                TostTest tost =
                        TostTest.withinMargin(margin).withAlpha(1.0 - 0.9).withUnit(unit);
                HodgesLehmannEstimator shift =
                        HodgesLehmannEstimator.withDefaults().withLevel(0.9).withUnit(unit);
                HedgesG g = HedgesG.withDefaults().withLevel(0.9);
                ProbabilityOfSuperiority superiority =
                        ProbabilityOfSuperiority.withDefaults().withLevel(0.9);
                SpreadRatio ratio = SpreadRatio.withDefaults().withLevel(0.9);
                same(
                        paired
                                ? PairedTTest.withDefaults()
                                        .withLevel(0.9)
                                        .withUnit(unit)
                                        .test(x, y)
                                : WelchTTest.withDefaults()
                                        .withLevel(0.9)
                                        .withUnit(unit)
                                        .test(x, y),
                        m.difference());
                same(
                        paired
                                ? SignFlipTest.withDefaults()
                                        .withLevel(0.9)
                                        .withUnit(unit)
                                        .test(x, y)
                                : PermutationTest.withDefaults()
                                        .withLevel(0.9)
                                        .withUnit(unit)
                                        .test(x, y),
                        m.exact());
                same(paired ? shift.testPairs(x, y) : shift.test(x, y), m.shift());
                same(paired ? g.testPairs(x, y) : g.test(x, y), m.effect());
                same(paired ? superiority.testPairs(x, y) : superiority.test(x, y), m.superiority());
                same(
                        paired ? ratio.testPairs(x, y) : ratio.test(x, y),
                        m.spread().ratio());
                same(
                        BrownForsytheTest.withDefaults()
                                .withLevel(0.9)
                                .withUnit(unit)
                                .test(x, y),
                        m.spread().brownForsythe());
                same(
                        (paired ? tost.testPairs(x, y) : tost.test(x, y)).combined(),
                        m.equivalence().orElseThrow().combined());
                same(
                        Drift.withDefaults()
                                .withLevel(0.9)
                                .withUnit(unit)
                                .test(
                                        r.session().shots().values(m.metric()),
                                        ShotOrder.of(0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1)),
                        m.drift());
                assertArrayEquals(x, m.firstValues());
                assertEquals(x.length, m.first().n());
                assertEquals(
                        Arrays.stream(y).average().orElseThrow(),
                        m.second().mean().value(),
                        1e-9);
                assertEquals(9, m.firstOrigins().total());
            }
            assertEquals(
                    9, r.find(Metric.FACE_TO_PATH).orElseThrow().secondOrigins().derived());
        }
    }

    private static void same(TestResult expected, TestResult actual) {
        assertEquals(expected.toString(), actual.toString());
        assertEquals(expected.estimate(), actual.estimate());
        assertEquals(expected.degreesOfFreedom(), actual.degreesOfFreedom());
        assertEquals(expected.sampleSizes(), actual.sampleSizes());
    }

    /** Holm 1979: sorted p times what is left, never falling; the primary metric stays out. */
    @Test
    void othersAreAdjustedByHolm() {
        HeadToHeadResult r = carry().compare(InventedSession.full(5, 10, 1.2, 2.0));
        List<MetricComparison> others =
                new ArrayList<>(r.metrics().stream().filter(m -> !m.primary()).toList());
        others.sort(Comparator.comparingDouble(m -> m.difference().pValue()));
        double largest = 0.0;
        for (int i = 0; i < others.size(); i++) {
            largest = Math.max(
                    largest,
                    Math.min(
                            1.0,
                            (others.size() - i) * others.get(i).difference().pValue()));
            assertEquals(largest, others.get(i).adjustedP(), 1e-12);
        }
        assertTrue(others.size() >= 9);
        assertEquals(r.primary().difference().pValue(), r.primary().adjustedP());
    }

    @Test
    void clubsAreSubtractedInTheOrderAskedFor() {
        Session session = InventedSession.carries(ABBA, ALDER, ROWAN);
        HeadToHeadResult turned = carry().withClubs(B, A).compare(session);
        assertEquals(B, turned.first().name());
        assertEquals(-2.5, turned.primary().difference().estimate().value(), 1e-12);
        assertEquals(A, carry().compare(session).first().name());
    }

    @Test
    void shotsInNoOrderAreComparedAsTwoSamples() {
        HeadToHeadResult r = carry().compare(InventedSession.carries("AABABBABBAABABAB", ALDER, ROWAN));
        assertFalse(r.primary().paired());
        assertEquals(ShotOrderKind.MIXED, r.order());
        assertEquals(ShotPairing.Source.NONE, r.pairing().source());
        assertEquals(16, r.pairing().unpaired().size());
        assertTrue(r.primary().difference().method().startsWith("Welch"));
        assertTrue(r.primary().exact().method().contains("studentised"));
        assertEquals(Math.sqrt(variance(ALDER) + variance(ROWAN)), r.primary().differenceSd(), 1e-12);
    }

    private static double variance(double[] x) {
        double mean = Arrays.stream(x).average().orElseThrow();
        return Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum() / (x.length - 1);
    }

    @Test
    void blocksAreWarnedOf() {
        HeadToHeadResult r = carry().compare(InventedSession.carries("AAAAAAAABBBBBBBB", ALDER, ROWAN));
        assertEquals(ShotOrderKind.BLOCKED, r.order());
        assertEquals(List.of("clubs-in-blocks"), codes(r.warnings()));
        assertFalse(r.primary().paired());
        assertTrue(r.drift().warns("clubs-in-blocks"));
        HeadToHeadResult turns = carry().compare(InventedSession.carries("ABABABABABABABAB", ALDER, ROWAN));
        assertEquals(ShotOrderKind.ALTERNATED, turns.order());
        assertEquals(List.of("drift-not-cancelled"), codes(turns.warnings()));
    }

    private static Session with(Session session, int index, Shot shot) {
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        shots.set(index, shot);
        return session.withShots(ShotSet.of(shots));
    }

    @Test
    void brokenPairsSayWhy() {
        Session session = InventedSession.carries(ABBA, ALDER, ROWAN);
        List<Shot> shots = session.shots().shots();
        Session one = with(session, 2, shots.get(2).withExclusion("topped"));
        Session longer = with(
                        one,
                        7,
                        shots.get(7)
                                .without(Metric.CARRY)
                                .with(
                                        Metric.BALL_SPEED,
                                        shots.get(7)
                                                .reading(Metric.CARRY)
                                                .map(c -> dev.teeward.fitting.Reading.of(50.0, c.origin()))
                                                .orElseThrow()))
                .append(Shot.builder(A).number(17).measured(Metric.CARRY, 150.0).build());
        HeadToHeadResult r = carry().compare(longer);
        assertEquals(7, r.pairing().pairs().size());
        assertEquals(
                "[pair 2: shot 3 with Rowan is excluded (topped), pair 9: there is no shot with Rowan]",
                r.pairing().broken().toString());
        assertEquals(BrokenPair.Kind.MISSING, r.pairing().broken().get(1).kind());
        assertEquals(1, r.pairing().broken().get(1).shots().size());
        assertEquals("2", r.pairing().broken().get(0).id());
        MetricComparison carry = r.primary();
        assertEquals(6, carry.pairs());
        assertTrue(carry.paired());
        assertEquals(List.of(6), carry.difference().sampleSizes());
        assertEquals(
                List.of(
                        new Exclusion(1, "shot excluded: topped"),
                        new Exclusion(1, "shot without carry"),
                        new Exclusion(3, "shot whose partner is missing, excluded or without carry")),
                carry.difference().exclusions());
        assertEquals(8, carry.first().n());
        assertEquals(7, carry.second().n());
        assertEquals(List.of(new Exclusion(1, "topped")), r.second().exclusions());
        assertTrue(codes(r.warnings()).contains("broken-pairs"));
    }

    @Test
    void namedPairsGoBeforeTheOrder() {
        Session session = InventedSession.carries("AAAABBBB", ALDER, ROWAN);
        List<Shot> shots = new ArrayList<>();
        String[] ids = {"p", "q", "r", "s", "s", "r", "q", "q"};
        for (int i = 0; i < 8; i++) {
            shots.add(session.shots().shots().get(i).toBuilder().pair(ids[i]).build());
        }
        ShotPairing pairing = ShotPairing.of(ShotSet.of(shots), A, B);
        assertEquals(ShotPairing.Source.NAMED, pairing.source());
        assertEquals(
                List.of("r", "s"), pairing.pairs().stream().map(p -> p.id()).toList());
        assertEquals(
                "[pair p: there is no shot with Rowan, pair q: there is more than one used shot with Rowan]",
                pairing.broken().toString());
        assertTrue(pairing.enough());
        assertTrue(pairing.toString().startsWith("2 pairs (NAMED), 2 broken"));
        HeadToHeadResult r = carry().compare(session.withShots(ShotSet.of(shots)));
        assertArrayEquals(new double[] {ALDER[2], ALDER[3]}, r.primary().pairedFirst());
        assertArrayEquals(new double[] {ROWAN[1], ROWAN[0]}, r.primary().pairedSecond());
    }

    @Test
    void fewNamedPairsAreNotEnough() {
        Session session = InventedSession.carries("AABABBABBAABABAB", ALDER, ROWAN);
        List<Shot> shots = new ArrayList<>(session.shots().shots());
        for (int i : new int[] {0, 2, 3, 4}) {
            shots.set(i, shots.get(i).toBuilder().pair(i < 3 ? "1" : "2").build());
        }
        HeadToHeadResult r = carry().compare(session.withShots(ShotSet.of(shots)));
        assertEquals(2, r.pairing().pairs().size());
        assertFalse(r.primary().paired());
        assertTrue(codes(r.warnings()).contains("too-few-pairs"));
    }

    /** A shot hit again after an excluded one: the used shots alternate. */
    @Test
    void usedShotsAlternateAfterARepeatedShot() {
        Session session = InventedSession.carries("ABBBAABBA", ALDER, ROWAN);
        List<Shot> shots = session.shots().shots();
        ShotPairing pairing = ShotPairing.of(
                with(session, 1, shots.get(1).withExclusion("talk")).shots(), A, B);
        assertEquals(ShotPairing.Source.ORDER, pairing.source());
        assertEquals(4, pairing.pairs().size());
        assertEquals(List.of(), pairing.broken());
    }

    @Test
    void aMetricThatFewPairsHaveIsComparedUnpaired() {
        Session session = InventedSession.carries(ABBA, ALDER, ROWAN);
        for (int i : new int[] {0, 3, 4, 7, 9, 10, 13, 14}) {
            Shot shot = session.shots().shots().get(i);
            session = with(
                    session, i, shot.toBuilder().measured(Metric.APEX, 25.0 + i).build());
        }
        MetricComparison apex = carry().compare(session).find(Metric.APEX).orElseThrow();
        assertFalse(apex.paired());
        assertEquals(0, apex.pairs());
        assertEquals(List.of("pairs-not-used"), codes(apex.warnings()));
        assertEquals(4, apex.first().n());
    }

    @Test
    void shotsOneByOneGiveTheSameAsTheWholeFile() {
        Session whole = InventedSession.full(21, 7, 1.0, 1.0);
        Session growing = whole.withShots(ShotSet.of());
        for (Shot shot : whole.shots()) {
            growing = growing.append(shot);
            if (growing.shots().size() >= 4) {
                int n = growing.shots().size();
                Session file = whole.withShots(ShotSet.of(whole.shots().shots().subList(0, n)));
                assertEquals(everything(carry().compare(file)), everything(carry().compare(growing)));
            }
        }
    }

    private static String everything(HeadToHeadResult r) {
        StringBuilder text = new StringBuilder(r.toString());
        for (MetricComparison m : r.metrics()) {
            for (TestResult t : tests(m)) {
                text.append(t).append(t.warnings());
            }
            text.append(m).append(m.adjustedP()).append(m.warnings());
        }
        r.associations().forEach(a -> text.append(a).append(a.slope()).append(a.adjustedP()));
        r.patterns().ifPresent(p -> text.append(p.ratio()).append(p.meanDistance()));
        return text.append(r.warnings()).append(r.pairing().broken()).toString();
    }

    private static List<TestResult> tests(MetricComparison m) {
        List<TestResult> all = new ArrayList<>(List.of(
                m.difference(),
                m.exact(),
                m.shift(),
                m.effect(),
                m.superiority(),
                m.spread().ratio(),
                m.spread().brownForsythe(),
                m.drift()));
        m.equivalence().ifPresent(e -> all.add(e.combined()));
        return all;
    }

    @Test
    void degenerateSessionsAreAnsweredWithWarnings() {
        double[] same = {150.0, 150.0, 150.0, 150.0};
        double[] two = {150.0, 152.0};
        List<Session> sessions = List.of(
                InventedSession.carries("ABBAABBA", same, same),
                InventedSession.carries("AABB", two, two),
                InventedSession.carries("ABBA", two, new double[] {149.0, 147.0}),
                InventedSession.carries("AABBAABB", same, new double[] {140.0, 140.0, 140.0, 140.0}),
                InventedSession.full(1, 2, 0.0, 0.0));
        for (Session session : sessions) {
            HeadToHeadResult r = carry().compare(session);
            String text = everything(r);
            assertFalse(text.contains("NaN"), text);
            for (MetricComparison m : r.metrics()) {
                assertTrue(m.differenceSd() >= 0.0);
                for (TestResult t : tests(m)) {
                    assertTrue(t.pValue() >= 0.0 && t.pValue() <= 1.0);
                }
            }
        }
        MetricComparison equal = carry().compare(sessions.get(0)).primary();
        assertEquals(1.0, equal.difference().pValue());
        assertTrue(equal.difference().warns("no-spread"));
        assertEquals(Verdict.UNDECIDED, equal.verdict().verdict());
    }

    @Test
    void builtDifferently() {
        Session session = InventedSession.carries(ABBA, ALDER, ROWAN).toBuilder()
                .club(Club.builder(A)
                        .loft(degrees(29.0))
                        .lie(degrees(61.5))
                        .length(inches(37.5))
                        .shaft("Steel  S")
                        .build())
                .club(Club.builder(B)
                        .loft(degrees(29.3))
                        .lie(degrees(62.0))
                        .length(inches(37.75))
                        .shaft("steel s")
                        .build())
                .build();
        HeadToHeadResult r = carry().compare(session);
        assertEquals(
                "[lie: 61.5 deg against 62.0 deg, length: 37.50 in against 37.75 in]",
                r.buildDifferences().toString());
        BuildDifference length = r.buildDifferences().get(1);
        assertEquals(BuildDifference.Property.LENGTH, length.property());
        assertEquals(37.5 * 0.0254, length.first().orElseThrow(), 1e-12);
        assertEquals(37.75 * 0.0254, length.second().orElseThrow(), 1e-12);
        assertEquals("m", length.property().siUnit().symbol());
        assertEquals(List.of("builds-differ", "builds-differ"), codes(r.warnings()));
        assertEquals("Steel  S", r.first().build().flatMap(Club::shaft).orElseThrow());
    }

    /** Scaling a pattern about its centre by 2 makes the ratio 2; on a line it is the jackknife of one dimension. */
    @Test
    void patternsAreComparedByTheirSpread() {
        for (boolean paired : new boolean[] {true, false}) {
            HeadToHead procedure = paired ? carry() : carry().withoutPairing();
            double[] flat = new double[8];
            Session line = landing(ALDER, flat, ROWAN, flat);
            PatternComparison p = procedure.compare(line).patterns().orElseThrow();
            TestResult expected = SpreadRatio.withDefaults()
                    .withMethod(SpreadRatio.Method.JACKKNIFE)
                    .test(ALDER, ROWAN);
            if (!paired) {
                // On a line the root mean square radius is the standard deviation: the plain ratio of the two.
                assertEquals(
                        new StandardDeviation().evaluate(ALDER) / new StandardDeviation().evaluate(ROWAN),
                        p.ratio().estimate().value(),
                        1e-9);
                assertEquals(
                        expected.estimate().interval().upper(),
                        p.ratio().estimate().interval().upper(),
                        1e-9);
                assertEquals(expected.pValue(), p.ratio().pValue(), 1e-9);
            }
            double[] side = {1.0, -3.0, 2.0, 0.5, -1.5, 4.0, -2.5, 0.0};
            double[] wide =
                    Arrays.stream(ALDER).map(c -> 150.0 + 3.0 * (c - 150.0)).toArray();
            double[] wideSide = {-6.0, 3.0, 9.0, -9.0, 4.5, 0.0, -3.0, 6.0};
            PatternComparison q = procedure
                    .compare(landing(wide, wideSide, ALDER, side))
                    .patterns()
                    .orElseThrow();
            assertEquals("Rowan", q.tighter().orElseThrow());
            assertTrue(q.meanDistance().estimate().value() > 0.0);
            assertEquals(8, q.first().n());
            double[] thrice = Arrays.stream(side).map(s -> 3.0 * s).toArray();
            TestResult scaled = procedure
                    .compare(landing(wide, thrice, ALDER, side))
                    .patterns()
                    .orElseThrow()
                    .ratio();
            assertEquals(3.0, scaled.estimate().value(), 1e-9);
            assertEquals(
                    paired,
                    scaled.estimate().interval().upper() == Double.POSITIVE_INFINITY,
                    "pairs that repeat each other exactly have no measure of error");
        }
    }

    private static Session landing(double[] a, double[] sideA, double[] b, double[] sideB) {
        Session session = InventedSession.carries(ABBA, a, b);
        List<Shot> shots = new ArrayList<>();
        int[] next = new int[2];
        for (Shot shot : session.shots()) {
            boolean first = shot.club().equals(A);
            double side = first ? sideA[next[0]++] : sideB[next[1]++];
            shots.add(shot.toBuilder().measured(Metric.SIDE, side).build());
        }
        return session.withShots(ShotSet.of(shots));
    }

    /** The slope within clubs against a regression with a club indicator by Commons Math. */
    @Test
    void associationsAgreeWithARegressionOnTheClub() {
        HeadToHeadResult r = carry().withoutPairing().compare(InventedSession.full(8, 12, 3.0, 0.0));
        Association a = r.associations().stream()
                .filter(x -> x.outcome() == Metric.CURVE && x.candidate() == Metric.FACE_TO_PATH)
                .findFirst()
                .orElseThrow();
        List<Shot> shots = r.session().shots().shots();
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(
                shots.stream().mapToDouble(s -> s.value(Metric.CURVE)).toArray(),
                shots.stream()
                        .map(s -> new double[] {
                            s.value(Metric.FACE_TO_PATH), s.club().equals(A) ? 1.0 : 0.0
                        })
                        .toArray(double[][]::new));
        double b = fit.estimateRegressionParameters()[1];
        double sb = fit.estimateRegressionParametersStandardErrors()[1];
        assertEquals(b, a.slope().estimate().value(), 1e-9);
        assertEquals(b / sb, a.slope().statistic().orElseThrow(), 1e-9);
        assertEquals(List.of(21.0), a.slope().degreesOfFreedom());
        assertEquals(24, a.shots());
        double d = a.candidateDifference().estimate().value();
        assertEquals(b * d, a.part().value(), 1e-9);
        double sd = d / a.candidateDifference().statistic().orElseThrow();
        Interval interval = a.part().interval();
        double t = dev.teeward.fitting.internal.Distributions.tQuantile(
                0.975, Math.min(21.0, a.candidateDifference().degreesOfFreedom().get(0)));
        assertEquals(t * Math.sqrt(b * b * sd * sd + d * d * sb * sb + sb * sb * sd * sd), interval.halfWidth(), 1e-9);
        assertTrue(a.clear(), a.toString());
        assertTrue(interval.contains(60.0 * Math.toRadians(3.0)), a.toString()); // what was put in
        assertEquals(
                r.find(Metric.CURVE).orElseThrow().difference().estimate(),
                a.outcomeDifference().estimate());
        for (Metric outcome : Metric.values()) {
            assertTrue(r.associations().stream()
                            .filter(x -> x.outcome() == outcome)
                            .count()
                    <= 8);
        }
    }

    @Test
    void clubsAreDescribed() {
        Session session = InventedSession.full(2, 6, 1.0, 0.0);
        Shot first = session.shots().shots().get(0);
        session = with(session, 0, first.toBuilder().rating(Rating.FEEL, 4).build());
        HeadToHeadResult r = carry().withTarget(meters(150.0)).compare(session);
        assertEquals(6, r.first().shapes().orElseThrow().n());
        assertEquals(6, r.first().strike().orElseThrow().n());
        assertTrue(r.first().strike().orElseThrow().cost().isPresent());
        assertEquals(4.0, r.first().rating(Rating.FEEL).orElseThrow().mean().value());
        assertTrue(r.second().rating(Rating.FEEL).isEmpty());
        assertTrue(r.first().pattern().orElseThrow().radiusAboutTarget(0.5).isPresent());
        assertEquals("Alder: 6 shots used, 0 excluded", r.first().toString());
        HeadToHeadResult plain = carry().compare(InventedSession.carries(ABBA, ALDER, ROWAN));
        assertTrue(plain.patterns().isEmpty()
                && plain.first().shapes().isEmpty()
                && plain.first().strike().isEmpty());
        assertTrue(plain.air().description().length() > 0);
        assertEquals(plain.completion().session(), plain.session());
    }

    /** Six metres between the clubs in every pair but one, whose longer club was struck far off the toe: it hides the rest. */
    @Test
    void aVerdictThatAFlaggedShotTurnsIsTold() {
        Session good = InventedSession.full(9, 10, 0.5, 6.0);
        Shot shot = good.shots().shots().get(4);
        assertEquals("Alder", shot.club());
        Session session = with(
                good,
                4,
                shot.toBuilder()
                        .measured(Metric.STRIKE_TOE, 0.06)
                        .measured(Metric.STRIKE_UP, -0.03)
                        .measured(Metric.BALL_SPEED, 34.0)
                        .measured(Metric.CARRY, 60.0)
                        .build());
        HeadToHeadResult r = carry().compare(session);
        assertEquals(Verdict.UNDECIDED, r.primary().verdict().verdict());
        assertEquals(
                Verdict.DIFFERENT,
                r.withoutFlagged().orElseThrow().primary().verdict().verdict());
        assertTrue(r.changedVerdicts().contains(new VerdictChange(Metric.CARRY, Verdict.UNDECIDED, Verdict.DIFFERENT)));
    }

    /** A strike far off the toe that costs a third of the speed, which any screen of strikes finds. */
    @Test
    void flaggedShotsAreLeftOutOfASecondAnswerOnly() {
        Session good = InventedSession.complete(9, 10);
        Shot shot = good.shots().shots().get(5);
        Session session = with(
                good,
                5,
                shot.toBuilder()
                        .measured(Metric.STRIKE_TOE, 0.06)
                        .measured(Metric.STRIKE_UP, -0.03)
                        .measured(Metric.BALL_SPEED, 34.0)
                        .build());
        HeadToHeadResult r = carry().compare(session);
        assertTrue(r.screening().flagged().contains(5), r.screening().flags().toString());
        HeadToHeadResult without = r.withoutFlagged().orElseThrow();
        assertEquals(20, r.first().used().size() + r.second().used().size());
        assertEquals(10, r.primary().pairs());
        int left = 20 - r.screening().flagged().size();
        assertEquals(
                left, without.first().used().size() + without.second().used().size());
        assertTrue(without.primary().pairs() < 10 && without.primary().paired());
        assertTrue(without.withoutFlagged().isEmpty());
        for (MetricComparison m : r.metrics()) {
            Verdict with = m.verdict().verdict();
            Verdict then = without.find(m.metric()).orElseThrow().verdict().verdict();
            List<VerdictChange> listed = r.changedVerdicts().stream()
                    .filter(c -> c.metric() == m.metric())
                    .toList();
            assertEquals(
                    with == then || !m.inFamily() ? List.of() : List.of(new VerdictChange(m.metric(), with, then)),
                    listed,
                    m.toString());
        }
        assertEquals(List.of(), without.changedVerdicts());
        Session excluded = r.screening().flaggedExcluded();
        assertEquals(
                PairedTTest.withDefaults()
                        .withUnit(LengthUnit.METER)
                        .test(without.primary().pairedFirst(), without.primary().pairedSecond())
                        .toString(),
                without.primary().difference().toString());
        assertEquals(excluded, without.session());
        assertTrue(carry().compare(InventedSession.carries(ABBA, ALDER, ROWAN))
                .withoutFlagged()
                .isEmpty());
    }

    /** Ball speeds of 80 m/s from a club of 38 m/s are beyond any impact: both shots of a club are misread. */
    @Test
    void tooFewShotsWithoutTheFlaggedOnesAreSaid() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            shots.add(Shot.builder(i % 2 == 0 ? A : B)
                    .number(i + 1)
                    .measured(Metric.CLUB_SPEED, 38.0 + 0.1 * i)
                    .measured(Metric.BALL_SPEED, i % 2 == 0 ? 80.0 + i : 50.0 + 0.3 * i)
                    .build());
        }
        HeadToHeadResult r = HeadToHead.withDefaults()
                .withPrimary(Metric.BALL_SPEED)
                .withMargin(Metric.BALL_SPEED, 1.0)
                .compare(Session.builder().shots(ShotSet.of(shots)).build());
        assertEquals(2, r.screening().flagged().size());
        assertTrue(r.withoutFlagged().isEmpty());
        Warning last = r.warnings().get(r.warnings().size() - 1);
        assertEquals("too-few-without-flagged", last.code());
        assertEquals(
                "without the flagged shots there is no comparison: Alder has no used shot (2 excluded); each club needs at"
                        + " least two",
                last.message());
    }

    @Test
    void tenThousandShots() {
        Session session = InventedSession.complete(4, 5_000);
        long start = System.nanoTime();
        HeadToHeadResult r = carry().compare(session);
        System.err.printf(Locale.ROOT, "compare of 10,000 shots: %.2f s%n", 1e-9 * (System.nanoTime() - start));
        assertEquals(5_000, r.primary().pairs());
        assertTrue(r.primary().exact().method().contains("999 random arrangements"));
        assertEquals(Verdict.PRACTICALLY_THE_SAME, r.primary().verdict().verdict());
        start = System.nanoTime();
        HeadToHeadResult unpaired = carry().withoutPairing().compare(session);
        System.err.printf(
                Locale.ROOT, "compare of 10,000 unpaired shots: %.2f s%n", 1e-9 * (System.nanoTime() - start));
        assertTrue(unpaired.primary().exact().method().contains("999 random arrangements"));
        assertEquals(1, r.metrics().stream().filter(MetricComparison::primary).count());
        assertEquals(23, r.metrics().size());
    }
}
