package org.runbend.optimizer.loop.search;

import org.runbend.optimizer.work.Work;

/**
 * Makes a loop better by {@link LowerLevels} at equal turns and equal price units left out: windows of the lattice in turn are
 * laid anew, each the best of all ways to lay it, until no window of any shape gains.
 *
 * <p>A window knows the corners of the loop beyond its border, so links over the border count as those inside. Equal ways
 * are taken too, each round in another order, so that the loop wanders.
 */
final class TieSearch {
    /** States in a layer of a window: chosen, not measured. */
    private static final int STATES_PER_LAYER = 6_000;

    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final ReducedCosts reducedCosts;
    private final LowerLevels lowerLevels;
    private final WindowTiling tiling;
    private final long mostStates;

    private int[] legs = {};
    private int portLink;
    private long spent;

    /**
     * A search with so much work.
     *
     * @param reducedCosts for the units that the loop leaves out
     * @param mostStates work
     */
    TieSearch(BlockProblem blockProblem, PriceUnits prices, ReducedCosts reducedCosts, long mostStates) {
        this.blockProblem = blockProblem;
        this.prices = prices;
        this.reducedCosts = reducedCosts;
        this.lowerLevels = new LowerLevels(blockProblem.problem().preference(), blockProblem.frontier(), 1);
        this.tiling = new WindowTiling(blockProblem.blockGraph());
        this.mostStates = mostStates;
    }

    /** Legs by step of the best loop met. */
    int[] improve(int[] start) {
        legs = start.clone();
        portLink = blockProblem.portLink(legs);
        int idle = 0;
        for (int round = 0; idle < tiling.shapes() && spent < mostStates; round++) {
            long before = value(legs);
            for (int[] locals : tiling.windows(round)) {
                if (spent < mostStates) {
                    relay(locals);
                }
            }
            idle = value(legs) < before ? 0 : idle + 1;
        }
        return legs.clone();
    }

    private long value(int[] loop) {
        return lowerLevels.of(loop);
    }

    private void relay(int[] locals) {
        Work.check();
        WindowProblem windowProblem = new WindowProblem(blockProblem, legs, locals, portLink);
        spent += locals.length;
        if (!windowProblem.isOpen()) {
            return;
        }
        TiePasses passes = windowProblem.passes(prices, reducedCosts, STATES_PER_LAYER);
        int[] found = passes.mark() ? passes.choose(windowProblem.tieBreak(lowerLevels)) : new int[0];
        spent += passes.total();
        if (found.length > 0) {
            legs = windowProblem.with(found);
        }
    }
}
