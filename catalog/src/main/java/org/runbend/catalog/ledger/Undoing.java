package org.runbend.catalog.ledger;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Takes a movement back as if it had never been, where nothing that came later needs it. */
final class Undoing {
    private Undoing() {}

    static void undo(Posting posting, Movement wrong) {
        Books books = posting.books();
        checkOrders(books, wrong);
        List<Line> lines = books.lines(wrong.number());
        Map<Long, Line> sums = new LinkedHashMap<>();
        lines.forEach(l -> sums.merge(l.holding(), l, Line::plus));
        sums.values().forEach(l -> check(books, wrong, l.inverse()));
        // more before less, and reservations given back before what they were on goes
        lines.stream().filter(l -> l.amount() <= 0 && l.reserved() >= 0).forEach(l -> posting.line(l.inverse()));
        lines.stream().filter(l -> l.amount() <= 0 && l.reserved() < 0).forEach(l -> posting.line(l.inverse()));
        lines.stream().filter(l -> l.amount() > 0).forEach(l -> posting.line(l.inverse()));
        for (OrderRecord change : books.orderChanges(wrong.number())) {
            OrderRecord before = books.orderBefore(change.order(), wrong.number());
            posting.stateOf(change.order(), before.state(), before.fingerprint());
        }
    }

    private static void checkOrders(Books books, Movement wrong) {
        for (OrderRecord change : books.orderChanges(wrong.number())) {
            Optional<Movement> last = books.lastOfOrder(change.order(), Optional.empty());
            if (last.isPresent() && last.get().number() > wrong.number()) {
                throw needed(wrong, last.get(), "went on with order " + change.order());
            }
        }
    }

    private static void check(Books books, Movement wrong, Line inverse) {
        Holding holding = books.holding(inverse.holding());
        if (inverse.amount() != 0 || inverse.uncertainty() != 0) {
            Optional<Movement> count = books.lastAfter(wrong.number(), holding.key(), true);
            if (count.isPresent()) {
                throw needed(wrong, count.get(), "counted " + holding.spec().words() + " as it is");
            }
        }
        long amount = holding.amount() + inverse.amount();
        long reserved = holding.reserved() + inverse.reserved();
        long doubt = holding.uncertainty() + inverse.uncertainty();
        boolean negative = amount < 0 || reserved < 0 || doubt < 0 || doubt > amount;
        boolean promised = inverse.reserved() > 0 ? reserved + doubt > amount : reserved > amount;
        boolean used = holding.kind().isPiece() && holding.madeBy() == wrong.number() && amount != 0;
        if (negative || promised || used) {
            Movement later =
                    books.lastAfter(wrong.number(), holding.key(), false).orElse(wrong);
            throw needed(wrong, later, "needs " + holding.spec().words());
        }
    }

    private static LedgerRefused needed(Movement wrong, Movement later, String why) {
        return new LedgerRefused(wrong.words() + " cannot be undone: " + later.words() + " " + why + "; undo movement "
                + later.number() + " first");
    }
}
