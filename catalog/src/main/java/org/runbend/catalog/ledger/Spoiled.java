package org.runbend.catalog.ledger;

import java.util.List;

/**
 * Pieces that were cut wrong and what is cut in their place.
 *
 * @param order whose pieces
 * @param cuts names of the cuts, as {@link Cut#name()}
 * @param rests lengths that can still be used of what was spoiled, one for each cut, hundredths of mm; 0 where nothing can
 * @param again what the pieces are cut from anew
 * @param keeping from which length on rests are kept
 */
public record Spoiled(String order, List<String> cuts, List<Long> rests, List<KitUse.StockUse> again, Keeping keeping) {
    /** Copies the lists. */
    public Spoiled {
        Entry.text("order", order, false);
        cuts = List.copyOf(cuts);
        rests = List.copyOf(rests);
        again = List.copyOf(again);
        Entry.that(!cuts.isEmpty(), "no cut is named");
        Entry.that(cuts.size() == rests.size(), "each spoiled cut has one rest");
        Entry.that(cuts.stream().distinct().count() == cuts.size(), "a cut is named twice");
    }
}
