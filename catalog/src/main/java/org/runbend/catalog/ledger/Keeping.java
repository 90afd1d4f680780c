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

    boolean keeps(Kind piece, long length) {
        return length >= (piece == Kind.OPENED ? coil : plate);
    }
}
