package org.runbend.optimizer.loop;

import java.util.List;
import org.runbend.optimizer.lattice.LatticeGraph;

/** What a closed loop costs by its shape: its turns and its straight pieces. */
public final class LoopCost {
    private LoopCost() {}

    /** Turns and straight pieces, in the unit of the graph's prices. */
    public static long ofShape(LatticeGraph graph, List<Integer> cycle) {
        return (long) graph.turnCost() * turns(graph, cycle) + ofPieces(graph, cycle);
    }

    /** Corners of the closed cycle. */
    public static int turns(LatticeGraph graph, List<Integer> cycle) {
        int turns = 0;
        for (int i = 0; i < cycle.size(); i++) {
            turns += isCorner(graph, cycle, i) ? 1 : 0;
        }
        return turns;
    }

    /** What the straight pieces between its corners cost, in the unit of the graph's prices. */
    public static int ofPieces(LatticeGraph graph, List<Integer> cycle) {
        int n = cycle.size();
        int cost = 0;
        for (int i = 0; i < n && !graph.straightCost().isNone(); i++) {
            if (isCorner(graph, cycle, i)) {
                int straight = 0;
                while (!isCorner(graph, cycle, (i + 1 + straight) % n)) {
                    straight++;
                }
                cost += graph.straightCost().of(straight);
            }
        }
        return cost;
    }

    private static boolean isCorner(LatticeGraph graph, List<Integer> cycle, int i) {
        int before = cycle.get((i + cycle.size() - 1) % cycle.size());
        int after = cycle.get((i + 1) % cycle.size());
        return graph.column(before) != graph.column(after) && graph.row(before) != graph.row(after);
    }
}
