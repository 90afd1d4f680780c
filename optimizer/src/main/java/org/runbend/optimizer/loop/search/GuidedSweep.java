package org.runbend.optimizer.loop.search;

/**
 * One pass of the frontier program for loops of exactly so many price units left out and at most so many turns. Of equal
 * states (units included) the one of fewest turns is kept; states whose reduced costs exceed the slack are dropped.
 *
 * <p>Neither loses anything: a loop within the target has reduced costs within the slack, and if two ways lead to one
 * state, every way to finish the longer finishes the shorter with fewer turns.
 */
final class GuidedSweep implements LayeredProgram.Rules {
    private final Frontier frontier;
    private final Guide guide;
    private final UnitCount units;
    private final int unitWord;
    private final long slack;
    private final int target;
    private final LayeredProgram program;

    private int[] found = {};
    private int foundTurns = Integer.MAX_VALUE;

    GuidedSweep(Setting setting, PriceUnits prices, Guide guide, int target) {
        this(setting.frontier(), prices, guide, target, Frontier.PORT_OPEN);
    }

    /** A pass that begins with that port code. */
    GuidedSweep(Frontier frontier, PriceUnits prices, Guide guide, int target, int portCode) {
        Packing packing = new Packing(frontier.slotCount());
        this.frontier = frontier;
        this.guide = guide;
        this.unitWord = packing.words();
        this.units = new UnitCount(prices, guide, unitWord);
        this.target = target;
        this.slack = GuidedCost.slack(guide, target);
        this.program = new LayeredProgram(frontier, packing, 1, 0, portCode, this);
    }

    /** Runs to the first loop or the end; with too many states in a layer or in all it stops, which {@link #cut} tells. */
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
        return GuidedCost.reduced(program.cost()) + guide.reduced(program.step(), legs) <= slack;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (units.count(state, program.step(), legs)) {
            program.offer(state, program.cost() + guide.reduced(program.step(), legs) + GuidedCost.turn(legs), legs);
        }
    }

    @Override
    public void closed(long cost, int legs) {
        int turns = GuidedCost.turns(program.cost() + GuidedCost.turn(legs));
        if (units.endsWell(program.word(unitWord), program.step()) && turns <= target && turns < foundTurns) {
            foundTurns = turns;
            found = Layer.wayTo(program.layers(), frontier.size(), program.step(), legs, program.parent());
        }
    }

    /** Whether states were lost, so that finding nothing proves nothing. */
    boolean cut() {
        return program.cut();
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
