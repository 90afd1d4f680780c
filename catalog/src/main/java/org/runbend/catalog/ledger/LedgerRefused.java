package org.runbend.catalog.ledger;

/** Something that the ledger does not do; nothing was changed. The message is one line for a person. */
public class LedgerRefused extends RuntimeException {
    /** A refusal with what is wrong and what would be right. */
    public LedgerRefused(String message) {
        super(message);
    }

    /** A refusal that something else led to. */
    public LedgerRefused(String message, Throwable cause) {
        super(message, cause);
    }
}
