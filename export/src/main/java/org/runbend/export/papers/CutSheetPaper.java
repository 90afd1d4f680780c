package org.runbend.export.papers;

import java.util.List;
import java.util.stream.Collectors;
import org.runbend.export.data.CutList;
import org.runbend.export.data.CutSheet;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The paper for saw and coil: a bar to scale for each stock that is cut, with the measures to cut at. */
public final class CutSheetPaper {
    private static final double BAR = 8.5;
    private static final double MEASURES = 4.6;
    private static final double INSET = 1;
    private static final int INK = 0x1A1A1A;
    private static final int PIECE = 0xFFFFFF;
    private static final int REST = 0xD9D9D9;
    private static final TextStyle NAME = TextStyle.BODY.bold();
    private static final TextStyle SMALL = TextStyle.SMALL.coloured(INK);
    private static final double LEAST = 7;

    private final KitPlan plan;
    private final TapeText tape;
    private final CutSheet sheet;

    private CutSheetPaper(KitPlan plan) {
        this.plan = plan;
        tape = new TapeText(plan.job());
        sheet = CutSheet.of(plan);
    }

    /** The paper of a plan. */
    public static byte[] bytes(KitPlan plan, PaperForm form) {
        return new CutSheetPaper(plan).write(form);
    }

    private byte[] write(PaperForm form) {
        Job job = plan.job();
        String name = "Cut sheet " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, form.paper().upright(), plan.isSound())) {
            PdfFlow flow = Letterhead.begin(document, job, name);
            flow.paragraph("Lengths in " + tape.papers()
                    + ". Measures under a bar run from its left end: set or read them there.");
            flow.heading("Coils");
            flow.caution(
                    "A coil under tension springs open: cut its bands one by one and keep the other hand behind it.");
            bars(flow, document, sheet.coils(), "coil");
            if (!sheet.plates().isEmpty()) {
                flow.heading("Plates");
                flow.caution(
                        "Goggles, ear protection and gloves: sawn sheet has sharp edges. The blade stands still before a piece is"
                                + " taken away.");
                flow.paragraph("The saw takes " + Decimals.of(plan.plates().kerf(), 1)
                        + " per cut; break the edges after sawing.");
                bars(flow, document, sheet.plates(), "plate");
                settings(flow);
                PlateTables tables = new PlateTables(plan);
                flow.paragraph(tables.work(false));
                tables.lengths(false)
                        .ifPresent(t -> flow.heading("Fewer lengths").table(t));
            }
            return document.toBytes();
        }
    }

    /** Bars of one product are drawn at one scale, the largest round one at which the longest fits. */
    private void bars(PdfFlow flow, PdfDocument document, List<CutSheet.Group> groups, String what) {
        for (CutSheet.Group group : groups) {
            double longest = groups.stream()
                    .filter(g -> g.product().equals(group.product()))
                    .mapToDouble(CutSheet.Group::length)
                    .max()
                    .orElse(1);
            double scale = Placement.roundFigure(longest / (flow.width() - 2 * INSET));
            flow.keep(BAR + MEASURES + 14);
            flow.paragraph(words(group, scale), TextStyle.BODY);
            flow.figure(
                    what + " " + ids(group) + " cut into " + lengths(group),
                    BAR + MEASURES,
                    (page, box) -> bar(page, document, box, group, scale));
            flow.space(2.5);
        }
    }

    private String words(CutSheet.Group group, double scale) {
        int count = group.stock().size();
        String shelf = group.stock().get(0).fromShelf() ? " from the shelf" : "";
        String rest = group.left() < 0.01
                ? "nothing left"
                : tape.beside(group.left()) + " left"
                        + (count > 1 ? " of each" : "")
                        + group.restName()
                                .map(n -> count > 1 ? ", kept: mark each with its plate and r" : ", kept as " + n)
                                .orElse(", scrap");
        String saw = group.pieces().isEmpty() ? "" : ": " + lengths(group);
        return "\u2610 " + (count > 1 ? count + " x " : "") + group.product() + " of " + tape.beside(group.length())
                + shelf + " (" + ids(group) + ")" + saw + "; " + rest + ". 1 : " + Decimals.of(scale, 1);
    }

    private String lengths(CutSheet.Group group) {
        return group.pieces().stream().map(p -> tape.beside(p.length())).collect(Collectors.joining(" + "));
    }

    private static String ids(CutSheet.Group group) {
        return group.stock().stream().map(CutList.StockPiece::id).collect(Collectors.joining(", "));
    }

    private void bar(PdfPage page, PdfDocument document, Box box, CutSheet.Group group, double scale) {
        double left = box.x() + INSET;
        double bottom = box.y() + MEASURES;
        page.fill(new Box(left, bottom, group.length() / scale, BAR), REST);
        double free = left;
        for (int i = 0; i < group.pieces().size(); i++) {
            CutSheet.Piece piece = group.pieces().get(i);
            Box at = new Box(left + piece.from() / scale, bottom, piece.length() / scale, BAR);
            page.fill(at, PIECE);
            page.frame(at, 0.25, INK);
            words(page, document, at, pieceName(group, i), tape.beside(piece.length()));
            String measure = tape.beside(piece.to());
            double wide = document.width(measure, SMALL);
            double end = left + piece.to() / scale;
            double from = Math.max(free, Math.min(end - wide / 2, left + group.length() / scale - wide));
            page.line(end, bottom, end, bottom - 1, 0.2, INK);
            page.text(from, box.y() + 0.6, SMALL, Align.LEFT, measure);
            free = from + wide + 1.5;
        }
        page.frame(new Box(left, bottom, group.length() / scale, BAR), 0.4, INK);
        group.restName().ifPresent(n -> {
            double from = group.length() - group.left();
            Box at = new Box(left + from / scale, bottom, group.left() / scale, BAR);
            words(page, document, at, group.stock().size() > 1 ? "r" : n, tape.beside(group.left()));
        });
    }

    /** Of plates cut alike the letter of the piece; its number is that of its plate. */
    private static String pieceName(CutSheet.Group group, int index) {
        String name = group.stock().get(0).cuts().get(index).name();
        return group.stock().size() == 1
                ? name
                : name.substring(group.stock().get(0).id().length());
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

    private void settings(PdfFlow flow) {
        if (sheet.settings().isEmpty()) {
            return;
        }
        flow.heading("Settings of the stop, in this order it moves least");
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.right("no.", 1.2),
                Column.left("plate", 3),
                Column.right("stop at", 4),
                Column.right("pieces", 2.4),
                Column.left("names", 12));
        for (int i = 0; i < sheet.settings().size(); i++) {
            CutSheet.Setting s = sheet.settings().get(i);
            table.row(
                    "\u2610",
                    Integer.toString(i + 1),
                    s.product(),
                    tape.beside(s.length()),
                    Integer.toString(s.pieces().size()),
                    String.join(", ", s.pieces()));
        }
        flow.table(table);
    }
}
