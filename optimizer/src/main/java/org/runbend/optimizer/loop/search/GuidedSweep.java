package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/**
 * One pass of the frontier program for loops of exactly so many price units left out and at most so many turns. Of equal
 * states (units included) the one of fewest turns is kept; states whose reduced costs exceed the slack are dropped.
 *
 * <p>Neither loses anything: a loop within the target has reduced costs within the slack, and if two ways lead to one
 * state, every way to finish the longer finishes the shorter with fewer turns.
 */
final class GuidedSweep implements Expansion.Sink {
    /** Turns above, reduced cost below. */
    private static final int TURN_SHIFT = 40;

    private static final long REDUCED = (1L << TURN_SHIFT) - 1;

    /** About two turns: many states cost nearly the same and would else all go the same way into one dead end. */
    private static final int BLUR = (1 << 21) - 1;

    private final Frontier frontier;
    private final Packing packing;
    private final PriceUnits prices;
    private final Guide guide;
    private final long slack;
    private final int target;
    private final int portCode;
    private final List<Layer> layers = new ArrayList<>();

    private Layer growing;
    private int step;
    private int parent;
    private long base;
    private long total;
    private boolean cut;
    private int[] found = {};
    private int foundTurns = Integer.MAX_VALUE;

    GuidedSweep(Setting setting, PriceUnits prices, Guide guide, int target) {
        this(setting.frontier(), prices, guide, target, Frontier.PORT_OPEN);
    }

    /** A pass that begins with that port code. */
    GuidedSweep(Frontier frontier, PriceUnits prices, Guide guide, int target, int portCode) {
        this.frontier = frontier;
        this.packing = new Packing(frontier.slotCount());
        this.prices = prices;
        this.guide = guide;
        this.target = target;
        this.portCode = portCode;
        this.slack = Math.min(guide.slack(target), REDUCED);
        this.growing = new Layer(packing.words() + 1, 1);
    }

    /** Runs to the first loop or the end; with too many states in a layer or in all it stops, which {@link #cut} tells. */
    void runExactly(int mostPerLayer, long mostInAll) {
        run(mostPerLayer, mostInAll, false);
    }

    /** Runs to the first loop or the end; beyond so many states a layer only those of about least reduced cost go on. */
    void runBeam(int beam, long mostInAll) {
        run(beam, mostInAll, true);
    }

    private void run(int mostPerLayer, long mostInAll, boolean beam) {
        Expansion expansion = new Expansion(frontier, packing, this, 1);
        if (slack >= 0) {
            long[] start = new long[packing.words() + 1];
            Packing.setCode(start, portCode);
            growing.offer(start, 0, 0, -1, 0);
        }
        for (step = 0; step < frontier.size() && growing.size() > 0 && found.length == 0; step++) {
            Cancelling.check();
            Layer current = growing;
            if (growing.size() > mostPerLayer) {
                current = beam ? growing.cheapestBlurred(mostPerLayer, REDUCED, BLUR) : new Layer(1, 0);
            }
            cut |= current != growing;
            total += current.size();
            if (total > mostInAll || (cut && !beam)) {
                cut = true;
                return;
            }
            growing = new Layer(packing.words() + 1, 2 * current.size());
            layers.add(current);
            for (parent = 0; parent < current.size(); parent++) {
                base = current.cost(parent);
                expansion.expand(current.keys(), parent * (packing.words() + 1), step);
            }
            current.seal();
            current.forgetStates();
        }
    }

    @Override
    public boolean wants(int legs) {
        return (base & REDUCED) + guide.reduced(step, legs) <= slack;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        long units = state[packing.words()];
        if (legs == 0) {
            units += prices.units(step);
            state[packing.words()] = units;
        }
        if (units > guide.units() || units + prices.unitsFrom(step + 1) < guide.units()) {
            return;
        }
        growing.offer(state, 0, base + guide.reduced(step, legs) + turn(legs), parent, legs);
    }

    private static long turn(int legs) {
        return Frontier.isCorner(legs) ? 1L << TURN_SHIFT : 0;
    }

    @Override
    public void closed(long cost, int legs) {
        long units = layers.get(step).keys()[parent * (packing.words() + 1) + packing.words()];
        int turns = (int) ((base + turn(legs)) >> TURN_SHIFT);
        if (units + prices.unitsFrom(step + 1) == guide.units() && turns <= target && turns < foundTurns) {
            foundTurns = turns;
            found = Layer.wayTo(layers, frontier.size(), step, legs, parent);
        }
    }

    /** Whether states were lost, so that finding nothing proves nothing. */
    boolean cut() {
        return cut;
    }

    /** Legs by step of a loop within the target; empty if none was met. */
    int[] found() {
        return found.clone();
    }

    int turns() {
        return foundTurns;
    }

    long total() {
        return total;
    }

    /** How many steps were taken. */
    int steps() {
        return step;
    }
}
