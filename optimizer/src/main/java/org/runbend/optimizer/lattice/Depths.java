package org.runbend.optimizer.lattice;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/** How deep a node lies in the heated floor: 1 beside a wall, a keep-out or unheated floor, 2 one step further in. */
public final class Depths {
    private Depths() {}

    /** The depth of each node; 0 for an unheated one. */
    public static int[] of(LatticeGraph graph) {
        int[] depths = new int[graph.size()];
        Arrays.fill(depths, Integer.MAX_VALUE);
        Deque<Integer> queue = new ArrayDeque<>();
        for (int n = 0; n < graph.size(); n++) {
            if (graph.price(n) == 0) {
                depths[n] = 0;
                queue.addFirst(n);
            } else if (isBesideNothing(graph, n)) {
                depths[n] = 1;
                queue.addLast(n);
            }
        }
        while (!queue.isEmpty()) {
            int node = queue.removeFirst();
            for (Heading h : Heading.values()) {
                int next = graph.neighbour(node, h);
                if (next >= 0 && depths[next] > depths[node] + 1) {
                    depths[next] = depths[node] + 1;
                    queue.addLast(next);
                }
            }
        }
        return depths;
    }

    /** Whether one of the four unit squares at the node is not whole. */
    private static boolean isBesideNothing(LatticeGraph graph, int node) {
        for (Heading h : Heading.values()) {
            int side = graph.neighbour(node, h);
            int up = graph.neighbour(node, h.left());
            if (side < 0
                    || up < 0
                    || graph.neighbour(side, h.left()) < 0
                    || graph.neighbour(side, h.left()) != graph.neighbour(up, h)) {
                return true;
            }
        }
        return false;
    }
}
