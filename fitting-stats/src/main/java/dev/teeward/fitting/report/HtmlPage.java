package dev.teeward.fitting.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One page of sections, tables and pictures that needs nothing outside itself: no script, no request, light and dark by the
 * reader's choice, and two sheets of paper for a usual session.
 *
 * <p><b>Where things stand.</b> The first section is the answer and comes first. A picture or a table belongs to the section
 * whose id is the same, or with which its id begins ({@code strips-start} belongs to a section {@code strips}); of several the
 * longest. Strips for which there is no such section belong to the section {@code differs}. Pictures without a section follow
 * the answer, tables without a section come last.
 *
 * <p>The text is escaped, so that names and notes of a file are shown and never run; the page forbids scripts and requests by
 * its content security policy as well. The {@code svg} of a picture is taken as it is: it must come from this package or be as
 * safe.
 *
 * <pre>{@code
 * String html = HtmlPage.of("Alder and Rowan", "en", sections, tables, pictures);
 * Files.writeString(path, html);   // UTF-8
 * }</pre>
 */
public final class HtmlPage {
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");
    private static final Pattern LANGUAGE = Pattern.compile("[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*");
    private static final Pattern NUMBER = Pattern.compile("[-<0-9.]+");
    private static final String DIFFERENCES = "differs";
    private static final String POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private final MarkupWriter out = new MarkupWriter();
    private final List<Section> sections;
    private final List<Table> tables;
    private final List<Picture> pictures;

    private HtmlPage(List<Section> sections, List<Table> tables, List<Picture> pictures) {
        this.sections = sections;
        this.tables = tables;
        this.pictures = pictures;
    }

    /**
     * Writes the page.
     *
     * @param title the title, plain text
     * @param language the language of all text as a tag of BCP 47, such as {@code en}
     * @param sections the words, the answer first
     * @param tables the tables
     * @param pictures the pictures
     * @return the page, to be stored as UTF-8; the same input gives the same text
     * @throws IllegalArgumentException if an id is not lower-case words joined by hyphens, two sections, two tables or two
     *     pictures have the same id, or the language is no tag
     */
    public static String of(
            String title, String language, List<Section> sections, List<Table> tables, List<Picture> pictures) {
        return of(title, title, language, sections, tables, pictures);
    }

    /** With a heading that is shorter than the title. */
    static String of(
            String title,
            String heading,
            String language,
            List<Section> sections,
            List<Table> tables,
            List<Picture> pictures) {
        Objects.requireNonNull(title, "title");
        if (!LANGUAGE.matcher(language).matches()) {
            throw new IllegalArgumentException(
                    "language must be a tag of BCP 47 such as en or de-AT, but was \"" + language + "\"");
        }
        checkIds("section", sections.stream().map(Section::id));
        checkIds("table", tables.stream().map(Table::id));
        checkIds("picture", pictures.stream().map(Picture::id));
        return new HtmlPage(List.copyOf(sections), List.copyOf(tables), List.copyOf(pictures))
                .write(title, heading, language);
    }

    private static void checkIds(String kind, Stream<String> ids) {
        Set<String> seen = new HashSet<>();
        ids.forEach(id -> {
            if (!ID.matcher(id).matches()) {
                throw new IllegalArgumentException(
                        "the id of a " + kind + " must be lower-case words joined by hyphens, but was \"" + id + "\"");
            }
            if (!seen.add(id)) {
                throw new IllegalArgumentException("two " + kind + "s have the id \"" + id + "\"");
            }
        });
    }

    private String write(String title, String heading, String language) {
        out.open("html", "lang", language).open("head");
        out.empty("meta", "charset", "utf-8");
        out.empty("meta", "http-equiv", "Content-Security-Policy", "content", POLICY);
        out.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        out.empty("meta", "name", "color-scheme", "content", "light dark");
        out.element("title", title);
        out.open("style").verbatim(styleSheet()).close();
        out.close().open("body");
        out.element("a", "Skip to the answer", "class", "skip", "href", "#main");
        out.open("header");
        if (heading.equals(title)) {
            out.element("h1", title);
        } else {
            out.element("h1", heading, "title", title);
        }
        out.close();
        out.open("main", "id", "main", "tabindex", "-1");
        for (int i = 0; i < sections.size(); i++) {
            section(sections.get(i), i == 0 ? "answer" : "part");
            if (i == 0) {
                pictures(without(pictures, Picture::id));
            }
        }
        if (sections.isEmpty()) {
            pictures(without(pictures, Picture::id));
        }
        without(tables, Table::id).forEach(this::table);
        return "<!DOCTYPE html>\n" + out.close().close().close().finish() + "\n";
    }

