package dev.teeward.fitting.report;

import dev.teeward.fitting.VisibleText;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.text.Normalizer;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The letters of a page in those that a charset has: without accents where that helps, else question marks. The names of two
 * clubs stay different: where they would read the same, "(first)" or "(second)" is added.
 */
final class Letters {
    private final CharsetEncoder encoder;
    private final Map<String, String> names =
            new TreeMap<>(Comparator.comparingInt(String::length).reversed().thenComparing(Comparator.naturalOrder()));

    private Letters(CharsetEncoder encoder, ShownNames shown) {
        this.encoder = encoder;
        String first = plain(shown.first());
        String second = plain(shown.second());
        boolean alike = VisibleText.key(first).equals(VisibleText.key(second));
        put(shown.first(), first, alike ? " (first)" : "");
        put(shown.second(), second, alike ? " (second)" : "");
    }

    private void put(String name, String plain, String mark) {
        // A name that the charset has stays as it is, also beside another that would read the same.
        if (!plain.equals(name)) {
            names.put(name, plain + mark);
        }
    }

    static UnaryOperator<String> of(Charset charset, ShownNames names) {
        return new Letters(charset.newEncoder(), names)::written;
    }

    private String written(String text) {
        if (names.isEmpty()) {
            return plain(text);
        }
        Pattern any =
                Pattern.compile(names.keySet().stream().map(Pattern::quote).collect(Collectors.joining("|")));
        return plain(any.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(names.getOrDefault(found.group(), found.group()))));
    }

    private String plain(String text) {
        if (encoder.canEncode(text)) {
            return text;
        }
        StringBuilder plain = new StringBuilder();
        text.codePoints().mapToObj(Character::toString).map(this::letter).forEach(plain::append);
        return plain.toString();
    }

    private String letter(String character) {
        if (encoder.canEncode(character)) {
            return character;
        }
        String parts = Normalizer.normalize(character, Normalizer.Form.NFD).replaceAll("\\p{Mn}+", "");
        return parts.isEmpty() || encoder.canEncode(parts) ? parts : "?";
    }
}
