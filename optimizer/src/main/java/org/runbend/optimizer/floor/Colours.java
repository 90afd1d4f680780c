package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * What colours tell: neighbouring nodes differ in colour like the fields of a chessboard, so a closed loop passes as many
 * of one colour as of the other.
 */
public final class Colours {
    private Colours() {}

    /**
     * Most heated nodes that one loop can serve as far as colours tell; unheated nodes among them may make up for what one
     * colour lacks.
     *
     * @param nodes the nodes that a loop may pass
     */
    public static int coverable(LatticeGraph graph, List<Integer> nodes) {
        int[] heated = count(graph, nodes, true);
        int[] cold = count(graph, nodes, false);
        int fewer = heated[0] < heated[1] ? 0 : 1;
        return heated[fewer] + Math.min(heated[1 - fewer], heated[fewer] + cold[fewer]);
    }

    /** Number of heated, or of unheated, nodes of either colour; the colour of column 0, row 0 first. */
    public static int[] count(LatticeGraph graph, List<Integer> nodes, boolean heated) {
        int[] counts = new int[2];
        for (int node : nodes) {
            if (graph.price(node) > 0 == heated) {
                counts[of(graph, node)]++;
            }
        }
        return counts;
    }

    /** Colour of a node: 0 or 1. */
    public static int of(LatticeGraph graph, int node) {
        return Math.floorMod(graph.column(node) + graph.row(node), 2);
    }
}
