package org.runbend.export.papers;

import java.util.Locale;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;

/**
 * A drawing in actual size, spread over pages that overlap by 10 mm. Each has a bar of 100 mm to measure, and crosses that lie on
 * those of its neighbours.
 *
 * @param format of a page
 * @param columns pages side by side
 * @param rows pages one over the other
 * @param size of the drawing
 */
record Tiles(PageFormat format, int columns, int rows, Extent size) {
    static final double OVERLAP = 10;
    private static final double HEAD = 12;
    private static final double CROSS = 5;
    private static final double BAR = 100;
    private static final int INK = 0x1A1A1A;
    private static final int GREY = 0x8A8A8A;
    private static final int LETTERS = 26;

    /** The way to lay the pages that takes fewer of them. */
    static Tiles fewest(PageFormat upright, Extent size) {
        Tiles standing = of(upright, size);
        Tiles lying = of(upright.turned(), size);
        return lying.pages() < standing.pages() ? lying : standing;
    }

    /** No tile shows more than this of a drawing, standing or lying. */
    static int atLeast(PageFormat format, double area) {
        double most = Math.max(wide(format) * high(format), wide(format.turned()) * high(format.turned()));
        return (int) Math.ceil(area / most - 1e-9);
    }

    private static Tiles of(PageFormat format, Extent size) {
        return new Tiles(format, count(size.width(), wide(format)), count(size.height(), high(format)), size);
    }

    private static int count(double size, double tile) {
        return (int) Math.max(1, Math.ceil((size + 2 - OVERLAP) / (tile - OVERLAP) - 1e-9));
    }

    private static double wide(PageFormat format) {
        return format.inside().width();
    }

    private static double high(PageFormat format) {
        return format.inside().height() - HEAD;
    }

    /** How many. */
    int pages() {
        return columns * rows;
    }

    /** What a tile shows; all of them together have the drawing in their middle. */
    Extent shown(int column, int row) {
        double width = wide(format);
        double height = high(format);
        double x = size.centre().x() - all(columns, width) / 2 + column * (width - OVERLAP);
        double y = size.centre().y() - all(rows, height) / 2 + row * (height - OVERLAP);
        return new Extent(x, y, x + width, y + height);
    }

    private static double all(int count, double tile) {
        return count * tile - (count - 1) * OVERLAP;
    }

    /** A row's letter and a column's number. */
    static String name(int column, int row) {
        return letters(row) + (column + 1);
    }

    private static String letters(int row) {
        String last = String.valueOf((char) ('A' + row % LETTERS));
        return row < LETTERS ? last : letters(row / LETTERS - 1) + last;
    }

    /** How the tiles lie, over a drawing that is fitted into a box. */
    void map(PdfPage page, Sheet drawing, Box place) {
        Extent all = shown(0, 0).union(shown(columns - 1, rows - 1));
        Placement at = Placement.fit(all, place);
        page.sheet(drawing, place, at);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                Extent tile = shown(column, row);
                Point a = at.toPage(new Point(tile.minX(), tile.minY()));
                Point b = at.toPage(new Point(tile.maxX(), tile.maxY()));
                page.frame(new Box(a.x(), a.y(), b.x() - a.x(), b.y() - a.y()), 0.1, GREY);
                page.text(a.x() + 1.5, a.y() + 1.5, TextStyle.SMALL, Align.LEFT, name(column, row));
            }
        }
    }

    /** All tiles, the upper row first; {@code words} stand on each. */
    void print(PdfDocument document, Sheet drawing, String words) {
        for (int row = rows - 1; row >= 0; row--) {
            for (int column = 0; column < columns; column++) {
                tile(document, drawing, column, row, words);
            }
        }
    }

    private void tile(PdfDocument document, Sheet drawing, int column, int row, String words) {
        PdfPage page = document.addPage(format);
        Box in = format.inside();
        Extent shown = shown(column, row);
        Box place = new Box(in.x(), in.y(), wide(format), high(format));
        page.sheet(drawing, place, new Placement(1, in.x() - shown.minX(), in.y() - shown.minY()));
        for (int i = 0; i < 4; i++) {
            double x = in.x() + (i % 2 == 0 ? OVERLAP / 2 : place.width() - OVERLAP / 2);
            double y = in.y() + (i < 2 ? OVERLAP / 2 : place.height() - OVERLAP / 2);
            page.line(x - CROSS, y, x + CROSS, y, 0.15, INK);
            page.line(x, y - CROSS, x, y + CROSS, 0.15, INK);
        }
        double top = in.y() + in.height();
        page.fill(new Box(in.x() + in.width() - BAR, top - 6, BAR, 2), INK);
        page.text(in.x() + in.width() - BAR, top - 10, TextStyle.SMALL, Align.LEFT, "this bar is 100 mm long");
        page.text(
                in.x(),
                top - 5,
                TextStyle.BODY.bold(),
                Align.LEFT,
                String.format(Locale.ROOT, "%s  (row %s, column %d)", name(column, row), letters(row), column + 1));
        page.text(in.x(), top - 9.5, TextStyle.SMALL, Align.LEFT, words);
    }
}
