package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.runbend.export.drawing.Decimals;

/**
 * Rows of facts that leave as a table for a terminal, as comma-separated values (RFC 4180, lines end in CR LF) or as JSON.
 *
 * @param name key of the list in JSON
 * @param columns what each row has
 * @param rows cells: whole numbers ({@code Long}), decimals ({@code Double}) or texts
 */
public record Listing(String name, List<Column> columns, List<List<Object>> rows) {
    private static final int DIGITS = 3;

    /** Copies the lists and refuses rows of another length. */
    public Listing {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(name + ": a row has " + row.size() + " cells");
            }
        }
    }

    /**
     * A column.
     *
     * @param key in JSON and at the head of the values
     * @param head at the head of the table
     */
    public record Column(String key, String head) {
        /** A column whose head is its key. */
        public static Column of(String key) {
            return new Column(key, key);
        }
    }

    /** Lines of a table: texts to the left, numbers to the right, no blanks at the ends. */
    public List<String> table() {
        List<Integer> widths = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            int column = c;
            widths.add(Math.max(
                    letters(columns.get(c).head()),
                    rows.stream()
                            .mapToInt(r -> letters(text(r.get(column))))
                            .max()
                            .orElse(0)));
        }
        List<String> lines = new ArrayList<>();
        lines.add(line(columns.stream().map(c -> (Object) c.head()).toList(), widths));
        rows.forEach(r -> lines.add(line(r, widths)));
        return lines;
    }

    private String line(List<Object> cells, List<Integer> widths) {
        StringBuilder line = new StringBuilder();
        for (int c = 0; c < cells.size(); c++) {
            String text = text(cells.get(c));
            String pad = " ".repeat(widths.get(c) - letters(text));
            boolean right = !rows.isEmpty() && rows.get(0).get(c) instanceof Number;
            line.append(right ? pad + text : text + pad).append("  ");
        }
        return line.toString().stripTrailing();
    }

    private static int letters(String text) {
        return text.codePointCount(0, text.length());
    }

    private static String text(Object cell) {
        return cell instanceof Double d ? Decimals.of(d, DIGITS) : cell.toString();
    }

    /** The rows as comma-separated values. */
    public String csv() {
        StringBuilder out = new StringBuilder();
        out.append(columns.stream().map(Column::key).collect(Collectors.joining(",")))
                .append("\r\n");
        for (List<Object> row : rows) {
            out.append(row.stream()
                            .map(c -> c instanceof String s ? CutsCsv.text(s) : text(c))
                            .collect(Collectors.joining(",")))
                    .append("\r\n");
        }
        return out.toString();
    }

    /** The rows as a JSON object with one list. */
    public String json() {
        try {
            JsonOut out = new JsonOut().open();
            out.list(name, rows, row -> {
                for (int c = 0; c < columns.size(); c++) {
                    cell(out, columns.get(c).key(), row.get(c));
                }
            });
            return new String(out.close().finish(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void cell(JsonOut out, String key, Object cell) throws IOException {
        if (cell instanceof Long whole) {
            out.whole(key, whole);
        } else if (cell instanceof Double number) {
            out.number(key, number);
        } else {
            out.text(key, cell.toString());
        }
    }
}
