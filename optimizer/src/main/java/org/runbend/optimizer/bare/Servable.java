package org.runbend.optimizer.bare;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.runbend.optimizer.floor.Colours;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * The nodes that a closed loop through one link may pass, as far as links and bends tell.
 *
 * <p>A node of a simple loop has two legs that meet straight or in a bend that is allowed, and lies in the biconnected
 * block of the link. Nodes that fail either are taken out until none does; a loop that passes one of them is impossible. At the
 * port no bend is laid: there the pipe comes through the floor.
 *
 * @param lattice the lattice
 * @param nodes the nodes left, ascending
 */
record Servable(Lattice lattice, List<Integer> nodes) {
    Servable {
        nodes = List.copyOf(nodes);
    }

    /** Through the first port pair at which a loop may begin and end; empty if there is none. */
    static Optional<Servable> of(Lattice lattice) {
        for (PortPair port : lattice.ports()) {
            Optional<Servable> found = through(lattice, port);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    /** Through a port pair; empty if no loop can be. */
    static Optional<Servable> through(Lattice lattice, PortPair port) {
        LatticeGraph graph = lattice.graph();
        boolean[] in = new boolean[graph.size()];
        Arrays.fill(in, true);
        for (boolean changed = true; changed; ) {
            Optional<BiconnectedBlock> block = block(graph, in, port);
            if (block.isEmpty()) {
                return Optional.empty();
            }
            int before = count(in);
            boolean[] kept = new boolean[in.length];
            block.get().nodes().forEach(n -> kept[n] = true);
            in = kept;
            dropCorners(graph, in, port);
            changed = count(in) < before;
        }
        boolean[] left = in;
        if (IntStream.range(0, left.length).anyMatch(n -> graph.isWanted(n) && !left[n])) {
            return Optional.empty();
        }
        return Optional.of(new Servable(
                lattice,
                IntStream.range(0, left.length).filter(n -> left[n]).boxed().toList()));
    }

    private static int count(boolean[] in) {
        return (int) IntStream.range(0, in.length).filter(n -> in[n]).count();
    }

    /** The block of the port's link among the nodes that are in, numbered as in the whole graph. */
    private static Optional<BiconnectedBlock> block(LatticeGraph graph, boolean[] in, PortPair port) {
        if (!in[port.from()] || !in[port.to()]) {
            return Optional.empty();
        }
        int[] nodes = IntStream.range(0, in.length).filter(n -> in[n]).toArray();
        return BiconnectedBlock.ofLink(
                        graph.part(nodes),
                        Arrays.binarySearch(nodes, port.from()),
                        Arrays.binarySearch(nodes, port.to()))
                .map(b -> new BiconnectedBlock(
                        b.nodes().stream().map(n -> nodes[n]).toList()));
    }

    private static void dropCorners(LatticeGraph graph, boolean[] in, PortPair port) {
        for (boolean changed = true; changed; ) {
            changed = false;
            for (int n = 0; n < in.length; n++) {
                if (in[n] && n != port.from() && n != port.to() && !canPass(graph, in, n)) {
                    in[n] = false;
                    changed = true;
                }
            }
        }
    }

    private static boolean canPass(LatticeGraph graph, boolean[] in, int node) {
        for (Heading a : Heading.values()) {
            for (Heading b : Heading.values()) {
                if (a.index() < b.index()
                        && leads(graph, in, node, a)
                        && leads(graph, in, node, b)
                        && graph.bendAllowed(node, a, b)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean leads(LatticeGraph graph, boolean[] in, int node, Heading h) {
        int next = graph.neighbour(node, h);
        return next >= 0 && in[next];
    }

    boolean contains(int node) {
        return Collections.binarySearch(nodes, node) >= 0;
    }

    /** Most heated nodes that one loop can pass as far as colours tell. */
    int coverable() {
        return Colours.coverable(lattice.graph(), nodes);
    }

    /** Number of heated nodes. */
    int heated() {
        return (int) nodes.stream().filter(n -> lattice.graph().price(n) > 0).count();
    }

    /** Number of heated nodes in a zone of the floor. */
    int within(PreparedGeometry zone) {
        return (int) nodes.stream()
                .filter(n -> lattice.graph().price(n) > 0)
                .map(lattice::at)
                .filter(p -> covers(zone, p))
                .count();
    }

    private static boolean covers(PreparedGeometry zone, Point p) {
        return zone.getGeometry().getEnvelopeInternal().covers(p.x(), p.y()) && zone.intersects(FloorShapes.line(p, p));
    }
}
