package dev.teeward.examples;

// README begin
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.compare.HeadToHeadResult;
import dev.teeward.fitting.explain.Explain;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.io.WholeFile;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.quantity.SpeedUnit;
import java.nio.file.Path;

/** Compares the two clubs of a session, prints the answer and writes the page with pictures. */
public final class HeadToHeadExample {
    private HeadToHeadExample() {}

    /**
     * Runs the example.
     *
     * @param args the session file, and where to write the page
     */
    public static void main(String[] args) {
        Session session = SessionReader.withDefaults().read(Path.of(args[0]));
        HeadToHeadResult result = HeadToHead.withDefaults()
                .withPrimary(Metric.FACE_TO_PATH) // settled before the shots are hit, as is the margin
                .withMargin(Metric.CLUB_SPEED, SpeedUnit.MILE_PER_HOUR.toSi(1.0))
                .compare(session);
        HeadToHeadReport report = HeadToHeadReport.of(result)
                .withExplanation(Explain.withDefaults().explain(result)) // club or swing
                .withUnits(UnitSystem.US);
        System.out.print(report.text());
        WholeFile.write(Path.of(args[1]), out -> out.write(report.html()));
    }
}
// README end
