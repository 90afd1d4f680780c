package org.runbend.export.data;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Received;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.LengthText;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.Unit;

/**
 * A delivery note as comma- or semicolon-separated values with a head line: {@code kind, product, quantity} and, where there is
 * one, {@code length, batch, id, label, uncertainty}. Lengths as people write them.
 */
public final class DeliveryNote {
    private static final List<String> COLUMNS =
            List.of("kind", "product", "length", "quantity", "batch", "id", "label", "uncertainty");
    private static final int MOST = 10_000;

    private final SourceFile file;
    private final List<Fault> faults = new ArrayList<>();
    private List<String> head = List.of();

    private DeliveryNote(SourceFile file) {
        this.file = file;
    }

    /**
     * The lines of a note.
     *
     * @param received what came
     * @param mark tells this note from others: SHA-256 of the file
     */
    public record Lines(List<Received> received, String mark) {
        /** Copies the list. */
        public Lines {
            received = List.copyOf(received);
        }
    }

    /**
     * Reads a note.
     *
     * @throws BadInput with the first fault that was found, and how many more there are
     */
    public static Lines read(Path path) {
        return of(SourceFile.read(path));
    }

    /** The lines of a note that was read. Errors as with {@link #read}. */
    public static Lines of(SourceFile file) {
        DeliveryNote note = new DeliveryNote(file);
        List<Received> received = note.lines();
        if (!note.faults.isEmpty()) {
            throw new BadInput(first(note.faults));
        }
        return new Lines(received, SourceFile.fingerprint(List.of(file)));
    }

    /** The first fault, which says how many more there are. */
    private static Fault first(List<Fault> faults) {
        Fault first = faults.get(0);
        int more = faults.size() - 1;
        String rest = more == 0 ? "" : " (and " + more + " more " + (more == 1 ? "fault" : "faults") + " in this file)";
        return new Fault(first.file(), first.line(), first.column(), first.path(), first.message() + rest);
    }

    private List<Received> lines() {
        List<CsvRows.Row> rows;
        try {
            rows = CsvRows.of(file.text());
        } catch (IllegalArgumentException e) {
            faults.add(Fault.ofFile(file.name(), e.getMessage()));
            return List.of();
        }
        head = rows.isEmpty()
                ? List.of()
                : rows.get(0).cells().stream()
                        .map(c -> c.strip().toLowerCase(Locale.ROOT))
                        .toList();
        checkHead();
        if (rows.size() < 2 && faults.isEmpty()) {
            faults.add(Fault.ofFile(file.name(), "has a head line and nothing under it"));
        }
        if (rows.size() > MOST) {
            faults.add(Fault.ofFile(file.name(), "has more than " + MOST + " lines"));
        }
        List<Received> received = new ArrayList<>();
        if (faults.isEmpty()) {
            rows.subList(1, rows.size()).forEach(r -> line(r).ifPresent(received::add));
        }
        return received;
    }

    private void checkHead() {
        for (String name : head) {
            if (!COLUMNS.contains(name)) {
                String nearest = Nearest.of(name, COLUMNS)
                        .map(n -> "; the nearest is '" + n + "'")
                        .orElse("");
                fault(
                        1,
                        "there is no column " + Plain.quoted(name) + ", columns are " + String.join(", ", COLUMNS)
                                + nearest);
            } else if (head.indexOf(name) != head.lastIndexOf(name)) {
                fault(1, "column " + name + " stands twice");
                return;
            }
        }
        for (String name : List.of("kind", "product")) {
            if (!head.contains(name)) {
                fault(
                        1,
                        "column " + name + " is missing; the first line names the columns: "
                                + String.join(", ", COLUMNS));
            }
        }
    }

    private void fault(int line, String message) {
        faults.add(new Fault(file.name(), line, 1, "", message));
    }

    private Optional<Received> line(CsvRows.Row row) {
        if (row.cells().size() != head.size()) {
            fault(row.line(), "has " + row.cells().size() + " cells, the head has " + head.size());
            return Optional.empty();
        }
        try {
            return Optional.of(received(column -> cell(row, column)));
        } catch (LedgerRefused e) {
            fault(row.line(), e.getMessage());
            return Optional.empty();
        }
    }

    /**
     * One line of a delivery by its cells.
     *
     * @param cell the text under the name of a column; empty if there is none
     * @throws LedgerRefused if it says nothing that can be received
     */
    public static Received received(UnaryOperator<String> cell) {
        Kind kind = kind(cell.apply("kind"));
        boolean piece = kind.isPiece();
        long length = kind.hasLength() ? length(cell.apply("length"), "length") : 0;
        String quantity = cell.apply("quantity");
        long count = quantity.isEmpty() && piece ? 1 : whole(quantity, "quantity");
        if (piece && count != 1) {
            throw new LedgerRefused("each " + kind.words() + " has a line of its own; quantity is 1");
        }
        String doubt = cell.apply("uncertainty");
        Received.Thing thing = new Received.Thing(
                kind,
                Optional.of(cell.apply("id")).filter(i -> !i.isEmpty()),
                cell.apply("product"),
                piece ? 0 : length,
                cell.apply("batch"),
                cell.apply("label"));
        return new Received(
                thing,
                piece ? length : count,
                doubt.isEmpty() ? Optional.empty() : Optional.of(length(doubt, "uncertainty")));
    }

    private String cell(CsvRows.Row row, String column) {
        int at = head.indexOf(column);
        return at < 0 ? "" : row.cells().get(at).strip();
    }

    /** The kind of a word, in capitals or not; {@link LedgerRefused} if there is none of it. */
    public static Kind kind(String word) {
        return Kind.of(word.toLowerCase(Locale.ROOT))
                .orElseThrow(() -> new LedgerRefused(
                        "kind " + Plain.quoted(word) + " is none of coil, plate, board, item, opened, offcut"));
    }

    /** A length as a person writes it, hundredths of mm, rounded down as stock is; {@link LedgerRefused} if it is none. */
    public static long length(String text, String what) {
        OptionalDouble mm = LengthText.parse(text, Unit.MM);
        if (mm.isEmpty() || !(mm.getAsDouble() >= 0) || mm.getAsDouble() > 1e7) {
            throw new LedgerRefused(what + " " + Plain.quoted(text) + " is no length; write 1200, 50 m or 26.5 m");
        }
        return (long) Math.floor(mm.getAsDouble() * 100 + 1e-6);
    }

    /** A whole number from 0 up; {@link LedgerRefused} if it is none. */
    public static long whole(String text, String what) {
        if (!text.matches("\\d{1,9}")) {
            throw new LedgerRefused(what + " " + Plain.quoted(text) + " is no whole number");
        }
        return Long.parseLong(text);
    }
}
