package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Catalog;
import org.runbend.export.data.KitJson;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;

/** The paper from which a box is packed and pipe and plates are cut: A4, PDF. */
public final class PickList {
    private static final double PLAN_HEIGHT = 118;

    private static final List<String> CAUTIONS = List.of(
            "Look at what lies under the floor before you drill or cut: cables, fuel and gas lines, tanks.",
            "Wear eye protection and a dust mask when routing, sawing and drilling.",
            "Pressure-test the loop before it is covered, and write down the reading.",
            "Coolant gets hot: let the system cool down before you open it.",
            "Electrical work and work on appliances that burn fuel or gas are for licensed people.",
            "Local codes and the instructions of the makers go before this paper.");

    /**
     * The paper.
     *
     * @param sheet drawing of the same plan, without title and notes
     * @param caption what a reader of the drawing has to know, in parts of a sentence
     */
    public byte[] bytes(KitPlan plan, Sheet sheet, List<String> caption) {
        Job job = plan.job();
        String name = "Pick list " + job.order();
        try (PdfDocument document = new PdfDocument(name + ": " + job.title(), "en", PageFormat.A4)) {
            document.footer(footer(job));
            document.warning(plan.isSound() ? "" : "DO NOT CUT");
            PdfFlow flow = new PdfFlow(document);
            flow.title(name).paragraph(head(job)).drawing(sheet, PLAN_HEIGHT);
            flow.paragraph(
                    "Sizes in " + new TapeText(job).papers() + "; "
                            + String.join("; ", caption).replace(":; ", ": ") + ".",
                    TextStyle.SMALL);
            flow.heading("In the box").table(items(plan));
            if (!plan.notSupplied().isEmpty()) {
                flow.paragraph("Not in the box: " + String.join("; ", plan.notSupplied()) + ".");
            }
            flow.heading("Cut the pipe")
                    .paragraph("Lengths in " + new TapeText(job).papers() + ".", TextStyle.SMALL)
                    .table(CutTables.pipe(plan));
            plates(flow, plan);
            flow.heading("Totals").table(totals(plan));
            flow.paragraph(plated(plan));
            checks(flow, plan);
            list(
                    flow,
                    "Remarks",
                    KitJson.remarks(plan).stream().map(new TapeText(job)::note).toList());
            list(flow, "Take care", CAUTIONS);
            return document.toBytes();
        }
    }

    private static String footer(Job job) {
        return "order " + job.order() + ", " + job.title()
                + job.revision().map(r -> ", revision " + r).orElse("");
    }

    private static String head(Job job) {
        List<String> lines = new ArrayList<>();
        lines.add(job.title());
        List<String> facts = new ArrayList<>();
        job.customer().ifPresent(c -> facts.add("for " + c));
        job.date().ifPresent(d -> facts.add("date " + d));
        job.revision().ifPresent(r -> facts.add("revision " + r));
        facts.add("from " + job.catalog().workshop());
        lines.add(String.join(", ", facts));
        return String.join("\n", lines);
    }

    private static PdfTable items(KitPlan plan) {
        Catalog prices = plan.job().catalog();
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("part", 3.4),
                Column.left("what it is", 9.4),
                Column.right("quantity", 3.4),
                Column.left("unit", 3.4),
                Column.right("kg each", 2.9),
                Column.right("price each", 3.5),
                Column.right("price", 3.5));
        for (KitPlan.BoxItem item : plan.items()) {
            table.row(
                    "\u2610",
                    item.sku(),
                    item.name(),
                    Long.toString(item.quantity()),
                    item.unit(),
                    fixed(item.weight(), 3),
                    prices.money(item.price()).bare(),
                    prices.money(item.sum()).bare());
        }
        return table.strongRow(
                "",
                "",
                "Total, " + fixed(plan.weight(), 1) + " kg",
                "",
                "",
                "",
                plan.job().catalog().currency(),
                prices.money(plan.total()).bare());
    }

    private static void plates(PdfFlow flow, KitPlan plan) {
        if (plan.plates().stock().isEmpty()) {
            return;
        }
        String how = "Lengths in " + new TapeText(plan.job()).papers() + "; the saw takes "
                + Decimals.of(plan.plates().kerf(), 1) + " per cut. Numbers of runs are those on the plan.";
        flow.heading("Cut the plates").paragraph(how, TextStyle.SMALL).table(CutTables.patterns(plan));
        PlateTables tables = new PlateTables(plan);
        flow.paragraph(tables.work(false), TextStyle.SMALL);
        flow.heading("Lay the plates").table(CutTables.places(plan));
    }

    private static PdfTable totals(KitPlan plan) {
        PdfTable table = new PdfTable(
                Column.left("loop", 2),
                Column.left("valve outlet", 3),
                Column.right("on the floor", 3),
                Column.right("straight", 3),
                Column.right("return bends", 3),
                Column.right("quarter bends", 4),
                Column.right("pipe to cut", 3));
        TapeText tape = new TapeText(plan.job());
        for (KitPlan.LoopPlan loop : plan.loops()) {
            table.row(
                    loop.name(),
                    Integer.toString(loop.outlet()),
                    tape.metres(loop.floorLength()),
                    tape.metres(loop.breakdown().straightLength()),
                    Integer.toString(BendCount.of(loop.breakdown().elements()).returns()),
                    Integer.toString(BendCount.of(loop.breakdown().elements()).quarters()),
                    tape.metres((double) loop.cutLength()));
        }
        return table;
    }

    private static String plated(KitPlan plan) {
        return String.format(
                Locale.ROOT,
                "Plates cover %s, %s %% of the straight pipe.",
                new TapeText(plan.job()).metres(plan.plates().plated()),
                fixed(100 * plan.plates().coverage(), 1));
    }

    private static void checks(PdfFlow flow, KitPlan plan) {
        PdfTable table = new PdfTable(
                Column.left("check", 7),
                Column.right("found", 3),
                Column.right("limit", 3),
                Column.left("unit", 2),
                Column.left("verdict", 2),
                Column.left("limit from", 5));
        TapeText tape = new TapeText(plan.job());
        for (PlanCheck check : plan.checks()) {
            boolean length = check.unit().equals("mm");
            table.row(
                    check.name(),
                    found(check.value()) + (length ? tape.also(check.value()) : ""),
                    found(check.limit()) + (length ? tape.also(check.limit()) : ""),
                    check.unit(),
                    check.verdict().name().toLowerCase(Locale.ROOT),
                    check.source());
        }
        if (!table.isEmpty()) {
            flow.heading("Checks").table(table);
        }
    }

    private static void list(PdfFlow flow, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            flow.heading(heading);
            lines.forEach(line -> flow.item("\u2022", 5, line));
        }
    }

    private static String found(double value) {
        return Double.isFinite(value) ? Decimals.of(value, 2) : "-";
    }

    private static String fixed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
