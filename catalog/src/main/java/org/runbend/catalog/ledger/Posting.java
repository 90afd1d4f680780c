package org.runbend.catalog.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One movement that is being written: its lines in order, and what a person should know of it. */
final class Posting {
    private final Books books;
    private final long movement;
    private final String order;
    private final List<String> notes = new ArrayList<>();
    private int lines;
    private int cuts;

    Posting(Books books, long movement, String order) {
        this.books = books;
        this.movement = movement;
        this.order = order;
    }

    Books books() {
        return books;
    }

    long movement() {
        return movement;
    }

    List<String> notes() {
        return notes;
    }

    void note(String note) {
        notes.add(note);
    }

    void line(Line line) {
        books.line(movement, ++lines, line);
    }

    /** More or less of a holding, in the name of the order. */
    void move(Holding holding, long amount, long uncertainty) {
        line(new Line(holding.key(), amount, uncertainty, 0, order));
    }

    /** More or less of a holding, in the name of an order of the day, or of the one order. */
    void move(Holding holding, long amount, String holder) {
        line(new Line(holding.key(), amount, 0, 0, holder.isEmpty() ? order : holder));
    }

    /** More or less is kept for an order. */
    void reserve(long holding, long amount, String holder) {
        line(new Line(holding, 0, 0, amount, holder));
    }

    /** A new piece with the next number of its kind. */
    void bring(Kind kind, String product, String batch, String label, long length, Optional<Long> uncertainty) {
        bring(new Holding.Spec(kind, freeId(kind), product, 0, batch, label), length, uncertainty);
    }

    /** A new piece with an id that papers gave it; with the next number where another piece has or had that id. */
    void bring(Optional<String> wanted, Kind kind, String product, String batch, long length) {
        String id = wanted.filter(w -> books.findPiece(w).isEmpty()).orElseGet(() -> freeId(kind));
        wanted.filter(w -> !w.equals(id)).ifPresent(w -> note("another piece has or had the id " + w));
        bring(new Holding.Spec(kind, id, product, 0, batch, ""), length, Optional.empty());
    }

    /** A new piece. */
    void bring(Holding.Spec piece, long length, Optional<Long> uncertainty) {
        long key = books.create(piece, movement);
        long doubt = uncertainty.orElseGet(() -> MetreMarks.uncertainty(piece.kind(), length));
        line(new Line(key, length, doubt, 0, order));
    }

    private String freeId(Kind kind) {
        String id;
        do {
            id = kind.letter() + books.nextNumber(kind.letter());
        } while (books.findPiece(id).isPresent());
        return id;
    }

    /** Nothing is kept for an order any more. */
    void releaseAll(String holder) {
        books.reservationsOf(holder).forEach(r -> reserve(r.holding(), -r.amount(), holder));
    }

    void state(OrderState state, String fingerprint) {
        books.orderChange(movement, new OrderRecord(order, state, fingerprint));
    }

    void stateOf(String other, OrderState state, String fingerprint) {
        books.orderChange(movement, new OrderRecord(other, state, fingerprint));
    }

    void cut(String holder, Kind kind, String product, String batch, long length, String goesTo, String from) {
        books.cut(new Cut(
                movement, ++cuts, holder.isEmpty() ? order : holder, kind, product, batch, length, goesTo, from));
    }

    /** Who else holds some of a holding, for messages. */
    String holders(Holding holding) {
        List<String> others = books.holdersOf(holding.key());
        return others.isEmpty()
                ? ""
                : ", " + Held.amount(holding.kind(), holding.reserved()) + " kept for "
                        + others.stream().sorted().collect(Collectors.joining(", "));
    }
}
