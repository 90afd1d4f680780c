package org.runbend.export.batch;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.cutting.Stock;

/**
 * What a day can be cut from: pieces of the shelf, whole coils and plates that lie there, and what is sold.
 *
 * @param pieces opened coils and offcuts with what is free of them
 * @param whole whole coils and plates on hand
 * @param items how many are free of what is counted, by part number, where a ledger knows it
 */
public record Shop(List<Piece> pieces, List<Whole> whole, Map<String, Long> items) {
    /** Copies the lists. */
    public Shop {
        pieces = List.copyOf(pieces);
        whole = List.copyOf(whole);
        items = Map.copyOf(items);
    }

    /**
     * An opened coil or offcut.
     *
     * @param id what is written on it
     * @param product part number
     * @param length that is free, hundredths of mm
     * @param there how long it is
     * @param kept whether some of it is kept for others
     */
    public record Piece(String id, String product, long length, long there, boolean kept) {}

    /**
     * Equal whole coils or plates on hand.
     *
     * @param product part number
     * @param length hundredths of mm
     * @param free how many
     */
    public record Whole(String product, long length, long free) {}

    /** A shelf file: pieces alone. */
    public static Shop of(Shelf shelf) {
        List<Piece> pieces = new ArrayList<>();
        for (Remnant r : shelf.remnants()) {
            long length = (long) Math.floor(r.length() * 100);
            pieces.add(new Piece(r.id(), r.product(), length, length, false));
        }
        return new Shop(pieces, List.of(), Map.of());
    }

    /** What is free in a ledger, or kept for this day already. */
    public static Shop of(Books books, String day) {
        Map<Long, Long> kept = books.keptFor(day);
        List<Piece> pieces = new ArrayList<>();
        List<Whole> whole = new ArrayList<>();
        Map<String, Long> items = new HashMap<>();
        for (Holding h : books.holdings()) {
            long others = h.reserved() - kept.getOrDefault(h.key(), 0L);
            long free = h.amount() - h.uncertainty() - others;
            if (h.kind() == Kind.ITEM) {
                items.merge(h.product(), Math.max(0, free), Long::sum);
            } else if (free > 0 && h.kind().isPiece()) {
                pieces.add(new Piece(h.id(), h.product(), free, h.amount(), others > 0));
            } else if (free > 0 && (h.kind() == Kind.COIL || h.kind() == Kind.PLATE)) {
                whole.add(new Whole(h.product(), h.spec().length(), free));
            }
        }
        return new Shop(pieces, whole, items);
    }

    /** How many whole ones of a length are on hand. */
    long onHand(String product, long length) {
        return whole.stream()
                .filter(w -> w.product().equals(product) && w.length() == length)
                .mapToLong(Whole::free)
                .sum();
    }

    /** Stock for the cuts of a product: pieces at no cost; whole ones, on hand or not, at what a new one costs. */
    List<Stock> stock(String product, Catalog catalog) {
        List<Stock> stock = new ArrayList<>();
        for (Piece p : pieces) {
            if (p.product().equals(product)) {
                stock.add(Stock.single(product, p.id(), p.length(), 0));
            }
        }
        stock.addAll(sold(product, catalog));
        for (Whole w : whole) { // lengths that are no longer sold
            boolean known = stock.stream().anyMatch(s -> s.id().isEmpty() && s.length() == w.length());
            if (w.product().equals(product) && !known) {
                long all = Math.min(onHand(product, w.length()), 1_000_000);
                stock.add(new Stock(product, w.length(), 0, (int) all, Optional.empty()));
            }
        }
        return stock;
    }

    private static List<Stock> sold(String product, Catalog catalog) {
        List<Stock> sold = new ArrayList<>();
        catalog.findPipe(product).ifPresent(p -> p.coils()
                .forEach(c -> sold.add(Stock.bought(product, Math.round(c.length() * 100), c.cost()))));
        catalog.findPlate(product).ifPresent(p -> p.stock()
                .forEach(c -> sold.add(Stock.bought(product, Math.round(c.length() * 100), c.cost()))));
        return sold;
    }
}
