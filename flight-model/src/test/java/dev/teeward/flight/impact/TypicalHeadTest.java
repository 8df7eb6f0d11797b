package dev.teeward.flight.impact;

import static dev.teeward.quantity.Units.degrees;
import static dev.teeward.quantity.Units.mph;
import static dev.teeward.quantity.Units.rpm;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.teeward.flight.LaunchConditions;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Typical heads against typical shots, whose ball speed, launch and spin and whose club speed and attack angle are common
 * practice recalled from memory: calibration, not validation.
 */
class TypicalHeadTest {
    /** A typical shot, with the loft that its launch and spin imply whatever the head. */
    private record Shot(String kind, ClubHead head, LaunchConditions launch, Delivery delivery) {
        LaunchConditions modelled(ClubHead with) {
            return RigidImpact.standard().strike(delivery, with).launch();
        }

        double ballSpeedPercent() {
            return 100.0
                    * (modelled(head).ballSpeed().metersPerSecond()
                                    / launch.ballSpeed().metersPerSecond()
                            - 1.0);
        }

        double launchAngleDegrees() {
            return modelled(head).launchAngle().degrees() - launch.launchAngle().degrees();
        }

        double spinPercent() {
            return 100.0 * (modelled(head).spinRate().rpm() / launch.spinRate().rpm() - 1.0);
        }

        /** Spin goes with 1 + et as long as the ball grips. */
        double wanted() {
            ClubHead rolling = head.toBuilder().tangentialRestitution(0.0).build();
            return launch.spinRate().rpm() / modelled(rolling).spinRate().rpm() - 1.0;
        }
    }

    private static List<String[]> rows(String resource) throws IOException {
        try (InputStream in = Objects.requireNonNull(TypicalHeadTest.class.getResourceAsStream(resource));
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("shot,"))
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }

    private static Map<String, List<Shot>> shots() throws IOException {
        Map<String, LaunchConditions> launches = new LinkedHashMap<>();
        for (String[] row : rows("/dev/teeward/flight/aero/typical_shots_calibration.csv")) {
            launches.put(
                    row[0],
                    LaunchConditions.builder()
                            .ballSpeed(mph(Double.parseDouble(row[1])))
                            .launchAngle(degrees(Double.parseDouble(row[2])))
                            .spinRate(rpm(Double.parseDouble(row[3])))
                            .build());
        }
        Map<String, List<Shot>> shots = new LinkedHashMap<>();
        for (String[] row : rows("typical_deliveries.csv")) {
            ClubHead head = head(row[1]);
            LaunchConditions launch = Objects.requireNonNull(launches.remove(row[0]), row[0]);
            Delivery delivery = Delivery.builder()
                    .clubSpeed(mph(Double.parseDouble(row[2])))
                    .attackAngle(degrees(Double.parseDouble(row[3])))
                    .clubPath(degrees(0.0))
                    .faceAngle(degrees(0.0))
                    .dynamicLoft(ImpliedDelivery.of(launch, head).dynamicLoft())
                    .build();
            String kind = row[1].replaceAll(" \\d+", "");
            shots.computeIfAbsent(kind, k -> new ArrayList<>()).add(new Shot(kind, head, launch, delivery));
        }
        assertEquals(Map.of(), launches, "shots without a delivery");
        return shots;
    }

    private static ClubHead head(String name) {
        int number = name.equals("driver") ? 0 : Integer.parseInt(name.replaceAll("\\D", ""));
        return switch (name.replaceAll(" \\d+", "")) {
            case "driver" -> TypicalHead.driver();
            case "fairway wood" -> TypicalHead.fairwayWood(number);
            case "hybrid" -> TypicalHead.hybrid(number);
            case "iron" -> TypicalHead.iron(number);
            case "wedge" -> TypicalHead.wedge(number);
            default -> throw new IllegalArgumentException(name);
        };
    }

    /** The mean of what the shots ask for, to the two digits that the constants have; none below 0. */
    @Test
    void theRestitutionAlongTheFaceIsTheOneThatTypicalShotsAskFor() throws IOException {
        for (Map.Entry<String, List<Shot>> kind : shots().entrySet()) {
            double wanted =
                    kind.getValue().stream().mapToDouble(Shot::wanted).average().orElseThrow();
            for (Shot shot : kind.getValue()) {
                assertEquals(
                        Math.max(0.0, wanted), shot.head.tangentialRestitution(), 0.005, () -> kind.getKey() + wanted);
                assertTrue(
                        !RigidImpact.standard().strike(shot.delivery, shot.head).slipped());
            }
        }
    }

    /** The table of deviations, as the class's text states it, is what the heads give: a pin of the residuals. */
    @Test
    void theTextStatesWhatIsLeft() throws IOException {
        String text = Files.readString(
                        Path.of("src", "main", "java", "dev", "teeward", "flight", "impact", "TypicalHead.java"),
                        StandardCharsets.UTF_8)
                .replaceAll("\\s*\n \\* *", " ");
        for (List<Shot> kind : shots().values()) {
            String row = "<tr><td>" + kind.get(0).kind + "</td><td>" + kind.size() + "</td><td>"
                    + each(kind, Shot::ballSpeedPercent) + "</td><td>" + each(kind, Shot::launchAngleDegrees)
                    + "</td><td>" + each(kind, Shot::spinPercent) + "</td></tr>";
            assertTrue(text.contains(row), row);
        }
    }

    /** Sound heads: no kind's spin is off by more than a tenth on average, but the driver's, which says so. */
    @Test
    void spinIsWithinATenthOfTypical() throws IOException {
        for (List<Shot> kind : shots().values()) {
            for (Shot shot : kind) {
                assertEquals(0.0, shot.spinPercent(), kind.get(0).kind.equals("driver") ? 15.0 : 10.0, shot.kind);
            }
        }
    }

    /** A lofted wedge's starts stay where they were measured, 60 percent or more towards the face. */
    @Test
    void aLoftedWedgeStartsTowardsTheFace() {
        Delivery delivery = Delivery.builder()
                .clubSpeed(mph(72.0))
                .attackAngle(degrees(-5.0))
                .clubPath(degrees(0.0))
                .faceAngle(degrees(1.0))
                .dynamicLoft(degrees(46.0))
                .build();
        for (double loft = 46.0; loft <= 64.0; loft += 2.0) {
            double share = DPlane.of(delivery, TypicalHead.wedge(loft)).faceShare();
            assertTrue(loft < 54.0 || share >= 0.60, "loft " + loft + ": " + share);
        }
    }

    private static String each(List<Shot> shots, ToDoubleFunction<Shot> deviation) {
        return shots.stream()
                .map(shot -> String.format(Locale.ROOT, "%+.1f", deviation.applyAsDouble(shot)))
                .collect(Collectors.joining(", "));
    }
}
