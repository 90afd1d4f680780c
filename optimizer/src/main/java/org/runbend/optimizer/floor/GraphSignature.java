package org.runbend.optimizer.floor;

import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/** Tells whether two lattices offer a loop the same choices. */
final class GraphSignature {
    private GraphSignature() {}

    /** Equal for lattices whose nodes, prices, links, bends and ports are equal but for a shift of whole nodes. */
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
            text.append(g.price(n)).append(',').append(choices(g, n)).append(';');
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

    private static int choices(LatticeGraph g, int node) {
        int bits = 0;
        for (Heading h : Heading.values()) {
            bits = bits << 2 | (g.neighbour(node, h) >= 0 ? 2 : 0) | (g.bendAllowed(node, h, h.left()) ? 1 : 0);
        }
        return bits;
    }
}
