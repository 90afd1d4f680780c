package org.runbend.export.papers;

import java.util.List;
import java.util.function.DoubleFunction;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Sales;
import org.runbend.export.data.OfferText;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.QuoteLine;

/**
 * The paper that a customer decides by: what is offered at what price, for how long, what was taken for granted, and whether a standard
 * kit would do for less. A4, PDF. No cost stands on it; where the plan fails a check no price does.
 */
public final class QuotePaper {
    private static final double PLAN_HEIGHT = 78;
    /** Seven rows at most. */
    private static final double FOOT_HEIGHT = 55;
    /** Under a table and over the next. */
    private static final double BETWEEN = 4;
    /** So many parts of a kit that are as offered are not told one by one again. */
    private static final int MANY = 8;

    private final KitPlan plan;
    private final Offer offer;
    private final Catalog prices;
    private final OfferText words;

    /** A paper for a plan and what is asked for it. */
    public QuotePaper(KitPlan plan, Offer offer) {
        this.plan = plan;
        this.offer = offer;
        this.prices = plan.job().catalog();
        this.words = new OfferText(prices);
    }

    /**
     * The paper.
     *
     * @param drawing of the same plan at so many floor mm to a mm of paper, with few words
     * @param warning what stands over each page of a plan that fails; empty for a sound one
     * @param paper what it is printed on
     */
    public byte[] bytes(DoubleFunction<Sheet> drawing, String warning, Paper paper) {
        Job job = plan.job();
        String name = "Quotation " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, paper.upright(), warning.isEmpty())) {
            PdfFlow flow = Letterhead.begin(document, job, name);
            double unit = TrueLetters.unit(new Box(0, 0, flow.width() - 2, PLAN_HEIGHT - 2), drawing);
            flow.drawing(drawing.apply(unit), PLAN_HEIGHT);
            flow.paragraph(
                    "Your floor with its pipe and spreader plates, seen from above: "
                            + sizes(plan.tape().width(), plan.tape().height()) + " over all.",
                    TextStyle.SMALL);
            if (offer.quote().isFirm()) {
                flow.heading("What we offer").table(lines().leadingTo(FOOT_HEIGHT + BETWEEN));
                contents(flow);
                flow.keep(FOOT_HEIGHT).table(foot());
                flow.paragraph("This quotation holds for " + offer.quote().validity() + ".");
            } else {
                refusal(flow);
            }
            if (!plan.notSupplied().isEmpty()) {
                flow.paragraph("Not in the price: " + String.join("; ", plan.notSupplied()) + ".");
            }
            flow.heading("What we took for granted");
            TapeText tape = new TapeText(job);
            offer.quote().granted().forEach(g -> flow.item("\u2022", 5, tape.note(g)));
            if (offer.quote().isFirm()) {
                // at the same price nobody wants to saw for himself
                offer.kits().filter(k -> k.price() != k.madeToMeasure()).ifPresent(k -> kits(flow, k));
            }
            return document.toBytes();
        }
    }

    /** Whole mm, as the confirmation sheet has them, each with its inches where the job is in inches. */
    private String sizes(double width, double height) {
        TapeText tape = new TapeText(plan.job());
        String across = Decimals.of(width, 0);
        String up = Decimals.of(height, 0) + " mm" + tape.also(height);
        return tape.also(width).isEmpty() ? across + " by " + up : across + " mm" + tape.also(width) + " by " + up;
    }

    private PdfTable lines() {
        Quote quote = offer.quote();
        PdfTable table = table();
        for (QuoteLine line : quote.lines()) {
            table.row(
                    line.sku(),
                    line.name(),
                    Long.toString(line.quantity()),
                    line.unit(),
                    prices.money(line.price()).bare(),
                    prices.money(line.amount()).bare());
        }
        return table;
    }

    /** What is to be paid, kept on one page. */
    private PdfTable foot() {
        PdfTable table = new PdfTable(Column.left("what is to pay", 22), Column.right(prices.currency(), 3.2));
        words.foot(offer.quote()).forEach(f -> {
            if (f.strong()) {
                table.strongRow(f.words(), f.amount());
            } else {
                table.row(f.words(), f.amount());
            }
        });
        return table;
    }

    private PdfTable table() {
        return new PdfTable(
                Column.left("part", 3.1),
                Column.left("what it is", 11),
                Column.right("quantity", 2.7),
                Column.left("unit", 2.9),
                Column.right("price each", 3.1),
                Column.right(prices.currency(), 3));
    }

    /** What one sum stands for, without prices. */
    private void contents(PdfFlow flow) {
        if (offer.quote().form() == Sales.Lines.LUMP_SUM) {
            flow.paragraph("In it: " + String.join("; ", inTheBox()) + ".");
        }
    }

    private List<String> inTheBox() {
        return plan.items().stream()
                .map(i -> i.quantity() + (isMeasure(i.unit()) ? " " + i.unit() + " " : " x ") + i.name())
                .toList();
    }

    /** Litres and the like are said, pieces and rolls are counted. */
    private static boolean isMeasure(String unit) {
        return unit.length() <= 2;
    }

    private void refusal(PdfFlow flow) {
        flow.heading("No price yet")
                .paragraph("As planned this floor fails: "
                        + String.join("; ", offer.quote().failed())
                        + ". Nothing is to be cut and no price is firm until that is mended.")
                .paragraph("It would take: " + String.join("; ", inTheBox()) + ".");
    }

    private void kits(PdfFlow flow, KitChoice choice) {
        flow.heading("Standard kits beside it").paragraph(words.verdict(choice)).table(kitTable(choice));
        words.givenUp(choice).ifPresent(flow::paragraph);
        words.spare(choice).ifPresent(s -> flow.paragraph(s, TextStyle.SMALL));
    }

    /** What is added just as it is offered, where it is so much that one line says it better. */
    private List<KitChoice.Added> alike(KitChoice choice) {
        if (offer.quote().form() != Sales.Lines.ITEMS) {
            return List.of();
        }
        List<KitChoice.Added> alike = choice.added().stream()
                .filter(a -> offer.quote().lines().stream()
                        .anyMatch(l -> l.sku().equals(a.sku())
                                && l.quantity() == a.quantity()
                                && l.price() == a.price()
                                && l.unit().equals(a.unit())))
                .toList();
        return alike.size() < MANY ? List.of() : alike;
    }

    private PdfTable kitTable(KitChoice choice) {
        PdfTable table = table();
        boolean items = offer.quote().form() == Sales.Lines.ITEMS; // who sells at one sum says no single prices
        for (KitChoice.Chosen k : choice.kits()) {
            table.row(
                    k.kit().sku(),
                    k.kit().name(),
                    Integer.toString(k.count()),
                    "kit",
                    prices.money(k.kit().price()).bare(),
                    prices.money(k.kit().price() * k.count()).bare());
        }
        List<KitChoice.Added> alike = alike(choice);
        for (KitChoice.Added a : choice.added()) {
            if (alike.contains(a)) {
                continue;
            }
            table.row(
                    a.sku(),
                    words.name(a),
                    Long.toString(a.quantity()),
                    a.unit(),
                    items ? prices.money(a.price()).bare() : "",
                    items ? prices.money(a.amount()).bare() : "");
        }
        if (!alike.isEmpty()) {
            table.row(
                    "",
                    alike.size() + " parts, each as many as offered above",
                    "",
                    "",
                    "",
                    prices.money(alike.stream()
                                    .mapToLong(KitChoice.Added::amount)
                                    .sum())
                            .bare());
        }
        table.strongRow(
                "",
                "Kits with what is added",
                "",
                "",
                "",
                prices.money(choice.price()).bare());
        return table.row(
                "",
                "Made to measure, as offered above",
                "",
                "",
                "",
                prices.money(choice.madeToMeasure()).bare());
    }
}
