package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.data.Day;
import org.runbend.export.data.Stamp;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.optimizer.job.Job;

/** What stands at head and foot of each paper: its name, the order, and a code that tells which plan it belongs to. */
public final class Letterhead {
    private static final double CODE = 20;
    private static final double GAP = 4;
    private static final int SHORT = 12;

    private Letterhead() {}

    /** An empty document with footers; DO NOT CUT stands over each page where the plan fails a check. */
    static PdfDocument document(Job job, String name, PageFormat format, boolean sound) {
        return new PdfDocument(name + ": " + job.title(), "en", format)
                .footer(footer(job))
                .warning(sound ? "" : Stamp.DO_NOT_CUT);
    }

    /** A flow over the first page, its head written. */
    static PdfFlow begin(PdfDocument document, Job job, String name) {
        return begin(document, name, facts(job), code(job));
    }

    private static PdfFlow begin(PdfDocument document, String name, String facts, String code) {
        PdfPage page = document.addPage();
        Box in = page.format().inside();
        double top = in.y() + in.height();
        Box square = new Box(in.x() + in.width() - CODE, top - CODE, CODE, CODE);
        page.figure("Code with order and plan", () -> QrMark.draw(page, square, code));
        Box head = new Box(in.x(), top - CODE - 2, in.width() - CODE - GAP, CODE + 2);
        Box rest = new Box(in.x(), in.y(), in.width(), in.height() - CODE - GAP);
        PdfFlow flow = new PdfFlow(document, page, List.of(head, rest));
        flow.title(name).paragraph(facts);
        return flow.nextPlace();
    }

    /** An empty document of a day's batch with footers. */
    static PdfDocument document(Day day, String name, PageFormat format) {
        String footer = "day " + day.name() + ", plan " + plan(day) + ", " + day.workshop();
        return new PdfDocument(name, "en", format).footer(footer);
    }

    /** A flow over the first page of a paper of a day's batch, its head written. */
    static PdfFlow begin(PdfDocument document, Day day, String name) {
        int orders = day.orders().size();
        String facts = (orders == 1 ? "1 order" : orders + " orders") + " cut together\nfrom " + day.workshop();
        return begin(document, name, facts, "day " + day.name() + " plan " + plan(day));
    }

    private static String plan(Day day) {
        return day.fingerprint().substring(0, SHORT);
    }

    /** What the code says: the order and the first digits of the plan's fingerprint. */
    static String code(Job job) {
        return "order " + job.order() + " plan " + plan(job);
    }

    static String plan(Job job) {
        String whole = job.fingerprint();
        return whole.substring(0, Math.min(SHORT, whole.length()));
    }

    /** What stands at the foot of each page: order, plan, revision, title. */
    public static String footer(Job job) {
        return "order " + job.order() + ", plan " + plan(job)
                + job.revision().map(r -> ", revision " + r).orElse("") + ", " + job.title();
    }

    private static String facts(Job job) {
        List<String> facts = new ArrayList<>();
        job.customer().ifPresent(c -> facts.add("for " + c));
        job.date().ifPresent(d -> facts.add("date " + d));
        job.revision().ifPresent(r -> facts.add("revision " + r));
        facts.add("from " + job.catalog().workshop());
        return job.title() + "\n" + String.join(", ", facts);
    }
}
