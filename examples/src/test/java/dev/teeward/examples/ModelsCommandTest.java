package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.CoefficientSpread;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

class ModelsCommandTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), args);
    }

    @Test
    void printsEveryShotByEveryModel() {
        assertEquals(0, run("models"));
        assertEquals("", err.toString());
        String text = out.toString();
        for (ModelSpread.Shot shot : ModelSpread.SHOTS) {
            assertTrue(text.contains(shot.title() + "\n"), text);
            Flight flight = FlightModel.standard().fly(shot.launch());
            assertTrue(
                    text.contains(String.format(
                            Locale.ROOT,
                            "TypicalAerodynamics  %9.1f",
                            flight.carry().yards())),
                    text);
        }
        assertEquals(4, text.split("SmitsSmith1994", -1).length - 1, text);
        assertTrue(text.contains("The shots are invented"), text);
        assertFalse(text.contains("NaN"), text);
    }

    /** What is known of the models beforehand: Davies' balls had less lift and more drag and carry least */
    @Test
    void oldBallsCarryLeastAndSayThatTheyLeftTheirRange() {
        ModelSpread spread = new ModelSpread();
        for (int shot = 0; shot < ModelSpread.SHOTS.size(); shot++) {
            List<Flight> flights = spread.flights(shot);
            Flight typical = flights.get(0);
            Flight davies = flights.get(2);
            assertTrue(davies.carry().yards() < typical.carry().yards());
            assertEquals("reynolds-outside-model", davies.warnings().get(0).code());
        }
        // The typical ball is calibrated on shots like the drive and the 6-iron.
        assertEquals(List.of(), spread.flights(0).get(0).warnings());
        assertEquals(List.of(), spread.flights(2).get(0).warnings());
        // A wedge spins more than the drives for which Smits and Smith measured.
        assertTrue(spread.flights(3).get(1).warnings().stream()
                .anyMatch(warning -> warning.code().equals("spin-ratio-outside-model")));
    }

    /**
     * The band against the standard deviation that {@code CoefficientSpread} gives, and against 400 balls drawn at random: of these
     * 95 % lie within, give or take 3.3 % (three standard errors).
     */
    @Test
    void theBandHoldsNinetyFiveOfAHundredBalls() {
        ModelSpread spread = new ModelSpread();
        AerodynamicModel ball = ModelSpread.MODELS.get(0);
        CoefficientSpread balls = ball.spread().orElseThrow();
        for (int shot = 0; shot < ModelSpread.SHOTS.size(); shot++) {
            LaunchConditions launch = ModelSpread.SHOTS.get(shot).launch();
            ToDoubleFunction<AerodynamicModel> carry =
                    m -> FlightModel.of(Ball.of(m)).fly(launch).carry().meters();
            BallBand band = spread.bands(shot).get(0).orElseThrow();
            double low = band.shorter().carry().meters();
            double high = band.longer().carry().meters();
            double middle = spread.flights(shot).get(0).carry().meters();
            assertTrue(low < middle && middle < high);
            double sd = balls.standardDeviation(ball, carry);
            assertEquals(2.0 * 1.959964 * sd, high - low, 0.02 * (high - low));
            SplittableRandom random = new SplittableRandom(20_260_400L + shot);
            int within = 0;
            for (int i = 0; i < 400; i++) {
                double one = carry.applyAsDouble(balls.draw(ball, random));
                within += one >= low && one <= high ? 1 : 0;
            }
            assertEquals(0.95, within / 400.0, 0.033);
            assertTrue(spread.bands(shot).get(1).isEmpty()
                    && spread.bands(shot).get(2).isEmpty());
        }
        assertEquals(0, run("models"));
        assertTrue(out.toString().contains("not stated"), out.toString());
        assertTrue(out.toString().contains("95 of 100 balls yd"), out.toString());
    }

    @Test
    void pageHasAPictureOfEveryShotThatIsWellFormed() throws Exception {
        Path page = folder.resolve("models.html");
        assertEquals(0, run("models", "--html", page.toString()));
        String html = Files.readString(page, StandardCharsets.UTF_8);
        Matcher svg = Pattern.compile("<svg.*?</svg>", Pattern.DOTALL).matcher(html);
        int pictures = 0;
        while (svg.find()) {
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg.group())));
            assertTrue(svg.group().contains("Davies1949, carry "), svg.group());
            assertEquals(1, svg.group().split("class=\"balls\"", -1).length - 1, "the typical ball states a spread");
            pictures++;
        }
        assertEquals(ModelSpread.SHOTS.size(), pictures);
        assertFalse(html.contains("NaN"));
        assertTrue(out.toString().startsWith("The same shots"));
    }

    @Test
    void aFolderThatIsNotThereIsTheUsersBusiness() throws IOException {
        assertEquals(
                2,
                run("models", "--html", folder.resolve("none").resolve("a.html").toString()));
        assertEquals(1, err.toString().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @Test
    void helpSaysWhatItDoes() {
        assertEquals(0, run("models", "--help"));
        assertTrue(out.toString().contains("--html"), out.toString());
    }
}
