package org.runbend.catalog.ledger;

/**
 * What a movement does to one holding.
 *
 * @param holding its number
 * @param amount by how much there is more, or less
 * @param uncertainty by how much more of the length is in doubt, or less
 * @param reserved by how much more of it is kept for the holder, or less
 * @param holder the order; empty if for none
 */
public record Line(long holding, long amount, long uncertainty, long reserved, String holder) {
    /** What two lines do to one holding together, for whomever. */
    Line plus(Line o) {
        return new Line(holding, amount + o.amount, uncertainty + o.uncertainty, reserved + o.reserved, "");
    }

    /** The line that takes this one back. */
    Line inverse() {
        return new Line(holding, -amount, -uncertainty, -reserved, holder);
    }
}
