package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Writes elements, attributes and text so that the result is well-formed both as XML 1.0 and inside HTML.
 *
 * <p>Text and attribute values are escaped. Dropped from them is what does not show or would make a line read differently from
 * what it says, see {@link VisibleText}, and with it all that XML 1.0 does not allow; line and paragraph separators become line
 * feeds.
 *
 * <p>Not thread-safe; one writer for one document.
 */
final class MarkupWriter {
    private final StringBuilder out = new StringBuilder(4096);
    private final Deque<String> open = new ArrayDeque<>();

    /** Opens an element; attributes are names and values in turn. */
    MarkupWriter open(String element, String... attributes) {
        tag(element, attributes).append('>');
        open.push(element);
        return this;
    }

    /** An element without content that needs no end: SVG shapes, {@code meta}. */
    MarkupWriter empty(String element, String... attributes) {
        tag(element, attributes).append("/>");
        return this;
    }

    private StringBuilder tag(String element, String... attributes) {
        out.append('<').append(element);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1]);
            out.append('"');
        }
        return out;
    }

    /** Closes the element opened last. */
    MarkupWriter close() {
        out.append("</").append(open.pop()).append('>');
        return this;
    }

    /** Text, escaped. */
    MarkupWriter text(String text) {
        escape(text);
        return this;
    }

    /** An element with nothing but text in it. */
    MarkupWriter element(String element, String text, String... attributes) {
        return open(element, attributes).text(text).close();
    }

    /** Markup or a style sheet that is already what it has to be. */
    MarkupWriter verbatim(String markup) {
        out.append(markup);
        return this;
    }

    /** What was written; every element must be closed. */
    String finish() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("not closed: " + open);
        }
        return out.toString();
    }

    private void escape(String text) {
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                case '\t', '\n', '\r' -> out.append((char) c);
                case 0x2028, 0x2029 -> out.append('\n');
                default -> {
                    if (!VisibleText.hidden(c)) {
                        out.appendCodePoint(c);
                    }
                }
            }
        });
    }
}
