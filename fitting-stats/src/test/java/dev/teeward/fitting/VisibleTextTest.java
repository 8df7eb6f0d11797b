package dev.teeward.fitting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What shows of a text; the characters are named in the Unicode code charts. */
class VisibleTextTest {
    /** Zero-width space, non-joiner, joiner, word joiner, byte-order mark, soft hyphen, direction marks, fillers, tags. */
    @ParameterizedTest
    @ValueSource(
            ints = {
                0x200B, 0x200C, 0x200D, 0x2060, 0xFEFF, 0x00AD, 0x200E, 0x200F, 0x061C, 0x202A, 0x202E, 0x2066, 0x2069,
                0x034F, 0x115F, 0x3164, 0xFFA0, 0x2800, 0xE0020, 0xE0100, 0x0085, 0x001B
            })
    void whatDoesNotShowIsDroppedAndFound(int character) {
        String text = "Al" + Character.toString(character) + "der";
        assertTrue(VisibleText.hides(text));
        assertFalse(VisibleText.hides(VisibleText.line(text)));
        assertEquals("alder", VisibleText.key(text).replace(" ", ""));
    }

    @ParameterizedTest
    @ValueSource(ints = {0x2028, 0x2029, '\n', '\r', '\t', 0x00A0, 0x2003, 0x3000})
    void separatorsAndSpacesBecomeOneSpace(int character) {
        String text = "Al " + Character.toString(character) + " der";
        assertEquals("Al der", VisibleText.line(text));
        assertEquals(VisibleText.key("Al der"), VisibleText.key(text));
    }

    @Test
    void lettersOfAllScriptsStay() {
        for (String text :
                new String[] {"\u00C9rable", "\u6728\u306E", "\uD83C\uDFCC\uFE0F", "na\u0308chst", "\u05D0\u05DC"}) {
            assertEquals(text, VisibleText.line(text));
            assertFalse(VisibleText.hides(text));
        }
    }

    @Test
    void nothingVisibleIsAQuestionMark() {
        assertEquals("?", VisibleText.line("\u200B\u200E "));
        assertEquals("?", VisibleText.line(""));
    }

    /** E and combining acute accent; the ligature fi; full-width letters: equal under NFKC by Unicode Standard Annex 15. */
    @Test
    void keysOfWhatReadsAlikeAreEqual() {
        assertEquals(VisibleText.key("\u00C9rable"), VisibleText.key("e\u0301rable"));
        assertEquals(VisibleText.key("\uFB01r"), VisibleText.key("FIR"));
        assertEquals(VisibleText.key("\uFF21lder"), VisibleText.key("alder"));
        assertEquals(VisibleText.key("Alder  6"), VisibleText.key(" alder\u00A06 "));
        assertNotEquals(VisibleText.key("Alder 6"), VisibleText.key("Alder 7"));
        assertNotEquals(VisibleText.key("Erable"), VisibleText.key("\u00C9rable"));
    }
}
