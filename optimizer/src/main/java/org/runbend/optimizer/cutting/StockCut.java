package org.runbend.optimizer.cutting;

import java.util.List;

/**
 * How one stock piece is cut.
 *
 * @param stock index into {@link CuttingProblem#stock()}
 * @param demands index into {@link CuttingProblem#demands()} of each cut, in rising order
 * @param leftover hundredths of mm left after trim, cuts and a kerf for each cut
 */
public record StockCut(int stock, List<Integer> demands, long leftover) {
    /** Copies the list. */
    public StockCut {
        demands = List.copyOf(demands);
    }
}
