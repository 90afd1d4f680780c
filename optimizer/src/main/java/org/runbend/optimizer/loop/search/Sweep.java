package org.runbend.optimizer.loop.search;

import java.util.List;
import org.runbend.optimizer.loop.WorkLimit;

/**
 * One pass over all steps. Keeps, for each state, the least cost and the way there. States whose cost exceeds the
 * ceiling are dropped; with a beam, so are all but the cheapest of each layer.
 */
final class Sweep implements LayeredProgram.Rules {
    static final long NONE = Long.MAX_VALUE / 4;
    /**
     * Most memory for states kept whole for a later pass, in bytes; the way back alone takes five a state; chosen for
     * a heap of 1 GB, not measured.
     */
    private static final long KEPT_WHOLE = 420_000_000;

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final LayeredProgram program;
    private long ceiling;
    private boolean whole = true;

    private long best = NONE;
    private int bestStep = -1;
    private int bestState = -1;
    private int bestLegs;

    Sweep(Frontier frontier, StateEncoding encoding, long ceiling) {
        this.frontier = frontier;
        this.encoding = encoding;
        this.ceiling = ceiling;
        this.program = new LayeredProgram(frontier, encoding, 0, 0, Frontier.PORT_OPEN, this);
    }

    /** Runs with at most so many states a layer; the answer is a loop, not a proof, if {@link #truncated}. */
    void runBeam(int beam) {
        program.run(Long.MAX_VALUE, Long.MAX_VALUE, LayeredProgram.Thinning.cheapest(beam));
    }

    /** Runs without loss, or stops at a limit, which {@link #truncated} tells. */
    void runExactly(WorkLimit limit) {
        program.run(limit.statesPerLayer(), limit.totalStates(), LayeredProgram.Thinning.NONE);
    }

    @Override
    public boolean opens(StateLayer states, int state) {
        return states.cost(state) <= ceiling;
    }

    @Override
    public void leaves(StateLayer states) {
        states.seal();
        if (whole && program.total() * (8L * encoding.words() + 13) > KEPT_WHOLE) {
            whole = false;
            program.layers().forEach(StateLayer::forgetStates);
        } else if (!whole) {
            states.forgetStates();
        }
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        long sum = program.cost() + cost;
        if (sum <= ceiling) {
            program.offer(state, sum, legs);
        }
    }

    @Override
    public void closed(long cost, long rest, int legs) {
        long sum = program.cost() + cost + rest;
        if (sum < best) {
            best = sum;
            bestStep = program.step();
            bestState = program.parent();
            bestLegs = legs;
            ceiling = Math.min(ceiling, best);
        }
    }

    /** Least cost of a loop met, or {@link #NONE}. */
    long best() {
        return best;
    }

    /** Whether states were lost to a beam or a limit. */
    boolean truncated() {
        return program.truncated();
    }

    /** Whether all layers still hold their states. */
    boolean whole() {
        return whole;
    }

    /** States in all layers. */
    long total() {
        return program.total();
    }

    /** The states before each step. */
    List<StateLayer> layers() {
        return program.layers();
    }

    /** Legs by step of the best loop. */
    int[] trace() {
        return StateLayer.wayTo(program.layers(), frontier.size(), bestStep, bestLegs, bestState);
    }
}
