package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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
    /** Lengths nearer to each other need no other setting of the stop, mm. */
    private static final double SAME = 0.01;

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
                    + ". Measures under a bar run from its left end: set or read them there. Grey: a rest that is kept, with its name;"
                    + " hatched: scrap.");
            flow.heading("Coils");
            flow.caution(
                    "A coil under tension springs open: cut its bands one by one and keep the other hand behind it.");
            bars(flow, document, sheet.coils(), "coil");
            if (!sheet.plates().isEmpty()) {
                flow.heading("Plates");
                flow.caution(
                        "Goggles, ear protection and gloves: sawn sheet has sharp edges. The blade stands still before a piece is"
                                + " taken away.");
                PlateTables tables = new PlateTables(plan);
                flow.paragraph("The saw takes " + Decimals.of(plan.plates().kerf(), 1)
                        + " per cut; break the edges after sawing. " + tables.work(false));
                bars(flow, document, sheet.plates(), "plate");
                settings(flow);
                tables.lengths(false).ifPresent(t -> flow.heading("Fewer lengths")
                        .lead(tables.lengthsLead())
                        .table(t));
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
        String saw = group.pieces().isEmpty() ? "" : ": " + named(group);
        return "\u2610 " + (count > 1 ? count + " x " : "") + group.product() + " of " + tape.beside(group.length())
                + shelf + " (" + ids(group) + ")" + saw + "; " + rest(group) + ". 1 : " + Decimals.of(scale, 1);
    }

    private String rest(CutSheet.Group group) {
        if (group.left() < 0.01) {
            return "nothing left";
        }
        int count = group.stock().size();
        return tape.beside(group.left()) + " left"
                + (count > 1 ? " of each" : "")
                + group.restName()
                        .map(n -> count > 1
                                ? ", kept: mark each with its plate and r"
                                : (isCustomers(group) ? ", goes into the box as " : ", kept as ") + n)
                        .orElse(", scrap");
    }

    /** Whether it is a coil that is supplied whole: what is left of it is the customer's. */
    private boolean isCustomers(CutSheet.Group group) {
        int coil = sheet.coils().indexOf(group);
        return coil >= 0 && plan.restGoesTo(plan.coils().coils().get(coil)).equals("customer");
    }

    /** The pieces of one by name and length. */
    private String named(CutSheet.Group group) {
        return IntStream.range(0, group.pieces().size())
                .mapToObj(i -> {
                    String name = pieceName(group, i);
                    String length = tape.beside(group.pieces().get(i).length());
                    return name.equals(ids(group)) ? length : name + " " + length;
                })
                .collect(Collectors.joining(" + "));
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

    /** Of plates cut alike the letter of the piece; its number is that of its plate. Of whole ones the names of all. */
    private static String pieceName(CutSheet.Group group, int index) {
        String name = group.stock().get(0).cuts().get(index).name();
        if (group.stock().size() == 1) {
            return name;
        }
        String letter = name.substring(group.stock().get(0).id().length());
        return letter.isEmpty() ? ids(group) : letter;
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
        int number = 0;
        double last = Double.NaN;
        for (CutSheet.Setting s : sheet.settings()) {
            // plates of several products are cut at one setting
            boolean stays = Math.abs(s.length() - last) < SAME;
            number += stays ? 0 : 1;
            last = s.length();
            table.row(
                    "\u2610",
                    stays ? "" : Integer.toString(number),
                    s.product(),
                    tape.beside(s.length()),
                    Integer.toString(s.pieces().size()),
                    String.join(", ", s.pieces()));
        }
        flow.table(table);
    }
}
