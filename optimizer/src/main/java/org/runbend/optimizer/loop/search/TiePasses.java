package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/**
 * All loops of least turns with exactly so many price units left out, for a window of a loop: two passes find and mark
 * the states on their ways, and each further pass over these alone chooses one by other wishes.
 *
 * <p>The first pass goes forward guided by reduced costs and loses nothing (see {@link GuidedSweep}); the second goes back
 * and keeps the states from which a loop of least turns can be finished.
 */
final class TiePasses {
    /** What decides between loops of equal turns, least first. */
    interface Wish {
        /** What a node with those legs adds. */
        long node(int step, int legs);

        /** What a link between two corners adds. */
        default long link() {
            return 0;
        }

        /** Mask of the headings over which links between corners count. */
        default int links(int step) {
            return 0;
        }
    }

    private static final int TURN_SHIFT = 40;
    private static final long REDUCED = (1L << TURN_SHIFT) - 1;

    private final Frontier frontier;
    private final Packing packing;
    private final PriceUnits prices;
    private final Guide guide;
    private final int mostPerLayer;
    private final int words;
    private final List<Layer> layers = new ArrayList<>();

    private int least;
    private long total;

    /**
     * Passes for loops of up to so many turns.
     *
     * @param target turns at most
     * @param mostPerLayer where a layer would hold more states, nothing is found
     */
    TiePasses(Frontier frontier, PriceUnits prices, Guide guide, int target, int mostPerLayer) {
        this.frontier = frontier;
        this.packing = new Packing(frontier.slotCount());
        this.words = packing.words() + 1;
        this.prices = prices;
        this.guide = guide;
        this.least = target;
        this.mostPerLayer = mostPerLayer;
    }

    /** Finds and marks; false if there were too many states or there is no loop. */
    boolean mark() {
        Forward forward = new Forward();
        return forward.run() && new Backward().run();
    }

    /** Least turns. */
    int turns() {
        return least;
    }

    /** States met so far. */
    long total() {
        return total;
    }

    /** Legs by step of the loop that the wish puts first; empty if there were too many states. */
    int[] choose(Wish wish) {
        return new Choosing(wish).run();
    }

    /** Units that a state has left out so far, or -1 if it cannot end with those asked for. */
    private long unitsAfter(long[] state, int step, int legs) {
        long units = state[packing.words()] + (legs == 0 ? prices.units(step) : 0);
        boolean fits = units <= guide.units() && units + prices.unitsFrom(step + 1) >= guide.units();
        return fits ? units : -1;
    }

    private boolean endsWell(long[] keys, int at, int step) {
        return keys[at + packing.words()] + prices.unitsFrom(step + 1) == guide.units();
    }

    private static int turn(int legs) {
        return Frontier.isCorner(legs) ? 1 : 0;
    }

    private final class Forward implements Expansion.Sink {
        private final long slack = Math.min(guide.slack(least), REDUCED);
        private Layer growing = new Layer(words, 1);
        private Layer current = growing;
        private int step;
        private int parent;
        private boolean found;

        boolean run() {
            long[] start = new long[words];
            Packing.setCode(start, Frontier.PORT_SETTLED);
            growing.offer(start, 0, 0, -1, 0);
            Expansion expansion = new Expansion(frontier, packing, this, 1);
            for (step = 0; step < frontier.size() && growing.size() > 0 && slack >= 0; step++) {
                Cancelling.check();
                current = growing;
                total += current.size();
                if (current.size() > mostPerLayer) {
                    return false;
                }
                layers.add(current);
                growing = new Layer(words, 2 * current.size());
                for (parent = 0; parent < current.size(); parent++) {
                    expansion.expand(current.keys(), parent * words, step);
                }
            }
            return found;
        }

