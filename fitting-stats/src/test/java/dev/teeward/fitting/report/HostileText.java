package dev.teeward.fitting.report;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;

/** Text that a file may hold and that must be shown, not obeyed. */
final class HostileText {
    static final List<String> ALL = List.of(
            "<script>alert(1)</script>",
            "\"><img src=x onerror=alert(1)>",
            "' onload='alert(1)",
            "]]></style></title></desc></svg><script>alert(1)</script>",
            "<!-- --> <![CDATA[ ]]> &lt;b&gt; &amp; &#60;",
            "javascript:alert(1)",
            "\u202Egnp.exe\u2066\u2069",
            "club \uD83C\uDFCC\uFE0F \u6728\u306E\u30AF\u30E9\u30D6",
            "nul\u0000 bell\u0007 esc\u001B[31m del\u007F c1\u009B half\uD83C end \uFFFE\uFFFF",
            "{{7*7}} ${jndi:x} <%= 1 %>");

    private HostileText() {}

    /** Without what is dropped: what XML 1.0 does not allow, controls, direction overrides. */
    static String asShown(String text) {
        return text.replaceAll(
                        "[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\x7F-\\x9F\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]", "")
                .replace("half\uD83C end", "half end");
    }

    static void assertClean(String markup) {
        String lower = markup.toLowerCase(java.util.Locale.ROOT);
        for (String bad : List.of("<script", "<img", "</desc></svg>", "]]>", "<![cdata", "<!--", "\u202E", "\u0000")) {
            assertFalse(lower.contains(bad), () -> "found " + bad);
        }
    }
}
