package org.runbend.catalog.ledger;

import java.util.Optional;

/**
 * One line of a delivery.
 *
 * @param spec what came; a piece without an id gets one
 * @param amount how many; of a piece its length, hundredths of mm
 * @param uncertainty what the length of a piece may be short of; left out, what metre marks leave in doubt
 */
public record Received(Thing spec, long amount, Optional<Long> uncertainty) {
    /** Checks the amount. */
    public Received {
        Entry.that(amount >= 1 && amount <= Entry.MOST, "amount of " + spec.product() + " must be 1 to " + Entry.MOST);
        long doubt = uncertainty.orElse(0L);
        Entry.that(doubt >= 0 && doubt <= amount, "uncertainty of " + spec.product() + " must be 0 to its length");
        Entry.that(uncertainty.isEmpty() || spec.kind().isPiece(), "only a piece has an uncertain length");
    }

    /**
     * What came.
     *
     * @param kind what it is
     * @param id of a piece, if it has one already
     * @param product part number
     * @param length of whole coils and plates, hundredths of mm; else 0
     * @param batch batch number; empty if none is known
     * @param label what is written on a piece; empty if nothing
     */
    public record Thing(Kind kind, Optional<String> id, String product, long length, String batch, String label) {
        /** Checks what a holding of it would check. */
        public Thing {
            spec(kind, kind.isPiece() ? id.orElse("?") : id.orElse(""), product, length, batch, label);
        }

        Holding.Spec withId(String number) {
            return spec(kind, number, product, length, batch, label);
        }

        private static Holding.Spec spec(
                Kind kind, String id, String product, long length, String batch, String label) {
            return new Holding.Spec(kind, id, product, length, batch, label);
        }
    }
}
