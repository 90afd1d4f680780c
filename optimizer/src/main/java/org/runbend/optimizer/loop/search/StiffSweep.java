package org.runbend.optimizer.loop.search;

import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * One pass over all steps for pipe that cannot turn twice in a row, but for return bends where there is room for them.
 * Each open link carries what its earlier end did: nothing, a bend to the left or right of the link, a bend that is half
 * of a return bend already, or that the link is the port. Cost: turns and prices, then links off the wanted axis.
 */
final class StiffSweep implements LayeredProgram.Rules {
    static final long NONE = Long.MAX_VALUE / 4;

    /** Derived: no loop has so many links off the axis, for a floor has at most so many places. */
    private static final long SCALE = 1 << 16;

    /** Derived: three bits hold the five things that an end can have done. */
    private static final int BITS = 3;

    /** Derived: so many times three bits fit 64. */
    private static final int PER_WORD = 21;

    private static final int STRAIGHT = 0;
    private static final int LEFT = 1;
    private static final int RIGHT = 2;
    private static final int TAKEN = 3;
    private static final int PORT = 4;
    private static final int NO_FIT = -1;

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final LatticeGraph graph;
    private final int offAxis;
    private final LayeredProgram program;
    private final long ceiling;
    private long best = NONE;
    private int bestStep = -1;
    private int bestState = -1;
    private int bestLegs;

    /** A pass that drops states over a ceiling (objective). */
    StiffSweep(BlockProblem blockProblem, long ceiling) {
        this.frontier = blockProblem.frontier();
        this.encoding = blockProblem.encoding();
        this.graph = blockProblem.problem().graph();
        this.offAxis = offAxis(blockProblem.problem().preference().axis());
        this.ceiling = ceiling >= NONE ? NONE : (ceiling + 1) * SCALE - 1;
        int further = (frontier.slotCount() + PER_WORD - 1) / PER_WORD;
        this.program = new LayeredProgram(frontier, encoding, further, 0, Frontier.PORT_OPEN, this);
    }

    private static int offAxis(Axis axis) {
        if (axis == Axis.NONE) {
            return 0;
        }
        return axis == Axis.X ? 10 : 5;
    }

    /** Keeps at most so many states a layer, and stops after so many in all; {@link #truncated} tells whether any were lost. */
    void run(int beam, long mostInAll) {
        program.run(Long.MAX_VALUE, mostInAll, LayeredProgram.Thinning.cheapest(beam));
    }

    @Override
    public boolean opens(StateLayer states, int state) {
        return states.cost(state) < best;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        long whole = program.cost() + cost * SCALE + Integer.bitCount(legs & offAxis);
        if (whole > ceiling) {
            return;
        }
        int port = portHeading(legs, portRank);
        boolean bend = Frontier.isCorner(legs) && port < 0 && !endsAtPort(legs);
        int pairs = bend ? pairs(legs) : 0;
        if (pairs == NO_FIT || pairs > 1) {
            return;
        }
        int step = program.step();
        for (int h = 0; h < 4; h++) {
            if (frontier.isEarlier(step, h)) {
                set(state, frontier.slot(step, h), STRAIGHT);
            }
        }
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1 && !frontier.isEarlier(step, h)) {
                set(
                        state,
                        frontier.slot(step, h),
                        port == h ? PORT : !bend ? STRAIGHT : pairs > 0 ? TAKEN : side(legs, h));
            } else if ((legs >> h & 1) == 1 && bend && pairs > 0) {
                take(state, legs, h);
            }
        }
        program.offer(state, whole, legs);
    }

    @Override
    public void closed(long cost, long rest, int legs) {
        long whole = program.cost() + (cost + rest) * SCALE + Integer.bitCount(legs & offAxis);
        boolean bend = Frontier.isCorner(legs) && !endsAtPort(legs);
        int pairs = bend ? pairs(legs) : 0;
        if (pairs != NO_FIT && pairs <= 1 && whole < best && whole <= ceiling) {
            best = whole;
            bestStep = program.step();
            bestState = program.parent();
            bestLegs = legs;
        }
    }

    /** Heading of the port chosen at this step, or -1. */
    private int portHeading(int legs, int rank) {
        int step = program.step();
        for (int h = 0; h < 4 && rank >= 0; h++) {
            if ((legs >> h & 1) == 1 && frontier.portRank(step, h) == rank) {
                return h;
            }
        }
        return -1;
    }

    private boolean endsAtPort(int legs) {
        int step = program.step();
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1 && frontier.isEarlier(step, h) && before(frontier.slot(step, h)) == PORT) {
                return true;
            }
        }
        return false;
    }

    /** Number of return bends that a bend here makes with bends already laid, or {@link #NO_FIT}. */
    private int pairs(int legs) {
        int step = program.step();
        int pairs = 0;
        for (int h = 0; h < 4; h++) {
            int did = (legs >> h & 1) == 1 && frontier.isEarlier(step, h) ? before(frontier.slot(step, h)) : STRAIGHT;
            if (did == STRAIGHT) {
                continue;
            }
            // the link as its earlier end sees it runs against the heading back to it
            boolean same = did != TAKEN && did == opposite(side(legs, h));
            if (!same || !graph.returnAllowed(frontier.node(step), Heading.ofIndex(h), other(legs, h))) {
                return NO_FIT;
            }
            pairs++;
        }
        return pairs;
    }

    /** The bend before is half of a return bend now, so the node beyond it may not bend. */
    private void take(long[] state, int legs, int h) {
        int step = program.step();
        int partner = frontier.otherEnd(step, h);
        int on = other(legs, h).index();
        if (before(frontier.slot(step, h)) != STRAIGHT && frontier.otherEnd(partner, on) > step) {
            set(state, frontier.slot(partner, on), TAKEN);
        }
    }

    private static Heading other(int legs, int h) {
        return Heading.ofIndex(Integer.numberOfTrailingZeros(legs & ~(1 << h)));
    }

    /** To which side of the link that leaves by a heading the other leg lies. */
    private static int side(int legs, int h) {
        return other(legs, h) == Heading.ofIndex(h).left() ? LEFT : RIGHT;
    }

    private static int opposite(int side) {
        return side == LEFT ? RIGHT : LEFT;
    }

    private int before(int slot) {
        return (int) (program.word(encoding.words() + slot / PER_WORD) >>> (slot % PER_WORD * BITS) & 7);
    }

    private void set(long[] state, int slot, int value) {
        int w = encoding.words() + slot / PER_WORD;
        int shift = slot % PER_WORD * BITS;
        state[w] = (state[w] & ~(7L << shift)) | ((long) value << shift);
    }

    /** Least objective of a loop met, or {@link #NONE}. */
    long best() {
        return best == NONE ? NONE : best / SCALE;
    }

    /** Whether states were lost to a beam or a limit. */
    boolean truncated() {
        return program.truncated();
    }

    /** Legs by step of the best loop. */
    int[] trace() {
        return StateLayer.wayTo(program.layers(), frontier.size(), bestStep, bestLegs, bestState);
    }
}
