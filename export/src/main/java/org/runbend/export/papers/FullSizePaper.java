package org.runbend.export.papers;

import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The floor in actual size: in tiles to lay edge to edge, or on one page for a plotter. */
public final class FullSizePaper {
    /** More tiles than this nobody glues. */
    public static final int MOST = 60;

    private static final double MARGIN = 10;
    private static final double A3_WIDTH = 297;
    private static final double A3_HEIGHT = 420;
    private static final double BAR = 100;
    private static final double FOOT = 14;
    private static final int INK = 0x1A1A1A;

    private FullSizePaper() {}

    /** On what a drawing in actual size is printed. */
    public enum Page {
        /** ISO 216, 210 x 297 mm. */
        A4,
        /** ISO 216, 297 x 420 mm. */
        A3,
        /** US Letter. */
        LETTER,
        /** One page as large as the floor. */
        PLOTTER;

        PageFormat format() {
            return switch (this) {
                case A4, PLOTTER -> Paper.A4.upright().withMargin(MARGIN);
                case A3 -> new PageFormat(A3_WIDTH, A3_HEIGHT, MARGIN);
                case LETTER -> Paper.LETTER.upright().withMargin(MARGIN);
            };
        }
    }

    /** How many tiles a drawing takes; 1 for a plotter. */
    public static int pages(Sheet drawing, Page page) {
        return page == Page.PLOTTER
                ? 1
                : Tiles.fewest(page.format(), drawing.extent()).pages();
    }

    /** How many tiles a floor of so many mm2 takes at least, however it is turned: none covers more than a page. */
    public static int pagesAtLeast(double area, Page page) {
        return page == Page.PLOTTER ? 1 : Tiles.atLeast(page.format(), area);
    }

    /** Whether one page can be as large as the drawing. */
    public static boolean fitsPlotter(Sheet drawing) {
        Extent e = drawing.extent();
        return Math.max(e.width(), e.height()) + 2 * MARGIN + FOOT <= PageFormat.LONGEST;
    }

    /** The paper, from a drawing in mm of the floor. */
    public static byte[] bytes(KitPlan plan, Sheet drawing, Page page) {
        return page == Page.PLOTTER ? plotter(plan, drawing) : tiles(plan, drawing, page);
    }

    private static byte[] tiles(KitPlan plan, Sheet drawing, Page page) {
        Job job = plan.job();
        Tiles tiles = Tiles.fewest(page.format(), drawing.extent());
        Paper first = page == Page.LETTER ? Paper.LETTER : Paper.A4;
        String name = "Full size " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, first.upright(), plan.isSound())) {
            PdfFlow flow = Letterhead.begin(document, job, name);
            flow.figure("How the pages lie", 120, (on, box) -> tiles.map(on, drawing, box));
            flow.space(4);
            flow.heading("Print and lay");
            flow.paragraph("Print the next " + tiles.pages()
                    + " pages in actual size, not fitted to the page: the bar on each is 100 mm long, measure it on the first and the"
                    + " last. Pages overlap by 10 mm: lay the crosses of neighbouring pages on each other, tape them, and check two"
                    + " diagonals of the floor with a tape before anything is pricked through. Paper grows and shrinks with damp air:"
                    + " measures on the fitting sheet go before it.");
            flow.caution("Look at what lies under the floor before you drill or cut.");
            tiles.print(document, drawing, "floor in actual size, order " + job.order() + ", seen from above");
            return document.toBytes();
        }
    }

    private static byte[] plotter(KitPlan plan, Sheet drawing) {
        Job job = plan.job();
        Extent size = drawing.extent();
        PageFormat format =
                new PageFormat(Math.max(size.width(), 2 * BAR) + 2 * MARGIN, size.height() + 2 * MARGIN + FOOT, MARGIN);
        String name = "Full size " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, format, plan.isSound())) {
            PdfPage page = document.addPage();
            Box in = format.inside();
            Box place = new Box(in.x(), in.y() + FOOT, in.width(), in.height() - FOOT);
            page.sheet(drawing, place, Placement.scaled(size, place, 1));
            page.fill(new Box(in.x(), in.y() + FOOT - 5, BAR, 2), INK);
            page.text(
                    in.x() + BAR + 3,
                    in.y() + FOOT - 5,
                    TextStyle.BODY,
                    Align.LEFT,
                    "the bar is 100 mm long; floor in actual size, seen from above, order " + job.order());
            return document.toBytes();
        }
    }
}
