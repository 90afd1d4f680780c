package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Labour;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.choice.PlanFigures;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.KitWork;

/** The good plans of a floor side by side: a table, then a picture of each with a sentence why. A4, PDF. */
public final class AlternativesPaper {
    private static final double GAP = 6;
    private static final double HEAD = 6;
    private static final double MOST_HIGH = 62;
    private static final double LEAST_HIGH = 24;
    /** Of a picture for outline, a frame of marks and letters, mm. */
    private static final double MARKS = 14;

    private static final TextStyle NAME = TextStyle.BODY.bold();
    private static final TextStyle WORDS = TextStyle.BODY.sized(7.5);
    private static final int INK = 0x999999;

    private static final String HOW =
            "Each is a whole plan of this floor, checked like any other; none is worse than another in everything. "
                    + "Floor served: heated floor within half a spacing of pipe on it. Plated: straight pipe that has"
                    + " plates. Uneven: how far warmth differs over the floor, as the standard deviation of the place along"
                    + " the loop, half of a pipe and half of the pipes beside it: 0 % where flow lies beside return, 29 %"
                    + " where the loop winds from one end to the other. Coil: whether at most a tenth of the coils is left"
                    + " over. Floors are seen from above. ";

    private static final String HEAT = "Heat: into the room at the temperatures of the job. ";
    private static final String NO_HEAT =
            "Heat is not reckoned, as the job does not give all of build and heating that it needs: no plan is named warmest. ";

    private static final String CAUTIONS = "Take care: look at what lies under the floor before anybody drills or cuts:"
            + " cables, fuel and gas lines, tanks. The floor gets hot coolant: test its pressure before it is covered."
            + " Electrical work, gas and fuel appliances are for licensed people; local codes and the makers' instructions"
            + " go before this paper.";

    /** Draws a plan small. */
    @FunctionalInterface
    public interface Miniature {
        /** The drawing at so many mm of floor to a mm of paper. */
        Sheet draw(KitPlan plan, double unit);
    }

