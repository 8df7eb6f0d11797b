package dev.teeward.fitting.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Sections and tables as a page of plain text for a terminal. */
final class TextPage {
    static final int WIDTH = 96;
    private static final int WIDEST_CELL = 34;
    private static final int NAME = 8;

    private final StringBuilder page = new StringBuilder();

    private final UnaryOperator<String> letters;

    private TextPage(UnaryOperator<String> letters) {
        this.letters = letters;
    }

    static String of(String title, List<Section> sections, List<Table> tables, UnaryOperator<String> letters) {
        TextPage page = new TextPage(letters);
        page.heading(title, '=');
        for (Section section : sections) {
            page.heading(section.title(), '-');
            for (Sentence sentence : section.sentences()) {
                page.paragraph("- ", sentence.text());
            }
        }
        for (Table table : tables) {
            page.table(table);
        }
        return page.page.toString();
    }

    private void heading(String words, char rule) {
        if (page.length() > 0) {
            page.append('\n');
        }
        int start = page.length();
        paragraph("", words);
        int longest = page.substring(start).lines().mapToInt(Columns::of).max().orElse(0);
        page.append(String.valueOf(rule).repeat(longest)).append('\n');
    }

    private void paragraph(String bullet, String words) {
        String indent = " ".repeat(bullet.length());
        StringBuilder line = new StringBuilder(bullet);
        int used = bullet.length();
        boolean empty = true;
        for (String word : letters.apply(words).split(" ", -1)) {
            String rest = word;
            if (!empty && used + 1 + Columns.of(rest) > WIDTH) {
                page.append(line).append('\n');
                line.setLength(0);
                line.append(indent);
                used = indent.length();
                empty = true;
            }
            line.append(empty ? "" : " ");
            used += empty ? 0 : 1;
            while (used + Columns.of(rest) > WIDTH) {
                int fits = Columns.fitting(rest, WIDTH - used);
                page.append(line).append(rest, 0, fits).append('\n');
                line.setLength(0);
                line.append(indent);
                used = indent.length();
                rest = rest.substring(fits);
            }
            line.append(rest);
            used += Columns.of(rest);
            empty = false;
        }
        page.append(line).append('\n');
    }

    private void table(Table table) {
        heading(table.caption(), '-');
        List<List<String>> lines = new ArrayList<>();
        lines.add(headings(table.headings().stream().map(letters).toList()));
        table.rows()
                .forEach(row -> lines.add(row.stream()
                        .map(c -> Columns.cut(letters.apply(c), WIDEST_CELL))
                        .toList()));
        int[] widths = new int[table.headings().size()];
        for (List<String> line : lines) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], Columns.of(line.get(i)));
            }
        }
        boolean[] words = new boolean[widths.length];
        for (int i = 0; i < widths.length; i++) {
            words[i] = !isNumberColumn(lines, i);
        }
        for (List<String> line : lines) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String pad = " ".repeat(widths[i] - Columns.of(line.get(i)));
                text.append(i == 0 ? "" : "  ").append(words[i] ? line.get(i) + pad : pad + line.get(i));
            }
            page.append(Columns.cut(text.toString().stripTrailing(), WIDTH)).append('\n');
        }
    }

    /** Shortened; two that differ only in what is cut keep their ends. */
    private static List<String> headings(List<String> whole) {
        List<String> cuts = whole.stream().map(h -> Columns.cut(h, NAME)).toList();
        List<String> all = new ArrayList<>();
        for (int i = 0; i < whole.size(); i++) {
            String heading = whole.get(i);
            String cut = cuts.get(i);
            boolean lost = false;
            for (int j = 0; j < whole.size(); j++) {
                lost |= cuts.get(j).equals(cut) && !whole.get(j).equals(heading);
            }
            all.add(lost ? ".." + end(heading) : cut);
        }
        return all;
    }

    private static String end(String heading) {
        int from = heading.length();
        while (from > 0) {
            int before = heading.offsetByCodePoints(from, -1);
            if (Columns.of(heading.substring(before)) > NAME - 2) {
                break;
            }
            from = before;
        }
        return heading.substring(from);
    }

    private static boolean isNumberColumn(List<List<String>> lines, int column) {
        return column > 1
                && lines.stream().skip(1).map(line -> line.get(column)).allMatch(c -> c.matches("[-<0-9. to]*"));
    }
}
