package org.runbend.catalog.ledger.sql;

/** A row of an answer. */
interface Row {
    /** A whole number; 0 for none. */
    long number(String column);

    /** A text; empty for none. */
    String text(String column);

    /** Whether there is a value. */
    boolean has(String column);
}
