package org.runbend.optimizer.loop.search;

/**
 * One pass of the frontier program for loops of exactly so many price units left out whose shape costs no more than so much; where
 * short pieces have a price it goes on from each loop met for a cheaper one. Of equal
 * states (units included) the one of cheapest shape is kept; states whose reduced costs exceed the slack are dropped.
 *
 * <p>Neither loses anything: a loop within the target has reduced costs within the slack, and if two ways lead to one
 * state, every way to finish the longer finishes the shorter at a less cost.
 *
 * <p>Source: states dropped by reduced costs as in variable fixing and state-space bounds, Christofides, Mingozzi and Toth,
 * Networks 11(2), 1981; from memory.
 */
final class BoundedSweep implements LayeredProgram.Rules {
    private final Frontier frontier;
    private final ReducedCosts reducedCosts;
    private final PriceUnits prices;
    private final UnitCount units;
    private final int unitWord;
    private final boolean pricesPieces;
    private long slack;
    private long target;
    private final LayeredProgram program;

    private int[] found = {};
    private long foundShape = Long.MAX_VALUE;

    BoundedSweep(BlockProblem blockProblem, PriceUnits prices, ReducedCosts reducedCosts, long target) {
        this(blockProblem.frontier(), prices, reducedCosts, target, Frontier.PORT_OPEN);
    }

    /** A pass that begins with that port code. */
    BoundedSweep(Frontier frontier, PriceUnits prices, ReducedCosts reducedCosts, long target, int portCode) {
        StateEncoding encoding = new StateEncoding(frontier);
        this.frontier = frontier;
        this.reducedCosts = reducedCosts;
        this.unitWord = encoding.words();
        this.prices = prices;
        this.units = new UnitCount(prices, reducedCosts, unitWord);
        this.pricesPieces = frontier.pricesPieces();
        this.target = target;
        this.slack = BoundedCost.slack(reducedCosts, target);
        this.program = new LayeredProgram(frontier, encoding, 1, 0, portCode, this);
    }

    /** Runs to the first loop or the end; with too many states in a layer or in all it stops, which {@link #truncated} tells. */
    void runExactly(int mostPerLayer, long mostInAll) {
        program.run(mostPerLayer, mostInAll, LayeredProgram.Thinning.NONE);
    }

    /** Runs to the first loop or the end; beyond so many states a layer only those of about least reduced cost go on. */
    void runBeam(int beam, long mostInAll) {
        program.run(beam, mostInAll, LayeredProgram.Thinning.leastReduced(beam));
    }

    @Override
    public boolean isOver() {
        return slack < 0 || (found.length > 0 && !pricesPieces);
    }

    @Override
    public boolean wants(int legs) {
        return BoundedCost.reduced(program.cost()) + reducedCosts.reduced(program.step(), legs) <= slack;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (units.count(state, program.step(), legs)) {
            long sum = BoundedCost.after(program, reducedCosts, cost, legs, prices);
            if (BoundedCost.reduced(sum) <= slack && BoundedCost.shape(sum) <= target) {
                program.offer(state, sum, legs);
            }
        }
    }

    @Override
    public void closed(long cost, long rest, int legs) {
        long shape = BoundedCost.closing(program, cost, rest, prices);
        if (units.endsWell(program.word(unitWord), program.step()) && shape <= target && shape < foundShape) {
            foundShape = shape;
            found = StateLayer.wayTo(program.layers(), frontier.size(), program.step(), legs, program.parent());
            if (pricesPieces) {
                target = shape - 1;
                slack = BoundedCost.slack(reducedCosts, target);
            }
        }
    }

    /** Whether states were lost, so that finding nothing proves nothing. */
    boolean truncated() {
        return program.truncated();
    }

    /** Legs by step of a loop within the target; empty if none was met. */
    int[] found() {
        return found.clone();
    }

    /** Cost of its shape. */
    long shape() {
        return foundShape;
    }

    /** States of all layers that were expanded. */
    long total() {
        return program.total() - program.overflow();
    }

    /** How many steps were taken. */
    int steps() {
        return program.step();
    }
}
