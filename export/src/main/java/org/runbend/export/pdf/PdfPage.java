package org.runbend.export.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;
import org.runbend.export.drawing.Sheet;

/** One page. Places are mm from its lower left corner, y up. Anything may be drawn until the document is taken. */
public final class PdfPage {
    private static final double POINTS = 72 / 25.4;

    private final PageFormat format;
    private final PDPage page;
    private final PDPageContentStream out;
    private final PdfFonts fonts;
    private final PdfStructure structure;

    PdfPage(PageFormat format, PDPage page, PDPageContentStream out, PdfFonts fonts, PdfStructure structure) {
        this.format = format;
        this.page = page;
        this.out = out;
        this.fonts = fonts;
        this.structure = structure;
    }

    PDPage page() {
        return page;
    }

    /** Draws what belongs together and is read as one part, such as a drawing; {@code words} say what it shows. */
    public void figure(String words, Runnable drawing) {
        structure.within(PdfRole.FIGURE, words, drawing);
    }

    /** Size and margin. */
    public PageFormat format() {
        return format;
    }

    /** A line of letters: (x, y) is the start, middle or end of its baseline. */
    public void text(double x, double y, TextStyle style, Align align, String text) {
        text(x, y, 0, style, align, text);
    }

    /** A line of letters turned by {@code angle} degrees, anticlockwise. */
    public void text(double x, double y, double angle, TextStyle style, Align align, String text) {
        double shift = fonts.width(text, style) * align.share();
        double radians = Math.toRadians(angle);
        double startX = x - shift * StrictMath.cos(radians);
        double startY = y - shift * StrictMath.sin(radians);
        structure.within(
                PdfRole.PARAGRAPH,
                "",
                () -> draw(() -> {
                    out.beginText();
                    out.setNonStrokingColor(Inks.colour(style.colour()));
                    out.setFont(fonts.font(style.strong()), (float) style.size());
                    out.setTextMatrix(Matrix.getRotateInstance(radians, pt(startX), pt(startY)));
                    out.showText(fonts.showable(text, style.strong()));
                    out.endText();
                }));
    }

    /** A straight line; {@code pen} is its width, mm. */
    public void line(double x1, double y1, double x2, double y2, double pen, int colour) {
        draw(() -> {
            out.setStrokingColor(Inks.colour(colour));
            out.setLineWidth(pt(pen));
            out.moveTo(pt(x1), pt(y1));
            out.lineTo(pt(x2), pt(y2));
            out.stroke();
        });
    }

    /** A line through points, two numbers each; {@code pen} is its width, mm. */
    public void way(List<double[]> points, boolean closed, double pen, int colour) {
        draw(() -> {
            out.setStrokingColor(Inks.colour(colour));
            out.setLineWidth(pt(pen));
            out.moveTo(pt(points.get(0)[0]), pt(points.get(0)[1]));
            for (double[] p : points.subList(1, points.size())) {
                out.lineTo(pt(p[0]), pt(p[1]));
            }
            if (closed) {
                out.closePath();
            }
            out.stroke();
        });
    }

    /** A rectangle's outline; {@code pen} is its width, mm. */
    public void frame(Box box, double pen, int colour) {
        draw(() -> {
            out.setStrokingColor(Inks.colour(colour));
            out.setLineWidth(pt(pen));
            out.addRect(pt(box.x()), pt(box.y()), pt(box.width()), pt(box.height()));
            out.stroke();
        });
    }

    /** A filled rectangle. */
    public void fill(Box box, int colour) {
        fill(List.of(box), colour);
    }

    /** Rectangles filled as one, without seams where they touch. */
    public void fill(List<Box> boxes, int colour) {
        draw(() -> {
            out.setNonStrokingColor(Inks.colour(colour));
            for (Box box : boxes) {
                out.addRect(pt(box.x()), pt(box.y()), pt(box.width()), pt(box.height()));
            }
            out.fill();
        });
    }

    /** A sheet inside a box (what juts out is cut off) at a given place; see {@link Placement#fit} for one. */
    public void sheet(Sheet sheet, Box box, Placement placement) {
        structure.within(
                PdfRole.FIGURE,
                "Drawing: " + sheet.title(),
                () -> draw(() -> {
                    out.addRect(pt(box.x()), pt(box.y()), pt(box.width()), pt(box.height()));
                    out.clip();
                    sheet.drawOn(new PdfBackend(out, fonts, placement));
                }));
    }

    /** A sheet as large as the box allows, with 1 mm of air; gives back where it lies. */
    public Placement sheet(Sheet sheet, Box box) {
        Box airy = new Box(box.x() + 1, box.y() + 1, box.width() - 2, box.height() - 2);
        Placement placement = Placement.fit(sheet.extent(), airy);
        sheet(sheet, box, placement);
        return placement;
    }

    private void draw(Drawing drawing) {
        try {
            structure.begin(page, out);
            out.saveGraphicsState();
            drawing.run();
            out.restoreGraphicsState();
            out.endMarkedContent();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static float pt(double mm) {
        return (float) (mm * POINTS);
    }

    private interface Drawing {
        void run() throws IOException;
    }
}
