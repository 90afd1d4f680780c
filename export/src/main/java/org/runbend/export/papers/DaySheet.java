package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.source.Unit;
import org.runbend.export.data.Day;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.day.DayCut;

/** The paper that a day's orders are cut by: what is taken, where it is cut, which box each piece goes to, what is left. */
public final class DaySheet {
    private static final String TICK = "\u2610";
    private static final double HUNDREDTHS = 100;
    private static final int MOST_IN_WORDS = 3;
    /** A heading with its caution and one bar, mm. */
    private static final double ROOM_OF_PART = 65;

    private final Day day;
    private final TapeText tape;
    private final DayTables tables;

    private DaySheet(Day day, Unit unit) {
        this.day = day;
        tape = new TapeText(unit);
        tables = new DayTables(day, tape);
    }

    /** The paper of a day, lengths in mm, or in inches beside mm. */
    public static byte[] bytes(Day day, Paper paper, Unit unit) {
        return new DaySheet(day, unit).write(paper);
    }

    private byte[] write(Paper paper) {
        String name = "Day sheet " + day.name();
        try (PdfDocument document = Letterhead.document(day, name, paper.upright())) {
            PdfFlow flow = Letterhead.begin(document, day, name);
            day.faults().forEach(f -> flow.caution("Left out: " + f));
            flow.paragraph("This sheet takes the place of the cut sheets of its orders. Lengths in " + tape.papers()
                    + ". Measures under a bar run from its left end: set or read them there. A piece is named by its"
                    + " order and by its label among those of the order, such as P2a.");
            take(flow);
            List<List<Day.Use>> groups = day.groups();
            List<List<Day.Use>> coils =
                    groups.stream().filter(g -> g.get(0).kind() == Kind.COIL).toList();
            if (!coils.isEmpty()) {
                flow.keep(ROOM_OF_PART).heading("Coils");
                flow.caution(
                        "A coil under tension springs open: cut its bands one by one and keep the other hand behind it.");
                bars(flow, document, coils);
            }
            List<List<Day.Use>> plates =
                    groups.stream().filter(g -> g.get(0).kind() == Kind.PLATE).toList();
            if (!plates.isEmpty()) {
                flow.keep(ROOM_OF_PART).heading("Plates");
                flow.caution(
                        "Goggles, ear protection and gloves: sawn sheet has sharp edges. The blade stands still before a piece is"
                                + " taken away.");
                bars(flow, document, plates);
                tables.settings().ifPresent(t -> flow.heading("Settings of the stop, in this order it moves least")
                        .table(t));
            }
            flow.heading("Into the boxes").table(tables.boxes());
            flow.heading("Back on the shelf");
            rests(flow);
            return document.toBytes();
        }
    }

