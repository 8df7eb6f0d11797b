package dev.teeward.fitting.io;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/** Text of a file: strictly UTF-8, without a byte-order mark and without control characters. */
final class TextFile {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    /** Stands for bytes that are not UTF-8, but may also be meant. */
    private static final char REPLACEMENT = '\uFFFD';

    private TextFile() {}

    static String read(Path path) {
        String name = path.toString();
        if (Files.isDirectory(path)) {
            throw InputException.of(name, "is a folder, not a file");
        }
        try {
            return checked(decode(Files.readAllBytes(path), name), name);
        } catch (IOException e) {
            InputException failure = InputException.of(name, "cannot be read: " + reason(e));
            failure.initCause(e);
            throw failure;
        } catch (OutOfMemoryError e) {
            InputException failure = InputException.of(name, "cannot be read: it is too large");
            failure.initCause(e);
            throw failure;
        }
    }

    static String read(Reader reader, String name) {
        try {
            StringWriter text = new StringWriter();
            reader.transferTo(text);
            return checked(text.toString(), name);
        } catch (IOException e) {
            InputException failure = InputException.of(name, "cannot be read: " + reason(e));
            failure.initCause(e);
            throw failure;
        }
    }

    static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (e instanceof AccessDeniedException) {
            return "permission is denied";
        }
        String message = e.getMessage();
        return message == null ? e.getClass().getSimpleName() : message;
    }

    static String checked(String text, String name) {
        int start = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
        char[] chars = text.toCharArray();
        int line = 1;
        for (int i = start; i < chars.length; i++) {
            char c = chars[i];
            if (c == '\n') {
                line++;
            } else if ((c < ' ' && c != '\r' && c != '\t') || (c >= 0x7F && c <= 0x9F)) {
                throw InputException.at(
                        name,
                        "line " + line,
                        String.format(
                                Locale.ROOT, "has the control character U+%04X; this is not a text table", (int) c));
            }
        }
        return text.substring(start);
    }

    private static String decode(byte[] bytes, String name) throws CharacterCodingException {
        String text = new String(bytes, StandardCharsets.UTF_8);
        return text.indexOf(REPLACEMENT) < 0 ? text : strictly(bytes, name);
    }

    private static String strictly(byte[] bytes, String name) throws CharacterCodingException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        CoderResult result = decoder.decode(in, out, true);
        if (result.isError()) {
            throw InputException.of(
                    name,
                    String.format(
                            Locale.ROOT,
                            "is not UTF-8 text (byte 0x%02X at offset %d); save it as UTF-8",
                            bytes[in.position()],
                            in.position()));
        }
        return out.flip().toString();
    }
}
