package dev.teeward.fitting.report;

import java.util.ArrayList;
import java.util.List;

/** A sentence while it is put together: own words, numbers from the data, and text from outside. */
final class Wording {
    private final ReportData data;
    private final StringBuilder text = new StringBuilder();
    private final List<QuotedNumber> numbers = new ArrayList<>();
    private final List<Quotation> quotations = new ArrayList<>();

    Wording(ReportData data) {
        this.data = data;
    }

    /** Own words, without digits. */
    Wording say(String words) {
        text.append(words);
        return this;
    }

    /** Text from outside, on one line, which may hold digits of its own; the name of a club as pages show it. */
    Wording quote(String foreign) {
        String line = shown(foreign);
        quotations.add(new Quotation(text.length(), text.length() + line.length()));
        return say(line);
    }

    /** A long name is shortened within a message, too. */
    private String shown(String foreign) {
        ShownNames names = ShownNames.of(data);
        String first = String.valueOf(data.value("/clubs/first/name"));
        String second = String.valueOf(data.value("/clubs/second/name"));
        if (foreign.equals(first)) {
            return names.first();
        }
        return foreign.equals(second)
                ? names.second()
                : NumberText.line(
                        ShownNames.within(ShownNames.within(foreign, first, names.first()), second, names.second()));
    }

    Wording number(String pointer, int decimals) {
        return number(pointer, decimals, false);
    }

    /** Without its sign, which words tell. */
    Wording magnitude(String pointer, int decimals) {
        return number(pointer, decimals, true);
    }

    Wording count(String pointer) {
        return number(pointer, 0, false);
    }

    /** A count and its noun, singular for one. */
    Wording count(String pointer, String one, String many) {
        return count(pointer).say(" " + (at(pointer) == 1.0 ? one : many));
    }

    Wording percent(String pointer) {
        return number(pointer, NumberText.percentDecimals(at(pointer)), false).say(" %");
    }

    private Wording number(String pointer, int decimals, boolean magnitude) {
        double value = at(pointer);
        String number = NumberText.fixed(magnitude ? Math.abs(value) : value, decimals);
        numbers.add(new QuotedNumber(number, pointer, magnitude));
        return say(number);
    }

    private double at(String pointer) {
        return data.number(pointer).orElseThrow(() -> new IllegalStateException("there is no number at " + pointer));
    }

    /** A p, or in words that it is very small. */
    Wording p(String pointer) {
        double p = at(pointer);
        if (p < 0.001) {
            return say("p below one in a thousand");
        }
        return say("p ").number(pointer, p < 0.1 ? 3 : 2);
    }

    Sentence sentence() {
        String plain = text.toString();
        int first = Character.toUpperCase(plain.codePointAt(0));
        boolean foreign = !quotations.isEmpty() && quotations.get(0).start() == 0;
        String capital = foreign
                ? plain
                : Character.toString(first) + plain.substring(Character.charCount(plain.codePointAt(0)));
        return Sentence.of(capital, numbers, quotations);
    }
}