    /** The paper. */
    public byte[] bytes(Choice choice, Miniature miniature, Paper paper) {
        Job job = choice.alternatives().get(0).plan().job();
        String name = "Alternatives " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, paper.upright(), true)) {
            PdfFlow flow = new PdfFlow(document);
            flow.title(name).paragraph(job.title() + ", from " + job.catalog().workshop());
            flow.table(table(choice, job)).paragraph(how(choice.alternatives().get(0)), WORDS);
            pictures(document, flow, choice, miniature);
            others(flow, choice);
            flow.space(2).paragraph(CAUTIONS, WORDS);
            return document.toBytes();
        }
    }

    private static String how(Alternative asked) {
        KitWork work = asked.plan().work();
        Labour labour = asked.plan().job().catalog().labour().orElse(Labour.USUAL);
        String times = String.format(
                Locale.ROOT,
                "Work: plates cut, coils mounted, %s s a quarter bend, %s s a metre of groove, %s s a plate laid%s; boards and what"
                        + " the floor needs beside the kit are not in it.",
                Plain.number(labour.bend()),
                Plain.number(labour.groove()),
                Plain.number(labour.plate()),
                work.usual()
                        ? " (our times, none measured; labour in the catalog gives yours)"
                        : " (labour in the catalog)");
        return HOW + (asked.figures().watts().isPresent() ? HEAT + lower(asked) : NO_HEAT) + times;
    }

    /** Figures to compare by are no promise where the flow of the job is too hot. */
    private static String lower(Alternative asked) {
        return asked.plan()
                .heat()
                .map(h -> h.solution())
                .filter(h -> h.isTooHot())
                .map(h -> String.format(
                        Locale.ROOT,
                        "The flow asked for is too hot for the floor: held down, to %.1f degrees C in the plan asked, each gives"
                                + " less (heat.pdf). ",
                        h.highestSupply().celsius()))
                .orElse("");
    }

    private static PdfTable table(Choice choice, Job job) {
        TapeText tape = new TapeText(job);
        PdfTable table = new PdfTable(
                Column.right("", 0.8),
                Column.left("best at", 3.7),
                Column.right("heat W", 2.3),
                Column.right("work min", 2.3),
                Column.right("return bends", 2.7),
                Column.right("quarter bends", 3.3),
                Column.right("price " + job.catalog().currency(), 2.9),
                Column.right("uneven", 2.9),
                Column.centre("coil", 1.8),
                Column.right("left out", 1.8),
                Column.right("floor served", 2.8),
                Column.right("pipe " + tape.pipeUnit(), 2.6),
                Column.right("plated", 2.8));
        Catalog prices = job.catalog();
        for (Alternative a : choice.alternatives()) {
            PlanFigures f = a.figures();
            table.row(
                    Integer.toString(a.number()),
                    a.name(),
                    f.watts().isPresent() ? Long.toString(f.watts().getAsLong()) : "-",
                    Long.toString(f.minutes()),
                    Integer.toString(bends(a).returns()),
                    Integer.toString(bends(a).quarters()),
                    prices.money(f.price()).bare(),
                    tenths(f.uneven()) + " %",
                    f.fitsCoil() ? "fits" : "-",
                    a.plan().isOnLattice() ? Integer.toString(f.leftOut()) : "-",
                    tenths(f.served()) + " %",
                    tape.pipe(10.0 * f.pipe()),
                    tenths(f.plated()) + " %");
        }
        return table;
    }

    private static BendCount bends(Alternative a) {
        return BendCount.ofAll(
                a.plan().loops().stream().map(KitPlan.LoopPlan::breakdown).toList());
    }

    private static String tenths(long value) {
        return String.format(Locale.ROOT, "%.1f", value / 10.0);
    }

    /** Two beside each other, each as high as its floor and its words want. */
    private static void pictures(PdfDocument document, PdfFlow flow, Choice choice, Miniature miniature) {
        double wide = (flow.width() - GAP) / 2;
        List<Alternative> all = choice.alternatives();
        double high = high(all.get(0).plan().job(), wide);
        for (int i = 0; i < all.size(); i += 2) {
            List<Alternative> row = all.subList(i, Math.min(i + 2, all.size()));
            double words = row.stream()
                    .mapToDouble(a -> words(document, a, wide).size() * WORDS.pitch())
                    .max()
                    .orElse(0);
            double needed = HEAD + high + words + 3;
            flow.keep(needed);
            for (int k = 0; k < row.size(); k++) {
                Box box = new Box(flow.left() + k * (wide + GAP), flow.y() - HEAD - high, wide, high);
                picture(document, flow.page(), row.get(k), box, miniature);
            }
            flow.space(needed);
        }
    }

    private static double high(Job job, double wide) {
        Extent floor = Extent.around(job.floor().outline().stream()
                .map(p -> new org.runbend.export.drawing.Point(p.x(), p.y()))
                .toList());
        double natural = (wide - MARKS) * floor.height() / floor.width() + MARKS;
        return Math.max(LEAST_HIGH, Math.min(MOST_HIGH, natural));
    }

    private static void picture(PdfDocument document, PdfPage page, Alternative a, Box box, Miniature miniature) {
        double top = box.y() + box.height() + HEAD;
        List<String> name = document.wrap(a.number() + "  " + a.name(), NAME, box.width());
        page.text(box.x(), top - NAME.ascent(), NAME, Align.LEFT, name.get(0) + (name.size() > 1 ? "\u2026" : ""));
        page.frame(box, 0.13, INK);
        double unit = TrueLetters.unit(box, u -> miniature.draw(a.plan(), u));
        Sheet sheet = miniature.draw(a.plan(), unit);
        page.sheet(sheet, box, Placement.scaled(sheet.extent(), box, 1 / unit));
        double y = box.y() - 1;
        for (String line : words(document, a, box.width())) {
            page.text(box.x(), y - WORDS.ascent(), WORDS, Align.LEFT, line);
            y -= WORDS.pitch();
        }
    }

    private static List<String> words(PdfDocument document, Alternative a, double wide) {
        TapeText tape = new TapeText(a.plan().job());
        List<String> lines = new ArrayList<>(document.wrap(tape.note(a.why()), WORDS, wide));
        if (!a.changes().isEmpty()) {
            lines.addAll(document.wrap("Planned with " + tape.note(a.wishWords()) + ".", WORDS, wide));
        }
        return lines;
    }

    private static void others(PdfFlow flow, Choice choice) {
        if (choice.others().isEmpty()) {
            return;
        }
        flow.heading("Looked at too");
        for (Choice.Other other : choice.others()) {
            flow.paragraph(other.wishWords() + ": " + other.reason() + ".", WORDS);
        }
    }
}
