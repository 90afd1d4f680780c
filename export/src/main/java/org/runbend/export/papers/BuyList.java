package org.runbend.export.papers;

import java.util.List;
import org.runbend.catalog.product.Money;
import org.runbend.catalog.source.Unit;
import org.runbend.export.data.Day;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;

/** What a day's orders need that has to be bought first, with what it costs the workshop. */
public final class BuyList {
    private static final String TICK = "\u2610";
    private static final double HUNDREDTHS = 100;

    private final Day day;
    private final TapeText tape;

    private BuyList(Day day, Unit unit) {
        this.day = day;
        tape = new TapeText(unit);
    }

    /** The paper of a day, lengths in mm, or in inches beside mm. */
    public static byte[] bytes(Day day, Paper paper, Unit unit) {
        return new BuyList(day, unit).write(paper);
    }

    private byte[] write(Paper paper) {
        String name = "Buy list " + day.name();
        try (PdfDocument document = Letterhead.document(day, name, paper.upright())) {
            PdfFlow flow = Letterhead.begin(document, day, name);
            flow.paragraph("Stays in the house: what is bought, at the costs of the catalog, net of tax. Lengths in "
                    + tape.papers() + ".");
            day.faults().forEach(f -> flow.caution("Left out, nothing is bought for it: " + f));
            flow.heading("Coils and plates").table(stock());
            saved(flow);
            if (!day.goods().isEmpty()) {
                flow.heading("Everything else").table(goods());
                if (day.goods().stream().anyMatch(g -> g.onHand().isEmpty())) {
                    flow.paragraph(
                            "Where nothing stands under \u201con the shelf\u201d the ledger does not count this part, or"
                                    + " there is none: look before buying.");
                }
            }
            return document.toBytes();
        }
    }

    private PdfTable stock() {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("what", 2.2),
                Column.left("part", 3.4),
                Column.right("length", 4.4),
                Column.right("needed", 2.4),
                Column.right("on the shelf", 2.6),
                Column.right("to buy", 2.4),
                Column.right("cost " + day.currency(), 3.4));
        long buy = 0;
        long cost = 0;
        for (Day.Wanted w : day.wanted()) {
            buy += w.toBuy();
            cost += w.cost();
            table.row(
                    w.toBuy() > 0 ? TICK : "",
                    w.kind().words(),
                    w.product(),
                    tape.beside(w.length() / HUNDREDTHS),
                    Long.toString(w.needed()),
                    Long.toString(w.needed() - w.toBuy()),
                    Long.toString(w.toBuy()),
                    money(w.cost()));
        }
        return table.strongRow("", "all", "", "", "", "", Long.toString(buy), money(cost));
    }

    private void saved(PdfFlow flow) {
        List<Day.Cost> costs = day.costs();
        long together = costs.stream().mapToLong(Day.Cost::together).sum();
        long alone = costs.stream().mapToLong(Day.Cost::alone).sum();
        flow.paragraph(
                "Whole coils and plates that are opened, those on the shelf included, are worth " + money(together)
                        + " " + day.currency() + "; order by order they would be worth " + money(alone) + ".");
    }

    private PdfTable goods() {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("part", 3.2),
                Column.left("what it is", 9),
                Column.right("needed", 2.4),
                Column.left("unit", 2.6),
                Column.right("on the shelf", 2.6),
                Column.right("to buy", 2.4));
        for (Day.Goods g : day.goods()) {
            boolean known = g.onHand().isPresent();
            table.row(
                    known && g.toBuy().getAsLong() == 0 ? "" : TICK,
                    g.sku(),
                    g.name(),
                    Long.toString(g.quantity()),
                    g.unit(),
                    known ? Long.toString(g.onHand().getAsLong()) : "",
                    known ? Long.toString(g.toBuy().getAsLong()) : "");
        }
        return table;
    }

    private String money(long minor) {
        return new Money(minor, day.currency()).bare();
    }
}
