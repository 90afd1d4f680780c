package org.runbend.optimizer.loop.search;

/**
 * A part of a laid loop that is laid anew without loss, the rest staying as it is: the loop's pieces outside become
 * links that must be used.
 */
final class Window {
    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final int statesPerLayer;

    /** Windows in which a layer may hold so many states; where it would hold more, the loop stays as it is. */
    Window(BlockProblem blockProblem, PriceUnits prices, int statesPerLayer) {
        this.blockProblem = blockProblem;
        this.prices = prices;
        this.statesPerLayer = statesPerLayer;
    }

    /** What came of one window: the legs of the whole loop by step, and the work done. */
    static final class Relaid {
        private final int[] legs;
        private final int gain;
        private final long states;

        Relaid(int[] legs, int gain, long states) {
            this.legs = legs;
            this.gain = gain;
            this.states = states;
        }

        int[] legs() {
            return legs.clone();
        }

        /** How much less turns and prices come to; 0 if the loop is merely another. */
        int gain() {
            return gain;
        }

        long states() {
            return states;
        }
    }

    /**
     * Lays the window anew; with as many units left out as before, also at equal cost, else only at a gain.
     *
     * @param legs the loop by step
     * @param locals local numbers of the window's nodes in the order in which they are decided
     * @param portLink the loop's port, 4 x local number + heading
     * @param reducedCosts for the units that the whole loop shall leave out
     * @param change how many more units that is than now
     */
    Relaid relay(int[] legs, int[] locals, int portLink, ReducedCosts reducedCosts, int change) {
        WindowProblem windowProblem = new WindowProblem(blockProblem, legs, locals, portLink);
        int[] steps = windowProblem.steps();
        int units = change + windowProblem.units(prices);
        if (units < 0 || !windowProblem.isOpen()) {
            return new Relaid(legs, 0, locals.length);
        }
        long shape = windowProblem.shape(prices);
        long target = shape - prices.price() * change - (change == 0 ? 0 : 1);
        BoundedSweep sweep = new BoundedSweep(
                windowProblem.frontier(),
                prices.within(steps),
                windowProblem.within(reducedCosts, units),
                target,
                Frontier.PORT_SETTLED);
        sweep.runExactly(statesPerLayer, Long.MAX_VALUE);
        long states = sweep.total() + locals.length;
        if (sweep.found().length == 0) {
            return new Relaid(legs, 0, states);
        }
        int gain = (int) (shape - sweep.shape() - prices.price() * change);
        return new Relaid(windowProblem.with(sweep.found()), gain, states);
    }
}
