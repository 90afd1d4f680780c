package org.runbend.optimizer.cutting;

/**
 * A straight length to be covered by pieces.
 *
 * @param length hundredths of mm, 0 or more
 */
public record Stretch(long length) {
    /** Refuses a negative length. */
    public Stretch {
        Check.that(
                length >= 0 && length <= Stock.GREATEST,
                "stretch: length (%d) must be 0 to %d",
                length,
                Stock.GREATEST);
    }
}
