package org.runbend.catalog.ledger;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the plan of an order takes from the shelf.
 *
 * @param order its number, or the name of a day's batch
 * @param fingerprint of the plan
 * @param stock what is cut
 * @param items what is counted
 * @param keeping from which length on rests are kept
 * @param orders of a day's batch: its orders with the fingerprints of their plans; empty for the plan of one order
 */
public record KitUse(
        String order,
        String fingerprint,
        List<StockUse> stock,
        List<ItemUse> items,
        Keeping keeping,
        SortedMap<String, String> orders) {
    /** Copies the lists and checks the texts. */
    public KitUse {
        Entry.text("order", order, false);
        Entry.text("fingerprint", fingerprint, false);
        stock = List.copyOf(stock);
        items = List.copyOf(items);
        orders = Collections.unmodifiableSortedMap(new TreeMap<>(orders));
        for (Map.Entry<String, String> o : orders.entrySet()) {
            Entry.text("order", o.getKey(), false);
            Entry.text("fingerprint", o.getValue(), false);
            Entry.that(!o.getKey().equals(order), "a day " + order + " holds an order of that name: rename the day");
        }
    }

    /** What the plan of one order takes. */
    public KitUse(String order, String fingerprint, List<StockUse> stock, List<ItemUse> items, Keeping keeping) {
        this(order, fingerprint, stock, items, keeping, new TreeMap<>());
    }

    /**
     * A coil or plate that is cut.
     *
     * @param id of the piece on the shelf; empty for a whole coil or plate
     * @param kind COIL or PLATE, whole or not
     * @param product part number
     * @param length of the whole coil or plate, hundredths of mm; of a piece what the plan took it for
     * @param cuts what is cut from it
     * @param used cuts and what the saw takes, hundredths of mm
     * @param restStays whether what is left stays with the workshop
     * @param restId what papers tell to write on what is left of a whole one, if they do
     */
    public record StockUse(
            Optional<String> id,
            Kind kind,
            String product,
            long length,
            List<Piece> cuts,
            long used,
            boolean restStays,
            Optional<String> restId) {
        /** Copies the list and checks the lengths. */
        public StockUse {
            cuts = List.copyOf(cuts);
            Entry.that(kind == Kind.COIL || kind == Kind.PLATE, "only coils and plates are cut");
            Entry.text("product", product, false);
            long sum = cuts.stream().mapToLong(Piece::length).sum();
            Entry.that(!cuts.isEmpty(), "nothing is cut from " + id.orElse(product));
            Entry.that(length > 0 && length <= Entry.LONGEST, "length of " + id.orElse(product) + " is wrong");
            Entry.that(
                    sum <= used && used <= length,
                    id.orElse(product) + ": " + Held.length(used) + " cannot be cut from " + Held.length(length));
            restId.ifPresent(r -> Entry.text("the id of a rest", r, false));
        }

        /** What is left gets the next number of its kind. */
        public StockUse(
                Optional<String> id,
                Kind kind,
                String product,
                long length,
                List<Piece> cuts,
                long used,
                boolean restStays) {
            this(id, kind, product, length, cuts, used, restStays, Optional.empty());
        }

        /** Whether it is cut from a piece of the shelf. */
        public boolean isFromPiece() {
            return id.isPresent();
        }
    }

    /**
     * One cut.
     *
     * @param length hundredths of mm
     * @param goesTo its place in the kit
     * @param order of a day's batch that it is for; empty for the plan of one order
     */
    public record Piece(long length, String goesTo, String order) {
        /** Checks the length. */
        public Piece {
            Entry.that(length > 0 && length <= Entry.LONGEST, "length of a cut is wrong");
            Entry.text("the place of a cut", goesTo, true);
        }

        /** A cut for the one order. */
        public Piece(long length, String goesTo) {
            this(length, goesTo, "");
        }
    }

    /**
     * So many of something that is counted.
     *
     * @param kind ITEM or BOARD
     * @param product part number
     * @param quantity how many, at least 1
     * @param order of a day's batch that they are for; empty for the plan of one order
     */
    public record ItemUse(Kind kind, String product, long quantity, String order) {
        /** Checks the number. */
        public ItemUse {
            Entry.that(kind == Kind.ITEM || kind == Kind.BOARD, "only items and boards are counted");
            Entry.text("product", product, false);
            Entry.that(quantity >= 1 && quantity <= Entry.MOST, "quantity of " + product + " is wrong");
        }

        /** So many for the one order. */
        public ItemUse(Kind kind, String product, long quantity) {
            this(kind, product, quantity, "");
        }
    }
}
