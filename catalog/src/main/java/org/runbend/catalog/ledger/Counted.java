package org.runbend.catalog.ledger;

import java.util.Optional;

/**
 * One line of a stock-take.
 *
 * @param id of a piece; empty for whole coils, plates, boards and items
 * @param lot what was counted, where it is no piece
 * @param amount how many there are, or the length that a piece has, hundredths of mm
 */
public record Counted(String id, Optional<Holding.Spec> lot, long amount) {
    /** Checks that one thing is meant. */
    public Counted {
        Entry.that(id.isEmpty() == lot.isPresent(), "either a piece or a lot is counted");
        Entry.that(amount >= 0 && amount <= Entry.MOST, "what was counted must be 0 to " + Entry.MOST);
    }

    /** A piece that was measured; 0 when it is gone. */
    public static Counted piece(String id, long length) {
        Entry.text("id", id, false);
        return new Counted(id, Optional.empty(), length);
    }

    /** Things that were counted. */
    public static Counted lot(Holding.Spec spec, long quantity) {
        return new Counted("", Optional.of(spec), quantity);
    }
}
