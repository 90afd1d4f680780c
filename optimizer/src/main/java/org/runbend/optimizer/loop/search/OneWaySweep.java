package org.runbend.optimizer.loop.search;

/**
 * One of two passes that meet: the states whose reduced costs stay within a share of the slack, all of them kept for the
 * join. As {@link BoundedSweep} it keeps of equal states the one of fewest turns, then of least reduced cost.
 */
final class OneWaySweep implements LayeredProgram.Rules {
    /** Takes a state that went beyond the share, but not beyond the slack. */
    interface Beyond {
        /** The state before a step, reached by legs of the step before from a parent; whether the search is over. */
        boolean met(long[] state, long cost, int step, int legs, int parent);
    }

    /** Is shown the states before each step; the way to them can be asked for. */
    interface Viewer {
        void see(int step, StateLayer states);
    }

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final ReducedCosts reducedCosts;
    private final PriceUnits prices;
    private final UnitCount units;
    private final boolean pricesPieces;
    private final long share;
    private final boolean kept;
    private final Beyond beyond;
    private final LayeredProgram program;
    private Viewer viewer = (step, states) -> {};

    private long slack;
    private long target;
    private long ceiling = Long.MAX_VALUE;
    private boolean over;
    private int[] found = {};
    private long foundShape = Long.MAX_VALUE;

    /**
     * @param share of the reduced costs that a state may have
     * @param kept whether the states are looked up later
     * @param beyond takes what exceeds the share; null if nothing else is wanted
     */
    OneWaySweep(
            Frontier frontier,
            PriceUnits prices,
            ReducedCosts reducedCosts,
            long target,
            long share,
            boolean kept,
            Beyond beyond) {
        this.frontier = frontier;
        this.encoding = new StateEncoding(frontier);
        this.reducedCosts = reducedCosts;
        this.prices = prices;
        this.units = new UnitCount(prices, reducedCosts, encoding.words());
        this.pricesPieces = frontier.pricesPieces();
        this.target = target;
        this.share = share;
        this.slack = beyond == null ? share : BoundedCost.slack(reducedCosts, target);
        this.kept = kept;
        this.beyond = beyond;
        this.program = new LayeredProgram(frontier, encoding, 1, 0, Frontier.PORT_OPEN, this);
    }

    /** Runs to the end, or to the first loop; with too many states in a layer or in all it stops, which {@link #truncated} tells. */
    void run(int mostPerLayer, long mostInAll) {
        program.run(mostPerLayer, mostInAll, LayeredProgram.Thinning.NONE);
    }

    /** Runs to the end or the first loop; beyond so many states a layer only those of about least reduced cost go on. */
    void runBeam(int beam, Viewer newViewer) {
        viewer = newViewer;
        program.run(beam, Long.MAX_VALUE, LayeredProgram.Thinning.leastReduced(beam));
    }

    @Override
    public boolean isOver() {
        return over;
    }

    @Override
    public void enters(int step, StateLayer states) {
        viewer.see(step, states);
    }

    @Override
    public boolean opens(StateLayer states, int state) {
        return !over;
    }

    @Override
    public void leaves(StateLayer states) {
        states.seal();
        if (!kept) {
            states.forgetStates();
        }
    }

    @Override
    public boolean wants(int legs) {
        return !over && BoundedCost.reduced(program.cost()) + reducedCosts.reduced(program.step(), legs) <= slack;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (!units.count(state, program.step(), legs)) {
            return;
        }
        long sum = BoundedCost.after(program, reducedCosts, cost, legs, prices);
        if (pricesPieces && (BoundedCost.reduced(sum) > slack || BoundedCost.shape(sum) > ceiling)) {
            return;
        }
        if (BoundedCost.reduced(sum) <= share) {
            program.offer(state, sum, legs);
        } else if (beyond != null) {
            over |= beyond.met(state, sum, program.step() + 1, legs, program.parent());
        }
    }

    @Override
    public void closed(long cost, long rest, int legs) {
        long shape = BoundedCost.closing(program, cost, rest, prices);
        if (units.endsWell(program.word(encoding.words()), program.step()) && shape <= target) {
            found = wayTo(program.step(), legs, program.parent());
            foundShape = shape;
            over = !pricesPieces;
            beat(shape);
        }
    }

    /** From now on only loops of cheaper shape than this are looked for. */
    void beat(long shape) {
        if (pricesPieces && shape <= ceiling) {
            ceiling = shape - 1;
            target = Math.min(target, ceiling);
            slack = Math.min(slack, BoundedCost.slack(reducedCosts, ceiling));
            over |= slack < 0;
        }
    }

    /** Cost of the shape of the loop that this half alone has met. */
    long foundShape() {
        return foundShape;
    }

    /** Legs by step of the way to a state and one step on; 0 for the later ones. */
    int[] wayTo(int lastStep, int lastLegs, int state) {
        return StateLayer.wayTo(program.layers(), frontier.size(), lastStep, lastLegs, state);
    }

    /** Legs by step of the way to the state before a step. */
    int[] wayTo(int before, int state) {
        return before == 0
                ? new int[frontier.size()]
                : wayTo(
                        before - 1,
                        program.layers().get(before).legs(state),
                        program.layers().get(before).parent(state));
    }

    /** The states before a step; none if the pass did not come so far. */
    StateLayer before(int t) {
        return t < program.layers().size() ? program.layers().get(t) : new StateLayer(encoding.words() + 1, 1);
    }

    StateEncoding encoding() {
        return encoding;
    }

    /** Whether states were lost, so that finding nothing proves nothing. */
    boolean truncated() {
        return program.truncated();
    }

    /** Legs by step of a loop within the target that this half alone has met; empty if none. */
    int[] found() {
        return found.clone();
    }

    long total() {
        return program.total();
    }
}
