package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.fitting.Metric;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.plan.FittingPlan;
import dev.teeward.fitting.plan.PairByPair;
import dev.teeward.fitting.plan.SpreadGuess;
import dev.teeward.quantity.LengthUnit;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Pictures of plans and running sessions, all invented. */
class PlanPictureTest {
    private static final FittingPlan PLAN = FittingPlan.withDefaults();
    private static final FittingPlan.Result RESULT = PLAN.forMargin(5.0, SpreadGuess.known(6.0));

    /** At the cap the curves are the chances of the plan, and they never fall. */
    @Test
    void theCurvesAreTheChances() {
        Document svg = Svg.check(PlanPicture.chances(PLAN, RESULT));
        List<Element> curves = Svg.withClass(svg, "path", "chance");
        double cap = Svg.points(Svg.withClass(svg, "path", "cap").get(0).getAttribute("d"))
                .get(0)[0];
        FittingPlan.Design[] designs = {RESULT.atTheEnd(), RESULT.afterEveryPair()};
        for (int i = 0; i < 2; i++) {
            List<double[]> points = Svg.points(curves.get(i).getAttribute("d"));
            double chance = Math.min(designs[i].findsDifference(), designs[i].showsSame());
            double[] there = points.get(RESULT.mostPairs() - 2);
            assertEquals(cap, there[0], 0.11);
            // The axis runs from 220 at 0 to 40 at 100 %.
            assertEquals(220.0 - 180.0 * chance, there[1], 0.051);
            for (int n = 1; n < points.size(); n++) {
                assertTrue(points.get(n)[1] <= points.get(n - 1)[1] + 1e-9);
            }
        }
        double wanted = Svg.points(Svg.withClass(svg, "path", "wanted").get(0).getAttribute("d"))
                .get(0)[1];
        assertEquals(220.0 - 180.0 * 0.8, wanted, 0.051);
    }

    /** The chances end where both ways have the wanted one, and beyond the cap; a hopeless margin ends at 200 pairs. */
    @Test
    void theChancesGoAsFarAsTheyMatter() {
        List<FittingPlan.Chance> chances = PLAN.chances(5.0, SpreadGuess.known(6.0));
        FittingPlan.Chance last = chances.get(chances.size() - 1);
        assertEquals(RESULT.afterEveryPair().pairs().orElseThrow(), last.pairs());
        List<FittingPlan.Chance> easy = PLAN.chances(50.0, SpreadGuess.known(6.0));
        assertEquals(30, easy.get(easy.size() - 1).pairs());
        List<FittingPlan.Chance> hopeless = PLAN.chances(0.1, SpreadGuess.known(6.0));
        assertEquals(200, hopeless.get(hopeless.size() - 1).pairs());
        Svg.check(PlanPicture.chances(PLAN, PLAN.forMargin(0.1, SpreadGuess.known(6.0))));
    }

    private static PairByPair session(int pairs) {
        SplittableRandom random = new SplittableRandom(3L);
        PairByPair session = PairByPair.withinMargin(5.0).withUnit(LengthUnit.METER);
        for (int i = 0; i < pairs; i++) {
            session = session.append(150.0 + 4.0 * random.nextGaussian(), 142.0 + 4.0 * random.nextGaussian());
        }
        return session;
    }

    /** The last look is the interval that the session stands at; before there is one, only the mean is drawn. */
    @Test
    void theLooksEndWhereTheSessionStands() {
        PairByPair session = session(14);
        List<PairByPair.Look> looks = session.looks();
        assertEquals(14, looks.size());
        var now = session.standing().look().orElseThrow().difference();
        assertEquals(now.value(), looks.get(13).mean(), 1e-9);
        assertEquals(now.interval().lower(), looks.get(13).interval().lower(), 1e-9);
        assertEquals(now.interval().upper(), looks.get(13).interval().upper(), 1e-9);
        assertFalse(looks.get(0).interval().bounded());
        Picture picture = PlanPicture.looks(session, "Alder", "Rowan", Metric.CARRY, UnitSystem.US);
        Document svg = Svg.check(picture);
        assertEquals(3, Svg.withClass(svg, "path", "look").size());
        assertTrue(
                picture.description()
                        .startsWith("After 14 pairs Alder minus Rowan is " + NumberText.fixed(now.value() / 0.9144, 1)
                                + " yd of carry, 95 % interval "),
                picture.description());
        assertEquals(
                1,
                Svg.withClass(
                                Svg.check(PlanPicture.looks(
                                        session(1), "Alder", "Rowan", Metric.CARRY, UnitSystem.METRIC)),
                                "path",
                                "look")
                        .size());
        Svg.check(PlanPicture.looks(session(0), "Alder", "Rowan", Metric.CARRY, UnitSystem.US));
    }

    @Test
    void hostileNamesStayText() {
        for (String hostile : HostileText.ALL) {
            Picture picture = PlanPicture.looks(session(3), hostile, "Rowan", Metric.CARRY, UnitSystem.US);
            Svg.check(picture);
            HostileText.assertClean(picture.svg());
        }
    }

    /** Letters of 11 are the smallest that a printed page keeps above 8 pt. */
    @Test
    void noLettersAreTooSmallForPaper() {
        PictureTest.assertLetters(PlanPicture.chances(PLAN, RESULT), 8.0 / 11.0);
        PictureTest.assertLetters(
                PlanPicture.looks(session(3), "Alder", "Rowan", Metric.CARRY, UnitSystem.US), 8.0 / 11.0);
    }
}
