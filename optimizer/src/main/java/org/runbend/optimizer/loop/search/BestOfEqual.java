package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.loop.Preference;

/**
 * Chooses among all loops of least objective by {@link LowerLevels}, then lowest port rank, then the first met.
 *
 * <p>Method: a backward pass marks the states on ways of least cost; a forward pass over these alone carries one more bit
 * per open link, whether its earlier end turned, so that a link between two corners (a return bend or an offset) is seen
 * when its later end is decided. If the bits make too many states, length is left out of the comparison.
 */
final class BestOfEqual {
    /** States in all layers of a pass: chosen, not measured. */
    private static final int MOST_STATES = 3_000_000;

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final LowerLevels lowerLevels;

    BestOfEqual(Frontier frontier, StateEncoding encoding, Preference preference) {
        this.frontier = frontier;
        this.encoding = encoding;
        long ranks = 1;
        for (int t = 0; t < frontier.size(); t++) {
            for (int h = 0; h < 4; h++) {
                ranks = Math.max(ranks, frontier.portRank(t, h) + 1L);
            }
        }
        this.lowerLevels = new LowerLevels(preference, frontier, ranks);
    }

    /** Legs by step of the loop chosen among the best ones of a lossless sweep. */
    int[] choose(Sweep sweep) {
        List<StateLayer> optimal = mark(sweep);
        Pass withLength = new Pass(optimal, sweep.best(), true);
        if (withLength.run()) {
            return withLength.trace();
        }
        Pass without = new Pass(optimal, sweep.best(), false);
        return without.run() ? without.trace() : sweep.trace();
    }

    /** For each step the states before it that lie on a way of least cost, with that cost. */
    private List<StateLayer> mark(Sweep sweep) {
        List<StateLayer> all = sweep.layers();
        List<StateLayer> optimal = new ArrayList<>(all);
        StateLayer after = new StateLayer(encoding.words(), 1);
        for (int t = all.size() - 1; t >= 0; t--) {
            StateLayer layer = all.get(t);
            Marker marker = new Marker(after, sweep.best());
            StateExpansion expansion = new StateExpansion(frontier, encoding, marker);
            StateLayer kept = new StateLayer(encoding.words(), 16);
            for (int i = 0; i < layer.size(); i++) {
                marker.start(layer.cost(i));
                if (layer.cost(i) <= sweep.best()) {
                    expansion.expand(layer.keys(), i * encoding.words(), t);
                }
                if (marker.hit) {
                    kept.offer(layer.keys(), i * encoding.words(), layer.cost(i), -1, 0);
                }
            }
            optimal.set(t, kept);
            after = kept;
        }
        return optimal;
    }

    private static final class Marker implements StateExpansion.Sink {
        private final StateLayer after;
        private final long best;
        private long base;
        private boolean hit;

        Marker(StateLayer after, long best) {
            this.after = after;
            this.best = best;
        }

        void start(long cost) {
            base = cost;
            hit = false;
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            if (!hit && base + cost <= best) {
                int i = after.find(state, 0);
                hit = i >= 0 && after.cost(i) == base + cost;
            }
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            hit |= base + cost + rest == best;
        }
    }

    /** The forward pass over marked states; the last word of a state holds the bits of corners at earlier ends. */
    private final class Pass implements LayeredProgram.Rules {
        private final List<StateLayer> optimal;
        private final long best;
        private final boolean withLength;
        private final LayeredProgram program;
        private final long[] extended = new long[encoding.words() + 1];
        private StateLayer marked = new StateLayer(encoding.words(), 1);
        private StateLayer after = marked;
        private long mainCost;
        private long corners;
        private long bestTieValue = Long.MAX_VALUE;
        private int bestStep = -1;
        private int bestState = -1;
        private int bestLegs;

        Pass(List<StateLayer> optimal, long best, boolean withLength) {
            this.optimal = optimal;
            this.best = best;
            this.withLength = withLength;
            this.program = new LayeredProgram(frontier, optimal.size(), encoding, 0, 1, Frontier.PORT_OPEN, this);
        }

        /** False if there were too many states. */
        boolean run() {
            program.run(Long.MAX_VALUE, MOST_STATES, LayeredProgram.Thinning.NONE);
            return !program.truncated();
        }

        @Override
        public void enters(int step, StateLayer states) {
            marked = optimal.get(step);
            after = step + 1 < optimal.size() ? optimal.get(step + 1) : new StateLayer(encoding.words(), 1);
        }

        @Override
        public boolean opens(StateLayer states, int state) {
            int at = state * (encoding.words() + 1);
            mainCost = marked.cost(marked.find(states.keys(), at));
            corners = states.keys()[at + encoding.words()];
            return true;
        }

        @Override
        public void leaves(StateLayer states) {
            states.seal();
        }

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            int i = after.find(state, 0);
            if (i < 0 || after.cost(i) != mainCost + cost) {
                return;
            }
            System.arraycopy(state, 0, extended, 0, state.length);
            extended[state.length] = withLength ? cornersAfter(legs) : 0;
            program.offer(extended, program.cost() + tieBreak(legs) + Math.max(0, portRank), legs);
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            long tieBreak = program.cost() + tieBreak(legs);
            if (mainCost + cost + rest == best && tieBreak < bestTieValue) {
                bestTieValue = tieBreak;
                bestStep = program.step();
                bestState = program.parent();
                bestLegs = legs;
            }
        }

        private long cornersAfter(int legs) {
            int step = program.step();
            long after = corners;
            for (int pass = 0; pass < 2; pass++) {
                for (int h = 0; h < 4; h++) {
                    boolean used = (legs >> h & 1) == 1;
                    if (used && frontier.isEarlier(step, h) == (pass == 0)) {
                        long bit = 1L << frontier.slot(step, h);
                        after = pass == 1 && Frontier.isCorner(legs) ? after | bit : after & ~bit;
                    }
                }
            }
            return after;
        }

        private long tieBreak(int legs) {
            if (!withLength) {
                return lowerLevels.withoutLength(program.step(), legs);
            }
            int step = program.step();
            long tieBreak = lowerLevels.node(step, legs);
            for (int h = 0; h < 4 && Frontier.isCorner(legs); h++) {
                boolean both = (legs >> h & 1) == 1
                        && frontier.isEarlier(step, h)
                        && (corners >> frontier.slot(step, h) & 1) == 1;
                tieBreak += both ? lowerLevels.link() : 0;
            }
            return tieBreak;
        }

        int[] trace() {
            return StateLayer.wayTo(program.layers(), frontier.size(), bestStep, bestLegs, bestState);
        }
    }
}
