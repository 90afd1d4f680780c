package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.source.Plain;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.channel.Passes;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.job.Job;

/**
 * The guide on paper in full size, in tiles to glue together, after a page that shows how they lie and how the guide is
 * used. Each tile has a bar of 100 mm to measure, and crosses that lie on those of its neighbours.
 */
public final class GuidePaper {
    private static final double HEAD = 12;
    private static final double OVERLAP = 10;
    private static final double CROSS = 5;
    private static final int INK = 0x1A1A1A;
    private static final int GREY = 0x8A8A8A;

    private static final List<String> CAUTIONS = List.of(
            "Goggles, ear protection and a dust mask. Pull the plug before the cutter or the bush is changed.",
            "The cutter stands still and drawn up when the bush is set into a slot and when it is lifted out.",
            "Look at what lies under the board before anybody cuts: cables, pipes, tanks, screws.",
            "The makers' instructions of router and cutter and local rules go before this paper.");

    private final Job job;
    private final GuidePlate plate;

    /** A paper for a guide. */
    public GuidePaper(Job job, GuidePlate plate) {
        this.job = job;
        this.plate = plate;
    }

    /** How the plate is divided into pages. */
    private record Tiles(PageFormat format, int columns, int rows, double width, double height) {
        static Tiles of(PageFormat format, Extent plate) {
            Box in = format.inside();
            double width = in.width();
            double height = in.height() - HEAD;
            return new Tiles(format, count(plate.width(), width), count(plate.height(), height), width, height);
        }

        private static int count(double size, double tile) {
            return (int) Math.max(1, Math.ceil((size + 2 - OVERLAP) / (tile - OVERLAP) - 1e-9));
        }

        int pages() {
            return columns * rows;
        }

        /** What a tile shows; all of them together have the plate in their middle. */
        Extent tile(Extent plate, int column, int row) {
            double x = plate.centre().x() - all(columns, width) / 2 + column * (width - OVERLAP);
            double y = plate.centre().y() - all(rows, height) / 2 + row * (height - OVERLAP);
            return new Extent(x, y, x + width, y + height);
        }

        private static double all(int count, double tile) {
            return count * tile - (count - 1) * OVERLAP;
        }

        static String name(int column, int row) {
            return (char) ('A' + row) + Integer.toString(column + 1);
        }
    }

    /** The paper as PDF, from the drawing of the plate. */
    public byte[] bytes(Sheet drawing) {
        Extent size = drawing.extent();
        Tiles upright = Tiles.of(new PageFormat(210, 297, 10), size);
        Tiles lying = Tiles.of(new PageFormat(297, 210, 10), size);
        Tiles tiles = lying.pages() < upright.pages() ? lying : upright;
        try (PdfDocument document = new PdfDocument("Router guide " + job.order(), "en", PageFormat.A4)) {
            document.footer("order " + job.order() + ", " + job.title());
            first(document, drawing, tiles);
            for (int row = tiles.rows() - 1; row >= 0; row--) {
                for (int column = 0; column < tiles.columns(); column++) {
                    tile(document, drawing, tiles, column, row);
                }
            }
            return document.toBytes();
        }
    }

    private void first(PdfDocument document, Sheet drawing, Tiles tiles) {
        PdfFlow flow = new PdfFlow(document);
        flow.title("Router guide for " + job.title());
        flow.paragraph("Order " + job.order()
                + job.revision().map(r -> ", revision " + r).orElse("") + ", from "
                + job.catalog().workshop() + ". Seen from above.");
        Box place = new Box(flow.left(), flow.y() - 92, flow.width(), 88);
        Extent all = tiles.tile(drawing.extent(), 0, 0)
                .union(tiles.tile(drawing.extent(), tiles.columns() - 1, tiles.rows() - 1));
        Placement at = Placement.fit(all, place);
        flow.page().sheet(drawing, place, at);
        for (int row = 0; row < tiles.rows(); row++) {
            for (int column = 0; column < tiles.columns(); column++) {
                grid(flow.page(), at, tiles.tile(drawing.extent(), column, row), Tiles.name(column, row));
            }
        }
        flow.space(96);
        flow.heading("Print and glue");
        flow.paragraph("Print the next " + tiles.pages()
                + " pages in actual size, not fitted to the page: the bar on each is"
                + " 100 mm long. Lay the crosses of neighbouring pages on each other; the pages overlap by 10 mm. Glue them"
                + " on a flat plate " + mm(plate.problem().thickness()) + " mm thick. A machine cuts it better from the"
                + " drawing beside this paper.");
        flow.heading("Tools");
        flow.paragraph("Guide bush " + mm(plate.bush().outer()) + " mm outside, cutter " + mm(plate.cutter())
                + " mm, which must reach " + mm(plate.reach()) + " mm below the base of the router for a groove "
                + mm(plate.problem().groove().depth()) + " mm deep. The groove gets "
                + mm(plate.problem().groove().width()) + " mm wide on straights and "
                + mm(plate.problem().groove().bendWidth()) + " mm at bends" + layers() + ".");
        flow.heading("Use");
        for (String line : uses()) {
            flow.item("-", 3, line);
        }
        flow.heading("Take care");
        for (String line : CAUTIONS) {
            flow.item("-", 3, line);
        }
    }

