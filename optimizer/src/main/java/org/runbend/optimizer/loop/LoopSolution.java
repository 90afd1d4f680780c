package org.runbend.optimizer.loop;

import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * A closed loop and what is known about how good it is.
 *
 * @param cycle the nodes in the order of laying, from {@code port.from()} to {@code port.to()}
 * @param port the port pair it was laid through
 * @param turns corners of the closed cycle, port nodes included
 * @param leftOut nodes of positive price in the port's biconnected block that are not served
 * @param turnBound least turns of any single loop through this port pair with this {@code leftOut}, if proved
 * @param objective turns + the prices of the nodes left out
 * @param objectiveBound least objective of any single loop through this port pair, if proved
 * @param pairs the other pairs of left-out nodes and turns that were met, in order of {@code leftOut}
 */
public record LoopSolution(
        List<Integer> cycle,
        PortPair port,
        int turns,
        int leftOut,
        OptionalInt turnBound,
        int objective,
        OptionalInt objectiveBound,
        List<TradeOff> pairs) {
    /** Checks that bounds do not exceed what was found, and copies the lists. */
    public LoopSolution {
        Objects.requireNonNull(port, "port");
        cycle = List.copyOf(cycle);
        pairs = List.copyOf(pairs);
        if (turnBound.orElse(turns) > turns || objectiveBound.orElse(objective) > objective) {
            throw new IllegalArgumentException("bounds (" + turnBound + ", " + objectiveBound + ") exceed turns ("
                    + turns + ") or objective (" + objective + ")");
        }
    }

    /** The same loop counted on a lattice whose part it was laid on: what is proved of the part is no bound for the whole. */
    public LoopSolution countedOn(LatticeGraph graph) {
        boolean[] served = new boolean[graph.size()];
        cycle.forEach(n -> served[n] = true);
        List<Integer> bare = BiconnectedBlock.ofLink(graph, port.from(), port.to()).orElseThrow().nodes().stream()
                .filter(n -> !served[n] && graph.price(n) > 0)
                .toList();
        int prices = bare.stream().mapToInt(graph::price).sum();
        int cost = (int) LoopCost.ofShape(graph, cycle) + prices;
        return new LoopSolution(
                cycle, port, turns, bare.size(), OptionalInt.empty(), cost, OptionalInt.empty(), List.of());
    }

    /**
     * The same with what was proved about another loop of the same problem, apart from what decides between equals: bounds hold for
     * every loop through the same port pair.
     */
    public LoopSolution boundedBy(LoopSolution known) {
        if (!known.port.equals(port)) {
            return this;
        }
        OptionalInt turns = known.leftOut == leftOut ? higher(turnBound, known.turnBound) : turnBound;
        OptionalInt least = higher(objectiveBound, known.objectiveBound);
        return new LoopSolution(cycle, port, this.turns, leftOut, turns, objective, least, pairs);
    }

    private static OptionalInt higher(OptionalInt a, OptionalInt b) {
        return a.isEmpty() || (b.isPresent() && b.getAsInt() > a.getAsInt()) ? b : a;
    }

    /** Whether no loop through this port pair has a lower objective. */
    public boolean isProvedBest() {
        return objectiveBound.isPresent() && objectiveBound.getAsInt() == objective;
    }
}
