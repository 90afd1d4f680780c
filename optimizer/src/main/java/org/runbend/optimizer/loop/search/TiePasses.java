package org.runbend.optimizer.loop.search;

import java.util.List;

/**
 * All loops of cheapest shape with exactly so many price units left out, for a window of a loop: two passes find and mark
 * the states on their ways, and each further pass over these alone chooses one by what comes after the objective.
 *
 * <p>The first pass goes forward, bounded by reduced costs and loses nothing (see {@link BoundedSweep}); the second goes back
 * and keeps the states from which a loop of cheapest shape can be finished.
 */
final class TiePasses {
    /** What decides between loops of equal shape cost, least first. */
    interface TieBreak {
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
    private final StateEncoding encoding;
    private final PriceUnits prices;
    private final UnitCount units;
    private final int unitWord;
    private final ReducedCosts reducedCosts;
    private final int mostPerLayer;
    private final int words;
    private List<StateLayer> layers = List.of();

    private long least;
    private long total;

    /**
     * Passes for loops whose shape costs up to so much.
     *
     * @param target cost of the shape at most
     * @param mostPerLayer where a layer would hold more states, nothing is found
     */
    TiePasses(Frontier frontier, PriceUnits prices, ReducedCosts reducedCosts, long target, int mostPerLayer) {
        this.frontier = frontier;
        this.encoding = new StateEncoding(frontier);
        this.unitWord = encoding.words();
        this.words = unitWord + 1;
        this.prices = prices;
        this.units = new UnitCount(prices, reducedCosts, unitWord);
        this.reducedCosts = reducedCosts;
        this.least = target;
        this.mostPerLayer = mostPerLayer;
    }

    /** Finds and marks; false if there were too many states or there is no loop. */
    boolean mark() {
        Forward forward = new Forward();
        return forward.run() && new Backward().run();
    }

    /** States met so far. */
    long total() {
        return total;
    }

    /** Legs by step of the loop that the tie-break puts first; empty if there were too many states. */
    int[] choose(TieBreak tieBreak) {
        return new Choosing(tieBreak).run();
    }

    private long shape(int legs, long cost) {
        return legs == 0 && !prices.isInside() ? 0 : cost;
    }

    private final class Forward implements LayeredProgram.Rules {
        private final long slack = BoundedCost.slack(reducedCosts, least);
        private final LayeredProgram program =
                new LayeredProgram(frontier, encoding, 1, 0, Frontier.PORT_SETTLED, this);
        private boolean found;

        boolean run() {
            program.run(mostPerLayer, Long.MAX_VALUE, LayeredProgram.Thinning.NONE);
            layers = program.layers();
            total += program.total();
            return found && !program.truncated();
        }

        @Override
        public boolean isOver() {
            return slack < 0;
        }

        @Override
        public void leaves(StateLayer states) {
            // the pass back looks them all up
        }

        @Override
        public boolean wants(int legs) {
            return BoundedCost.reduced(program.cost()) + reducedCosts.reduced(program.step(), legs) <= slack;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (units.count(state, program.step(), legs)) {
                program.offer(
                        state,
                        program.cost()
                                + reducedCosts.reduced(program.step(), legs)
                                + BoundedCost.shape(legs, cost, prices),
                        legs);
            }
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            long shape = BoundedCost.closing(program, cost, rest, prices);
            if (units.endsWell(program.word(unitWord), program.step()) && shape <= least) {
                least = shape;
                found = true;
            }
        }
    }

    private final class Backward implements StateExpansion.Sink {
        private StateLayer after = new StateLayer(words, 1);
        private int step;
        private int at;
        private long shapeSoFar;
        private StateLayer current = after;
        private boolean hit;

