package org.runbend.optimizer.loop.search;

import java.util.stream.IntStream;

/** The steps of a block for two sweeps that meet: from the first node on, and from the last node back. */
final class TwoSides {
    private final Frontier forward;
    private final Frontier backward;
    private final PriceUnits prices;
    private final PriceUnits pricesBack;
    private final int[] stepsBack;

    TwoSides(Frontier frontier, PriceUnits prices) {
        int size = frontier.size();
        this.stepsBack = IntStream.range(0, size).map(t -> size - 1 - t).toArray();
        this.forward =
                frontier.side(IntStream.range(0, size).map(frontier::local).toArray());
        this.backward =
                frontier.side(IntStream.of(stepsBack).map(frontier::local).toArray());
        this.prices = prices;
        this.pricesBack = prices.inOrder(stepsBack);
    }

    /** The sweep from the first node on; the other arguments are those of {@link OneWaySweep}. */
    OneWaySweep first(ReducedCosts reducedCosts, long target, long share, OneWaySweep.Beyond beyond) {
        return new OneWaySweep(forward, prices, reducedCosts, target, share, false, beyond);
    }

    /** The sweep from the last node back, whose states are kept. */
    OneWaySweep second(ReducedCosts reducedCosts, long target, long share) {
        return new OneWaySweep(backward, pricesBack, reducedCosts.inOrder(stepsBack), target, share, true, null);
    }

    /** Where states before a step of the first sweep look for those of the second. */
    BidirectionalJoin junction(int step, OneWaySweep first, OneWaySweep second, int units) {
        return new BidirectionalJoin(forward, backward, step, first.encoding(), second, units);
    }

    /** Legs by step of the whole loop: the first sweep's before the step, the second's state from it on. */
    int[] joined(int[] early, int step, OneWaySweep second, int state) {
        int[] late = fromTheFirst(second.wayTo(forward.size() - step, state));
        System.arraycopy(late, step, early, step, late.length - step);
        return early;
    }

    /** Legs by step of what the second sweep has by its own steps. */
    int[] fromTheFirst(int[] legs) {
        return IntStream.of(stepsBack).map(t -> legs[t]).toArray();
    }
}
