package org.runbend.optimizer.division;

import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopSolution;

/** Some nodes of a lattice as a lattice of their own: links within, all else as it was. */
final class Subgraph {
    private final int[] nodes;
    private final LatticeGraph graph;

    /** The nodes in ascending order. */
    Subgraph(LatticeGraph whole, List<Integer> nodes) {
        this.nodes = nodes.stream().mapToInt(n -> n).toArray();
        this.graph = whole.part(this.nodes);
    }

    LatticeGraph graph() {
        return graph;
    }

    /** The pairs with both nodes in here, numbered as in here; at most so many. */
    List<PortPair> ports(List<PortPair> whole, int most) {
        return whole.stream()
                .filter(p -> local(p.from()) >= 0 && local(p.to()) >= 0)
                .limit(most)
                .map(p -> new PortPair(local(p.from()), local(p.to()), p.rank()))
                .toList();
    }

    private int local(int node) {
        return Arrays.binarySearch(nodes, node);
    }

    /** A loop in here, numbered as in the whole. */
    LoopSolution inWhole(LoopSolution loop) {
        return new LoopSolution(
                loop.cycle().stream().map(n -> nodes[n]).toList(),
                new PortPair(
                        nodes[loop.port().from()],
                        nodes[loop.port().to()],
                        loop.port().rank()),
                loop.turns(),
                loop.leftOut(),
                loop.turnBound(),
                loop.objective(),
                loop.objectiveBound(),
                loop.pairs());
    }

    /** Nodes of the whole for nodes in here. */
    List<Integer> inWhole(List<Integer> locals) {
        return locals.stream().map(n -> nodes[n]).toList();
    }
}
