package org.runbend.optimizer.loop;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * What serving more or fewer nodes does to the turns.
 *
 * @param leftOut priced reachable nodes not served
 * @param turns corners of the best loop found that leaves out so many
 * @param turnBound least corners of any such loop through the same port pair, if proved
 */
public record TradeOff(int leftOut, int turns, OptionalInt turnBound) {
    /** Checks the counts. */
    public TradeOff {
        Objects.requireNonNull(turnBound, "turnBound");
        if (leftOut < 0 || turns < 4 || turnBound.orElse(turns) > turns) {
            throw new IllegalArgumentException(
                    "trade-off of " + leftOut + " left out, " + turns + " turns, bound " + turnBound);
        }
    }
}
