package org.runbend.optimizer.loop.search;

/**
 * Looks for a loop of few turns and so many price units left out: a beam from the last node back, one from the first node
 * on, and at each step the best pair of states of the two that closes to one loop.
 */
final class BidirectionalBeam {
    /** No loop has so few turns: neither beam shall end with a loop of its own, as a join may give a better one. */
    private static final int NONE = 0;

    private final TwoSides sides;
    private long spent;
    private long bestShape;
    private int[] best = {};

    BidirectionalBeam(Frontier frontier, PriceUnits prices) {
        this.sides = new TwoSides(frontier, prices);
    }

    /** Legs by step of the best loop met whose shape costs at most so much; empty if none was. */
    int[] find(ReducedCosts reducedCosts, long mostShape, int beam) {
        best = new int[0];
        bestShape = mostShape + 1;
        long slack = BoundedCost.slack(reducedCosts, mostShape);
        OneWaySweep second = sides.second(reducedCosts, NONE, slack);
        second.runBeam(beam, (step, states) -> {});
        OneWaySweep first = sides.first(reducedCosts, NONE, slack, null);
        first.runBeam(beam, (step, states) -> join(first, second, reducedCosts.units(), step, states));
        spent += first.total() + second.total();
        return best.clone();
    }

    private void join(OneWaySweep first, OneWaySweep second, int units, int step, StateLayer states) {
        if (step == 0) {
            return;
        }
        BidirectionalJoin junction = sides.junction(step, first, second, units);
        int words = first.encoding().words() + 1;
        long[] state = new long[words];
        for (int i = 0; i < states.size(); i++) {
            System.arraycopy(states.keys(), i * words, state, 0, words);
            int other = junction.partner(state, states.cost(i), bestShape - 1);
            if (other >= 0) {
                bestShape = junction.shape(states.cost(i), other);
                best = sides.joined(first.wayTo(step, i), step, second, other);
                i--;
            }
        }
    }

    long spent() {
        return spent;
    }
}
