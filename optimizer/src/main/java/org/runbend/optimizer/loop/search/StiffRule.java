package org.runbend.optimizer.loop.search;

import java.util.List;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/** Whether stiff pipe can follow a path of nodes: no two turns in a row but in return bends that have room. */
final class StiffRule {
    private StiffRule() {}

    /** The path from its first node to its last; where it comes through the floor it does not bend. */
    static boolean fits(LatticeGraph graph, List<Integer> path) {
        int row = 0;
        for (int i = 1; i + 1 < path.size() && graph.isStiff(); i++) {
            Heading in = graph.headingTo(path.get(i - 1), path.get(i));
            Heading out = graph.headingTo(path.get(i), path.get(i + 1));
            row = in == out ? 0 : row + 1;
            if (row > 2) {
                return false;
            }
            if (row == 2) {
                Heading first = graph.headingTo(path.get(i - 2), path.get(i - 1));
                if (out != first.opposite() || !graph.returnAllowed(path.get(i), in.opposite(), out)) {
                    return false;
                }
            }
        }
        return true;
    }
}
