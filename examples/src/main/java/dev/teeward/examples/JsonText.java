package dev.teeward.examples;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A tree of plain values as JSON (RFC 8259): the same tree gives the same text on every machine. One blank for each level and
 * arrays within a line, since indentation by two took more than a third of the text.
 */
final class JsonText {
    /** The schema of the trees that {@code compare} writes, in the jar. */
    static final String SCHEMA = "head-to-head-2.schema.json";

    private static final ObjectWriter WRITER = JsonMapper.builder()
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER) // the shortest decimal, also on Java 17
            .build()
            .writer(new DefaultPrettyPrinter(
                            Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                    .withObjectIndenter(new DefaultIndenter(" ", "\n")));

    private JsonText() {}

    /** The text of a tree, with a line feed at the end. */
    static String of(Map<String, @Nullable Object> tree) {
        finite(tree, "");
        try {
            return WRITER.writeValueAsString(tree) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The schema, which is a JSON schema of draft 2020-12. */
    static String schema() {
        return resource(SCHEMA);
    }

    /** A text that lies beside this class in the jar. */
    static String resource(String name) {
        try (InputStream in = JsonText.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** JSON has no other numbers, and a text in their place would be taken for a name. */
    private static void finite(@Nullable Object value, String place) {
        if (value instanceof Map<?, ?> map) {
            map.forEach((key, part) -> finite(part, place + "/" + key));
        } else if (value instanceof Iterable<?> list) {
            int index = 0;
            for (Object part : list) {
                finite(part, place + "/" + index++);
            }
        } else if (value instanceof Double number && !Double.isFinite(number)) {
            throw new IllegalStateException(place + " is " + number + ", which is not a number of JSON");
        }
    }
}
