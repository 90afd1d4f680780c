package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.runbend.export.data.CutList;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.plan.KitPlan;

/** The tables from which pipe and plates are cut. Lengths in mm. */
final class CutTables {
    private static final String BOX = "\u2610";

    private CutTables() {}

    static PdfTable pipe(KitPlan plan) {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("coil", 3),
                Column.left("pipe", 3),
                Column.right("coil length", 3),
                Column.left("cut", 7),
                Column.right("left", 3),
                Column.left("the rest goes", 4));
        TapeText tape = new TapeText(plan.job());
        List<CutList.StockPiece> coils = CutList.pipe(plan);
        for (int i = 0; i < coils.size(); i++) {
            CutList.StockPiece coil = coils.get(i);
            String rest = plan.restGoesTo(plan.coils().coils().get(i)).equals("shelf")
                    ? "back on the shelf"
                    : "into the box: the coil is supplied whole";
            String cuts = coil.cuts().stream()
                    .map(c -> c.goesTo() + ": " + tape.beside(c.length()))
                    .collect(Collectors.joining("\n"));
            table.row(
                    BOX,
                    name(coil),
                    coil.product(),
                    tape.beside(coil.length()),
                    cuts,
                    tape.beside(coil.leftover()),
                    rest);
        }
        return table;
    }

    /** Stock plates that are cut alike share a row. */
    static PdfTable patterns(KitPlan plan) {
        TapeText tape = new TapeText(plan.job());
        Map<List<String>, List<String>> groups = new LinkedHashMap<>();
        for (CutList.StockPiece plate : CutList.plates(plan)) {
            groups.computeIfAbsent(pattern(tape, plate), p -> new ArrayList<>()).add(plate.id());
        }
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("plate", 3),
                Column.left("from", 6),
                Column.left("cut each into", 8),
                Column.right("left of each", 3));
        groups.forEach((pattern, ids) -> table.row(
                BOX,
                pattern.get(0),
                ids.size() + " \u00d7 " + pattern.get(1) + " (" + ids(ids) + ")",
                pattern.get(2),
                pattern.get(3)));
        return table;
    }

    /** Where each piece goes, in the order in which it is cut. */
    static PdfTable places(KitPlan plan) {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("from", 3),
                Column.right("length", 3),
                Column.left("goes to (distance from the start of the run)", 14));
        TapeText tape = new TapeText(plan.job());
        for (CutList.StockPiece plate : CutList.plates(plan)) {
            for (CutList.Cut cut : plate.cuts()) {
                table.row(BOX, plate.id(), tape.beside(cut.length()), tape.note(cut.goesTo()));
            }
        }
        return table;
    }

    private static List<String> pattern(TapeText tape, CutList.StockPiece plate) {
        String cuts = plate.cuts().stream().map(c -> tape.beside(c.length())).collect(Collectors.joining(" + "));
        String shelf = plate.fromShelf() ? " from the shelf" : "";
        return List.of(plate.product(), tape.beside(plate.length()) + shelf, cuts, tape.beside(plate.leftover()));
    }

    /** Many numbers in a row as first to last would hide gaps, so all are named. */
    private static String ids(List<String> ids) {
        return String.join(", ", ids);
    }

    private static String name(CutList.StockPiece stock) {
        return stock.fromShelf() ? stock.id() + " (shelf)" : stock.id();
    }
}
