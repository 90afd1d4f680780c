package org.runbend.export.stock;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Cut;
import org.runbend.catalog.ledger.Days;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.Spoiled;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;

/**
 * Pieces that were cut wrong: they alone are nested again.
 *
 * @param kit by which they were cut; of a day's order the day
 * @param cuts their names, as {@link Cut#name()}
 * @param rests what of each can still be used, hundredths of mm
 * @param keeping from which length on rests are kept
 */
public record Spoiling(KitUses kit, List<String> cuts, List<Long> rests, Keeping keeping) {
    /** Copies the lists. */
    public Spoiling {
        cuts = List.copyOf(cuts);
        rests = List.copyOf(rests);
    }

    /**
     * Nests them again and moves it; its notes say what is cut from what.
     *
     * @throws LedgerRefused if a cut is not there, is of another order, or the shelf does not suffice
     */
    public Outcome move(StockLedger ledger, Request request) {
        String order = ledger.look(b -> orderOf(b, kit.use().order()));
        List<KitUse.StockUse> again = ledger.hasSeen(request)
                ? List.of()
                : new Recutting(kit.kerf(), keeping).recut(spoiled(ledger, order), ledger.look(b -> b.holdings()));
        Outcome outcome = ledger.spoil(request, new Spoiled(order, cuts, rests, again, keeping));
        List<String> notes = new ArrayList<>(outcome.notes());
        if (outcome.isNew()) {
            again.forEach(u -> u.cuts()
                    .forEach(c -> notes.add("cut " + Held.length(c.length()) + " for " + c.goesTo() + " from "
                            + u.id().map(id -> u.kind().rest().words() + " " + id)
                                    .orElse("a whole " + u.kind().words() + " " + u.product() + " of "
                                            + Held.length(u.length())))));
        }
        return new Outcome(outcome.movement(), outcome.isNew(), outcome.made(), notes);
    }

    /** The kit's order; of a day the one that the cuts are for. */
    private String orderOf(Books books, String day) {
        List<String> orders = Days.orders(books, day);
        if (orders.isEmpty()) {
            return day;
        }
        List<String> meant = orders.stream()
                .filter(o -> books.cuts(o).stream().anyMatch(c -> cuts.contains(c.name())))
                .toList();
        if (meant.size() > 1) {
            throw new LedgerRefused(
                    "these cuts are for orders " + String.join(" and ", meant) + ": spoil them order by order");
        }
        if (meant.isEmpty()) {
            throw new LedgerRefused("day " + day + " has no cut " + String.join(", ", cuts) + ": 'runbend stock orders "
                    + day + "' lists them");
        }
        return meant.get(0);
    }

    private List<Cut> spoiled(StockLedger ledger, String order) {
        List<Cut> there = ledger.look(b -> b.cuts(order));
        List<Cut> spoiled = new ArrayList<>();
        for (String name : cuts) {
            spoiled.add(there.stream()
                    .filter(c -> c.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> new LedgerRefused("order " + order + " has no cut " + name
                            + ": 'runbend stock orders " + order + "' lists them")));
        }
        return spoiled;
    }
}
