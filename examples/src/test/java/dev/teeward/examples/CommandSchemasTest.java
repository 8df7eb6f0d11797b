package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the commands write against their schemas, by an independent validator of draft 2020-12. */
class CommandSchemasTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final SchemaRegistry DRAFT = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    /** Objects whose names are those of golfers or parameters. */
    private static final Set<String> FREE = Set.of("left_out", "parameters");

    @TempDir
    private Path folder = Path.of("");

    /** Command lines; SESSION, OTHER, UPHILL, FLIGHTS and ONE stand for files, and --json is added. */
    static Stream<String> lines() {
        return Stream.of(
                "gap --wanted 12 --club 6-iron --club 7-iron",
                "choose SESSION --goal distance --current Rowan",
                "plan --margin carry=5yd --sd 6yd",
                "plan --margin carry=25yd --session SESSION --units metric",
                "plan --margin carry=5yd --session ONE",
                "pool SESSION OTHER",
                "curve --club-speed-mph 95 --loft-deg 20 --path-deg 2 --face-deg 1 --lie-deg 2",
                "altitude SESSION --units metric --elevation 1500",
                "optimise --ball-speed-mph 150",
                "validate",
                "calibrate FLIGHTS");
    }

    static Stream<String> more() {
        return Stream.of(
                "gap --wanted 12",
                "gap --units metric",
                "gap SESSION UPHILL --wanted 20 --elevation 0 --turf fairway",
                "choose SESSION --goal hold --target 165yd --units metric",
                "choose SESSION --goal total --turf fairway --price Alder=100 --worth-of-money 0.1",
                "plan --margin carry=5yd --sd 60yd --sd-pairs 4 --units metric",
                "plan --margin smash_factor=0.02 --pilot SESSION",
                "plan --margin carry=5yd --session SESSION",
                "pool SESSION OTHER --metric face_to_path --units metric",
                "curve --club-speed-mph 95 --loft-deg 20 --face-deg 30 --left",
                "altitude SESSION",
                "optimise --club-speed-mph 100 --turf fairway",
                "validate FLIGHTS --left-out",
                "calibrate FLIGHTS --pool");
    }

    private String real(String line) throws IOException {
        String demo = JsonText.resource(DemoCommand.SESSION);
        String flights = JsonText.resource("typical_shots.csv");
        Files.writeString(folder.resolve("SESSION"), demo);
        Files.writeString(folder.resolve("OTHER"), demo.replace("# place", "# remark: another golfer\n# place"));
        Files.writeString(folder.resolve("UPHILL"), demo);
        Files.writeString(folder.resolve("FLIGHTS"), flights);
        Files.writeString(folder.resolve("ONE"), "club,carry_yd\nAlder,150\nRowan,151\n");
        Path json = folder.resolve("out.json");
        List<String> args = new ArrayList<>();
        for (String word : line.split(" ", -1)) {
            args.add(word.matches("[A-Z]+") ? folder.resolve(word).toString() : word);
        }
        args.addAll(List.of("--json", json.toString()));
        StringWriter err = new StringWriter();
        assertEquals(
                0,
                TeewardExamples.run(
                        new PrintWriter(new StringWriter()), new PrintWriter(err), args.toArray(new String[0])),
                () -> line + ": " + err);
        return Files.readString(json);
    }

    static Schema schema(String command) {
        return DRAFT.getSchema(JsonText.resource(SchemaCommand.SCHEMAS.get(command)));
    }

    static List<String> faults(Schema schema, String json) {
        return schema.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    /** What is written is as the schema says; a name left out, a name added and a word for a number are found everywhere. */
    @ParameterizedTest
    @MethodSource("lines")
    void whatIsWrittenIsAsTheSchemaSays(String line) throws IOException {
        Schema schema = schema(line.substring(0, line.indexOf(' ') < 0 ? line.length() : line.indexOf(' ')));
        String json = real(line);
        assertEquals(List.of(), faults(schema, json));
        JsonNode tree = MAPPER.readTree(json);
        assertTrue(tree.get("schema").asText().matches("teeward-[a-z]+/1"), json);
        int[] damaged = new int[1];
        damage(tree, tree, "", schema, damaged);
        assertTrue(damaged[0] > 10, "damaged in " + damaged[0] + " places");
    }

    @Tag("sweep")
    @ParameterizedTest
    @MethodSource("more")
    void whatElseIsWrittenIsToo(String line) throws IOException {
        whatIsWrittenIsAsTheSchemaSays(line);
    }

    private static void damage(JsonNode root, JsonNode node, String name, Schema schema, int[] damaged) {
        if (node instanceof ObjectNode object) {
            List<String> names = new ArrayList<>();
            object.fieldNames().forEachRemaining(names::add);
            if (!FREE.contains(name)) {
                found(root, object, "unheard_of", o -> o.put("unheard_of", 1), schema, damaged);
            }
            for (String field : names) {
                if (!FREE.contains(name)) {
                    found(root, object, field, o -> o.remove(field), schema, damaged);
                }
                if (object.get(field).isNumber()) {
                    found(root, object, field, o -> o.put(field, "a word"), schema, damaged);
                }
                damage(root, object.get(field), field, schema, damaged);
            }
        } else if (node instanceof ArrayNode array && !array.isEmpty()) {
            // The first stands for all.
            damage(root, array.get(0), name, schema, damaged);
        }
    }

    private static void found(
            JsonNode root, ObjectNode object, String field, Consumer<ObjectNode> change, Schema schema, int[] damaged) {
        ObjectNode before = object.deepCopy();
        change.accept(object);
        assertFalse(faults(schema, root.toString()).isEmpty(), () -> "not found: " + field + " of " + object);
        object.removeAll();
        object.setAll(before);
        damaged[0]++;
    }

    @Test
    void everySchemaIsOneOfItsDraftAndDescribed() throws IOException {
        Schema draft = DRAFT.getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        for (Map.Entry<String, String> entry : SchemaCommand.SCHEMAS.entrySet()) {
            String text = JsonText.resource(entry.getValue());
            assertEquals(List.of(), draft.validate(text, InputFormat.JSON), entry.getKey());
            List<String> bare = new ArrayList<>();
            if (!entry.getKey().equals("compare")) {
                described(MAPPER.readTree(text), "", bare);
            }
            assertEquals(List.of(), bare, entry.getKey());
        }
    }

    private static void described(JsonNode node, String place, List<String> bare) {
        for (Map.Entry<String, JsonNode> part : node.properties()) {
            String here = place + "/" + part.getKey();
            if (part.getKey().equals("properties")) {
                part.getValue().properties().stream()
                        .filter(property ->
                                property.getValue().path("description").asText().isBlank())
                        .forEach(property -> bare.add(here + "/" + property.getKey()));
            }
            described(part.getValue(), here, bare);
        }
        if (node.path("properties").isObject() && !node.has("additionalProperties")) {
            bare.add(place + " is open");
        }
        for (JsonNode item : node instanceof ArrayNode ? node : MAPPER.createArrayNode()) {
            described(item, place, bare);
        }
    }

    @Test
    void theSchemaOfEachCommandIsPrinted() {
        for (Map.Entry<String, String> entry : SchemaCommand.SCHEMAS.entrySet()) {
            StringWriter out = new StringWriter();
            assertEquals(
                    0,
                    TeewardExamples.run(
                            new PrintWriter(out), new PrintWriter(new StringWriter()), "schema", entry.getKey()));
            assertEquals(JsonText.resource(entry.getValue()), out.toString());
        }
        StringWriter err = new StringWriter();
        assertEquals(
                2, TeewardExamples.run(new PrintWriter(new StringWriter()), new PrintWriter(err), "schema", "fly"));
        assertTrue(
                err.toString().startsWith("\"fly\" writes no JSON; there are altitude, calibrate, "), err.toString());
    }
}
