package org.runbend.catalog.ledger;

/**
 * One thing in the ledger: equal whole coils, plates, boards or items, or one opened coil or offcut.
 *
 * @param key its number in the ledger
 * @param spec what it is
 * @param amount how many, or the remaining length of a piece, hundredths of mm; 0 when it is gone
 * @param uncertainty what the length may be short of, kept as reserve, hundredths of mm
 * @param reserved how much of it is kept for orders
 * @param madeBy the movement that brought it
 */
public record Holding(long key, Spec spec, long amount, long uncertainty, long reserved, long madeBy) {
    /**
     * What a holding is, without how much there is.
     *
     * @param kind what it is
     * @param id of a piece; empty for everything else
     * @param product part number
     * @param length of a whole coil or plate, hundredths of mm; 0 for everything else
     * @param batch batch number; empty if none is known
     * @param label what is written on it beside the id; empty if nothing
     */
    public record Spec(Kind kind, String id, String product, long length, String batch, String label) {
        /** Checks that a piece has an id and a whole coil or plate a length. */
        public Spec {
            Entry.text("product", product, false);
            Entry.text("batch", batch, true);
            Entry.text("label", label, true);
            Entry.text("id", id, !kind.isPiece());
            Entry.that(kind.isPiece() || id.isEmpty(), "a " + kind.words() + " has no id of its own");
            boolean lengthy = kind.hasLength() && !kind.isPiece();
            Entry.that(lengthy ? length > 0 : length == 0, "length of " + kind.words() + " " + product + " is wrong");
            Entry.that(length <= Entry.LONGEST, "length of " + product + " is over 10 km");
        }

        /** Whole coils, plates, boards or items. */
        public static Spec lot(Kind kind, String product, long length, String batch) {
            return new Spec(kind, "", product, length, batch, "");
        }

        /** As sentences name it. */
        public String words() {
            if (kind.isPiece()) {
                return kind.words() + " " + id + " (" + product + ")";
            }
            return kind.words() + " " + product + (length > 0 ? " of " + Held.length(length) : "")
                    + (batch.isEmpty() ? "" : " batch " + batch);
        }
    }

    /** What may still be promised: never under 0. */
    public long free() {
        return Math.max(0, amount - uncertainty - reserved);
    }

    /** What it is. */
    public Kind kind() {
        return spec.kind();
    }

    /** What is written on a piece. */
    public String id() {
        return spec.id();
    }

    /** Part number. */
    public String product() {
        return spec.product();
    }
}
