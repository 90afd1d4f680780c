package org.runbend.catalog.ledger;

import java.util.Locale;

/** How far an order is. */
public enum OrderState {
    /** The ledger does not know it, or no longer. */
    UNKNOWN,
    /** Asked for; nothing is kept for it. */
    QUOTED,
    /** Stock is kept for it. */
    CONFIRMED,
    /** Cut; its stock is gone. */
    CUT,
    /** In its box. */
    PACKED,
    /** On its way. */
    SENT,
    /** Came back. */
    RETURNED;

    /** Whether its stock is gone. */
    public boolean isCut() {
        return this == CUT || this == PACKED || this == SENT;
    }

    /** As lists and the ledger write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The state of a word of the ledger. */
    public static OrderState of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
