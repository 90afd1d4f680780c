package org.runbend.optimizer.loop;

import java.util.List;
import org.runbend.optimizer.lattice.LatticeGraph;

/** What a closed loop costs by its shape: its turns, and the places that it passes straight in short pieces. */
public final class LoopCost {
    private LoopCost() {}

    /** Turns at their cost and straight places of short pieces at theirs, in the unit of the graph's prices. */
    public static long ofShape(LatticeGraph graph, List<Integer> cycle) {
        return (long) graph.turnCost() * turns(graph, cycle) + (long) graph.shortCost() * shortPlaces(graph, cycle);
    }

    /** Corners of the closed cycle. */
    public static int turns(LatticeGraph graph, List<Integer> cycle) {
        int turns = 0;
        for (int i = 0; i < cycle.size(); i++) {
            turns += isCorner(graph, cycle, i) ? 1 : 0;
        }
        return turns;
    }

    /** Nodes passed straight in pieces between two corners that hold no more of them than the graph says; 0 if it says nothing. */
    public static int shortPlaces(LatticeGraph graph, List<Integer> cycle) {
        int n = cycle.size();
        int places = 0;
        for (int i = 0; i < n && graph.mostShort() > 0; i++) {
            if (isCorner(graph, cycle, i)) {
                int straight = 0;
                while (straight <= graph.mostShort() && !isCorner(graph, cycle, (i + 1 + straight) % n)) {
                    straight++;
                }
                places += straight <= graph.mostShort() ? straight : 0;
            }
        }
        return places;
    }

    private static boolean isCorner(LatticeGraph graph, List<Integer> cycle, int i) {
        int before = cycle.get((i + cycle.size() - 1) % cycle.size());
        int after = cycle.get((i + 1) % cycle.size());
        return graph.column(before) != graph.column(after) && graph.row(before) != graph.row(after);
    }
}
