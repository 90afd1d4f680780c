package org.runbend.export.pdf;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.runbend.export.drawing.Sheet;

/** Writes a document from top to bottom, frame by frame, and opens pages as it needs them. */
public final class PdfFlow {
    private static final double COMPACT_SIZE = 7.2;

    private final PdfDocument document;
    private final Deque<Box> frames = new ArrayDeque<>();
    private PdfPage page;
    private Box frame;
    private double y;
    private boolean compact;

    /** Starts on a new page of the document. */
    public PdfFlow(PdfDocument document) {
        this.document = document;
        pageBreak();
    }

    /** Fills places on a page one after the other, at least one; what has no room there goes to new pages. */
    public PdfFlow(PdfDocument document, PdfPage page, List<Box> places) {
        this.document = document;
        this.page = page;
        frames.addAll(places);
        enter(frames.remove());
    }

    /** From here on smaller letters and tighter rows. */
    public PdfFlow compact() {
        compact = true;
        return this;
    }

    /** The name of the paper. */
    public PdfFlow title(String text) {
        lines(text, TextStyle.TITLE);
        return space(1.5);
    }

    /** A heading, kept together with what follows. */
    public PdfFlow heading(String text) {
        keep(compact ? 16 : 25);
        if (y < top()) {
            space(compact ? 1.5 : 4);
        }
        lines(text, compact ? body().sized(8.5).bold() : TextStyle.HEADING);
        return space(compact ? 0.5 : 1);
    }

    /** Running text; line breaks in it are kept. */
    public PdfFlow paragraph(String text) {
        return paragraph(text, body());
    }

    /** Running text in another style. */
    public PdfFlow paragraph(String text, TextStyle style) {
        lines(text, style);
        return space(1.2);
    }

    /** An item of a list behind a mark such as a number or a box to tick; {@code indent} is the room for it, mm. */
    public PdfFlow item(String mark, double indent, String text) {
        TextStyle style = body();
        List<String> lines = document.wrap(text, style, width() - indent);
        keep(Math.min(lines.size(), compact ? 6 : 3) * style.pitch());
        page.text(left(), y - style.ascent(), style, Align.LEFT, mark);
        for (String line : lines) {
            keep(style.pitch());
            page.text(left() + indent, y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
        return space(0.8);
    }

    /** A table over the whole width. */
    public PdfFlow table(PdfTable table) {
        if (y < top()) {
            space(1);
        }
        new TablePrinter(this, table).print();
        return space(compact ? 1.5 : 3);
    }

    /** A drawing over the whole width, fitted into {@code height} mm; the next page is used when there is no room. */
    public PdfFlow drawing(Sheet sheet, double height) {
        double used = Math.min(height, document.format().inside().height());
        keep(used);
        page.sheet(sheet, new Box(left(), y - used, width(), used));
        y -= used;
        return space(2);
    }

    /** Leaves {@code mm} free; at the foot of a page nothing. */
    public PdfFlow space(double mm) {
        y = Math.max(bottom(), y - mm);
        return this;
    }

    /** Goes to a new page unless {@code mm} are left on this one. */
    public PdfFlow keep(double mm) {
        if (room() < mm && y < top()) {
            pageBreak();
        }
        return this;
    }

    /** Goes to the next free place on the page, or to a new page. */
    public PdfFlow pageBreak() {
        if (frames.isEmpty()) {
            page = document.addPage();
            enter(page.format().inside());
        } else {
            enter(frames.remove());
        }
        return this;
    }

    /** Goes to the next free place on the page if there is one. */
    public PdfFlow nextPlace() {
        return frames.isEmpty() ? this : pageBreak();
    }

    private void enter(Box place) {
        frame = place;
        y = top();
    }

    /** The page written on. */
    public PdfPage page() {
        return page;
    }

    /** Where the next thing begins, mm from the foot of the page. */
    public double y() {
        return y;
    }

    /** Left edge, mm. */
    public double left() {
        return frame.x();
    }

    /** Width between the margins, mm. */
    public double width() {
        return frame.width();
    }

    /** What is left of the page, mm. */
    public double room() {
        return y - bottom();
    }

    /** How running text and tables look. */
    TextStyle body() {
        return compact ? TextStyle.BODY.sized(COMPACT_SIZE) : TextStyle.BODY;
    }

    /** Room between the letters of a cell and its rim, mm. */
    double pad() {
        return compact ? 0.55 : 1.3;
    }

    void down(double mm) {
        y -= mm;
    }

    List<String> wrap(String text, TextStyle style, double room) {
        return document.wrap(text, style, room);
    }

    private void lines(String text, TextStyle style) {
        for (String line : document.wrap(text, style, width())) {
            keep(style.pitch());
            page.text(left(), y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
    }

    private double top() {
        return frame.y() + frame.height();
    }

    private double bottom() {
        return frame.y();
    }
}
