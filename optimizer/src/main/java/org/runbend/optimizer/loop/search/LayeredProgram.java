package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.work.Work;

/**
 * The layered dynamic program that every search of this package runs: the states before a step, everything that can be done
 * with its node in each of them ({@link StateExpansion}), the states after it, of equal ones the cheapest. What tells one search
 * from another is given: its {@link Rules} (which states go on, what a step costs, what a state carries beyond its links) and
 * how a layer that grows too large is {@link Thinning thinned}.
 *
 * <p>Source: dynamic programming over sets of nodes, Held and Karp 1962, https://doi.org/10.1137/0110015; states as open
 * links and what they belong to, the frontier method of Sekine, Imai and Tani 1995 and Knuth's simpath, from memory.
 */
final class LayeredProgram {
    /** What tells one search from another. The state and cost being worked on are asked of the program. */
    interface Rules extends StateExpansion.Sink {
        /** Is shown the states before a step. */
        default void enters(int step, StateLayer states) {}

        /** Whether a state goes on; asked before it is expanded. */
        default boolean opens(StateLayer states, int state) {
            return true;
        }

        /** All states before a step have been expanded; what nobody asks for any more is dropped. */
        default void leaves(StateLayer states) {
            states.seal();
            states.forgetStates();
        }

        /** Whether nothing more is wanted; asked before each step. */
        default boolean isOver() {
            return false;
        }
    }

    /** Which states of a layer go on where they are too many to all do so. */
    interface Thinning {
        /** All of them: nothing is lost. */
        Thinning NONE = states -> states;

        /** The layer itself, or one with fewer of its states. */
        StateLayer thinned(StateLayer states);

        /** A beam of the cheapest, at most so many. */
        static Thinning cheapest(int most) {
            return states -> states.size() > most ? states.cheapest(most) : states;
        }

        /** A beam of those of about least reduced cost, at most so many; for {@link BoundedCost}. */
        static Thinning leastReduced(int most) {
            return states ->
                    states.size() > most ? states.cheapestBlurred(most, BoundedCost.REDUCED, BoundedCost.BLUR) : states;
        }
    }

    private final int steps;
    private final int words;
    private final StateExpansion expansion;
    private final Rules rules;
    private final List<StateLayer> layers = new ArrayList<>();

    private StateLayer current;
    private StateLayer growing;
    private int step;
    private int parent;
    private long cost;
    private long total;
    private long overflow;
    private boolean truncated;

    /**
     * A program that begins with one state.
     *
     * @param further words that a state carries beyond its links, handed on by the expansion as they are
     * @param own more words behind those, which the expansion does not see
     * @param code port code of the first state
     */
    LayeredProgram(Frontier frontier, StateEncoding encoding, int further, int own, int code, Rules rules) {
        this(frontier, frontier.size(), encoding, further, own, code, rules);
    }

    /** The same over the first steps alone. */
    LayeredProgram(Frontier frontier, int steps, StateEncoding encoding, int further, int own, int code, Rules rules) {
        this.steps = steps;
        this.words = encoding.words() + further + own;
        this.expansion = new StateExpansion(frontier, encoding, rules, further);
        this.rules = rules;
        this.current = new StateLayer(words, 1);
        this.growing = new StateLayer(words, 1);
        long[] start = new long[words];
        StateEncoding.setCode(start, code);
        growing.offer(start, 0, 0, -1, 0);
    }

    /**
     * Runs to the end, or until nothing goes on, the rules are over, or there are too many states.
     *
     * @param mostPerLayer states of a layer, thinned ones not counted
     * @param mostInAll states of all layers
     */
    void run(long mostPerLayer, long mostInAll, Thinning thinning) {
        for (step = 0; step < steps && growing.size() > 0 && !rules.isOver(); step++) {
            Work.check();
            current = thinning.thinned(growing);
            truncated |= current != growing;
            total += current.size();
            if (current.size() > mostPerLayer || total > mostInAll) {
                overflow = current.size() > mostPerLayer ? current.size() : 0;
                truncated = true;
                return;
            }
            layers.add(current);
            rules.enters(step, current);
            growing = new StateLayer(words, 2 * current.size());
            for (parent = 0; parent < current.size(); parent++) {
                if (rules.opens(current, parent)) {
                    cost = current.cost(parent);
                    expansion.expand(current.keys(), parent * words, step);
                }
            }
            rules.leaves(current);
        }
    }

    /** A state after the step; of equal ones the cheapest stays, among those the first comer. */
    void offer(long[] state, long itsCost, int legs) {
        growing.offer(state, 0, itsCost, parent, legs);
    }

    /** The step whose node is being decided; after a run, how many were taken. */
    int step() {
        return step;
    }

    /** Cost of the state that is being expanded. */
    long cost() {
        return cost;
    }

    /** Number of the state that is being expanded. */
    int parent() {
        return parent;
    }

    /** A word of the state that is being expanded. */
    long word(int word) {
        return current.keys()[parent * words + word];
    }

    /** The straight pieces that the state last handed to the rules has closed. */
    StraightPieces pieces() {
        return expansion.pieces();
    }

    /** The states before each step, so far as the rules keep them. */
    List<StateLayer> layers() {
        return layers;
    }

    /** States in all layers, those of the one that was too large among them. */
    long total() {
        return total;
    }

    /** States of the layer that was too large by itself; 0 if none was. */
    long overflow() {
        return overflow;
    }

    /** Whether states were lost to thinning or a limit, so that finding nothing proves nothing. */
    boolean truncated() {
        return truncated;
    }
}
