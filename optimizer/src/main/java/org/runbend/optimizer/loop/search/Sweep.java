package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.loop.WorkLimit;

/**
 * One pass over all steps. Keeps, for each state, the least cost and the way there. States whose cost exceeds the
 * ceiling are dropped; with a beam, so are all but the cheapest of each layer.
 */
final class Sweep implements Expansion.Sink {
    static final long NONE = Long.MAX_VALUE / 4;
    /** Most memory for states kept whole for a later pass, in bytes; the way back alone takes five a state. */
    private static final long KEPT_WHOLE = 420_000_000;

    private final Frontier frontier;
    private final Packing packing;
    private final List<Layer> layers = new ArrayList<>();
    private long ceiling;
    private long total;
    private boolean whole = true;
    private boolean cut;

    private Layer growing;
    private int parent;
    private int step;
    private long base;
    private long best = NONE;
    private int bestStep = -1;
    private int bestState = -1;
    private int bestLegs;

    Sweep(Frontier frontier, Packing packing, long ceiling) {
        this.frontier = frontier;
        this.packing = packing;
        this.ceiling = ceiling;
        this.growing = new Layer(packing.words(), 1);
        growing.offer(new long[packing.words()], 0, 0, -1, 0);
    }

    /** Runs with at most so many states a layer; the answer is a loop, not a proof, if {@link #cut}. */
    void runBeam(int beam) {
        run(Long.MAX_VALUE, Long.MAX_VALUE, beam);
    }

    /** Runs without loss, or stops at a limit, which {@link #cut} tells. */
    void runExactly(WorkLimit limit) {
        run(limit.statesPerLayer(), limit.totalStates(), Integer.MAX_VALUE);
    }

    private void run(long mostPerLayer, long mostInAll, int beam) {
        Expansion expansion = new Expansion(frontier, packing, this);
        for (step = 0; step < frontier.size(); step++) {
            Cancelling.check();
            Layer current = growing.size() > beam ? growing.cheapest(beam) : growing;
            cut |= current != growing;
            total += current.size();
            if (current.size() > mostPerLayer || total > mostInAll) {
                cut = true;
                return;
            }
            growing = new Layer(packing.words(), current.size() + current.size() / 2);
            for (parent = 0; parent < current.size(); parent++) {
                base = current.cost(parent);
                if (base <= ceiling) {
                    expansion.expand(current.keys(), parent * packing.words(), step);
                }
            }
            keep(current);
        }
    }

    private void keep(Layer current) {
        current.seal();
        layers.add(current);
        if (whole && total * (8L * packing.words() + 13) > KEPT_WHOLE) {
            whole = false;
            layers.forEach(Layer::forgetStates);
        } else if (!whole) {
            current.forgetStates();
        }
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (base + cost <= ceiling) {
            growing.offer(state, 0, base + cost, parent, legs);
        }
    }

    @Override
    public void closed(long cost, int legs) {
        if (base + cost < best) {
            best = base + cost;
            bestStep = step;
            bestState = parent;
            bestLegs = legs;
            ceiling = Math.min(ceiling, best);
        }
    }

    /** Least cost of a loop met, or {@link #NONE}. */
    long best() {
        return best;
    }

    /** Whether states were lost to a beam or a limit. */
    boolean cut() {
        return cut;
    }

    /** Whether all layers still hold their states. */
    boolean whole() {
        return whole;
    }

    long total() {
        return total;
    }

    /** The states before each step. */
    List<Layer> layers() {
        return layers;
    }

    /** Legs by step of the best loop. */
    int[] trace() {
        return Layer.wayTo(layers, frontier.size(), bestStep, bestLegs, bestState);
    }
}