    private String layers() {
        Passes passes = Passes.of(new ChannelSize(
                plate.problem().groove().width(),
                plate.problem().groove().bendWidth(),
                plate.problem().groove().depth(),
                plate.problem().groove().pad(),
                plate.cutter()));
        return ", in " + passes.down() + " layers of " + mm(passes.layer()) + " mm, along both sides of the slot";
    }

    private List<String> uses() {
        List<String> uses = new ArrayList<>();
        uses.add("Draw the pipe's lines on the board first, from the drawing of the kit.");
        uses.add("The lower edge lies " + mm(plate.axis()) + " mm from the middle of the straight slot"
                + (Math.abs(plate.axis() - plate.problem().edge()) < 1e-6
                        ? ": against the edge of the floor it makes the run beside the wall."
                        : "."));
        uses.add("Marks on the short edges are " + mm(plate.problem().spacing())
                + " mm apart: laid on the middle of one run, the next mark is on the middle of its neighbour.");
        uses.add("Marks beside the bends stand where the bend begins; it has a radius of "
                + mm(plate.problem().bendRadius()) + " mm to the middle of the pipe.");
        uses.add("For the other hand turn the guide over; letters are then read from the back.");
        uses.add(
                "Set the bush into a round end of a slot, the cutter standing still and drawn up; start it, let it down, go"
                        + " along one side of the slot and back along the other, draw it up, let it stop, lift it out.");
        if (plate.problem().groove().pad() > 0) {
            uses.add("The round hole makes the pocket of "
                    + mm(plate.problem().groove().pad()) + " mm where the pipe goes through the floor.");
        }
        return uses;
    }

    private static void grid(PdfPage page, Placement at, Extent tile, String name) {
        var a = at.toPage(new org.runbend.export.drawing.Point(tile.minX(), tile.minY()));
        var b = at.toPage(new org.runbend.export.drawing.Point(tile.maxX(), tile.maxY()));
        page.frame(new Box(a.x(), a.y(), b.x() - a.x(), b.y() - a.y()), 0.1, GREY);
        page.text(a.x() + 1.5, a.y() + 1.5, TextStyle.SMALL, Align.LEFT, name);
    }

    private void tile(PdfDocument document, Sheet drawing, Tiles tiles, int column, int row) {
        PdfPage page = document.addPage(tiles.format());
        Box in = page.format().inside();
        Extent shown = tiles.tile(drawing.extent(), column, row);
        Box place = new Box(in.x(), in.y(), tiles.width(), tiles.height());
        page.sheet(drawing, place, new Placement(1, in.x() - shown.minX(), in.y() - shown.minY()));
        for (int i = 0; i < 4; i++) {
            double x = in.x() + (i % 2 == 0 ? OVERLAP / 2 : tiles.width() - OVERLAP / 2);
            double y = in.y() + (i < 2 ? OVERLAP / 2 : tiles.height() - OVERLAP / 2);
            page.line(x - CROSS, y, x + CROSS, y, 0.15, INK);
            page.line(x, y - CROSS, x, y + CROSS, 0.15, INK);
        }
        double top = in.y() + in.height();
        page.fill(new Box(in.x() + in.width() - 100, top - 6, 100, 2), INK);
        page.text(in.x() + in.width() - 100, top - 10, TextStyle.SMALL, Align.LEFT, "this bar is 100 mm long");
        page.text(
                in.x(),
                top - 5,
                TextStyle.BODY.bold(),
                Align.LEFT,
                String.format(Locale.ROOT, "%s  (row %c, column %d)", Tiles.name(column, row), 'A' + row, column + 1));
        page.text(
                in.x(), top - 9.5, TextStyle.SMALL, Align.LEFT, "router guide, order " + job.order() + ", actual size");
    }

    private static String mm(double size) {
        return Plain.number(size);
    }
}
