package dev.teeward.quantity;

import java.io.Serializable;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Something a reader of a result must know: a range left, an assumption broken, a method that could not be used.
 *
 * <p>A warning comes with a result, never instead of one. The code is stable and meant for programs; the message is one
 * sentence for people and may change.
 *
 * <pre>{@code
 * Warning w = Warning.of("few-shots", "only 2 shots were used");
 * w.code();    // few-shots
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Warning implements Serializable {
    private static final long serialVersionUID = 1L;
    private static final Pattern CODE = Pattern.compile("[a-z][a-z0-9]*+(-[a-z0-9]++)*+");

    /** The stable name. */
    private final String code;

    /** The sentence. */
    private final String message;

    private Warning(String code, String message) {
        this.code = code;
        this.message = message;
    }

    /**
     * A warning.
     *
     * @param code lower-case words joined by hyphens
     * @param message one sentence on one line, not blank
     * @return the warning
     * @throws IllegalArgumentException if the code has another form or the message is blank or has a line break
     */
    public static Warning of(String code, String message) {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(message, "message");
        if (!CODE.matcher(code).matches()) {
            throw new IllegalArgumentException(
                    "warning code must be lower-case words joined by hyphens, but was \"" + code + "\"");
        }
        if (message.isBlank()) {
            throw new IllegalArgumentException("warning message must not be blank");
        }
        if (message.indexOf('\n') >= 0 || message.indexOf('\r') >= 0) {
            throw new IllegalArgumentException("warning message must be one line, but was \"" + message + "\"");
        }
        return new Warning(code, message);
    }

    /**
     * The stable name of this kind of warning.
     *
     * @return lower-case words joined by hyphens
     */
    public String code() {
        return code;
    }

    /**
     * What to know, for people.
     *
     * @return one sentence
     */
    public String message() {
        return message;
    }

    /**
     * Puts what was deserialized through the checks of the factory.
     *
     * @return the checked value
     */
    private Object readResolve() {
        return of(code, message);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Warning that && code.equals(that.code) && message.equals(that.message);
    }

    @Override
    public int hashCode() {
        return Objects.hash(code, message);
    }

    @Override
    public String toString() {
        return code + ": " + message;
    }
}
