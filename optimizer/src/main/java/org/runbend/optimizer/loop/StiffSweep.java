package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.List;

/**
 * One pass of the frontier program for pipe that needs a straight link between two turns. A further word holds one bit for
 * each open link: set if its earlier end turned, so that its later end may not; over the port link it may, as that is not
 * laid.
 */
final class StiffSweep implements Expansion.Sink {
    static final long NONE = Long.MAX_VALUE / 4;

    private final Frontier frontier;
    private final Packing packing;
    private final int words;
    private final List<Layer> layers = new ArrayList<>();
    private long ceiling;
    private long total;
    private boolean cut;
    private Layer growing;
    private Layer current;
    private int parent;
    private int step;
    private long base;
    private long best = NONE;
    private int[] found = {};

    StiffSweep(Setting setting, long ceiling) {
        this.frontier = setting.frontier();
        this.packing = setting.packing();
        this.words = packing.words() + 1;
        this.ceiling = ceiling;
        this.growing = new Layer(words, 1);
        growing.offer(new long[words], 0, 0, -1, 0);
    }

    /** Runs with at most so many states a layer, and loses the dearest of more; {@link #cut} tells. */
    void run(int mostPerLayer, long mostInAll) {
        Expansion expansion = new Expansion(frontier, packing, this, 1);
        for (step = 0; step < frontier.size(); step++) {
            current = growing.size() > mostPerLayer ? growing.cheapest(mostPerLayer) : growing;
            cut |= current != growing;
            total += current.size();
            if (total > mostInAll) {
                cut = true;
                return;
            }
            growing = new Layer(words, current.size() + current.size() / 2);
            for (parent = 0; parent < current.size(); parent++) {
                base = current.cost(parent);
                if (base <= ceiling) {
                    expansion.expand(current.keys(), parent * words, step);
                }
            }
            current.seal();
            current.forgetStates();
            layers.add(current);
        }
    }

    @Override
    public boolean wants(int legs) {
        if (!Frontier.isCorner(legs)) {
            return true;
        }
        long turned = current.keys()[parent * words + words - 1];
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1 && frontier.isEarlier(step, h) && (turned >> frontier.slot(step, h) & 1) == 1) {
                return false;
            }
        }
        return true;
    }

    @Override
    public void next(long[] state, long cost, int legs, int portRank) {
        if (base + cost > ceiling) {
            return;
        }
        long before = state[words - 1];
        state[words - 1] = turned(before, legs, portRank);
        growing.offer(state, 0, base + cost, parent, legs);
        // the other ways to choose a port at this step begin from the same bits
        state[words - 1] = before;
    }

    private long turned(long before, int legs, int portRank) {
        long bits = before;
        for (int h = 0; h < 4; h++) {
            if (frontier.isEarlier(step, h)) {
                bits &= ~(1L << frontier.slot(step, h));
            }
        }
        for (int h = 0; h < 4 && Frontier.isCorner(legs); h++) {
            boolean later = (legs >> h & 1) == 1 && !frontier.isEarlier(step, h);
            boolean port = portRank >= 0 && frontier.portRank(step, h) == portRank;
            bits |= later && !port ? 1L << frontier.slot(step, h) : 0;
        }
        return bits;
    }

    @Override
    public void closed(long cost, int legs) {
        if (base + cost >= best) {
            return;
        }
        best = base + cost;
        ceiling = Math.min(ceiling, best - 1);
        found = new int[frontier.size()];
        found[step] = legs;
        found[step > 0 ? step - 1 : 0] = step > 0 ? current.legs(parent) : legs;
        int state = step > 0 ? current.parent(parent) : -1;
        for (int t = step - 1; t > 0; t--) {
            found[t - 1] = layers.get(t).legs(state);
            state = layers.get(t).parent(state);
        }
    }

    long best() {
        return best;
    }

    boolean cut() {
        return cut;
    }

    /** Legs by step of the best loop; empty if none was met. */
    int[] found() {
        return found.clone();
    }
}
