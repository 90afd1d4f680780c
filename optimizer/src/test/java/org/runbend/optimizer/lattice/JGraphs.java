package org.runbend.optimizer.lattice;

import java.util.List;
import org.jgrapht.Graph;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.SimpleGraph;

/** Our lattices as graphs of JGraphT, an independent library, whose algorithms ours are held against. */
public final class JGraphs {
    private JGraphs() {}

    /** Nodes by number, links as edges. */
    public static Graph<Integer, DefaultEdge> of(LatticeGraph lattice) {
        Graph<Integer, DefaultEdge> graph = new SimpleGraph<>(DefaultEdge.class);
        for (int n = 0; n < lattice.size(); n++) {
            graph.addVertex(n);
        }
        for (int n = 0; n < lattice.size(); n++) {
            for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
                if (lattice.neighbour(n, h) >= 0) {
                    graph.addEdge(n, lattice.neighbour(n, h));
                }
            }
        }
        return graph;
    }
}
