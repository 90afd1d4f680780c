package org.runbend.optimizer.loop.search;

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

    private final Frontier frontier;
    private final Packing packing;
    private final UnitCount units;
    private final int unitWord;
    private final Guide guide;
    private final int mostPerLayer;
    private final int words;
    private List<Layer> layers = List.of();

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
        this.unitWord = packing.words();
        this.words = unitWord + 1;
        this.units = new UnitCount(prices, guide, unitWord);
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

    private static int turn(int legs) {
        return Frontier.isCorner(legs) ? 1 : 0;
    }

    private final class Forward implements LayeredProgram.Rules {
        private final long slack = GuidedCost.slack(guide, least);
        private final LayeredProgram program = new LayeredProgram(frontier, packing, 1, 0, Frontier.PORT_SETTLED, this);
        private boolean found;

        boolean run() {
            program.run(mostPerLayer, Long.MAX_VALUE, LayeredProgram.Thinning.NONE);
            layers = program.layers();
            total += program.total();
            return found && !program.cut();
        }

        @Override
        public boolean isOver() {
            return slack < 0;
        }

        @Override
        public void leaves(Layer states) {
            // the pass back looks them all up
        }

        @Override
        public boolean wants(int legs) {
            return GuidedCost.reduced(program.cost()) + guide.reduced(program.step(), legs) <= slack;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (units.count(state, program.step(), legs)) {
                program.offer(
                        state, program.cost() + guide.reduced(program.step(), legs) + GuidedCost.turn(legs), legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            int turns = GuidedCost.turns(program.cost()) + turn(legs);
            if (units.endsWell(program.word(unitWord), program.step()) && turns <= least) {
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
                    turnsSoFar = GuidedCost.turns(current.cost(i));
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
            if (units.count(state, step, legs)) {
                int i = after.find(state, 0);
                hit |= i >= 0 && after.cost(i) == turnsSoFar + turn(legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            hit |= turnsSoFar + turn(legs) == least && units.endsWell(current.keys()[at + unitWord], step);
        }
    }

    private final class Choosing implements LayeredProgram.Rules {
        private final Wish wish;
        private final LayeredProgram program =
                new LayeredProgram(frontier, layers.size(), packing, 1, 1, Frontier.PORT_SETTLED, this);
        private final long[] extended = new long[words + 1];
        private Layer marked = new Layer(words, 1);
        private Layer after = marked;
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
            program.run(4L * mostPerLayer, Long.MAX_VALUE, LayeredProgram.Thinning.NONE);
            total += program.total();
            return bestStep < 0 || program.cut()
                    ? new int[0]
                    : Layer.wayTo(program.layers(), frontier.size(), bestStep, bestLegs, bestState);
        }

        @Override
        public void enters(int step, Layer states) {
            marked = layers.get(step);
            after = step + 1 < layers.size() ? layers.get(step + 1) : new Layer(words, 1);
        }

        @Override
        public boolean opens(Layer states, int state) {
            int at = state * (words + 1);
            turnsSoFar = marked.cost(marked.find(states.keys(), at));
            corners = states.keys()[at + words];
            return true;
        }

        @Override
        public boolean wants(int legs) {
            return guide.reduced(program.step(), legs) < Guide.BARRED;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (!units.count(state, program.step(), legs)) {
                return;
            }
            int i = after.find(state, 0);
            if (i >= 0 && after.cost(i) == turnsSoFar + turn(legs)) {
                System.arraycopy(state, 0, extended, 0, words);
                extended[words] = cornersAfter(legs);
                program.offer(extended, program.cost() + wished(legs), legs);
            }
        }

        @Override
        public void closed(long cost, int legs) {
            long sum = program.cost() + wished(legs);
            if (turnsSoFar + turn(legs) == least
                    && units.endsWell(program.word(unitWord), program.step())
                    && sum < bestWish) {
                bestWish = sum;
                bestStep = program.step();
                bestState = program.parent();
                bestLegs = legs;
            }
        }

        /** A bit for each open link whose earlier end turned; a slot may be freed and taken in one step. */
        private long cornersAfter(int legs) {
            int step = program.step();
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
            int step = program.step();
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
