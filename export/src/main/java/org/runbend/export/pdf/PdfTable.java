package org.runbend.export.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** A table of texts: columns with a head, then rows. Cells wrap; the head comes again on every page. */
public final class PdfTable {
    private final List<Column> columns;
    private final List<Row> rows = new ArrayList<>();
    private double following;

    /** A table without rows. */
    public PdfTable(List<Column> columns) {
        this.columns = List.copyOf(columns);
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("table needs a column");
        }
    }

    /** A table without rows. */
    public PdfTable(Column... columns) {
        this(List.of(columns));
    }

    /** Adds a row, one text a column. */
    public PdfTable row(String... cells) {
        return add(false, List.of(cells));
    }

    /** Adds a row, one text a column. */
    public PdfTable row(List<String> cells) {
        return add(false, cells);
    }

    /** Adds a row in bold under a stronger line, such as a total. */
    public PdfTable strongRow(String... cells) {
        return add(true, List.of(cells));
    }

    /** Its last rows stand on the page of what follows it, which needs so many mm. */
    public PdfTable leadingTo(double mm) {
        following = mm;
        return this;
    }

    double following() {
        return following;
    }

    /** The table without columns in which no row says anything. */
    public PdfTable withoutEmptyColumns() {
        List<Integer> kept = IntStream.range(0, columns.size())
                .filter(c -> rows.isEmpty()
                        || rows.stream().anyMatch(r -> !r.cells().get(c).isBlank()))
                .boxed()
                .toList();
        PdfTable table = new PdfTable(kept.stream().map(columns::get).toList());
        rows.forEach(r ->
                table.add(r.strong(), kept.stream().map(c -> r.cells().get(c)).toList()));
        return table;
    }

    /** Whether there is no row. */
    public boolean isEmpty() {
        return rows.isEmpty();
    }

    List<Column> columns() {
        return columns;
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }

    Row head() {
        return new Row(true, columns.stream().map(Column::head).toList());
    }

    /**
     * Widths in mm: the shares of the columns stretched over the room. A column gets what it needs at least, from those that
     * have more, where there is so much.
     */
    List<Double> widths(double room, IntToDoubleFunction least) {
        double sum = columns.stream().mapToDouble(Column::share).sum();
        double[] shared =
                columns.stream().mapToDouble(c -> c.share() / sum * room).toArray();
        double missing = 0;
        double spare = 0;
        for (int c = 0; c < shared.length; c++) {
            double over = shared[c] - least.applyAsDouble(c);
            missing += Math.max(0, -over);
            spare += Math.max(0, over);
        }
        double given = missing <= spare && spare > 0 ? missing / spare : 0;
        List<Double> widths = new ArrayList<>();
        for (int c = 0; c < shared.length; c++) {
            double over = shared[c] - least.applyAsDouble(c);
            widths.add(over > 0 ? shared[c] - given * over : missing <= spare ? shared[c] - over : shared[c]);
        }
        return widths;
    }

    private PdfTable add(boolean strong, List<String> cells) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(
                    "row " + cells + " has " + cells.size() + " cells for " + columns.size() + " columns");
        }
        rows.add(new Row(strong, List.copyOf(cells)));
        return this;
    }

    record Row(boolean strong, List<String> cells) {}

    /** A column: its head, its share of the width (any unit) and which side it keeps to. */
    public record Column(String head, double share, Align align) {
        /** Checks the share. */
        public Column {
            if (!(share > 0)) {
                throw new IllegalArgumentException("column " + head + ": share (" + share + ") must be over 0");
            }
        }

        /** Words. */
        public static Column left(String head, double share) {
            return new Column(head, share, Align.LEFT);
        }

        /** Numbers. */
        public static Column right(String head, double share) {
            return new Column(head, share, Align.RIGHT);
        }

        /** Marks. */
        public static Column centre(String head, double share) {
            return new Column(head, share, Align.CENTRE);
        }
    }
}
