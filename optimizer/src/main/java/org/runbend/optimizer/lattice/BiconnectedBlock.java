package org.runbend.optimizer.lattice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The nodes that simple loops through one link can reach: the biconnected block of that link.
 *
 * <p>Method: depth-first search with low points and an edge stack, without recursion. Source: Hopcroft and Tarjan 1973,
 * https://doi.org/10.1145/362248.362272. Linear in the number of links.
 *
 * @param nodes the nodes in ascending order; at least 4
 */
public record BiconnectedBlock(List<Integer> nodes) {
    /** Copies the list. */
    public BiconnectedBlock {
        nodes = List.copyOf(nodes);
    }

    /** The block that holds the link between two nodes; empty when the link is a bridge, so that no loop uses it. */
    public static Optional<BiconnectedBlock> ofLink(LatticeGraph graph, int a, int b) {
        if (!graph.linked(a, b)) {
            throw new IllegalArgumentException("nodes " + a + " and " + b + " are not linked");
        }
        for (BiconnectedBlock block : all(graph)) {
            if (block.contains(a) && block.contains(b)) {
                return Optional.of(block);
            }
        }
        return Optional.empty();
    }

    /** Every block of four nodes or more, in order of discovery from node 0 on. */
    public static List<BiconnectedBlock> all(LatticeGraph graph) {
        Search search = new Search(graph);
        for (int node = 0; node < graph.size(); node++) {
            search.from(node);
        }
        return search.blocks;
    }

    /** Whether a node belongs to the block; two linked nodes of one block have their link in it. */
    public boolean contains(int node) {
        return Collections.binarySearch(nodes, node) >= 0;
    }

    /** Number of nodes. */
    public int size() {
        return nodes.size();
    }

    /** Sum of the prices of the block's nodes, in turns. */
    public long price(LatticeGraph graph) {
        return nodes.stream().mapToLong(graph::price).sum();
    }

    /** Whether every node that the loop must pass lies in the block. */
    public boolean holdsAllWanted(LatticeGraph graph) {
        return IntStream.range(0, graph.size()).filter(graph::isWanted).allMatch(this::contains);
    }

    private static final class Search {
        private static final Heading[] HEADINGS = Heading.values();
        private final LatticeGraph graph;
        private final List<BiconnectedBlock> blocks = new ArrayList<>();
        private final int[] found;
        private final int[] low;
        private final int[] parent;
        private final int[] nextHeading;
        private final int[] path;
        private final int[] open;
        private int openCount;
        private int clock;

        Search(LatticeGraph graph) {
            this.graph = graph;
            int n = graph.size();
            found = new int[n];
            low = new int[n];
            parent = new int[n];
            nextHeading = new int[n];
            path = new int[n];
            open = new int[n];
        }

        void from(int root) {
            if (found[root] != 0) {
                return;
            }
            enter(root, -1);
            path[0] = root;
            int depth = 1;
            while (depth > 0) {
                int node = path[depth - 1];
                if (nextHeading[node] == 4) {
                    depth--;
                    leave(node);
                } else {
                    int child = advance(node);
                    if (child >= 0) {
                        path[depth++] = child;
                    }
                }
            }
            openCount = 0;
        }

        private void enter(int node, int from) {
            found[node] = ++clock;
            low[node] = clock;
            parent[node] = from;
            open[openCount++] = node;
        }

        private int advance(int node) {
            int next = graph.neighbour(node, HEADINGS[nextHeading[node]++]);
            if (next < 0 || next == parent[node]) {
                return -1;
            }
            if (found[next] != 0) {
                low[node] = Math.min(low[node], found[next]);
                return -1;
            }
            enter(next, node);
            return next;
        }

        private void leave(int node) {
            int above = parent[node];
            if (above < 0) {
                return;
            }
            low[above] = Math.min(low[above], low[node]);
            if (low[node] >= found[above]) {
                close(node, above);
            }
        }

        /** Takes the nodes above the cut node off the stack; the cut node belongs to the block but stays open. */
        private void close(int node, int cut) {
            int start = openCount - 1;
            while (open[start] != node) {
                start--;
            }
            int[] members = Arrays.copyOfRange(open, start, openCount + 1);
            members[members.length - 1] = cut;
            openCount = start;
            if (members.length >= 4) {
                Arrays.sort(members);
                blocks.add(new BiconnectedBlock(Arrays.stream(members).boxed().toList()));
            }
        }
    }
}
