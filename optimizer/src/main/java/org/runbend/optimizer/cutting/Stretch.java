package org.runbend.optimizer.cutting;

/**
 * A straight length to be covered by pieces.
 *
 * @param length hundredths of mm, 0 or more
 * @param least how much of it must be covered, hundredths of mm, 0 or more
 */
public record Stretch(long length, long least) {
    /** A stretch that may stay bare. */
    public Stretch(long length) {
        this(length, 0);
    }

    /** Refuses a negative length and a least cover that is negative or longer. */
    public Stretch {
        Require.that(
                length >= 0 && length <= Stock.GREATEST,
                "stretch: length (%d) must be 0 to %d",
                length,
                Stock.GREATEST);
        Require.that(least >= 0 && least <= length, "stretch: least (%d) must be 0 to its length %d", least, length);
    }
}