        boolean run() {
            StateExpansion expansion = new StateExpansion(frontier, encoding, this, 1);
            for (step = layers.size() - 1; step >= 0; step--) {
                current = layers.get(step);
                StateLayer kept = new StateLayer(words, 16);
                for (int i = 0; i < current.size(); i++) {
                    at = i * words;
                    shapeSoFar = BoundedCost.shape(current.cost(i));
                    hit = false;
                    if (shapeSoFar <= least) {
                        expansion.expand(current.keys(), at, step);
                    }
                    if (hit) {
                        kept.offer(current.keys(), at, shapeSoFar, -1, 0);
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
            return !hit && reducedCosts.reduced(step, legs) < ReducedCosts.BARRED;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (units.count(state, step, legs)) {
                int i = after.find(state, 0);
                hit |= i >= 0 && after.cost(i) == shapeSoFar + shape(legs, cost);
            }
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            hit |= shapeSoFar + cost + (prices.isInside() ? rest : 0) == least
                    && units.endsWell(current.keys()[at + unitWord], step);
        }
    }

    private final class Choosing implements LayeredProgram.Rules {
        private final TieBreak tieBreak;
        private final LayeredProgram program =
                new LayeredProgram(frontier, layers.size(), encoding, 1, 1, Frontier.PORT_SETTLED, this);
        private final long[] extended = new long[words + 1];
        private StateLayer marked = new StateLayer(words, 1);
        private StateLayer after = marked;
        private long shapeSoFar;
        private long corners;
        private long bestTieValue = Long.MAX_VALUE;
        private int bestStep = -1;
        private int bestState = -1;
        private int bestLegs;

        Choosing(TieBreak tieBreak) {
            this.tieBreak = tieBreak;
        }

        int[] run() {
            program.run(4L * mostPerLayer, Long.MAX_VALUE, LayeredProgram.Thinning.NONE);
            total += program.total();
            return bestStep < 0 || program.truncated()
                    ? new int[0]
                    : StateLayer.wayTo(program.layers(), frontier.size(), bestStep, bestLegs, bestState);
        }

        @Override
        public void enters(int step, StateLayer states) {
            marked = layers.get(step);
            after = step + 1 < layers.size() ? layers.get(step + 1) : new StateLayer(words, 1);
        }

        @Override
        public boolean opens(StateLayer states, int state) {
            int at = state * (words + 1);
            shapeSoFar = marked.cost(marked.find(states.keys(), at));
            corners = states.keys()[at + words];
            return true;
        }

        @Override
        public boolean wants(int legs) {
            return reducedCosts.reduced(program.step(), legs) < ReducedCosts.BARRED;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (!units.count(state, program.step(), legs)) {
                return;
            }
            int i = after.find(state, 0);
            if (i >= 0 && after.cost(i) == shapeSoFar + shape(legs, cost)) {
                System.arraycopy(state, 0, extended, 0, words);
                extended[words] = cornersAfter(legs);
                program.offer(extended, program.cost() + tieValue(legs), legs);
            }
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            long sum = program.cost() + tieValue(legs);
            if (shapeSoFar + cost + (prices.isInside() ? rest : 0) == least
                    && units.endsWell(program.word(unitWord), program.step())
                    && sum < bestTieValue) {
                bestTieValue = sum;
                bestStep = program.step();
                bestState = program.parent();
                bestLegs = legs;
            }
        }

        /** A bit for each open link whose earlier end turned; a slot may be freed and taken in one step. */
        private long cornersAfter(int legs) {
            int step = program.step();
            long after = corners;
            int counted = Frontier.isCorner(legs) ? legs & tieBreak.links(step) : 0;
            for (int h = 0; h < 4; h++) {
                after &= frontier.isEarlier(step, h) ? ~(1L << frontier.slot(step, h)) : -1;
            }
            for (int h = 0; h < 4; h++) {
                boolean opens = (counted >> h & 1) == 1 && !frontier.isEarlier(step, h);
                after |= opens ? 1L << frontier.slot(step, h) : 0;
            }
            return after;
        }

        private long tieValue(int legs) {
            int step = program.step();
            long sum = tieBreak.node(step, legs);
            int counted = Frontier.isCorner(legs) ? legs & tieBreak.links(step) : 0;
            for (int h = 0; h < 4; h++) {
                boolean both = (counted >> h & 1) == 1
                        && frontier.isEarlier(step, h)
                        && (corners >> frontier.slot(step, h) & 1) == 1;
                sum += both ? tieBreak.link() : 0;
            }
            return sum;
        }
    }
}
