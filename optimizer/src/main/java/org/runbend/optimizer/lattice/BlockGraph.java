package org.runbend.optimizer.lattice;

import java.util.Arrays;

/** The subgraph of one biconnected block, renumbered from 0 in ascending order of graph nodes. */
public final class BlockGraph {
    private static final Heading[] HEADINGS = Heading.values();

    private final LatticeGraph graph;
    private final int[] nodes;
    private final int[] local;
    private final int[] neighbours;

    /** The nodes of a block, numbered anew from 0. */
    public BlockGraph(LatticeGraph graph, BiconnectedBlock block) {
        this.graph = graph;
        this.nodes = block.nodes().stream().mapToInt(Integer::intValue).toArray();
        this.local = new int[graph.size()];
        Arrays.fill(local, -1);
        for (int i = 0; i < nodes.length; i++) {
            local[nodes[i]] = i;
        }
        this.neighbours = new int[4 * nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            for (Heading heading : HEADINGS) {
                int next = graph.neighbour(nodes[i], heading);
                neighbours[4 * i + heading.index()] = next < 0 ? -1 : local[next];
            }
        }
    }

    /** The graph that it is part of. */
    public LatticeGraph graph() {
        return graph;
    }

    /** How many nodes it has. */
    public int size() {
        return nodes.length;
    }

    /** Graph node of a local number. */
    public int node(int i) {
        return nodes[i];
    }

    /** Local number of a graph node, or -1 outside the block. */
    public int local(int node) {
        return local[node];
    }

    /** Local number of the neighbour in the direction with that index, or -1. */
    public int neighbour(int i, int heading) {
        return neighbours[4 * i + heading];
    }

    /** Column of a local number. */
    public int column(int i) {
        return graph.column(nodes[i]);
    }

    /** Row of a local number. */
    public int row(int i) {
        return graph.row(nodes[i]);
    }
}
