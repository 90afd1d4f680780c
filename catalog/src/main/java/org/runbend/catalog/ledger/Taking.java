package org.runbend.catalog.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reserves what a plan needs, or takes it; everything that is short is named at once. */
final class Taking {
    private final Posting posting;
    private final Books books;
    private final List<String> wanting = new ArrayList<>();
    private final Set<String> untracked = new LinkedHashSet<>();

    Taking(Posting posting) {
        this.posting = posting;
        this.books = posting.books();
    }

    /** Keeps for the order what its plan needs. */
    void reserve(KitUse use) {
        for (KitUse.StockUse u : use.stock()) {
            if (u.isFromPiece()) {
                piece(u).ifPresent(p -> {
                    if (u.used() > p.free()) {
                        lacks(p, u.used(), p.free());
                    } else {
                        posting.reserve(p.key(), u.used(), use.order());
                    }
                });
            }
        }
        lotsWanted(use).forEach((lot, quantity) -> spread(lot, quantity)
                .forEach((holding, share) -> posting.reserve(holding.key(), share, use.order())));
        end();
    }

    /** Takes from the shelf what was cut and counted, and brings back what is left of it. */
    void take(KitUse use) {
        Set<Lot> lacking = new LinkedHashSet<>();
        lotsWanted(use).forEach((lot, quantity) -> {
            if (spread(lot, quantity).isEmpty()) {
                lacking.add(lot);
            }
        });
        for (KitUse.StockUse u : use.stock()) {
            Lot lot = new Lot(u.kind(), u.product(), u.length());
            if (u.isFromPiece()) {
                piece(u).ifPresent(p -> fromPiece(p, u, use.keeping()));
            } else if (!lacking.contains(lot)) {
                spread(lot, 1).keySet().forEach(holding -> fromLot(holding, u, use.keeping()));
            }
        }
        for (KitUse.ItemUse item : use.items()) {
            Lot lot = new Lot(item.kind(), item.product(), 0);
            if (tracked(item) && !lacking.contains(lot)) {
                spread(lot, item.quantity()).forEach((holding, share) -> posting.move(holding, -share, item.order()));
            }
        }
        end();
    }

    private void end() {
        if (!wanting.isEmpty()) {
            throw new StockShort(String.join("; ", wanting));
        }
        if (!untracked.isEmpty()) {
            posting.note("not kept in the ledger: " + String.join(", ", untracked));
        }
    }

    private void fromPiece(Holding piece, KitUse.StockUse use, Keeping keeping) {
        if (use.used() > piece.amount() - piece.reserved()) {
            lacks(piece, use.used(), piece.amount() - piece.reserved());
            return;
        }
        long rest = piece.amount() - use.used();
        boolean stays = piece.reserved() > 0 || keeping.keeps(piece.kind(), rest - piece.uncertainty());
        if (stays) {
            posting.move(piece, -use.used(), -Math.max(0, piece.uncertainty() - rest));
        } else {
            posting.move(piece, -piece.amount(), -piece.uncertainty());
            scrap(piece.id(), rest);
        }
        cuts(use, piece);
    }

    private void fromLot(Holding lot, KitUse.StockUse use, Keeping keeping) {
        posting.move(lot, -1, 0);
        Kind kind = lot.kind().rest();
        long rest = lot.spec().length() - use.used();
        if (use.restStays() && keeping.keepsRest(lot.kind(), rest)) {
            posting.bring(use.restId(), kind, lot.product(), lot.spec().batch(), rest);
        } else if (use.restStays()) {
            scrap("a " + lot.kind().words() + " " + lot.product(), rest);
        }
        cuts(use, lot);
    }

    private void scrap(String from, long rest) {
        if (rest > 0) {
            posting.note("scrap: " + Held.length(rest) + " of " + from);
        }
    }

    private void cuts(KitUse.StockUse use, Holding from) {
        String source = from.kind().isPiece() ? from.id() : from.kind().word();
        use.cuts()
                .forEach(c -> posting.cut(
                        c.order(),
                        use.kind().rest(),
                        use.product(),
                        from.spec().batch(),
                        c.length(),
                        c.goesTo(),
                        source));
    }

    private Optional<Holding> piece(KitUse.StockUse use) {
        String id = use.id().orElseThrow();
        Optional<Holding> piece = books.findPiece(id).filter(p -> p.amount() > 0);
        if (piece.isEmpty()) {
            wanting.add("no " + use.kind().rest().words() + " " + id + " is on the shelf: plan anew");
            return piece;
        }
        boolean same = piece.get().product().equals(use.product())
                && piece.get().kind() == use.kind().rest();
        if (!same) {
            wanting.add(piece.get().spec().words() + " is on the shelf, the plan takes " + id + " for "
                    + use.kind().rest().words() + " of " + use.product() + ": plan anew");
            return Optional.empty();
        }
        return piece;
    }

    private void lacks(Holding piece, long wanted, long free) {
        String doubt = piece.uncertainty() > 0 ? ", " + Held.length(piece.uncertainty()) + " in doubt" : "";
        wanting.add(piece.spec().words() + ": " + Held.length(wanted) + " wanted, " + Held.length(Math.max(0, free))
                + " free (" + Held.length(piece.amount()) + " there" + doubt + posting.holders(piece)
                + "): plan anew");
    }

    private record Lot(Kind kind, String product, long length) {
        String words() {
            return kind.words() + " " + product + (length > 0 ? " of " + Held.length(length) : "");
        }
    }

    private Map<Lot, Long> lotsWanted(KitUse use) {
        Map<Lot, Long> wanted = new LinkedHashMap<>();
        use.stock().stream()
                .filter(u -> !u.isFromPiece())
                .forEach(u -> wanted.merge(new Lot(u.kind(), u.product(), u.length()), 1L, Long::sum));
        use.items().stream()
                .filter(this::tracked)
                .forEach(i -> wanted.merge(new Lot(i.kind(), i.product(), 0), i.quantity(), Long::sum));
        return wanted;
    }

    /** Items are kept in the ledger once they were received or counted. */
    private boolean tracked(KitUse.ItemUse item) {
        boolean known = !books.ofProduct(item.kind(), item.product()).isEmpty();
        if (!known) {
            untracked.add(item.product());
        }
        return known;
    }

    /** So many of a lot, of what came first first; nothing and a word where there are not so many. */
    private Map<Holding, Long> spread(Lot lot, long quantity) {
        Map<Holding, Long> shares = new LinkedHashMap<>();
        long open = quantity;
        long free = 0;
        long there = 0;
        for (Holding h : books.ofProduct(lot.kind(), lot.product())) {
            if (h.spec().length() == lot.length()) {
                free += h.free();
                there += h.amount();
                long share = Math.min(open, h.free());
                if (share > 0) {
                    shares.put(h, share);
                    open -= share;
                }
            }
        }
        if (open > 0) {
            wanting.add("short of " + open + " " + lot.words() + " (" + there + " there, " + free
                    + " free): receive or count them first");
            return Map.of();
        }
        return shares;
    }
}
