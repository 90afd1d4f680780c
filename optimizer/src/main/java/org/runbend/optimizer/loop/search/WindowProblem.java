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
    private final boolean[] insideStep;
    private final List<StraightPiece> pieces;
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
        this.insideStep = new boolean[legs.length];
        IntStream.of(steps).forEach(t -> insideStep[t] = true);
        this.pieces = blockProblem.pieces(legs);
        Links links = Links.within(blockGraph, legsOfLocals, inside, portLink);
        // where no part of the loop lies, another ring would be laid
        boolean touched = IntStream.of(steps).anyMatch(t -> legs[t] != 0);
        boolean choice = touched && IntStream.of(locals).noneMatch(links::closesOn);
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
        ReducedCosts within = within(reducedCosts, units(prices));
        return new TiePasses(frontier, prices.within(steps), within, shape(prices), mostPerLayer);
    }

    /** Steps of the whole loop by step of the window. */
    int[] steps() {
        return steps.clone();
    }

    /** What is left of reduced costs for ways to lay the window that leave out so many units. */
    ReducedCosts within(ReducedCosts reducedCosts, int units) {
        int[] outside = pieces.stream()
                .flatMap(piece -> Arrays.stream(piece.ends())
                        .filter(end -> !insideStep[end[0]] && !insideStep[end[1]])
                        .map(end -> linkOf(piece, end)))
                .mapToInt(Integer::intValue)
                .toArray();
        return reducedCosts.within(steps, legs, units, outside);
    }

    /** The link of an end as {@link StraightPieces#end}, at the western or southern of its nodes. */
    private static int linkOf(StraightPiece piece, int[] end) {
        boolean first = end[0] == piece.steps().get(0);
        return 2 * (first ? end[0] : end[1]) + piece.heading();
    }

    private boolean touches(StraightPiece piece) {
        return piece.steps().stream().anyMatch(t -> insideStep[t]);
    }

    /**
     * Cost of the shape of the loop inside: its turns, the ends of straight pieces at links with a node inside,
     * and what short pieces with a node inside cost more.
     */
    long shape(PriceUnits prices) {
        long turns = IntStream.of(steps).filter(t -> Frontier.isCorner(legs[t])).count();
        long ends = pieces.stream()
                .flatMap(piece -> Arrays.stream(piece.ends()))
                .filter(end -> insideStep[end[0]] || insideStep[end[1]])
                .count();
        long extra = pieces.stream()
                .filter(this::touches)
                .mapToInt(piece -> frontier.straightCost().extra(piece.nodes()))
                .sum();
        long leftOut = prices.isInside()
                ? IntStream.range(0, steps.length)
                        .filter(t -> legs[steps[t]] == 0)
                        .mapToLong(frontier::price)
                        .sum()
                : 0;
        return frontier.turnCost() * turns + frontier.straightCost().end() * ends + extra + leftOut;
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
                return lowerLevels.node(steps[step], at) + over * lowerLevels.link();
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
