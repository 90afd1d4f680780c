package org.runbend.catalog.ledger;

import java.util.Locale;

/** Why stock moved. */
public enum MovementKind {
    /** Goods came. */
    RECEIVE,
    /** A stock-take. */
    COUNT,
    /** An order was quoted; nothing is kept for it. */
    QUOTE,
    /** Stock is kept for an order. */
    RESERVE,
    /** Nothing is kept for an order any more. */
    RELEASE,
    /** An order was cut. */
    CONFIRM,
    /** Pieces were cut wrong and cut again. */
    SPOIL,
    /** An order was packed. */
    PACK,
    /** An order was sent. */
    SEND,
    /** What an order got came back. */
    RETURN,
    /** When to order anew was set. */
    POINT,
    /** Another movement never happened. */
    UNDO;

    /** As the ledger writes it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The kind of a word of the ledger. */
    public static MovementKind of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
