package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.runbend.catalog.ledger.Kind;
import org.runbend.export.data.Day;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.day.DayCut;

/** Tables of a day sheet: settings of the stop, and what goes into which box. */
final class DayTables {
    private static final String TICK = "\u2610";
    private static final double HUNDREDTHS = 100;

    private final Day day;
    private final TapeText tape;

    DayTables(Day day, TapeText tape) {
        this.day = day;
        this.tape = tape;
    }

    private record Setting(String product, long length) {}

    /** Lengths that the stop is set to, longest first; a plate that is used whole needs no stop. */
    Optional<PdfTable> settings() {
        Map<Setting, List<String>> from = new LinkedHashMap<>();
        for (Day.Use u : day.uses()) {
            boolean whole = u.cuts().size() == 1 && u.cuts().get(0).length() == u.there();
            if (u.kind() == Kind.PLATE && !whole) {
                u.cuts().forEach(c -> from.computeIfAbsent(new Setting(u.product(), c.length()), s -> new ArrayList<>())
                        .add(u.number()));
            }
        }
        if (from.isEmpty()) {
            return Optional.empty();
        }
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.right("no.", 1.2),
                Column.left("plate", 3),
                Column.right("stop at", 4),
                Column.right("pieces", 2.4),
                Column.left("from", 12));
        List<Setting> order = from.keySet().stream()
                .sorted(Comparator.comparing(Setting::product)
                        .thenComparing(Comparator.comparingLong(Setting::length).reversed()))
                .toList();
        for (int i = 0; i < order.size(); i++) {
            Setting s = order.get(i);
            Set<String> numbers = new LinkedHashSet<>(from.get(s));
            table.row(
                    TICK,
                    Integer.toString(i + 1),
                    s.product(),
                    tape.beside(s.length() / HUNDREDTHS),
                    Integer.toString(from.get(s).size()),
                    String.join(", ", numbers));
        }
        return Optional.of(table);
    }

    /** Which pieces come from each of those that are cut alike; those of one piece without a rest go by boxes. */
    PdfTable alike(List<Day.Use> group) {
        PdfTable table = new PdfTable(
                Column.centre("", 0.8),
                Column.left("no.", 2.8),
                Column.left("pieces from the left end on", 13),
                Column.left("mark the rest", 4),
                Column.left("", 2.6));
        boolean allBought = group.stream().allMatch(Day.Use::isBought); // the line over the bar says so
        for (int i = 0; i < group.size(); ) {
            Day.Use first = group.get(i);
            int end = i + 1;
            while (end < group.size() && goesWith(first, group.get(end))) {
                end++;
            }
            Day.Use last = group.get(end - 1);
            List<DayCut> cuts = group.subList(i, end).stream()
                    .flatMap(u -> u.cuts().stream())
                    .toList();
            table.row(
                    TICK,
                    first.number() + (end - i > 1 ? "\u2013" + last.number() : ""),
                    pieces(cuts, first.product()),
                    first.restName().orElse(""),
                    first.isBought() && !allBought ? "to buy first" : "");
            i = end;
        }
        return table.withoutEmptyColumns();
    }

    /** The pieces of one coil or plate in the order of cutting. */
    PdfTable pieces(Day.Use use) {
        PdfTable table = new PdfTable(
                Column.centre("", 0.8),
                Column.right("no.", 1.2),
                Column.right("length", 4),
                Column.left("goes to", 8),
                Column.left("piece", 4));
        for (int i = 0; i < use.cuts().size(); i++) {
            DayCut c = use.cuts().get(i);
            table.row(
                    TICK,
                    Integer.toString(i + 1),
                    tape.beside(c.length() / HUNDREDTHS),
                    day.box(c, use.product()),
                    day.piece(c));
        }
        return table;
    }

    private boolean goesWith(Day.Use one, Day.Use other) {
        return one.cuts().size() == 1
                && one.restName().isEmpty()
                && one.isBought() == other.isBought()
                && day.box(one.cuts().get(0), one.product())
                        .equals(day.box(other.cuts().get(0), other.product()));
    }

    /** Pieces by their names behind the box that they go to. */
    private String pieces(List<DayCut> cuts, String product) {
        StringBuilder words = new StringBuilder();
        String box = "";
        for (DayCut c : cuts) {
            String to = day.box(c, product);
            words.append(to.equals(box) ? " + " : (box.isEmpty() ? "" : "; ") + to + ": ")
                    .append(day.piece(c));
            box = to;
        }
        return words.toString();
    }

    /** What goes back on the shelf, with what is written on it. */
    PdfTable rests() {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("mark it", 5),
                Column.left("part", 4),
                Column.right("length", 4),
                Column.left("left of", 6));
        day.uses().stream()
                .filter(u -> u.restStays() && u.restName().isPresent() && u.rest() > 0)
                .forEach(u -> table.row(
                        TICK,
                        u.restName().orElseThrow(),
                        u.product(),
                        tape.beside(u.rest() / HUNDREDTHS),
                        u.id().isPresent() ? "itself" : "whole " + u.kind().words() + " " + u.number()));
        return table;
    }

    /** The pieces of each box, order by order. */
    PdfTable boxes() {
        Map<String, Map<String, List<String>>> boxes = new TreeMap<>();
        for (Day.Use u : day.uses()) {
            for (DayCut c : u.cuts()) {
                boxes.computeIfAbsent(day.box(c, u.product()), b -> new LinkedHashMap<>())
                        .computeIfAbsent(u.product(), p -> new ArrayList<>())
                        .add(day.piece(c) + ": " + tape.beside(c.length() / HUNDREDTHS) + " from " + u.number());
            }
        }
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("box", 4.6),
                Column.left("part", 2.6),
                Column.right("pieces", 2),
                Column.left("which", 13));
        boxes.forEach((box, parts) -> parts.forEach((part, pieces) ->
                table.row(TICK, box, part, Integer.toString(pieces.size()), String.join("; ", pieces))));
        return table;
    }
}
