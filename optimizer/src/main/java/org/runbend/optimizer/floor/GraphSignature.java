package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/** Tells whether two lattices offer a loop the same choices. */
final class GraphSignature {
    private GraphSignature() {}

    /** Equal for lattices whose nodes (and which of them must be passed), prices, links, bends, return bends and ports are equal but for a shift of whole nodes. */
    static String of(Lattice lattice) {
        LatticeGraph g = lattice.graph();
        int column = Integer.MAX_VALUE;
        int row = Integer.MAX_VALUE;
        for (int n = 0; n < g.size(); n++) {
            column = Math.min(column, g.column(n));
            row = Math.min(row, g.row(n));
        }
        StringBuilder text = new StringBuilder();
        for (int n = 0; n < g.size(); n++) {
            text.append(g.column(n) - column).append(',').append(g.row(n) - row).append(',');
            text.append(g.price(n)).append(',').append(choices(g, n));
            text.append(g.isWanted(n) ? "!" : "")
                    .append(g.isCrowded(n) ? "x" : "")
                    .append(returns(g, n))
                    .append(';');
        }
        for (PortPair port : lattice.ports()) {
            text.append(port.from()).append('-').append(port.to()).append(';');
        }
        return text.toString();
    }

    /** Number of links (counted at both ends) and bends that a loop may use. */
    static int freedom(Lattice lattice) {
        int count = 0;
        for (int n = 0; n < lattice.graph().size(); n++) {
            count += Integer.bitCount(choices(lattice.graph(), n));
        }
        return count;
    }

    /** Where stiff pipe may turn back, if anywhere. */
    private static String returns(LatticeGraph g, int node) {
        StringBuilder text = new StringBuilder();
        for (Heading along : List.of(Heading.EAST, Heading.NORTH)) {
            for (Heading side : List.of(along.left(), along.right())) {
                text.append(g.returnAllowed(node, along, side) ? "r" + along.index() + side.index() : "");
            }
        }
        return text.toString();
    }

    private static int choices(LatticeGraph g, int node) {
        int bits = 0;
        for (Heading h : Heading.values()) {
            bits = bits << 2 | (g.neighbour(node, h) >= 0 ? 2 : 0) | (g.bendAllowed(node, h, h.left()) ? 1 : 0);
        }
        return bits;
    }
}
