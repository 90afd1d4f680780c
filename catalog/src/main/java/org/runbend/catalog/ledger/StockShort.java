package org.runbend.catalog.ledger;

/** What a plan needs is not there, or is kept for others: a plan made from what is there now may go through. */
public final class StockShort extends LedgerRefused {
    StockShort(String message) {
        super(message);
    }
}
