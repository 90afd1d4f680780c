package org.runbend.optimizer.loop.search;

import java.util.stream.IntStream;

/**
 * Another loop with the same turns and the same nodes' worth left out that is better at the lower levels:
 * plateable length and direction first, and then, where it is preferred, evenness before these.
 */
final class EqualLoops {
    /** States for the comparison of equal loops on any floor: chosen, not measured. */
    private static final long LEAST_WORK = 300_000;

    /** The same for each place: chosen, not measured. */
    private static final long WORK_PER_NODE = 2_000;
    /** People who ask for even heat wait for it; chosen, not measured. */
    private static final long EVEN_WORK_PER_NODE = 20_000;

    private final BlockProblem blockProblem;
    private final PriceUnits prices;

    EqualLoops(BlockProblem blockProblem, PriceUnits prices) {
        this.blockProblem = blockProblem;
        this.prices = prices;
    }

    /** Price units that a loop leaves out. */
    static int units(PriceUnits prices, int[] legs) {
        return IntStream.range(0, legs.length)
                .filter(t -> legs[t] == 0)
                .map(prices::units)
                .sum();
    }

    /** The better loop by step, or the same; the reduced costs are those for the loop's units. */
    int[] choose(int[] legs, ReducedCosts reducedCosts) {
        long work = Math.max(LEAST_WORK, WORK_PER_NODE * legs.length);
        return even(new TieSearch(blockProblem, prices, reducedCosts, work).improve(legs), reducedCosts);
    }

    /** A more even loop if that is preferred, else the same. */
    int[] even(int[] legs, ReducedCosts reducedCosts) {
        return blockProblem.problem().preference().evenHeat()
                ? new EvenSearch(blockProblem, prices, reducedCosts, EVEN_WORK_PER_NODE * legs.length).improve(legs)
                : legs;
    }
}
