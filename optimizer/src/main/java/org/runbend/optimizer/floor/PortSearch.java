package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * Finds the neighbour pairs between which the pipe can come through, and the block of the lattice they open.
 *
 * <p>A pair must be linked, both its nodes within reach of the port, and on the rim: one of the two unit squares beside
 * its link is not whole. For a port inside the floor any linked pair within reach will do.
 */
final class PortSearch {
    private final FloorProblem problem;
    private final Point port;
    private final boolean inside;
    private final LatticeGraph room;
    private final EntryRoom entry;
    private final ForcedRuns forced;

    /** A search; the room is the lattice without supports and lines to run along, which make no rim. */
    PortSearch(
            FloorProblem problem, Point port, boolean inside, LatticeGraph room, EntryRoom entry, ForcedRuns forced) {
        this.problem = problem;
        this.port = port;
        this.inside = inside;
        this.room = room;
        this.entry = entry;
        this.forced = forced;
    }

    /** Pairs of the block with most heated nodes, nearest to the port first; a price is set on heated nodes only. */
    Optional<Found> choose(LatticeGraph graph, Point base) {
        List<int[]> pairs = pairsInReach(graph, base);
        Found best = null;
        for (BiconnectedBlock block : pairs.isEmpty() ? List.<BiconnectedBlock>of() : BiconnectedBlock.all(graph)) {
            List<int[]> own = pairs.stream()
                    .filter(p -> block.contains(p[0]) && block.contains(p[1]))
                    .toList();
            int heated = heated(graph, block);
            if (!own.isEmpty()
                    && block.holdsAllWanted(graph)
                    && heated > 0
                    && (best == null || heated > best.reachable)) {
                best = new Found(graph, ranked(graph, base, own), heated, List.of());
            }
        }
        return Optional.ofNullable(best);
    }

    /** Heated nodes of a block. */
    static int heated(LatticeGraph graph, BiconnectedBlock block) {
        return (int) block.nodes().stream().filter(n -> graph.price(n) > 0).count();
    }

    private List<int[]> pairsInReach(LatticeGraph graph, Point base) {
        return linkedInReach(graph, base, inside).stream()
                .filter(p -> entry.allowsHole(at(graph, base, p[0])) && entry.allowsHole(at(graph, base, p[1])))
                .toList();
    }

    /** Linked neighbours within reach of the port, wherever holes may be; on the rim alone unless they may be anywhere. */
    List<int[]> linkedInReach(LatticeGraph graph, Point base, boolean anywhere) {
        List<int[]> pairs = new ArrayList<>();
        for (int node = 0; node < graph.size(); node++) {
            for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
                int next = graph.neighbour(node, h);
                if (next >= 0
                        && distance(graph, base, node) <= problem.reach()
                        && distance(graph, base, next) <= problem.reach()
                        && (anywhere || isRim(node, h))
                        && !forced.holds(node, next)) {
                    pairs.add(new int[] {node, next});
                }
            }
        }
        return pairs;
    }

    /** Where a node lies, in the lattice's axes. */
    Point at(LatticeGraph graph, Point base, int node) {
        return new Point(
                base.x() + graph.column(node) * problem.spacing(), base.y() + graph.row(node) * problem.spacing());
    }

    private boolean isRim(int node, Heading h) {
        return !squareIsWhole(room, node, h, h.left()) || !squareIsWhole(room, node, h, h.right());
    }

    private static boolean squareIsWhole(LatticeGraph graph, int node, Heading along, Heading aside) {
        int next = graph.neighbour(node, along);
        int up = graph.neighbour(node, aside);
        return up >= 0 && graph.neighbour(next, aside) >= 0 && graph.neighbour(up, along) >= 0;
    }

    private List<PortPair> ranked(LatticeGraph graph, Point base, List<int[]> pairs) {
        List<int[]> sorted = new ArrayList<>(pairs);
        sorted.sort(Comparator.comparingDouble((int[] p) -> away(graph, base, p))
                .thenComparingInt(p -> p[0])
                .thenComparingInt(p -> p[1]));
        List<PortPair> ranked = new ArrayList<>();
        for (int[] p : sorted.subList(0, Math.min(problem.mostPorts(), sorted.size()))) {
            ranked.add(new PortPair(p[0], p[1], ranked.size()));
        }
        return ranked;
    }

    /** Sum of both distances from the port, to a thousandth, so that equal places tie on any machine. */
    private double away(LatticeGraph graph, Point base, int[] pair) {
        return Math.rint(1000 * (distance(graph, base, pair[0]) + distance(graph, base, pair[1])));
    }

    private double distance(LatticeGraph graph, Point base, int node) {
        return port.distance(at(graph, base, node));
    }

    /** Graph, port pairs, number of heated nodes in their block, and the ways to them in the lattice's axes. */
    record Found(LatticeGraph graph, List<PortPair> pairs, int reachable, List<Lead.Pair> leads) {}
}