    private static String styleSheet() {
        try (InputStream in = HtmlPage.class.getResourceAsStream("page.css")) {
            return new String(Objects.requireNonNull(in, "page.css").readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void section(Section section, String kind) {
        String heading = "section-" + section.id();
        out.open("section", "class", kind, "aria-labelledby", heading);
        out.element("h2", section.title(), "id", heading);
        out.open("div", "class", "words");
        section.sentences()
                .forEach(sentence -> out.element("p", sentence.text()).text(" "));
        out.close();
        pictures(belonging(pictures, Picture::id, section));
        belonging(tables, Table::id, section).forEach(this::table);
        out.close();
    }

    private void pictures(List<Picture> some) {
        if (some.isEmpty()) {
            return;
        }
        out.open("div", "class", some.size() == 1 ? "pictures single" : "pictures");
        for (Picture picture : some) {
            out.open("figure");
            out.element("figcaption", picture.title());
            out.verbatim(picture.svg()).close();
        }
        out.close();
    }

    /** A wide table scrolls by itself; the region can be reached and named, so that the keyboard can scroll it. */
    private void table(Table table) {
        String caption = "table-" + table.id();
        String region = "region-" + table.id();
        // The name begins with a word of its own: a section may have the title that a table has as its caption.
        out.open(
                "div",
                "class",
                "scroll",
                "role",
                "region",
                "id",
                region,
                "aria-label",
                "Table: " + table.caption(),
                "tabindex",
                "0");
        out.open("table").open("caption", "id", caption).element("span", table.caption());
        out.close().open("thead").open("tr");
        boolean[] numbers = numberColumns(table);
        for (int i = 0; i < numbers.length; i++) {
            cell("th", table.headings().get(i), numbers[i], "scope", "col");
        }
        out.close().close().open("tbody");
        for (List<String> row : table.rows()) {
            out.open("tr");
            for (int i = 0; i < row.size(); i++) {
                if (i == 0) {
                    cell("th", row.get(i), false, "scope", "row");
                } else {
                    cell("td", row.get(i), numbers[i]);
                }
            }
            out.close();
        }
        out.close().close().close();
    }

    private void cell(String element, String text, boolean number, String... attributes) {
        List<String> all = new ArrayList<>(List.of(attributes));
        if (number) {
            all.addAll(List.of("class", "number"));
        }
        out.element(element, text, all.toArray(new String[0]));
    }

    /** Columns that hold nothing but single numbers stand with their ends below each other. */
    private static boolean[] numberColumns(Table table) {
        boolean[] numbers = new boolean[table.headings().size()];
        for (int i = 1; i < numbers.length; i++) {
            int column = i;
            numbers[i] = !table.rows().isEmpty()
                    && table.rows().stream()
                            .allMatch(row -> NUMBER.matcher(row.get(column)).matches());
        }
        return numbers;
    }

    private <T> List<T> belonging(List<T> parts, Function<T, String> id, Section section) {
        return parts.stream()
                .filter(part -> owner(id.apply(part)).equals(section.id()))
                .toList();
    }

    private <T> List<T> without(List<T> parts, Function<T, String> id) {
        return parts.stream().filter(part -> owner(id.apply(part)).isEmpty()).toList();
    }

    /** The id of the section that a part belongs to, or nothing. */
    private String owner(String id) {
        String owner = "";
        for (Section section : sections) {
            boolean inside = id.equals(section.id()) || id.startsWith(section.id() + "-");
            if (inside && section.id().length() > owner.length()) {
                owner = section.id();
            }
        }
        boolean strips = owner.isEmpty() && id.startsWith("strips-");
        return strips && sections.stream().anyMatch(s -> s.id().equals(DIFFERENCES)) ? DIFFERENCES : owner;
    }
}
