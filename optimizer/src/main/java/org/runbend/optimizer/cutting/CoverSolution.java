package org.runbend.optimizer.cutting;

import java.util.List;
import java.util.Objects;

/**
 * Pieces for every stretch and the stock they are cut from. Only the cost has a bound: that the pieces are few and the
 * cover is much at that cost is the best found, and nothing is proved about it.
 *
 * @param pieces for each stretch of the problem the lengths laid on it, longest first; empty when it stays bare
 * @param stock one entry for each stock piece used, by stock index
 * @param cost of the stock used, minor units
 * @param covered sum of what is covered, hundredths of mm
 * @param bound no plan that reaches the target costs less
 */
public record CoverSolution(List<List<Long>> pieces, List<StockUse> stock, long cost, long covered, Bound bound) {
    /** Copies the lists and refuses a bound above the cost. */
    public CoverSolution {
        pieces = pieces.stream().map(List::copyOf).toList();
        stock = List.copyOf(stock);
        Objects.requireNonNull(bound, "bound");
        Require.that(bound.value() <= cost, "bound (%d) above cost (%d)", bound.value(), cost);
    }

    /** How many pieces there are. */
    public int pieceCount() {
        return pieces.stream().mapToInt(List::size).sum();
    }

    /** True when no plan costs less. */
    public boolean isProvedLeastCost() {
        return cost == bound.value();
    }
}
