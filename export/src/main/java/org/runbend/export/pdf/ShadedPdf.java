package org.runbend.export.pdf;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.ShadedFloor;

/** Writes a shaded floor on a page of A4 on its side. */
public final class ShadedPdf {
    private static final double LEGEND = 38;
    private static final int INK = 0x1A1A1A;
    private static final int THIN_INK = 0x333333;
    private static final int PAPER = 0xFFFFFF;
    private static final double THIN = 0.13;
    private static final double THICK = 0.5;

    private final PdfDocument document;
    private final ShadedFloor floor;
    private final PdfPage page;
    private final double scale;
    private final double left;
    private final double bottom;
    private final double top;

    private ShadedPdf(PdfDocument document, ShadedFloor floor) {
        this.document = document;
        this.floor = floor;
        page = document.addPage();
        Box inside = document.format().inside();
        double head = 9;
        double y = inside.y() + inside.height() - 5;
        page.text(inside.x(), y, TextStyle.HEADING, Align.LEFT, floor.title());
        for (String caption : floor.captions()) {
            for (String line : document.wrap(caption, TextStyle.SMALL, inside.width())) {
                y -= TextStyle.SMALL.pitch();
                head += TextStyle.SMALL.pitch();
                page.text(inside.x(), y, TextStyle.SMALL, Align.LEFT, line);
            }
        }
        double wide = inside.width() - LEGEND;
        double high = inside.height() - head - 4;
        scale = Math.min(wide / floor.extent().width(), high / floor.extent().height());
        left = inside.x();
        top = inside.y() + inside.height() - head;
        bottom = top - scale * floor.extent().height();
    }

    /** The file; {@code footer} stands on its foot, {@code warning} over its head, which may be empty. */
    public static byte[] bytes(ShadedFloor floor, String footer, String warning, Paper paper) {
        try (PdfDocument document = new PdfDocument(floor.title(), "en", paper.wide())) {
            document.footer(footer);
            document.warning(warning);
            new ShadedPdf(document, floor).draw();
            return document.toBytes();
        }
    }

    private void draw() {
        for (ShadedFloor.ShadedBox b : floor.boxes()) {
            Extent e = b.box();
            page.fill(
                    new Box(x(e.minX()), y(e.minY()), scale * e.width(), scale * e.height()),
                    floor.steps().get(b.step()).colour());
        }
        for (ShadedFloor.LevelLine l : floor.lines()) {
            l.lines().forEach(p -> way(p, THIN, THIN_INK));
        }
        for (ShadedFloor.LevelLine l : floor.lines()) {
            l.labels().forEach(at -> label(x(at.x()), y(at.y()), l.words()));
        }
        for (Path p : floor.outline()) {
            way(p, THICK, INK);
        }
        legend();
    }

    private void way(Path p, double pen, int colour) {
        List<double[]> points = new ArrayList<>();
        p.vertices()
                .forEach(v ->
                        points.add(new double[] {x(v.point().x()), y(v.point().y())}));
        page.way(points, p.closed(), pen, colour);
    }

    /** On white, as some shades are as dark as ink, and nowhere over the edge of the floor. */
    private void label(double atX, double atY, String words) {
        double wide = document.width(words, TextStyle.SMALL) + 0.8;
        double high = TextStyle.SMALL.ascent() + 0.8;
        double right = left + scale * floor.extent().width();
        double x = Math.max(left + wide / 2, Math.min(right - wide / 2, atX));
        double y = Math.max(bottom + 0.4, Math.min(top - high, atY - high / 2));
        page.fill(new Box(x - wide / 2, y, wide, high), PAPER);
        page.text(x, y + 0.4, TextStyle.SMALL.coloured(INK), Align.CENTRE, words);
    }

    private void legend() {
        double at = left + scale * floor.extent().width() + 6;
        double y = top - 3;
        page.text(at, y, TextStyle.SMALL, Align.LEFT, "degrees C");
        for (int i = floor.steps().size() - 1; i >= 0; i--) {
            y -= 6;
            Box box = new Box(at, y, 9, 4.6);
            page.fill(box, floor.steps().get(i).colour());
            page.frame(box, THIN, THIN_INK);
            page.text(
                    at + 11,
                    y + 1.3,
                    TextStyle.BODY,
                    Align.LEFT,
                    floor.steps().get(i).words());
        }
    }

    private double x(double floorX) {
        return left + scale * (floorX - floor.extent().minX());
    }

    private double y(double floorY) {
        return bottom + scale * (floorY - floor.extent().minY());
    }
}
