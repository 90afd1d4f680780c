package org.runbend.export.papers;

import java.util.function.DoubleFunction;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.Placement;

/**
 * A drawing at a scale at which it is larger than a page, over pages that overlap.
 *
 * @param format of a page
 * @param sheet the drawing
 * @param scale mm of the floor to a mm of paper
 * @param columns pages side by side
 * @param rows pages one over the other
 */
record PartedDrawing(PageFormat format, Sheet sheet, double scale, int columns, int rows) {
    /** Wider than any measure on it, so that each is whole on one of two pages, mm of paper. */
    private static final double OVERLAP = 16;

    private static final double FOOT = 19;

    /** The way to lay the pages that takes fewer of them, at the largest round scale that is not smaller than the one given. */
    static PartedDrawing of(PaperForm form, DoubleFunction<Sheet> drawing, double smallest) {
        double scale = Placement.roundFigure(smallest);
        for (double tried = smallest; scale > smallest * (1 + 1e-9); tried *= 0.9) {
            scale = Placement.roundFigure(tried);
        }
        Sheet sheet = drawing.apply(scale);
        PartedDrawing standing = of(form.paper().upright(), sheet, scale);
        PartedDrawing lying = of(form.paper().wide(), sheet, scale);
        return lying.pages() < standing.pages() ? lying : standing;
    }

    private static PartedDrawing of(PageFormat format, Sheet sheet, double scale) {
        Extent e = sheet.extent();
        return new PartedDrawing(
                format,
                sheet,
                scale,
                count(e.width() / scale, format.inside().width()),
                count(e.height() / scale, high(format)));
    }

    private static int count(double size, double page) {
        return (int) Math.max(1, Math.ceil((size + 2 - OVERLAP) / (page - OVERLAP) - 1e-9));
    }

    private static double high(PageFormat format) {
        return format.inside().height() - FOOT;
    }

    /** How many. */
    int pages() {
        return columns * rows;
    }

    /** Draws one of them, from 0, line by line from the upper left, on the page that the flow is on. */
    void draw(PdfFlow flow, int part) {
        double wide = format.inside().width();
        double high = high(format);
        double left = sheet.extent().centre().x() - scale * all(columns, wide) / 2;
        double low = sheet.extent().centre().y() - scale * all(rows, high) / 2;
        double x = left + scale * (part % columns) * (wide - OVERLAP);
        double y = low + scale * (rows - 1 - part / columns) * (high - OVERLAP);
        flow.figure(
                "Drawing: " + sheet.title() + ", part " + (part + 1) + " of " + pages(),
                high,
                (on, box) -> on.sheet(sheet, box, at(box, x, y)));
    }

    private Placement at(Box box, double x, double y) {
        return new Placement(1 / scale, box.x() - x / scale, box.y() - y / scale);
    }

    private static double all(int count, double page) {
        return count * page - (count - 1) * OVERLAP;
    }

    /** Which part it is, as a phrase that goes on after the scale; nothing where there is one. */
    String words(int part) {
        return pages() == 1 ? "" : ", part " + (part + 1) + " of " + pages() + " (" + place(part) + "); they overlap";
    }

    /** Where a part lies among the others, such as upper left. */
    String place(int part) {
        String row = rows == 1 ? "" : part / columns == 0 ? "upper" : part / columns == rows - 1 ? "lower" : "middle";
        String column =
                columns == 1 ? "" : part % columns == 0 ? "left" : part % columns == columns - 1 ? "right" : "middle";
        return (row + " " + column).strip();
    }
}
