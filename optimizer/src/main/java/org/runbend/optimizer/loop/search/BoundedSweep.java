package org.runbend.optimizer.loop.search;

/**
 * One pass of the frontier program for loops of exactly so many price units left out and at most so many turns. Of equal
 * states (units included) the one of fewest turns is kept; states whose reduced costs exceed the slack are dropped.
 *
 * <p>Neither loses anything: a loop within the target has reduced costs within the slack, and if two ways lead to one
 * state, every way to finish the longer finishes the shorter with fewer turns.
 *
 * <p>Source: states dropped by reduced costs as in variable fixing and state-space bounds, Christofides, Mingozzi and Toth,
 * Networks 11(2), 1981; from memory.
 */
final class BoundedSweep implements LayeredProgram.Rules {
    private final Frontier frontier;
    private final ReducedCosts reducedCosts;
    private final UnitCount units;
    private final int unitWord;
    private final long slack;
    private final int target;
    private final LayeredProgram program;

    private int[] found = {};
    private int foundTurns = Integer.MAX_VALUE;

    BoundedSweep(BlockProblem blockProblem, PriceUnits prices, ReducedCosts reducedCosts, int target) {
        this(blockProblem.frontier(), prices, reducedCosts, target, Frontier.PORT_OPEN);
    }

    /** A pass that begins with that port code. */
    BoundedSweep(Frontier frontier, PriceUnits prices, ReducedCosts reducedCosts, int target, int portCode) {
        StateEncoding encoding = new StateEncoding(frontier.slotCount());
        this.frontier = frontier;
        this.reducedCosts = reducedCosts;
        this.unitWord = encoding.words();
        this.units = new UnitCount(prices, reducedCosts, unitWord);
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
        return found.length > 0 || slack < 0;
    }

    @Override
    public boolean wants(int legs) {
        return BoundedCost.reduced(program.cost()) + reducedCosts.reduced(program.step(), legs) <= slack;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (units.count(state, program.step(), legs)) {
            program.offer(
                    state, program.cost() + reducedCosts.reduced(program.step(), legs) + BoundedCost.turn(legs), legs);
        }
    }

    @Override
    public void closed(long cost, int legs) {
        int turns = BoundedCost.turns(program.cost() + BoundedCost.turn(legs));
        if (units.endsWell(program.word(unitWord), program.step()) && turns <= target && turns < foundTurns) {
            foundTurns = turns;
            found = StateLayer.wayTo(program.layers(), frontier.size(), program.step(), legs, program.parent());
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

    int turns() {
        return foundTurns;
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
