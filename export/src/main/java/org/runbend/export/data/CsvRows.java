package org.runbend.export.data;

import java.util.ArrayList;
import java.util.List;

/** Reads comma- or semicolon-separated values as RFC 4180 says; the first line tells which of the two, or a tab, it is. */
final class CsvRows {
    private final String text;
    private final char between;
    private int at;
    private int line = 1;

    private CsvRows(String text) {
        this.text = text;
        this.between = separator(text);
    }

    /**
     * A line.
     *
     * @param line from 1
     * @param cells its cells, without quotation marks
     */
    record Row(int line, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }
    }

    /** The lines that are not empty; {@code IllegalArgumentException} if a quotation mark is not closed. */
    static List<Row> of(String text) {
        CsvRows rows = new CsvRows(text);
        List<Row> all = new ArrayList<>();
        while (rows.at < text.length()) {
            Row row = rows.row();
            if (!(row.cells().size() == 1 && row.cells().get(0).isBlank())) {
                all.add(row);
            }
        }
        return all;
    }

    private static char separator(String text) {
        String first = text.lines().findFirst().orElse("");
        if (first.indexOf(';') >= 0) {
            return ';';
        }
        return first.indexOf('\t') >= 0 ? '\t' : ',';
    }

    private Row row() {
        int begin = line;
        List<String> cells = new ArrayList<>();
        cells.add(cell());
        while (at < text.length() && text.charAt(at) == between) {
            at++;
            cells.add(cell());
        }
        if (at < text.length() && text.charAt(at) == '\r') {
            at++;
        }
        if (at < text.length() && text.charAt(at) == '\n') {
            at++;
        }
        line++;
        return new Row(begin, cells);
    }

    private String cell() {
        if (at >= text.length() || text.charAt(at) != '"') {
            int from = at;
            while (at < text.length()
                    && text.charAt(at) != between
                    && text.charAt(at) != '\n'
                    && text.charAt(at) != '\r') {
                at++;
            }
            return text.substring(from, at);
        }
        return quoted();
    }

    private String quoted() {
        StringBuilder cell = new StringBuilder();
        int begin = line;
        for (at++; at < text.length(); at++) {
            char c = text.charAt(at);
            if (c != '"') {
                cell.append(c);
                line += c == '\n' ? 1 : 0;
            } else if (at + 1 < text.length() && text.charAt(at + 1) == '"') {
                cell.append(c);
                at++;
            } else {
                at++;
                return cell.toString();
            }
        }
        throw new IllegalArgumentException("a quotation mark of line " + begin + " is not closed");
    }
}
