package org.runbend.export.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Prints one table down a flow. A row goes to the next page in one piece unless it is longer than a page. */
final class TablePrinter {
    /** Tables up to this height are not divided, mm. */
    private static final double KEPT = 55;

    /** No word asks for more of a table's width. */
    private static final double LONGEST_WORD = 0.22;

    /** A word that just fits is not broken by a rounding, mm. */
    private static final double SLACK = 0.01;

    /** So many rows stand on the page of what follows a table. */
    private static final int WITH_NEXT = 2;

    private static final int RULE = 0xB8B8B8;
    private static final int STRONG_RULE = 0x404040;
    private static final int HEAD_FILL = 0xECEFF2;

    private final PdfFlow flow;
    private final PdfTable table;
    private final List<Double> widths;
    private final double pad;
    private PdfPart part;
    private boolean isHeadRead;

    TablePrinter(PdfFlow flow, PdfTable table) {
        this.flow = flow;
        this.table = table;
        this.pad = flow.pad();
        this.widths = table.widths(flow.width(), this::leastWidth);
    }

    /** What a column needs so that none of its words is broken, but for very long ones. */
    private double leastWidth(int column) {
        List<PdfTable.Row> all = new ArrayList<>(table.rows());
        all.add(table.head());
        double longest = all.stream()
                .flatMap(r ->
                        PdfFonts.BLANKS.splitAsStream(r.cells().get(column)).map(w -> flow.widthOf(w, style(r))))
                .mapToDouble(w -> w)
                .max()
                .orElse(0);
        return Math.min(longest + 2 * pad + SLACK, LONGEST_WORD * flow.width());
    }

    /** Prints the table, so many mm under what stands before it. */
    void print(double gap) {
        keepBegin(gap);
        flow.space(gap);
        part = flow.enter(PdfRole.TABLE, null);
        flow.leave();
        printRows();
    }

    private void keepBegin(double gap) {
        double head = height(lines(table.head()));
        double first = table.rows().isEmpty() ? 0 : height(lines(table.rows().get(0)));
        double whole =
                head + table.rows().stream().mapToDouble(r -> height(lines(r))).sum();
        flow.keep(gap + (whole <= KEPT ? whole : head + first));
    }

    private void printRows() {
        printHead();
        int last = table.rows().size() - WITH_NEXT;
        for (int r = 0; r < table.rows().size(); r++) {
            PdfTable.Row row = table.rows().get(r);
            List<List<String>> lines = lines(row);
            if (height(lines) > flow.room() || (r == last && r > 0 && ending(last) > flow.room())) {
                newPage();
            }
            while (height(lines) > flow.room()) {
                int some =
                        Math.max(1, (int) ((flow.room() - 2 * pad) / style(row).pitch()));
                printRow(row, part(lines, 0, some), RULE);
                lines = part(lines, some, Integer.MAX_VALUE);
                newPage();
            }
            printRow(row, lines, row.strong() ? STRONG_RULE : RULE);
        }
    }

    /** Room for the rows from one on, with what follows the table; nothing where nothing needs them beside it. */
    private double ending(int from) {
        return table.following() == 0
                ? 0
                : table.following()
                        + table.rows().stream()
                                .skip(from)
                                .mapToDouble(r -> height(lines(r)))
                                .sum();
    }

    private void newPage() {
        flow.pageBreak();
        printHead();
    }

    private void printHead() {
        List<List<String>> lines = lines(table.head());
        double height = height(lines);
        flow.page().fill(new Box(flow.left(), flow.y() - height, flow.width(), height), HEAD_FILL);
        // the head is read once, however often it is printed
        printRow(table.head(), lines, STRONG_RULE, isHeadRead ? Optional.empty() : Optional.of(PdfRole.HEAD_CELL));
        isHeadRead = true;
    }

    private void printRow(PdfTable.Row row, List<List<String>> lines, int rule) {
        printRow(row, lines, rule, Optional.of(PdfRole.CELL));
    }

    private void printRow(PdfTable.Row row, List<List<String>> lines, int rule, Optional<PdfRole> role) {
        Optional<PdfPart> inRow = role.map(r -> flow.enter(PdfRole.ROW, part));
        TextStyle style = style(row);
        double height = height(lines);
        double x = flow.left();
        for (int c = 0; c < widths.size(); c++) {
            Align align = table.columns().get(c).align();
            double anchor = x + pad + (widths.get(c) - 2 * pad) * align.share();
            double y = flow.y() - pad - style.ascent();
            inRow.ifPresent(r -> flow.enter(role.orElseThrow(), r));
            for (String line : lines.get(c)) {
                flow.page().text(anchor, y, style, align, line);
                y -= style.pitch();
            }
            x += widths.get(c);
        }
        flow.leave();
        boolean total = row.strong() && rule == STRONG_RULE;
        double top = flow.y();
        flow.down(height);
        if (total) {
            flow.page().line(flow.left(), top, flow.left() + flow.width(), top, 0.25, STRONG_RULE);
        }
        flow.page().line(flow.left(), flow.y(), flow.left() + flow.width(), flow.y(), 0.12, rule);
    }

    private List<List<String>> lines(PdfTable.Row row) {
        List<List<String>> cells = new ArrayList<>();
        for (int c = 0; c < widths.size(); c++) {
            cells.add(flow.wrap(row.cells().get(c), style(row), widths.get(c) - 2 * pad));
        }
        return cells;
    }

    private double height(List<List<String>> lines) {
        int most = lines.stream().mapToInt(List::size).max().orElse(1);
        return 2 * pad + most * flow.body().pitch();
    }

    private static List<List<String>> part(List<List<String>> cells, int from, int to) {
        return cells.stream()
                .map(l -> l.subList(Math.min(from, l.size()), Math.min(to, l.size())))
                .toList();
    }

    private TextStyle style(PdfTable.Row row) {
        return row.strong() ? flow.body().bold() : flow.body();
    }
}
