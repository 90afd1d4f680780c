package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.runbend.export.data.CutList;
import org.runbend.export.data.CutSheet;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The paper for saw and coil: a bar to scale for each stock that is cut, with the measures to cut at. */
public final class CutSheetPaper {
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
            form.cutWithDay().ifPresent(flow::caution);
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
            double scale = CutBar.scale(longest, flow.width());
            CutBar bar = bar(group);
            flow.keep(CutBar.HEIGHT + 14);
            flow.paragraph(words(group, scale), TextStyle.BODY);
            flow.figure(
                    what + " " + ids(group) + " cut into " + lengths(group),
                    CutBar.HEIGHT,
                    (page, box) -> bar.draw(page, document, box, scale, tape));
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

    private static CutBar bar(CutSheet.Group group) {
        List<CutBar.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < group.pieces().size(); i++) {
            CutSheet.Piece piece = group.pieces().get(i);
            pieces.add(new CutBar.Piece(piece.from(), piece.to(), pieceName(group, i)));
        }
        return new CutBar(
                group.length(),
                pieces,
                group.left(),
                group.restName().map(n -> group.stock().size() > 1 ? "r" : n));
    }

    /** Of plates cut alike the letter of the piece; its number is that of its plate. */
    private static String pieceName(CutSheet.Group group, int index) {
        String name = group.stock().get(0).cuts().get(index).name();
        return group.stock().size() == 1
                ? name
                : name.substring(group.stock().get(0).id().length());
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
