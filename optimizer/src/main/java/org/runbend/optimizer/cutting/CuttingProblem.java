package org.runbend.optimizer.cutting;

import java.util.List;

/**
 * Which cuts are wanted and what they can be cut from.
 *
 * <p>n cuts fit on a stock when their lengths and n - 1 kerfs are at most its length less {@code endTrim}. What is left
 * over is the length less the trim, the cuts and a kerf for each cut, and never less than 0.
 *
 * @param stock kinds of stock
 * @param demands cuts wanted, each an exact number
 * @param kerf lost by every cut, 0 or more
 * @param endTrim lost once on every stock that is cut, 0 or more
 * @param keepFrom a leftover at least this long is kept, a shorter one is scrap; 0 keeps everything
 */
public record CuttingProblem(List<Stock> stock, List<Demand> demands, long kerf, long endTrim, long keepFrom) {
    /** Most cuts of one problem, chosen: the answer lists every single one. */
    static final int GREATEST_COUNT = 1_000_000;

    /** Copies the lists and refuses negative lengths. */
    public CuttingProblem {
        stock = List.copyOf(stock);
        demands = List.copyOf(demands);
        long cuts = demands.stream().mapToLong(Demand::count).sum();
        Require.that(cuts <= GREATEST_COUNT, "there are %d cuts; a plan takes at most %d", cuts, GREATEST_COUNT);
        Require.that(kerf >= 0 && kerf <= Stock.GREATEST, "kerf (%d) must be 0 to %d", kerf, Stock.GREATEST);
        Require.that(
                endTrim >= 0 && endTrim <= Stock.GREATEST, "endTrim (%d) must be 0 to %d", endTrim, Stock.GREATEST);
        Require.that(keepFrom >= 0, "keepFrom (%d) must not be negative", keepFrom);
    }
}
