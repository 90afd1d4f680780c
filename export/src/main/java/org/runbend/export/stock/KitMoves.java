package org.runbend.export.stock;

import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;

/** Movements by the plan of a kit, with what the ledger alone cannot know of it. */
public final class KitMoves {
    private KitMoves() {}

    /** Keeps what a kit needs; nothing for a plan that fails a check. */
    public static Outcome reserve(StockLedger ledger, Request request, KitUses uses) {
        if (!uses.failed().isEmpty()) {
            throw new LedgerRefused("order " + uses.use().order() + ": DO NOT CUT, the plan failed "
                    + String.join(", ", uses.failed()) + "; nothing is reserved for it");
        }
        return ledger.reserve(request, uses.use());
    }
}
