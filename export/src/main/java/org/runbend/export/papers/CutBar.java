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
    /** A part that is thinner on paper is one line. */
    private static final double THIN = 0.1;
    /** Between the lines over scrap, mm. */
    private static final double HATCH = 1.6;

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
        Box whole = new Box(left, bottom, length / scale, BAR);
        page.fill(whole, PIECE);
        part(0, pieces.isEmpty() ? 0 : pieces.get(0).from(), scale, left, bottom)
                .ifPresent(b -> hatch(page, b));
        part(length - this.left, length, scale, left, bottom).ifPresent(b -> {
            if (restName.isPresent()) {
                page.fill(b, REST);
            } else {
                hatch(page, b);
            }
        });
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
        page.frame(whole, 0.4, INK);
        restName.ifPresent(n -> part(length - this.left, length, scale, left, bottom)
                .ifPresent(b -> words(page, document, b, n, tape.beside(this.left))));
    }

    /** The box of a part of the bar, if a print shows it. */
    private static Optional<Box> part(double from, double to, double scale, double left, double bottom) {
        double wide = (to - from) / scale;
        return wide < THIN ? Optional.empty() : Optional.of(new Box(left + from / scale, bottom, wide, BAR));
    }

    /** Slanting lines over a box. */
    private static void hatch(PdfPage page, Box box) {
        for (double at = HATCH - box.height(); at < box.width(); at += HATCH) {
            double low = Math.max(0, -at);
            double high = Math.min(box.height(), box.width() - at);
            page.line(box.x() + at + low, box.y() + low, box.x() + at + high, box.y() + high, 0.2, INK);
        }
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
