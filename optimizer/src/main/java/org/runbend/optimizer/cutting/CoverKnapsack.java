package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;

/**
 * Least cost of stock whose worths reach a need, in whole numbers of stock pieces: depth-first, best worth for the money
 * first, cut off by the fractional filling. Worths and need may have any common scale.
 */
public final class CoverKnapsack {
    /** Nodes of one search: chosen, not measured. */
    private static final int NODES = 200_000;

    private final List<Item> items = new ArrayList<>();
    private final long need;
    private int nodes;
    private long best = Long.MAX_VALUE;

    private record Item(long worth, long cost, long available) {
        double ratio() {
            return (double) cost / worth;
        }
    }

    /** A knapsack of which so much must be filled, hundredths of mm. */
    public CoverKnapsack(long need) {
        this.need = need;
    }

    /** Offers stock; worthless stock is left aside. */
    public void add(long worth, long cost, long available) {
        if (worth > 0 && available > 0) {
            items.add(new Item(worth, cost, available));
        }
    }

    /** No choice costs less; empty when all stock together does not reach the need. */
    public OptionalLong bound() {
        items.sort(Comparator.comparingDouble(Item::ratio).thenComparingLong(Item::cost));
        boolean complete = walk(0, need, 0);
        if (complete) {
            return best == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(best);
        }
        return OptionalLong.of(fraction(0, need));
    }

    private boolean walk(int depth, long rest, long cost) {
        if (rest <= 0) {
            best = Math.min(best, cost);
            return true;
        }
        if (++nodes > NODES) {
            return false;
        }
        if (depth == items.size() || (best < Long.MAX_VALUE && cost + fraction(depth, rest) >= best)) {
            return true;
        }
        Item item = items.get(depth);
        long most = Math.min(item.available(), -Math.floorDiv(-rest, item.worth()));
        long least = item.cost() == 0 ? most : 0;
        boolean complete = true;
        for (long n = most; n >= least && complete; n--) {
            complete = walk(depth + 1, rest - n * item.worth(), cost + n * item.cost());
        }
        return complete;
    }

    /** Rounded down a little before it is rounded up, so that floating point cannot lift it. */
    private long fraction(int from, long rest) {
        double cost = 0;
        double left = (double) rest;
        for (int i = from; i < items.size() && left > 0; i++) {
            Item item = items.get(i);
            double taken = Math.min((double) item.available(), left / item.worth());
            cost += taken * item.cost();
            left -= taken * item.worth();
        }
        return (long) Math.ceil(cost * (1 - 1e-9) - 1e-9);
    }
}
