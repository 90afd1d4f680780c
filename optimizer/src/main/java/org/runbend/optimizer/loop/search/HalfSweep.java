package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/**
 * One of two passes that meet: the states whose reduced costs stay within a share of the slack, all of them kept for the
 * join. As {@link GuidedSweep} it keeps of equal states the one of fewest turns, then of least reduced cost.
 */
final class HalfSweep implements Expansion.Sink {
    /** Turns above, reduced cost below. */
    static final int TURN_SHIFT = 40;

    static final long REDUCED = (1L << TURN_SHIFT) - 1;

    /** About two turns: many states cost nearly the same and would else all go the same way into one dead end. */
    private static final int BLUR = (1 << 21) - 1;

    /** Takes a state that went beyond the share, but not beyond the slack. */
    interface Beyond {
        /** The state before a step, reached by legs of the step before from a parent; whether the search is over. */
        boolean met(long[] state, long cost, int step, int legs, int parent);
    }

    /** Is shown the states before each step; the way to them can be asked for. */
    interface Viewer {
        void see(int step, Layer states);
    }

    private final Frontier frontier;
    private final Packing packing;
    private final Expansion expansion;
    private final PriceUnits prices;
    private final Guide guide;
    private final int target;
    private final long share;
    private final long slack;
    private final boolean kept;
    private final Beyond beyond;
    private final List<Layer> layers = new ArrayList<>();

    private Layer growing = new Layer(1, 0);
    private int step;
    private int parent;
    private long base;
    private long total;
    private boolean cut;
    private boolean over;
    private int[] found = {};

    /**
     * @param share of the reduced costs that a state may have
     * @param kept whether the states are looked up later
     * @param beyond takes what exceeds the share; null if nothing else is wanted
     */
    HalfSweep(Frontier frontier, PriceUnits prices, Guide guide, int target, long share, boolean kept, Beyond beyond) {
        this.frontier = frontier;
        this.packing = new Packing(frontier.slotCount());
        this.prices = prices;
        this.guide = guide;
        this.target = target;
        this.share = share;
        this.slack = beyond == null ? share : Math.min(guide.slack(target), REDUCED);
        this.kept = kept;
        this.beyond = beyond;
        this.expansion = new Expansion(frontier, packing, this, 1);
    }

    /** Runs to the end, or to the first loop; with too many states in a layer or in all it stops, which {@link #cut} tells. */
    void run(int mostPerLayer, long mostInAll) {
        start();
        while (goesOn()) {
            total += growing.size();
            if (growing.size() > mostPerLayer || total > mostInAll) {
                cut = true;
                return;
            }
            layers.add(growing);
            decide(growing);
        }
    }

    /** Runs to the end or the first loop; beyond so many states a layer only those of about least reduced cost go on. */
    void runBeam(int beam, Viewer viewer) {
        start();
        while (goesOn()) {
            Layer thinned = growing.size() > beam ? growing.cheapestBlurred(beam, REDUCED, BLUR) : growing;
            cut |= thinned != growing;
            total += thinned.size();
            layers.add(thinned);
            viewer.see(step, thinned);
            decide(thinned);
        }
    }

    private void start() {
        growing = new Layer(packing.words() + 1, 1);
        growing.offer(new long[packing.words() + 1], 0, 0, -1, 0);
    }

    private boolean goesOn() {
        Cancelling.check();
        return step < frontier.size() && growing.size() > 0 && !over;
    }

    /** Decides the node of the step in all states of a layer. */
    private void decide(Layer current) {
        growing = new Layer(packing.words() + 1, 2 * current.size());
        for (parent = 0; parent < current.size() && !over; parent++) {
            base = current.cost(parent);
            expansion.expand(current.keys(), parent * (packing.words() + 1), step);
        }
        current.seal();
        if (!kept) {
            current.forgetStates();
        }
        step++;
    }

    @Override
    public boolean wants(int legs) {
        return !over && (base & REDUCED) + guide.reduced(step, legs) <= slack;
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
        long sum = base + guide.reduced(step, legs) + turn(legs);
        if ((sum & REDUCED) <= share) {
            growing.offer(state, 0, sum, parent, legs);
        } else if (beyond != null) {
            over |= beyond.met(state, sum, step + 1, legs, parent);
        }
    }

    private static long turn(int legs) {
        return Frontier.isCorner(legs) ? 1L << TURN_SHIFT : 0;
    }

    @Override
    public void closed(long cost, int legs) {
        long units = layers.get(step).keys()[parent * (packing.words() + 1) + packing.words()];
        int turns = (int) ((base + turn(legs)) >> TURN_SHIFT);
        if (units + prices.unitsFrom(step + 1) == guide.units() && turns <= target) {
            found = wayTo(step, legs, parent);
            over = true;
        }
    }

    /** Legs by step of the way to a state and one step on; 0 for the later ones. */
    int[] wayTo(int lastStep, int lastLegs, int state) {
        return Layer.wayTo(layers, frontier.size(), lastStep, lastLegs, state);
    }

    /** Legs by step of the way to the state before a step. */
    int[] wayTo(int before, int state) {
        return before == 0
                ? new int[frontier.size()]
                : wayTo(
                        before - 1,
                        layers.get(before).legs(state),
                        layers.get(before).parent(state));
    }

    /** The states before a step; none if the pass did not come so far. */
    Layer before(int t) {
        return t < layers.size() ? layers.get(t) : new Layer(packing.words() + 1, 1);
    }

    Packing packing() {
        return packing;
    }

    /** Whether states were lost, so that finding nothing proves nothing. */
    boolean cut() {
        return cut;
    }

    /** Legs by step of a loop within the target that this half alone has met; empty if none. */
    int[] found() {
        return found.clone();
    }

    long total() {
        return total;
    }
}
