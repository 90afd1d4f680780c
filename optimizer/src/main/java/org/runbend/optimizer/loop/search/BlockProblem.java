package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.BlockGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.TradeOff;

/** One block to be laid: the order in which its nodes are decided, and how a loop in it is read back. */
final class BlockProblem {
    /**
     * Wider or larger blocks are not tried without reduced costs: the states no longer fit the time a person waits;
     * measured when it came: 252 places with 15 open links took 1.8 s without them.
     */
    private static final int NARROW_SLOTS = 14;

    /** The same where states tell straight pieces apart: chosen, not measured. */
    private static final int NARROW_SLOTS_WITH_PIECES = 9;

    /** Places likewise: chosen, not measured. */
    private static final int NARROW_NODES = 260;
    /** Beyond 62 open links a mask of slots no longer fits one word; derived. */
    private static final int MOST_SLOTS = 62;

    private final LoopProblem problem;
    private final List<PortPair> ports;
    private final BlockGraph blockGraph;
    private final List<int[]> orders;
    private final Frontier frontier;

    BlockProblem(LoopProblem problem, BiconnectedBlock block, List<PortPair> ports) {
        this.problem = problem;
        this.ports = List.copyOf(ports);
        this.blockGraph = new BlockGraph(problem.graph(), block);
        int[] portNodes = ports.stream()
                .flatMapToInt(port -> IntStream.of(port.from(), port.to()))
                .map(blockGraph::local)
                .toArray();
        this.orders = new NodeOrder(blockGraph, portNodes).choose();
        this.frontier = new Frontier(blockGraph, orders.get(0), ports);
    }

    private BlockProblem(BlockProblem other, int[] order) {
        this.problem = other.problem;
        this.ports = other.ports;
        this.blockGraph = other.blockGraph;
        this.orders = other.orders;
        this.frontier = new Frontier(blockGraph, order, ports);
    }

    /** The same block with its nodes decided in another order of their local numbers. */
    BlockProblem inOrder(int[] order) {
        return new BlockProblem(this, order);
    }

    LoopProblem problem() {
        return problem;
    }

    Frontier frontier() {
        return frontier;
    }

    /** Orders of the local numbers that open few links at a time; the frontier has the first. */
    List<int[]> orders() {
        return orders.stream().map(int[]::clone).toList();
    }

    BlockGraph blockGraph() {
        return blockGraph;
    }

    /** The port that a loop comes in by, as 4 x local number + heading. */
    int portLink(int[] legs) {
        PortPair port = trace(legs).bestPort(ports);
        int from = blockGraph.local(port.from());
        return 4 * from + blockGraph.graph().headingTo(port.from(), port.to()).index();
    }

    StateEncoding encoding() {
        return new StateEncoding(frontier);
    }

    /** Whether the exact program can be expected to end without reduced costs. */
    boolean isNarrow() {
        int slots = frontier.pricesPieces() ? NARROW_SLOTS_WITH_PIECES : NARROW_SLOTS;
        return frontier.slotCount() <= slots && frontier.size() <= NARROW_NODES;
    }

    /** Whether a state fits the words foreseen for it. */
    boolean isRepresentable() {
        return frontier.slotCount() <= MOST_SLOTS;
    }

    /** The outcome when nothing was found and nothing is certain. */
    Answer<LoopSolution> tooWide(String why) {
        return Answer.unknown(
                frontier.size() + " nodes with up to " + frontier.slotCount() + " links open at once: " + why);
    }

    /** Reads the legs of a loop, the ways out of its port chosen by rank. */
    CycleTrace trace(int[] legs) {
        return new CycleTrace(blockGraph.graph(), frontier, legs);
    }

    /** The solution for the legs of a loop by step; both bounds only where proved. */
    LoopSolution solution(int[] legs, OptionalInt turnBound, OptionalInt objectiveBound, List<TradeOff> met) {
        CycleTrace trace = trace(legs);
        PortPair port = trace.bestPort(ports);
        TradeOff own = new TradeOff(trace.leftOut(), trace.turns(), turnBound);
        List<TradeOff> pairs = IntStream.range(0, met.size() + 1)
                .mapToObj(i -> i < met.size() ? met.get(i) : own)
                .sorted(Comparator.comparingInt(TradeOff::leftOut))
                .toList();
        return new LoopSolution(
                trace.cycle(port),
                port,
                trace.turns(),
                trace.leftOut(),
                turnBound,
                (int) objective(legs),
                objectiveBound,
                pairs);
    }

