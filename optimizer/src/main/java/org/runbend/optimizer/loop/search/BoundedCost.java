package org.runbend.optimizer.loop.search;

/**
 * What the shape of a loop costs (its turns, its short straight pieces) and its reduced cost in one word, so that of equal states the
 * one of cheapest shape stays, then of least reduced cost.
 */
final class BoundedCost {
    /** Shape above, reduced cost below: derived, 2^40 millionths of a turn are a million turns and more. */
    private static final int SHAPE_SHIFT = 40;

    /** Mask of the reduced cost. */
    static final long REDUCED = (1L << SHAPE_SHIFT) - 1;

    /**
     * About two turns: many states cost nearly the same and would else all go the same way into one dead end. Without it every
     * beam up to 100,000 states ended in one on the square of 1,080 nodes; the size itself was chosen, not measured.
     */
    static final int BLUR = (1 << 21) - 1;

    private BoundedCost() {}

    /** The cost of the state that a step of the program leads to. */
    static long after(LayeredProgram program, ReducedCosts reducedCosts, long cost, int legs, PriceUnits prices) {
        return program.cost()
                + reducedCosts.reduced(program.step(), legs)
                + reducedCosts.reduced(program.pieces())
                + shape(legs, cost, prices);
    }

    /** The cost of the shape of a loop that a step of the program closes. */
    static long closing(LayeredProgram program, long cost, long rest, PriceUnits prices) {
        return shape(program.cost()) + cost + (prices.isInside() ? rest : 0);
    }

    /** What a step adds to the shape: its cost, but for the price of a node left out where units count that. */
    static long shape(int legs, long cost, PriceUnits prices) {
        return legs == 0 && !prices.isInside() ? 0 : cost << SHAPE_SHIFT;
    }

    /** The cost of the shape so far. */
    static long shape(long cost) {
        return cost >> SHAPE_SHIFT;
    }

    static long reduced(long cost) {
        return cost & REDUCED;
    }

    /** The slack that reduced costs leave for a shape of some cost, as far as it fits. */
    static long slack(ReducedCosts reducedCosts, long shape) {
        return Math.min(reducedCosts.slack(shape), REDUCED);
    }
}
