package dev.teeward.fitting.io;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategy;
import java.io.Writer;

/** How tables are written: lines end with LF, and quotation marks stand wherever a reader could be misled without. */
final class Csv {
    private static final QuoteStrategy CAREFUL = new QuoteStrategy() {
        @Override
        public boolean quoteValue(int lineNo, int fieldIdx, String value) {
            return !value.isEmpty() && (blankAtTheEnds(value) || (lineNo <= 1 && couldSeparate(value)));
        }
    };

    private Csv() {}

    static CsvWriter writer(Writer out, char delimiter) {
        return CsvWriter.builder()
                .fieldSeparator(delimiter)
                .quoteStrategy(CAREFUL)
                .lineDelimiter(LineDelimiter.LF)
                .build(out);
    }

    private static boolean blankAtTheEnds(String value) {
        return value.charAt(0) <= ' ' || value.charAt(value.length() - 1) <= ' ';
    }

    /** In the heading, from which readers guess the separator and where the header block ends. */
    private static boolean couldSeparate(String value) {
        for (int i = 0; i < value.length(); i++) {
            if (",;\t#\uFEFF".indexOf(value.charAt(i)) >= 0) {
                return true;
            }
        }
        return false;
    }
}
