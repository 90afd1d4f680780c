package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.channel.Passes;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.job.Job;

/**
 * The guide on paper in full size, in tiles to glue together, after a page that shows how they lie and how the guide is
 * used. Each tile has a bar of 100 mm to measure, and crosses that lie on those of its neighbours.
 */
public final class GuidePaper {
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

    /** The paper as PDF on pages of a size, from the drawing of the plate. */
    public byte[] bytes(Sheet drawing, Paper size) {
        Tiles tiles = Tiles.fewest(size.upright().withMargin(10), drawing.extent());
        try (PdfDocument document = new PdfDocument("Router guide " + job.order(), "en", size.upright())) {
            document.footer("order " + job.order() + ", " + job.title());
            first(document, drawing, tiles);
            tiles.print(document, drawing, "router guide, order " + job.order() + ", actual size");
            return document.toBytes();
        }
    }

    private void first(PdfDocument document, Sheet drawing, Tiles tiles) {
        PdfFlow flow = new PdfFlow(document);
        flow.title("Router guide for " + job.title());
        flow.paragraph("Order " + job.order()
                + job.revision().map(r -> ", revision " + r).orElse("") + ", from "
                + job.catalog().workshop() + ". Seen from above.");
        tiles.map(flow.page(), drawing, new Box(flow.left(), flow.y() - 92, flow.width(), 88));
        flow.space(96);
        flow.heading("Print and glue");
        TapeText tape = new TapeText(job);
        flow.paragraph(tape.note("Print the next " + tiles.pages()
                + " pages in actual size, not fitted to the page: the bar on each is"
                + " 100 mm long. Lay the crosses of neighbouring pages on each other; the pages overlap by 10 mm. Glue them"
                + " on a flat plate " + mm(plate.problem().thickness()) + " mm thick. A machine cuts it better from the"
                + " drawing beside this paper."));
        flow.heading("Tools");
        flow.paragraph(tape.note("Guide bush " + mm(plate.bush().outer()) + " mm outside, cutter " + mm(plate.cutter())
                + " mm, which must reach " + mm(plate.reach()) + " mm below the base of the router for a groove "
                + mm(plate.problem().groove().depth()) + " mm deep. The groove gets "
                + mm(plate.problem().groove().width()) + " mm wide on straights and "
                + mm(plate.problem().groove().bendWidth()) + " mm at bends" + layers() + "."));
        flow.heading("Use");
        for (String line : uses()) {
            flow.item("\u2022", 5, tape.note(line));
        }
        flow.heading("Take care");
        for (String line : CAUTIONS) {
            flow.item("\u2022", 5, line);
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

    private static String mm(double size) {
        return Plain.number(size);
    }
}