        @Override
        public boolean wants(int legs) {
            return (current.cost(parent) & REDUCED) + guide.reduced(step, legs) <= slack;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            long units = unitsAfter(state, step, legs);
            if (units >= 0) {
                state[packing.words()] = units;
                long turns = (long) turn(legs) << TURN_SHIFT;
                growing.offer(state, 0, current.cost(parent) + guide.reduced(step, legs) + turns, parent, legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            int turns = (int) (current.cost(parent) >> TURN_SHIFT) + turn(legs);
            if (endsWell(current.keys(), parent * words, step) && turns <= least) {
                least = turns;
                found = true;
            }
        }
    }

    private final class Backward implements Expansion.Sink {
        private Layer after = new Layer(words, 1);
        private int step;
        private int at;
        private long turnsSoFar;
        private Layer current = after;
        private boolean hit;

        boolean run() {
            Expansion expansion = new Expansion(frontier, packing, this, 1);
            for (step = layers.size() - 1; step >= 0; step--) {
                current = layers.get(step);
                Layer kept = new Layer(words, 16);
                for (int i = 0; i < current.size(); i++) {
                    at = i * words;
                    turnsSoFar = current.cost(i) >> TURN_SHIFT;
                    hit = false;
                    if (turnsSoFar <= least) {
                        expansion.expand(current.keys(), at, step);
                    }
                    if (hit) {
                        kept.offer(current.keys(), at, turnsSoFar, -1, 0);
                    }
                }
                total += current.size();
                layers.set(step, kept);
                after = kept;
            }
            return true;
        }

        @Override
        public boolean wants(int legs) {
            return !hit && guide.reduced(step, legs) < Guide.BARRED;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            long units = unitsAfter(state, step, legs);
            if (units >= 0) {
                state[packing.words()] = units;
                int i = after.find(state, 0);
                hit |= i >= 0 && after.cost(i) == turnsSoFar + turn(legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            hit |= turnsSoFar + turn(legs) == least && endsWell(current.keys(), at, step);
        }
    }

    private final class Choosing implements Expansion.Sink {
        private final Wish wish;
        private final List<Layer> ways = new ArrayList<>();
        private final long[] extended = new long[words + 1];
        private Layer growing = new Layer(words + 1, 1);
        private Layer current = growing;
        private int step;
        private int parent;
        private long turnsSoFar;
        private long corners;
        private long bestWish = Long.MAX_VALUE;
        private int bestStep = -1;
        private int bestState = -1;
        private int bestLegs;

        Choosing(Wish wish) {
            this.wish = wish;
        }

        int[] run() {
            Packing.setCode(extended, Frontier.PORT_SETTLED);
            growing.offer(extended, 0, 0, -1, 0);
            Expansion expansion = new Expansion(frontier, packing, this, 1);
            for (step = 0; step < layers.size() && growing.size() > 0; step++) {
                current = growing;
                total += current.size();
                if (current.size() > 4L * mostPerLayer) {
                    return new int[0];
                }
                ways.add(current);
                growing = new Layer(words + 1, 2 * current.size());
                Layer marked = layers.get(step);
                for (parent = 0; parent < current.size(); parent++) {
                    int at = parent * (words + 1);
                    turnsSoFar = marked.cost(marked.find(current.keys(), at));
                    corners = current.keys()[at + words];
                    expansion.expand(current.keys(), at, step);
                }
            }
            return bestStep < 0 ? new int[0] : Layer.wayTo(ways, frontier.size(), bestStep, bestLegs, bestState);
        }

        @Override
        public boolean wants(int legs) {
            return guide.reduced(step, legs) < Guide.BARRED;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            long units = unitsAfter(state, step, legs);
            if (units < 0 || step + 1 == layers.size()) {
                return;
            }
            state[packing.words()] = units;
            Layer after = layers.get(step + 1);
            int i = after.find(state, 0);
            if (i >= 0 && after.cost(i) == turnsSoFar + turn(legs)) {
                System.arraycopy(state, 0, extended, 0, words);
                extended[words] = cornersAfter(legs);
                growing.offer(extended, 0, current.cost(parent) + wished(legs), parent, legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            long sum = current.cost(parent) + wished(legs);
            if (turnsSoFar + turn(legs) == least
                    && endsWell(current.keys(), parent * (words + 1), step)
                    && sum < bestWish) {
                bestWish = sum;
                bestStep = step;
                bestState = parent;
                bestLegs = legs;
            }
        }

        /** A bit for each open link whose earlier end turned; a slot may be freed and taken in one step. */
        private long cornersAfter(int legs) {
            long after = corners;
            int counted = Frontier.isCorner(legs) ? legs & wish.links(step) : 0;
            for (int h = 0; h < 4; h++) {
                after &= frontier.isEarlier(step, h) ? ~(1L << frontier.slot(step, h)) : -1;
            }
            for (int h = 0; h < 4; h++) {
                boolean opens = (counted >> h & 1) == 1 && !frontier.isEarlier(step, h);
                after |= opens ? 1L << frontier.slot(step, h) : 0;
            }
            return after;
        }

        private long wished(int legs) {
            long sum = wish.node(step, legs);
            int counted = Frontier.isCorner(legs) ? legs & wish.links(step) : 0;
            for (int h = 0; h < 4; h++) {
                boolean both = (counted >> h & 1) == 1
                        && frontier.isEarlier(step, h)
                        && (corners >> frontier.slot(step, h) & 1) == 1;
                sum += both ? wish.link() : 0;
            }
            return sum;
        }
    }
}
