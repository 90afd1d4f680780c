package org.runbend.optimizer.cutting;

import java.util.List;

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
