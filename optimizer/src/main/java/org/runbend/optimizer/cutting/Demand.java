package org.runbend.optimizer.cutting;

import java.util.Objects;

/**
 * Equal cuts that are wanted.
 *
 * @param name what the cut is called on paper
 * @param length hundredths of mm, positive
 * @param count how many, 0 or more
 */
public record Demand(String name, long length, int count) {
    /** Refuses a length that is not positive or a negative count. */
    public Demand {
        Objects.requireNonNull(name, "name");
        Require.that(
                length > 0 && length <= Stock.GREATEST,
                "demand %s: length (%d) must be 1 to %d",
                name,
                length,
                Stock.GREATEST);
        Require.that(count >= 0, "demand %s: count (%d) must not be negative", name, count);
    }
}