    /** Legs by step of a loop given by its nodes in order; empty if it does not lie in this block. */
    int[] legs(List<Integer> cycle) {
        int[] legs = new int[frontier.size()];
        for (int i = 0; i < cycle.size(); i++) {
            int node = cycle.get(i);
            int local = blockGraph.local(node);
            if (local < 0) {
                return new int[0];
            }
            int before = cycle.get((i + cycle.size() - 1) % cycle.size());
            int after = cycle.get((i + 1) % cycle.size());
            legs[frontier.step(local)] =
                    1 << blockGraph.graph().headingTo(node, before).index()
                            | 1 << blockGraph.graph().headingTo(node, after).index();
        }
        return legs;
    }

    /** What a loop leaves out and how often it turns. */
    TradeOff tradeOff(int[] legs) {
        CycleTrace trace = trace(legs);
        return new TradeOff(trace.leftOut(), trace.turns(), OptionalInt.empty());
    }

    /** The nodes of a loop in order, from one end of its port pair to the other. */
    List<Integer> cycle(int[] legs) {
        CycleTrace trace = trace(legs);
        return trace.cycle(trace.bestPort(ports));
    }

    /** The unevenness of a loop. */
    double unevenness(WarmthSpread measure, int[] legs) {
        return measure.of(cycle(legs));
    }

    /** Cost of the shape plus the prices of the nodes left out. */
    long objective(int[] legs) {
        long prices = 0;
        for (int t = 0; t < legs.length; t++) {
            prices += legs[t] == 0 ? frontier.price(t) : 0;
        }
        return prices + shape(legs);
    }

    /** What turns and straight pieces cost. */
    long shape(int[] legs) {
        long corners = IntStream.of(legs).filter(Frontier::isCorner).count();
        long pieces = pieces(legs).stream()
                .mapToInt(piece -> frontier.straightCost().of(piece.nodes()))
                .sum();
        return frontier.turnCost() * corners + pieces;
    }

    /** More than the shape of any loop of so many nodes costs: each a corner, with a piece after it. */
    long mostShape(long nodes) {
        int dearest =
                frontier.straightCost().extra().stream().mapToInt(e -> e).max().orElse(0);
        return nodes * (frontier.turnCost() + 2L * frontier.straightCost().end() + dearest) + frontier.priceFrom(0);
    }

    /** The straight pieces of a loop, if they cost anything. */
    List<StraightPiece> pieces(int[] legs) {
        List<StraightPiece> pieces = new ArrayList<>();
        for (int t = 0; t < legs.length && frontier.pricesPieces(); t++) {
            for (int h = 0; h < 2 && Frontier.isCorner(legs[t]); h++) {
                if ((legs[t] >> h & 1) == 1) {
                    StraightPiece.from(frontier, legs, t, h).ifPresent(pieces::add);
                }
            }
        }
        return pieces;
    }

    /**
     * Every loop costs at least the bound, and leaving out so many nodes as a loop does costs no more than the dearest of
     * them; turns come in pairs. Empty where straight pieces have a price, as these could be the rest.
     */
    OptionalInt turnBound(long objectiveBound, CycleTrace loop) {
        if (frontier.pricesPieces()) {
            return OptionalInt.empty();
        }
        long dearest = IntStream.range(0, blockGraph.size())
                .map(i -> -blockGraph.graph().price(blockGraph.node(i)))
                .sorted()
                .limit(loop.leftOut())
                .mapToLong(price -> -price)
                .sum();
        long turns = -Math.floorDiv(-(objectiveBound - dearest), frontier.turnCost());
        long bound = Math.max(4, turns);
        return OptionalInt.of((int) Math.min(loop.turns(), bound + bound % 2));
    }
}
