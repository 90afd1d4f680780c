package org.runbend.optimizer.division;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * What a part is worth at a glance.
 *
 * @param nodes those that a loop from the port can reach, as in the whole lattice
 * @param heated heated nodes among them, less what colours leave out
 * @param cost price of the part's heated nodes that no loop can serve, and about so many turns
 */
record PartWorth(List<Integer> nodes, int heated, long cost) {
    /** The worth of some nodes; empty if no port opens a block of them. */
    static Optional<PartWorth> of(DivisionProblem problem, List<Integer> nodes) {
        Subgraph part = new Subgraph(problem.graph(), nodes);
        List<PortPair> ports = part.ports(problem.ports(), Integer.MAX_VALUE);
        LatticeGraph graph = part.graph();
        return BiconnectedBlock.all(graph).stream()
                .filter(b -> b.holdsAllWanted(graph)
                        && ports.stream().anyMatch(p -> b.contains(p.from()) && b.contains(p.to())))
                .max(Comparator.comparingLong(b -> b.price(graph)))
                .map(b -> worth(part, b));
    }

    private static PartWorth worth(Subgraph part, BiconnectedBlock block) {
        LatticeGraph graph = part.graph();
        long price = 0;
        for (int n = 0; n < graph.size(); n++) {
            price += graph.price(n);
        }
        int[] colours = new int[2];
        int heated = 0;
        for (int n : block.nodes()) {
            colours[Math.floorMod(graph.column(n) + graph.row(n), 2)]++;
            heated += graph.price(n) > 0 ? 1 : 0;
        }
        int excess = Math.abs(colours[0] - colours[1]);
        int cold = block.size() - heated;
        int missed = Math.max(0, excess - cold);
        long each = heated == 0 ? 0 : block.price(graph) / heated;
        int runs = Math.min(runs(graph, block, Heading.EAST), runs(graph, block, Heading.NORTH));
        long cost = price - block.price(graph) + each * missed + 2L * graph.turnCost() * runs;
        return new PartWorth(part.inWhole(block.nodes()), heated - missed, cost);
    }

    /** Stretches of linked nodes in one direction: a loop that winds to and fro turns twice for each. */
    private static int runs(LatticeGraph graph, BiconnectedBlock block, Heading along) {
        int runs = 0;
        for (int n : block.nodes()) {
            int next = graph.neighbour(n, along);
            runs += next < 0 || !block.contains(next) ? 1 : 0;
        }
        return runs;
    }
}
