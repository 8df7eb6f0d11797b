package dev.teeward.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.teeward.fitting.Metric;
import dev.teeward.fitting.Session;
import dev.teeward.fitting.UnitSystem;
import dev.teeward.fitting.compare.HeadToHead;
import dev.teeward.fitting.io.SessionReader;
import dev.teeward.fitting.report.HeadToHeadReport;
import dev.teeward.quantity.Length;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The JSON of {@code compare} against its schema, by an independent validator of draft 2020-12. */
class JsonSchemaTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(JsonText.schema());

    private static final HeadToHeadReport REPORT =
            DemoCommand.report(SessionReader.withDefaults().read(JsonText.resource(DemoCommand.SESSION), "demo"));

    private static final String DEMO = json(demo());

    private static List<String> faults(String json) {
        return SCHEMA.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    private static HeadToHeadReport demo() {
        return REPORT;
    }

    private static String json(HeadToHeadReport report) {
        return JsonText.of(report.data().root());
    }

    @Test
    void theSchemaIsOneOfItsDraft() throws IOException {
        Schema draft = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(List.of(), draft.validate(JsonText.schema(), InputFormat.JSON));
        assertFalse(draft.validate(
                        JsonText.schema().replaceFirst("\"required\": \\[", "\"required\": [1, "), InputFormat.JSON)
                .isEmpty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"US", "METRIC"})
    void demo(String units) {
        assertEquals(List.of(), faults(json(demo().withUnits(UnitSystem.valueOf(units)))));
    }

    /**
     * The same numbers in both families of units. The units are those of the 1959 yard and pound agreement and of the SI
     * brochure, typed here once more.
     */
    @Test
    void metricNumbersAreTheUsNumbersConverted() throws IOException {
        Map<String, Double> si = Map.ofEntries(
                Map.entry("yd", 0.9144),
                Map.entry("ft", 0.3048),
                Map.entry("in", 0.0254),
                Map.entry("m", 1.0),
                Map.entry("cm", 0.01),
                Map.entry("mph", 1609.344 / 3600.0),
                Map.entry("km/h", 1.0 / 3.6),
                Map.entry("m/s", 1.0),
                // mercury of 13,595.1 kg/m3 under 9.80665 m/s2; NIST SP 811 rounds the product to 3386.389
                Map.entry("inHg", 0.0254 * 13_595.1 * 9.80665),
                Map.entry("hPa", 100.0),
                Map.entry("yd2", 0.9144 * 0.9144),
                Map.entry("m2", 1.0));
        int[] compared = new int[2];
        same(
                MAPPER.readTree(json(demo().withUnits(UnitSystem.US))),
                MAPPER.readTree(json(demo().withUnits(UnitSystem.METRIC))),
                1.0,
                "",
                si,
                compared);
        assertTrue(compared[0] > 3_000, "numbers " + compared[0]);
        assertTrue(compared[1] > 300, "numbers with another unit " + compared[1]);
    }

    /** The factor of a number is that of the unit beside it, or of the nearest unit above it. */
    private static void same(
            JsonNode us, JsonNode metric, double factor, String place, Map<String, Double> si, int[] compared) {
        if (us instanceof ObjectNode object) {
            assertEquals(fields(us), fields(metric), place);
            double here = factor;
            if (us.path("unit").asText().equals("degF")) {
                assertEquals("degC", metric.path("unit").asText(), place);
                double celsius = (us.get("value").asDouble() - 32.0) / 1.8;
                assertEquals(celsius, metric.get("value").asDouble(), 1e-9, place);
                compared[0]++;
                compared[1]++;
                return;
            }
            if (us.path("unit").isTextual()) {
                here = ratio(us.get("unit").asText(), metric.get("unit").asText(), si, place);
            }
            for (Map.Entry<String, JsonNode> part : object.properties()) {
                boolean pure = PURE.contains(part.getKey()) || part.getKey().endsWith("_percent");
                same(
                        part.getValue(),
                        metric.get(part.getKey()),
                        pure ? 1.0 : here,
                        place + "/" + part.getKey(),
                        si,
                        compared);
            }
        } else if (us instanceof ArrayNode array) {
            assertEquals(array.size(), metric.size(), place);
            for (int i = 0; i < array.size(); i++) {
                same(array.get(i), metric.get(i), factor, place + "/" + i, si, compared);
            }
        } else if (us.isNumber()) {
            compared[0]++;
            double scale = place.endsWith("/statistic") && !metric.isNull() && us.asDouble() == metric.asDouble()
                    ? 1.0
                    : factor;
            compared[1] += scale == 1.0 ? 0 : 1;
            double wanted = us.asDouble() * scale;
            assertEquals(wanted, metric.asDouble(), 1e-9 * Math.max(1e-3, Math.abs(wanted)), place);
        } else if (us.isBoolean() || us.isNull()) {
            assertEquals(us, metric, place);
        }
    }

    /** Numbers without a unit that stand beside one. */
    private static final Set<String> PURE = Set.of(
            "level",
            "df",
            "n",
            "p",
            "adjusted_p",
            "count",
            "shots",
            "pairs",
            "first_shots",
            "second_shots",
            "effect",
            "superiority",
            "origins",
            "determination",
            "misses_left",
            "misses_right",
            "crossing_share",
            "angle");

    private static List<String> fields(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** By how much a number in the first unit is multiplied, also in units such as yd per deg. */
    private static double ratio(String us, String metric, Map<String, Double> si, String place) {
        if (us.equals(metric)) {
            return 1.0;
        }
        String[] one = us.split(" per ", -1);
        String[] other = metric.split(" per ", -1);
        assertEquals(one.length, other.length, place);
        double ratio = 1.0;
        for (int i = 0; i < one.length; i++) {
            if (!one[i].equals(other[i])) {
                assertTrue(si.containsKey(one[i]) && si.containsKey(other[i]), place + ": " + us + ", " + metric);
                double factor = si.get(one[i]) / si.get(other[i]);
                ratio = i == 0 ? ratio * factor : ratio / factor;
            }
        }
        return ratio;
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void randomSession(long seed) {
        Session session = RandomSession.create(seed);
        HeadToHead procedure = HeadToHead.withDefaults();
        if (seed % 5 == 0) {
            procedure = procedure.withTarget(Length.ofYards(155.0));
        }
        HeadToHeadReport report = HeadToHeadReport.of(procedure.compare(session))
                .withUnits(seed % 3 == 0 ? UnitSystem.METRIC : UnitSystem.US);
        assertEquals(List.of(), faults(json(report)));
    }

    /** Without this the tests above could pass by a schema that allows anything. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/schema",
                "/units",
                "/level",
                "/session/hand",
                "/session/air/density/value",
                "/clubs/first/name",
                "/clubs/second/used",
                "/order",
                "/pairing/pairs",
                "/primary",
                "/metrics/carry/unit",
                "/metrics/carry/difference/value",
                "/metrics/carry/difference/lower",
                "/metrics/carry/difference/p",
                "/metrics/carry/difference/method",
                "/metrics/carry/first/mean/level",
                "/metrics/carry/verdict",
                "/metrics/carry/equivalence/margin",
                "/patterns/first/landing/ellipse/semi_major",
                "/strike/first/n",
                "/explanation",
                "/explanation/club_or_swing",
                "/explanation/club_or_swing/0/swing_differs",
                "/explanation/club_or_swing/0/warnings",
                "/explanation/golfer_side/0/direct/p",
                "/explanation/balance/golfer",
                "/explanation/balance/inputs/0/difference",
                "/explanation/effects/0/direct/p",
                "/explanation/effects/0/covariates/0/part",
                "/explanation/flights/outcomes/0/rest",
                "/explanation/flights/outcomes/0/shares/0/share",
                "/explanation/agreements/0/accord",
                "/plan/power_percent",
                "/screening/flagged",
                "/screening/flags/0/kind",
                "/without_flagged/used/first",
                "/warnings"
            })
    void damageIsFound(String pointer) throws IOException {
        int slash = pointer.lastIndexOf('/');
        String name = pointer.substring(slash + 1);
        JsonNode tree = MAPPER.readTree(DEMO);
        assertFalse(tree.at(pointer).isMissingNode(), pointer);

        ObjectNode parent = (ObjectNode) tree.at(pointer.substring(0, slash));
        JsonNode before = parent.get(name);
        parent.remove(name);
        assertFalse(faults(tree.toString()).isEmpty(), "missing " + pointer);
        parent.set(name, MAPPER.readTree("{\"not\": [\"this\"]}"));
        assertFalse(faults(tree.toString()).isEmpty(), "an object as " + pointer);
        parent.set(name, before);
        parent.put("surplus", 1);
        assertFalse(faults(tree.toString()).isEmpty(), "something beside " + pointer);
        parent.remove("surplus");
        assertEquals(List.of(), faults(tree.toString()));
    }

    /** Values that no result can have, one at a time. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "/metrics/carry/unit | 'rpm'",
                "/metrics/carry/unit | 'm'",
                "/metrics/carry/difference/unit | 'degF'",
                "/metrics/carry/difference/unit | ''",
                "/metrics/carry/drift/unit | 'bananas'",
                "/metrics/carry/first/sd/value | -3",
                "/metrics/carry/superiority/value | -7",
                "/metrics/carry/superiority/upper | 1.5",
                "/metrics/carry/superiority/unit | '%'",
                "/metrics/carry/spread/ratio/value | -2",
                "/metrics/carry/spread/ratio/unit | 'yd'",
                "/metrics/carry/effect/null_value | 1",
                "/metrics/carry/difference/lower | null",
                "/metrics/carry/equivalence/upper | null",
                "/metrics/carry/first/mean/upper | null",
                "/metrics/carry/difference/n | []",
                "/metrics/carry/difference/p | 1.1",
                "/metrics/carry/label | ''",
                "/metrics/carry/difference/method | ''",
                "/clubs/first/ratings/feel/mean/value | 900",
                "/clubs/first/ratings/feel/sd/value | 5",
                "/clubs/first/ratings/feel/min | 0",
                "/clubs/first/name | ''",
                "/clubs/first/build/length/unit | 'yd'",
                "/clubs/first/build/head_mass/value | -1",
                "/level | 95",
                "/level_percent | -4",
                "/equivalence_level_percent | 101",
                "/units | 'metric'",
                "/session/date | ''",
                "/session/air/temperature/unit | 'degC'",
                "/metrics | {}",
                "/plan/metrics | {}",
                "/plan/power_percent | 100",
                "/patterns/first/shapes/table | []",
                "/patterns/first/shapes/table/0/count | -1",
                "/patterns/first/shapes/crossing_share/value | 101",
                "/patterns/first/landing/r50_center/value | -1",
                "/patterns/ratio/lower | -1",
                "/strike/first/sd_toe/value | -1",
                "/strike/first/rms_offset/unit | 'in'",
                "/strike/first/cost/n | 2",
                "/associations/0/part/unit | 'rpm'",
                "/associations/0/part/lower | null",
                "/associations/0/slope/unit | 'deg per bananas'",
                "/explanation/club_or_swing/0/answer | 'maybe'",
                "/explanation/golfer_side/0/direct/unit | 'rpm'",
                "/explanation/balance/golfer | 'maybe'",
                "/explanation/balance/inputs/0/within/unit | 'yd'",
                "/explanation/effects/0/direct/unit | 'rpm'",
                "/explanation/effects/0/covariates/0/difference/unit | 'yd'",
                "/explanation/effects/0/covariates/0/variance_inflation | 0.5",
                "/explanation/flights/outcomes/0/rest/unit | 'm'",
                "/explanation/flights/outcomes/0/shares/0/difference/unit | 'deg'",
                "/explanation/flights/outcomes/0/shares/0/together/unit | 'deg'",
                "/explanation/effects/0/read_with_error | ['nothing']",
                "/explanation/agreements/0/inputs/0/accord | 'perhaps'",
                "/screening/flags/0/metrics | []",
                "/screening/flags/0/test_false_alarm_percent | 0",
                "/screening/flags/0/family_false_alarm_percent | 150"
            })
    void valuesThatCannotBeAreFound(String pointer, String value) throws IOException {
        JsonNode tree = MAPPER.readTree(DEMO);
        assertFalse(tree.at(pointer).isMissingNode(), pointer);
        set(tree, pointer, MAPPER.readTree(value.replace('\'', '"')));
        assertFalse(faults(tree.toString()).isEmpty(), pointer + " " + value);
    }

    private static void set(JsonNode tree, String pointer, JsonNode value) {
        int slash = pointer.lastIndexOf('/');
        String name = pointer.substring(slash + 1);
        if (tree.at(pointer.substring(0, slash)) instanceof ArrayNode array) {
            array.set(Integer.parseInt(name), value);
        } else {
            ((ObjectNode) tree.at(pointer.substring(0, slash))).set(name, value);
        }
    }

    private static final List<String> UNITS = List.of(
            "",
            "bananas",
            "m",
            "yd",
            "ft",
            "in",
            "cm",
            "mm",
            "m/s",
            "mph",
            "km/h",
            "deg",
            "rpm",
            "s",
            "g",
            "%",
            "kg/m3",
            "degF",
            "degC",
            "inHg",
            "hPa",
            "yd2",
            "m2",
            "yd per ten shots",
            "m per ten shots",
            "deg per ten shots");

    static Stream<Arguments> damages() {
        List<Arguments> damages = new ArrayList<>();
        UNITS.forEach(unit -> damages.add(damage(
                "unit " + unit,
                (place, old) ->
                        place.endsWith("/unit") && !old.asText().equals(unit) ? TextNode.valueOf(unit) : null)));
        damages.add(damage(
                "empty text",
                (place, old) -> old.isTextual() && !place.endsWith("/unit") ? TextNode.valueOf("") : null));
        for (double wrong : new double[] {-1e-3, 100.001, 1e6}) {
            damages.add(damage(
                    "percent " + wrong,
                    (place, old) -> place.endsWith("_percent") && old.isNumber() ? DoubleNode.valueOf(wrong) : null));
        }
        for (double wrong : new double[] {-1e-9, 1.0 + 1e-9, 95.0}) {
            damages.add(damage(
                    "share " + wrong,
                    (place, old) ->
                            place.matches(".*/(p|adjusted_p|level|determination|superiority/(value|lower|upper))")
                                            && old.isNumber()
                                    ? DoubleNode.valueOf(wrong)
                                    : null));
        }
        damages.add(damage(
                "below 0",
                (place, old) -> old.isNumber()
                                && place.matches(
                                        ".*/((sd|sd_toe|sd_up|rms_offset|ratio|superiority|r[59]0_(center|target))/(value|lower|upper)"
                                                + "|n|n/0|n/1|df|df/0|df/1|count|used|excluded|pairs|shots|flagged|index|shot|like|now|low"
                                                + "|central|high|measured|derived|computed|margin|difference_sd|semi_major|semi_minor"
                                                + "|area/value|density/value|broken_count|unpaired|secondary_count|misses_(left|right))")
                        ? DoubleNode.valueOf(-1.0)
                        : null));
        damages.add(damage(
                "no count", (place, old) -> old.isInt() && !place.matches(".*/df.*") ? DoubleNode.valueOf(1.5) : null));
        damages.add(damage("no number", (place, old) -> old.isNumber() ? TextNode.valueOf("1") : null));
        damages.add(damage("no list", (place, old) -> old.isArray() ? TextNode.valueOf("none") : null));
        return damages.stream();
    }

    private static Arguments damage(String name, BiFunction<String, JsonNode, @Nullable JsonNode> change) {
        return Arguments.of(name, change);
    }

    /** All such damage at once: every damaged place must be among the places of the faults. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("damages")
    void everyDamagedPlaceIsFound(String name, BiFunction<String, JsonNode, @Nullable JsonNode> change)
            throws IOException {
        for (UnitSystem units : UnitSystem.values()) {
            JsonNode tree = MAPPER.readTree(json(demo().withUnits(units)));
            Set<String> damaged = new TreeSet<>();
            damage(tree, tree, "", change, damaged);
            assertFalse(damaged.isEmpty(), name);
            Set<String> found = SCHEMA.validate(tree.toString(), InputFormat.JSON).stream()
                    .map(fault -> fault.getInstanceLocation().toString())
                    .collect(Collectors.toSet());
            damaged.removeAll(found);
            assertEquals(Set.of(), damaged, name + " is not found in " + units);
        }
    }

    private static void damage(
            JsonNode tree,
            JsonNode node,
            String place,
            BiFunction<String, JsonNode, @Nullable JsonNode> change,
            Set<String> damaged) {
        JsonNode other = place.isEmpty() || place.equals("/units") ? null : change.apply(place, node);
        if (other != null) {
            set(tree, place, other);
            damaged.add(place);
        } else if (node instanceof ObjectNode) {
            fields(node).forEach(name -> damage(tree, node.get(name), place + "/" + name, change, damaged));
        } else {
            for (int i = 0; i < node.size(); i++) {
                damage(tree, node.get(i), place + "/" + i, change, damaged);
            }
        }
    }

    /** The schema names the units of the metrics once more; they are those of the library. */
    @Test
    void theUnitsOfTheSchemaAreThoseOfTheMetrics() throws IOException {
        JsonNode schema = MAPPER.readTree(JsonText.schema());
        for (Metric metric : Metric.values()) {
            for (UnitSystem units : UnitSystem.values()) {
                String family = units.name().toLowerCase(Locale.ROOT);
                JsonNode form = schema.at("/$defs/" + family + "_metrics/properties/" + metric.key() + "/$ref");
                assertEquals(
                        metric.unit(units).symbol(),
                        schema.at(form.asText().substring(1) + "/properties/unit/const")
                                .asText(),
                        metric + " " + units);
            }
        }
    }

    /** In every object that has them, lower is at most value and value at most upper. */
    @ParameterizedTest
    @MethodSource("seeds")
    void valuesLieInTheirIntervals(long seed) throws IOException {
        JsonNode tree = MAPPER.readTree(
                json(HeadToHeadReport.of(HeadToHead.withDefaults().compare(RandomSession.create(seed)))));
        List<String> wrong = new ArrayList<>();
        int[] seen = new int[1];
        inOrder(tree, "", wrong, seen);
        assertEquals(List.of(), wrong);
        assertTrue(seen[0] > 0);
    }

    private static void inOrder(JsonNode node, String place, List<String> wrong, int[] seen) {
        if (node.path("value").isNumber() && node.has("lower")) {
            double value = node.get("value").asDouble();
            double slack = 1e-9 * Math.abs(value) + 1e-12;
            seen[0]++;
            if ((node.get("lower").isNumber() && node.get("lower").asDouble() > value + slack)
                    || (node.get("upper").isNumber() && node.get("upper").asDouble() < value - slack)) {
                wrong.add(place + " " + node.get("lower") + " " + value + " " + node.get("upper"));
            }
        }
        if (node instanceof ObjectNode) {
            fields(node).forEach(name -> inOrder(node.get(name), place + "/" + name, wrong, seen));
        } else {
            for (int i = 0; i < node.size(); i++) {
                inOrder(node.get(i), place + "/" + i, wrong, seen);
            }
        }
    }

    @Test
    void unknownMetricIsFound() throws IOException {
        JsonNode tree = MAPPER.readTree(DEMO);
        ObjectNode metrics = (ObjectNode) tree.get("metrics");
        metrics.set("happiness", metrics.get("carry"));
        assertFalse(faults(tree.toString()).isEmpty());
    }

    /** It is not reckoned as the difference beside it is, so that the method of that one does not say how. */
    @Test
    void theCorrectedDifferenceSaysItsOwnMethod() throws IOException {
        int met = 0;
        for (JsonNode effect : MAPPER.readTree(DEMO).at("/explanation/effects")) {
            JsonNode corrected = effect.get("direct_corrected");
            if (!corrected.isNull()) {
                met++;
                assertTrue(
                        corrected.at("/method").asText().startsWith("errors of reading taken off"), effect.toString());
            }
        }
        assertTrue(met > 0, "effects corrected: " + met);
    }

    /** Every property says what it is; every number says its unit, or that it has none or stands beside one. */
    @Test
    void everyPropertyIsDescribed() throws IOException {
        JsonNode schema = MAPPER.readTree(JsonText.schema());
        List<String> bare = new ArrayList<>();
        List<String> open = new ArrayList<>();
        visit(schema, schema, "", bare, open);
        assertEquals(List.of(), bare);
        assertEquals(List.of(), open);
    }

    private static void visit(JsonNode root, JsonNode node, String place, List<String> bare, List<String> open) {
        if (node instanceof ObjectNode object) {
            if (object.path("type").asText().equals("object")) {
                JsonNode rest = object.path("additionalProperties");
                if (!(rest.isBoolean() && !rest.asBoolean()) && !object.has("propertyNames")) {
                    open.add(place);
                }
            }
            // What has no type of its own only narrows something that is described elsewhere.
            if (object.path("properties").isObject()
                    && object.path("type").asText().equals("object")
                    && !place.endsWith("/properties")) {
                for (Map.Entry<String, JsonNode> property :
                        object.get("properties").properties()) {
                    JsonNode form = property.getValue();
                    String text = description(root, form);
                    boolean number = form.path("type").toString().contains("\"number\"");
                    if (text.isEmpty() && !form.has("const")) {
                        bare.add(place + "/" + property.getKey());
                    } else if (number
                            && Stream.of("unit", "percent", "pure number", "share", "kg/m3")
                                    .noneMatch(text::contains)) {
                        bare.add(place + "/" + property.getKey() + " says no unit: " + text);
                    }
                }
            }
            for (Map.Entry<String, JsonNode> part : object.properties()) {
                visit(root, part.getValue(), place + "/" + part.getKey(), bare, open);
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                visit(root, array.get(i), place + "/" + i, bare, open);
            }
        }
    }

    private static String description(JsonNode root, JsonNode form) {
        if (form.has("description")) {
            return form.get("description").asText();
        }
        if (form.has("$ref")) {
            return description(root, root.at(form.get("$ref").asText().substring(1)));
        }
        return Stream.of("anyOf", "allOf")
                .filter(form::has)
                .map(name -> description(root, form.get(name).get(0)))
                .findFirst()
                .orElse("");
    }

    @Test
    void theSchemaIsPrinted() {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        assertEquals(0, TeewardExamples.run(new PrintWriter(out), new PrintWriter(err), "schema"));
        assertEquals(JsonText.schema(), out.toString());
        assertEquals("", err.toString());
        assertTrue(out.toString().startsWith("{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n"));
    }

    @Test
    void sameBytesEveryTime() {
        String once = DEMO;
        assertEquals(once, json(demo()));
        assertEquals(-1, once.indexOf('\r'));
        assertTrue(once.startsWith("{\n \"schema\": \"teeward-head-to-head/2\",\n"), once);
        assertTrue(once.endsWith("}\n"));
    }

    @Test
    void whatIsNoNumberOfJsonIsRefused() {
        IllegalStateException e = assertThrows(
                IllegalStateException.class, () -> JsonText.of(Map.of("a", List.of(1.0, Map.of("b", Double.NaN)))));
        assertEquals("/a/1/b is NaN, which is not a number of JSON", e.getMessage());
    }
}
