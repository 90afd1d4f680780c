package org.runbend.optimizer.loop.search;

/** Turns and reduced cost in one word, so that of equal states the one of fewest turns stays, then of least reduced cost. */
final class BoundedCost {
    /** Turns above, reduced cost below: derived, 2^40 millionths of a turn are a million turns and more. */
    static final int TURN_SHIFT = 40;

    /** Mask of the reduced cost. */
    static final long REDUCED = (1L << TURN_SHIFT) - 1;

    /**
     * About two turns: many states cost nearly the same and would else all go the same way into one dead end. Without it every
     * beam up to 100,000 states ended in one on the square of 1,080 nodes; the size itself was chosen, not measured.
     */
    static final int BLUR = (1 << 21) - 1;

    private BoundedCost() {}

    /** What legs add in turns. */
    static long turn(int legs) {
        return Frontier.isCorner(legs) ? 1L << TURN_SHIFT : 0;
    }

    static int turns(long cost) {
        return (int) (cost >> TURN_SHIFT);
    }

    static long reduced(long cost) {
        return cost & REDUCED;
    }

    /** The slack that reduced costs leave for a number of turns, as far as it fits. */
    static long slack(ReducedCosts reducedCosts, int turns) {
        return Math.min(reducedCosts.slack(turns), REDUCED);
    }
}
