package org.runbend.optimizer.division;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopSolution;

/** Some nodes of a lattice as a lattice of their own: links within, bends and wanted nodes as they were. */
final class Subgraph {
    private final int[] nodes;
    private final LatticeGraph graph;

    /** The nodes in ascending order. */
    Subgraph(LatticeGraph whole, List<Integer> nodes) {
        this.nodes = nodes.stream().mapToInt(n -> n).toArray();
        LatticeGraph.Builder builder = LatticeGraph.builder();
        for (int n : this.nodes) {
            builder.addNode(whole.column(n), whole.row(n), whole.price(n));
        }
        for (int i = 0; i < this.nodes.length; i++) {
            copy(whole, builder, i);
        }
        if (whole.isStiff()) {
            builder.stiff();
        }
        this.graph = builder.build();
    }

    private void copy(LatticeGraph whole, LatticeGraph.Builder builder, int i) {
        for (Heading h : Heading.values()) {
            int next = whole.neighbour(nodes[i], h);
            int local = next < 0 ? -1 : Arrays.binarySearch(nodes, next);
            if (local >= 0) {
                builder.link(i, local);
            }
            if (!whole.bendAllowed(nodes[i], h, h.left())) {
                builder.forbidBend(i, h, h.left());
            }
        }
        for (Heading along : List.of(Heading.EAST, Heading.NORTH)) {
            for (Heading side : List.of(along.left(), along.left().opposite())) {
                if (whole.returnAllowed(nodes[i], along, side)) {
                    builder.allowReturn(i, along, side);
                }
            }
        }
        if (whole.isWanted(nodes[i])) {
            builder.want(i);
        }
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

    /** Number of nodes. */
    int size() {
        return nodes.length;
    }

    /** Whether any node must be passed. */
    boolean hasWanted() {
        return IntStream.range(0, nodes.length).anyMatch(graph::isWanted);
    }
}
