package org.runbend.optimizer.loop.search;

/** The word of a state that counts price units left out, for loops that leave out exactly so many as the reduced costs are for. */
final class UnitCount {
    private final PriceUnits prices;
    private final int units;
    private final int word;

    /** Counts in that word of a state. */
    UnitCount(PriceUnits prices, ReducedCosts reducedCosts, int word) {
        this.prices = prices;
        this.units = reducedCosts.units();
        this.word = word;
    }

    /** Counts what the node of a step adds; false if the state cannot end with the units asked for. */
    boolean count(long[] state, int step, int legs) {
        if (legs == 0) {
            state[word] += prices.units(step);
        }
        return state[word] <= units && state[word] + prices.unitsFrom(step + 1) >= units;
    }

    /** Whether a loop that closes at a step, in a state that counted so many before, leaves out what was asked for. */
    boolean endsWell(long counted, int step) {
        return counted + prices.unitsFrom(step + 1) == units;
    }
}
