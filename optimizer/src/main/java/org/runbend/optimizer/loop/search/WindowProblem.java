package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.BlockGraph;
import org.runbend.optimizer.lattice.Links;

/** A window of a laid loop as a problem of its own: the loop's pieces outside are links that must be used. */
final class WindowProblem {
    /** Derived, as in {@link BlockProblem}: a mask of slots is one word. */
    private static final int MOST_SLOTS = 62;

    private final BlockGraph blockGraph;
    private final int[] legs;
    private final int[] locals;
    private final int[] steps;
    private final int[] legsOfLocals;
    private final boolean[] inside;
    private final boolean open;
    private final Frontier frontier;

    /**
     * The problem of a window.
     *
     * @param legs the loop by step
     * @param locals local numbers of the window's nodes in the order in which they are decided
     * @param portLink the loop's port, 4 x local number + heading; it stays the port
     */
    WindowProblem(BlockProblem blockProblem, int[] legs, int[] locals, int portLink) {
        this.blockGraph = blockProblem.blockGraph();
        this.legs = legs.clone();
        this.locals = locals.clone();
        this.steps = IntStream.of(locals).map(blockProblem.frontier()::step).toArray();
        this.legsOfLocals = new int[legs.length];
        for (int t = 0; t < legs.length; t++) {
            legsOfLocals[blockProblem.frontier().local(t)] = legs[t];
        }
        this.inside = new boolean[blockGraph.size()];
        IntStream.of(locals).forEach(i -> inside[i] = true);
        Links links = Links.within(blockGraph, legsOfLocals, inside, portLink);
        boolean choice = IntStream.of(locals).noneMatch(links::closesOn);
        this.frontier = new Frontier(blockGraph, links, locals, List.of());
        this.open = choice && frontier.slotCount() <= MOST_SLOTS;
    }

    /** Whether there is something to decide, and a state fits its words. */
    boolean isOpen() {
        return open;
    }

    /** The window's own steps. */
    Frontier frontier() {
        return frontier;
    }

    /** The passes over all ways to lay it with no more turns and as many units left out. */
    TiePasses passes(PriceUnits prices, ReducedCosts reducedCosts, int mostPerLayer) {
        ReducedCosts within = reducedCosts.within(steps, legs, units(prices));
        return new TiePasses(frontier, prices.within(steps), within, turns(), mostPerLayer);
    }

    /** Steps of the whole loop by step of the window. */
    int[] steps() {
        return steps.clone();
    }

    /** Turns of the loop inside. */
    int turns() {
        return (int) IntStream.of(steps).filter(t -> Frontier.isCorner(legs[t])).count();
    }

    /** Price units that the loop leaves out inside. */
    int units(PriceUnits prices) {
        return IntStream.of(steps).filter(t -> legs[t] == 0).map(prices::units).sum();
    }

    /** What decides between the ways to lay it; links over the border count with the corners of the loop beyond. */
    TiePasses.TieBreak tieBreak(LowerLevels lowerLevels) {
        int[] inner = masks(next -> inside[next]);
        int[] outer = masks(next -> !inside[next] && Frontier.isCorner(legsOfLocals[next]));
        return new TiePasses.TieBreak() {
            @Override
            public long node(int step, int at) {
                int over = Frontier.isCorner(at) ? Integer.bitCount(at & outer[step]) : 0;
                return lowerLevels.node(at, frontier.price(step) > 0) + over * lowerLevels.link();
            }

            @Override
            public long link() {
                return lowerLevels.link();
            }

            @Override
            public int links(int step) {
                return inner[step];
            }
        };
    }

    /** By step of the window, the headings that lead to nodes of a kind. */
    private int[] masks(IntPredicate wanted) {
        int[] masks = new int[locals.length];
        for (int t = 0; t < locals.length; t++) {
            for (int h = 0; h < 4; h++) {
                int next = blockGraph.neighbour(locals[t], h);
                masks[t] |= next >= 0 && wanted.test(next) ? 1 << h : 0;
            }
        }
        return masks;
    }

    /** The whole loop by step with other legs inside. */
    int[] with(int[] found) {
        int[] relaid = Arrays.copyOf(legs, legs.length);
        for (int t = 0; t < steps.length; t++) {
            relaid[steps[t]] = found[t];
        }
        return relaid;
    }
}
