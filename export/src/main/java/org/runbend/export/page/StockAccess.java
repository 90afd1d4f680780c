package org.runbend.export.page;

import java.util.List;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.export.stock.LedgerPlace;

/**
 * The ledger that the page works with.
 *
 * @param place where it is
 * @param keeping from which length on rests are kept
 * @param batch what a process of a day is started with: class path, main class and its words
 */
public record StockAccess(LedgerPlace place, Keeping keeping, List<String> batch) {
    /** Copies the words. */
    public StockAccess {
        batch = List.copyOf(batch);
    }
}
