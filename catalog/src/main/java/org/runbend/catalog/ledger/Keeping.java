package org.runbend.catalog.ledger;

/**
 * From which length on what is left over is kept; what is shorter is scrap.
 *
 * @param coil of pipe, hundredths of mm
 * @param plate of plates, hundredths of mm
 */
public record Keeping(long coil, long plate) {
    /** 3 m of pipe, 150 mm of plate: chosen; no loop and no piece of plate is shorter as a rule. */
    public static final Keeping USUAL = new Keeping(300_000, 15_000);

    /** Checks that nothing is negative. */
    public Keeping {
        Entry.that(coil >= 1 && plate >= 1, "a length to keep from must be above 0");
    }

    /** Whether what is left of a whole coil or plate, hundredths of mm, goes back on the shelf. */
    public boolean keepsRest(Kind whole, long rest) {
        return keeps(whole.rest(), rest - MetreMarks.uncertainty(whole.rest(), rest));
    }

    /** Whether a piece with so much left for certain stays on the shelf. */
    public boolean keeps(Kind piece, long length) {
        return length >= (piece == Kind.OPENED ? coil : plate);
    }
}
