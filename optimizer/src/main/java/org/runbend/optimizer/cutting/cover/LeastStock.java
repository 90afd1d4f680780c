package org.runbend.optimizer.cutting.cover;

import java.util.List;
import org.runbend.optimizer.cutting.CoverKnapsack;
import org.runbend.optimizer.cutting.Stock;

/** The least that stock of a total length costs: a bound for everything that is cut from it. */
public final class LeastStock {
    private LeastStock() {}

    /** No choice of whole stock pieces that together reach {@code need} costs less; 0 where the stock does not reach it. */
    public static long cost(long need, List<Stock> stock) {
        CoverKnapsack knapsack = new CoverKnapsack(Math.max(0, need));
        stock.forEach(s -> knapsack.add(s.length(), s.cost(), s.available()));
        return knapsack.bound().orElse(0);
    }
}
