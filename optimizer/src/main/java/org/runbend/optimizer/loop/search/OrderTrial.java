package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Tries the orders in which few links are open, forth and back, with short passes. Where many reduced costs are 0, the
 * number of states depends on the order far more than on the links that are open.
 */
final class OrderTrial {
    /** States in a layer of a trial: chosen, not measured. */
    private static final int MOST_PER_LAYER = 20_000;

    /** States of a trial: chosen, not measured. */
    private static final long MOST_STATES = 400_000;

    private final List<int[]> orders = new ArrayList<>();
    private final List<Long> sizes = new ArrayList<>();
    private int best;
    private long spent;

    /** Tries all orders of a block with the reduced costs for its present one. */
    OrderTrial(BlockProblem blockProblem, PriceUnits prices, ReducedCosts reducedCosts) {
        for (int[] order : blockProblem.orders()) {
            orders.add(order);
            orders.add(IntStream.range(0, order.length)
                    .map(t -> order[order.length - 1 - t])
                    .toArray());
        }
        for (int[] order : orders) {
            int[] steps = IntStream.of(order).map(blockProblem.frontier()::step).toArray();
            BoundedSweep sweep = new BoundedSweep(
                    blockProblem.inOrder(order).frontier(),
                    prices.inOrder(steps),
                    reducedCosts.inOrder(steps),
                    reducedCosts.shapeBound(),
                    Frontier.PORT_OPEN);
            sweep.runExactly(MOST_PER_LAYER, MOST_STATES);
            sizes.add(sweep.truncated() ? Long.MAX_VALUE / 2 - sweep.steps() : sweep.total());
            spent += sweep.total();
            best = sizes.get(sizes.size() - 1) < sizes.get(best) ? sizes.size() - 1 : best;
        }
    }

    /** Local numbers in the order that made fewest states. */
    int[] best() {
        return orders.get(best).clone();
    }

    /** States of the best order, and of the same back; at least what was allowed if that was too little. */
    long early() {
        return Math.min(sizes.get(best), 2 * MOST_STATES);
    }

    long late() {
        return Math.min(sizes.get(best ^ 1), 2 * MOST_STATES);
    }

    long spent() {
        return spent;
    }
}
