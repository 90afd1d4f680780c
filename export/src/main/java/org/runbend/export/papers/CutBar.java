package org.runbend.export.papers;

import java.util.List;
import java.util.Optional;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;

/**
 * A coil or plate as a bar to scale, with the measures to cut at under it, mm.
 *
 * @param length of it
 * @param pieces in the order of cutting
 * @param left what is left at its end
 * @param restName what is written on that, if it is kept
 */
record CutBar(double length, List<Piece> pieces, double left, Optional<String> restName) {
    /** Room that a bar takes with its measures, mm. */
    static final double HEIGHT = 13.1;

    private static final double BAR = 8.5;
    private static final double MEASURES = HEIGHT - BAR;
    private static final double INSET = 1;
    private static final int INK = 0x1A1A1A;
    private static final int PIECE = 0xFFFFFF;
    private static final int REST = 0xD9D9D9;
    private static final TextStyle NAME = TextStyle.BODY.bold();
    private static final TextStyle SMALL = TextStyle.SMALL.coloured(INK);
    private static final double LEAST = 7;

    CutBar {
        pieces = List.copyOf(pieces);
    }

    /** A piece from one measure to another. */
    record Piece(double from, double to, String name) {
        double length() {
            return to - from;
        }
    }

    /** The largest round scale at which the longest bar fits into the width. */
    static double scale(double longest, double width) {
        return Placement.roundFigure(longest / (width - 2 * INSET));
    }

    void draw(PdfPage page, PdfDocument document, Box box, double scale, TapeText tape) {
        double left = box.x() + INSET;
        double bottom = box.y() + MEASURES;
        page.fill(new Box(left, bottom, length / scale, BAR), REST);
        double free = left;
        for (Piece piece : pieces) {
            Box at = new Box(left + piece.from() / scale, bottom, piece.length() / scale, BAR);
            page.fill(at, PIECE);
            page.frame(at, 0.25, INK);
            words(page, document, at, piece.name(), tape.beside(piece.length()));
            String measure = tape.beside(piece.to());
            double wide = document.width(measure, SMALL);
            double end = left + piece.to() / scale;
            double from = Math.max(free, Math.min(end - wide / 2, left + length / scale - wide));
            page.line(end, bottom, end, bottom - 1, 0.2, INK);
            page.text(from, box.y() + 0.6, SMALL, Align.LEFT, measure);
            free = from + wide + 1.5;
        }
        page.frame(new Box(left, bottom, length / scale, BAR), 0.4, INK);
        restName.ifPresent(n -> {
            Box at = new Box(left + (length - this.left) / scale, bottom, this.left / scale, BAR);
            words(page, document, at, n, tape.beside(this.left));
        });
    }

    /** Name and length as far as they fit; the line over the bar says the length too. */
    private static void words(PdfPage page, PdfDocument document, Box at, String name, String length) {
        double room = at.width() - 1;
        double middle = at.x() + at.width() / 2;
        boolean both = document.width(length, SMALL) <= room;
        if (document.width(name, NAME.sized(LEAST)) <= room) {
            TextStyle style = document.width(name, NAME) <= room ? NAME : NAME.sized(LEAST);
            page.text(middle, at.y() + (both ? 4.7 : 3), style, Align.CENTRE, name);
        }
        if (both) {
            page.text(middle, at.y() + 1.3, SMALL, Align.CENTRE, length);
        }
    }
}
