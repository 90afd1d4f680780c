package org.runbend.export.papers;

import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Catalog;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** What a kit costs the workshop, wages included, and what other plates would cost: a paper that stays in the house. A4, PDF. */
public final class InternalPaper {
    /** The paper. */
    public byte[] bytes(KitPlan plan, Paper paper) {
        Job job = plan.job();
        String name = "Internal costs " + job.order();
        try (PdfDocument document = new PdfDocument(name + ": " + job.title(), "en", paper.upright())) {
            document.footer("internal, not for the box or the customer; " + Letterhead.footer(job));
            PdfFlow flow = new PdfFlow(document);
            flow.title(name).paragraph(job.title() + ", " + job.catalog().workshop());
            flow.paragraph("Internal: this paper does not travel with the kit.");
            PlateTables tables = new PlateTables(plan);
            flow.heading("Material");
            costs(plan).forEach(flow::paragraph);
            flow.heading("Work").paragraph(tables.work(true));
            flow.paragraph(chosen(plan));
            flow.heading("Plates in fewer lengths and for other shares");
            tables.coverages().ifPresent(flow::paragraph);
            tables.lengths(true).ifPresent(t -> flow.paragraph(
                            "What plates would cost, the coverage being the same (key plates.maxLengths).",
                            TextStyle.SMALL)
                    .table(t));
            return document.toBytes();
        }
    }

    private static List<String> costs(KitPlan plan) {
        Catalog prices = plan.job().catalog();
        return List.of(
                String.format(
                        Locale.ROOT,
                        "Plates cost %s; cut run by run, with the rest of each stock plate thrown away, the same"
                                + " coverage would cost %s. %s",
                        prices.money(plan.plates().bought()),
                        prices.money(plan.plates().runByRun()),
                        bound(prices, plan.plates().bought(), plan.plates().bound())),
                "Pipe costs " + prices.money(plan.coils().cost()) + ". "
                        + bound(prices, plan.coils().cost(), plan.coils().bound()));
    }

    private static String chosen(KitPlan plan) {
        Catalog prices = plan.job().catalog();
        return "Plates are chosen by material and saw work together: "
                + prices.money(plan.plates().objective())
                + ", of which " + prices.money(plan.plates().workCost()) + " are work"
                + (hasHour(plan)
                        ? "."
                        : "; the catalog does not say what an hour costs, so a minute is held to be worth a quarter of a"
                                + " metre of the cheapest plate.")
                + (plan.job().catalog().labour().isPresent()
                        ? ""
                        : " It has no times either: 20 s are taken for a cut, 60 s for setting the stop.");
    }

    private static boolean hasHour(KitPlan plan) {
        return plan.job().catalog().labour().filter(l -> l.hour().isPresent()).isPresent();
    }

    private static String bound(Catalog prices, long cost, long bound) {
        return cost == bound
                ? "It is proved that it cannot be had for less."
                : "It is proved that it cannot be had for less than " + prices.money(bound) + ".";
    }
}