    /** What is fetched before the first cut. */
    private void take(PdfFlow flow) {
        flow.heading("To take");
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("from the shelf", 4.5),
                Column.left("part", 4),
                Column.right("length", 4),
                Column.right("how many", 2.6),
                Column.right("to buy first", 3));
        for (Day.Use u : day.uses()) {
            u.id().ifPresent(id -> table.row(
                    TICK,
                    u.kind().rest().words() + " " + id,
                    u.product(),
                    tape.beside(u.there() / HUNDREDTHS),
                    "1",
                    ""));
        }
        for (Day.Wanted w : day.wanted()) {
            table.row(
                    TICK,
                    "whole " + w.kind().words() + (w.needed() == 1 ? "" : "s"),
                    w.product(),
                    tape.beside(w.length() / HUNDREDTHS),
                    Long.toString(w.needed()),
                    w.toBuy() == 0 ? "" : Long.toString(w.toBuy()));
        }
        flow.table(table.withoutEmptyColumns());
    }

    private void bars(PdfFlow flow, PdfDocument document, List<List<Day.Use>> groups) {
        Map<String, Long> longest = groups.stream()
                .flatMap(List::stream)
                .collect(Collectors.toMap(Day.Use::product, Day.Use::there, Math::max, LinkedHashMap::new));
        for (List<Day.Use> group : groups) {
            Day.Use one = group.get(0);
            double scale = CutBar.scale(longest.get(one.product()) / HUNDREDTHS, flow.width());
            CutBar bar = bar(group);
            flow.keep(CutBar.HEIGHT + 18);
            flow.paragraph(words(group, scale));
            flow.figure(
                    one.kind().words() + " " + one.number() + " cut into " + lengths(one),
                    CutBar.HEIGHT,
                    (page, box) -> bar.draw(page, document, box, scale, tape));
            flow.space(1.5);
            if (group.size() > 1) {
                flow.table(tables.alike(group));
            } else if (isLong(one)) {
                flow.table(tables.pieces(one));
            }
        }
    }

    /** So many pieces are told in a table and not in a sentence. */
    private static boolean isLong(Day.Use use) {
        return use.cuts().size() > MOST_IN_WORDS;
    }

    private CutBar bar(List<Day.Use> group) {
        Day.Use one = group.get(0);
        List<CutBar.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < one.cuts().size(); i++) {
            DayCut cut = one.cuts().get(i);
            double from = one.from(i) / HUNDREDTHS;
            String name =
                    group.size() > 1 || isLong(one) ? Integer.toString(i + 1) : cut.order() + " " + day.piece(cut);
            pieces.add(new CutBar.Piece(from, from + cut.length() / HUNDREDTHS, name));
        }
        return new CutBar(
                one.there() / HUNDREDTHS,
                pieces,
                one.rest() / HUNDREDTHS,
                one.restName().map(n -> group.size() > 1 ? "r" : n));
    }

    private String words(List<Day.Use> group, double scale) {
        Day.Use one = group.get(0);
        String size = one.product() + " of " + tape.beside(one.there() / HUNDREDTHS);
        String scaled = " 1 : " + Decimals.of(scale, 1);
        if (group.size() > 1) {
            long bought = group.stream().filter(Day.Use::isBought).count();
            return TICK + " " + group.size() + " x " + size + ", whole"
                    + (bought == 0 ? "" : ", " + bought + " to buy first") + ": " + lengths(one) + "; "
                    + rest(one, true) + "." + scaled;
        }
        return TICK + " " + one.number() + ": " + size + (one.id().isPresent() ? " from the shelf" : ", whole")
                + (one.isBought() ? ", to buy first" : "") + ": "
                + (isLong(one) ? one.cuts().size() + " pieces" : pieces(one)) + "; " + rest(one, false) + "."
                + scaled;
    }

    private String lengths(Day.Use use) {
        return use.cuts().stream()
                .map(c -> tape.beside(c.length() / HUNDREDTHS))
                .collect(Collectors.joining(" + "));
    }

    /** Length, box and name of each piece in the order of cutting. */
    private String pieces(Day.Use use) {
        return use.cuts().stream()
                .map(c ->
                        tape.beside(c.length() / HUNDREDTHS) + " for " + day.box(c, use.product()) + " " + day.piece(c))
                .collect(Collectors.joining(" + "));
    }

    private String rest(Day.Use use, boolean each) {
        double left = use.rest() / HUNDREDTHS;
        if (left < 0.01) {
            return "nothing left";
        }
        String words = tape.beside(left) + " left" + (each ? " of each" : "");
        if (!use.restStays()) {
            return words + ", which goes into the box too";
        }
        String promised = use.there() > use.length()
                ? " (" + tape.beside((use.there() - use.length()) / HUNDREDTHS) + " of it kept for others or in doubt)"
                : "";
        return words
                + promised
                + use.restName()
                        .map(n -> each ? ", kept: mark each as in the list" : ", kept as " + n)
                        .orElse(", scrap");
    }

    private void rests(PdfFlow flow) {
        PdfTable rests = tables.rests();
        if (rests.isEmpty()) {
            flow.paragraph("Nothing: what is left is scrap.");
        } else {
            flow.table(rests);
        }
        flow.paragraph("Kept from " + tape.beside(day.keeping().coil() / HUNDREDTHS) + " of pipe and "
                + tape.beside(day.keeping().plate() / HUNDREDTHS) + " of plate on; shorter is scrap, and so is pipe"
                + " that may be shorter by what its marks are in doubt.");
    }
}
