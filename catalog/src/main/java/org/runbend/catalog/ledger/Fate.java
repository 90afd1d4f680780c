package org.runbend.catalog.ledger;

import java.util.Locale;

/** What became of a cut piece. */
public enum Fate {
    /** Cut wrong. */
    SPOILED,
    /** Back on the shelf, or thrown away as too short. */
    BACK,
    /** Used by the changed plan of its order. */
    REUSED;

    /** As the ledger writes it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
