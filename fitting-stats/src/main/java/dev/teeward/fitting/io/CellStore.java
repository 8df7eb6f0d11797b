package dev.teeward.fitting.io;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.util.Arrays;

/** The text of all cells in one array, so that a large table leaves no garbage behind. */
final class CellStore extends AbstractBaseCsvCallbackHandler<CellStore> {
    private char[] chars = new char[8_192];
    private int length;
    private int[] ends = new int[1_024];
    private int cells;
    private int fields;

    @Override
    protected void handleBegin(long startingLineNumber) {
        fields = 0;
    }

    @Override
    protected void handleField(int fieldIdx, char[] buf, int offset, int len, boolean quoted) {
        if (length + len > chars.length) {
            chars = Arrays.copyOf(chars, Math.max(2 * chars.length, length + len));
        }
        System.arraycopy(buf, offset, chars, length, len);
        length += len;
        if (cells == ends.length) {
            ends = Arrays.copyOf(ends, 2 * ends.length);
        }
        ends[cells++] = length;
        fields++;
    }

    @Override
    protected CellStore buildRecord() {
        return this;
    }

    void clear() {
        length = 0;
        cells = 0;
    }

    int fieldsOfLastRecord() {
        return fields;
    }

    int cells() {
        return cells;
    }

    char[] chars() {
        return chars;
    }

    int start(int cell) {
        return cell == 0 ? 0 : ends[cell - 1];
    }

    int end(int cell) {
        return ends[cell];
    }

    String text(int cell) {
        return new String(chars, start(cell), end(cell) - start(cell));
    }
}
