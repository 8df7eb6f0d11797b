package dev.teeward.fitting.report;

import java.util.ArrayList;
import java.util.List;

/** Sections and tables as a page of plain ASCII for a terminal. */
final class TextPage {
    static final int WIDTH = 96;
    private static final int WIDEST_CELL = 34;
    private static final int NAME = 8;

    private final StringBuilder page = new StringBuilder();

    private TextPage() {}

    static String of(String title, List<Section> sections, List<Table> tables) {
        TextPage page = new TextPage();
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
        int longest =
                page.substring(start).lines().mapToInt(String::length).max().orElse(0);
        page.append(String.valueOf(rule).repeat(longest)).append('\n');
    }

    private void paragraph(String bullet, String words) {
        String indent = " ".repeat(bullet.length());
        StringBuilder line = new StringBuilder(bullet);
        boolean empty = true;
        for (String word : NumberText.ascii(words).split(" ", -1)) {
            String rest = word;
            if (!empty && line.length() + 1 + rest.length() > WIDTH) {
                page.append(line).append('\n');
                line.setLength(0);
                line.append(indent);
                empty = true;
            }
            line.append(empty ? "" : " ");
            while (line.length() + rest.length() > WIDTH) {
                int fits = WIDTH - line.length();
                page.append(line).append(rest, 0, fits).append('\n');
                line.setLength(0);
                line.append(indent);
                rest = rest.substring(fits);
            }
            line.append(rest);
            empty = false;
        }
        page.append(line).append('\n');
    }

    private void table(Table table) {
        heading(table.caption(), '-');
        List<List<String>> lines = new ArrayList<>();
        lines.add(table.headings().stream().map(h -> cut(h, NAME)).toList());
        table.rows()
                .forEach(row ->
                        lines.add(row.stream().map(c -> cut(c, WIDEST_CELL)).toList()));
        int[] widths = new int[table.headings().size()];
        for (List<String> line : lines) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], line.get(i).length());
            }
        }
        for (List<String> line : lines) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String pad = " ".repeat(widths[i] - line.get(i).length());
                boolean words = !isNumberColumn(lines, i);
                text.append(i == 0 ? "" : "  ").append(words ? line.get(i) + pad : pad + line.get(i));
            }
            page.append(cut(text.toString().stripTrailing(), WIDTH)).append('\n');
        }
    }

    private static boolean isNumberColumn(List<List<String>> lines, int column) {
        return column > 1
                && lines.stream().skip(1).map(line -> line.get(column)).allMatch(c -> c.matches("[-<0-9. to]*"));
    }

    private static String cut(String text, int width) {
        String ascii = NumberText.ascii(text);
        return ascii.length() <= width ? ascii : ascii.substring(0, width - 2) + "..";
    }
}
