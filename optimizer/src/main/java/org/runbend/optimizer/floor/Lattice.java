package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * The lattice on a floor: its graph, where its nodes lie, and the port pairs that a loop may use.
 *
 * @param origin place of column 0, row 0 on the floor, mm
 * @param angle direction of the columns' axis, degrees
 * @param spacing mm
 * @param radius radius at which corners are laid, mm
 * @param graph nodes, links and forbidden bends; a heated node's price is the price of leaving it out
 * @param ports pairs of one block, best place first
 * @param reachable heated nodes of the block that the ports belong to
 * @param leads the ways from the holes, one pair for each port pair; empty where the holes are chosen when the loop is laid
 */
public record Lattice(
        Point origin,
        double angle,
        double spacing,
        double radius,
        LatticeGraph graph,
        List<PortPair> ports,
        int reachable,
        List<Lead.Pair> leads) {
    /** Copies the lists. */
    public Lattice {
        ports = List.copyOf(ports);
        leads = List.copyOf(leads);
        if (!leads.isEmpty() && leads.size() != ports.size()) {
            throw new IllegalArgumentException("each port pair has its leads, or none has");
        }
    }

    /** The same lattice without some of its port pairs. */
    public Lattice withPorts(List<PortPair> others) {
        return new Lattice(origin, angle, spacing, radius, graph, others, reachable, List.of());
    }

    /** Where a node lies on the floor. */
    public Point at(int node) {
        LatticeAxes frame = new LatticeAxes(angle);
        Point base = frame.in(origin);
        return frame.out(new Point(base.x() + graph.column(node) * spacing, base.y() + graph.row(node) * spacing));
    }

    /** A point of the floor as column and row, with fractions between nodes. */
    public Point amongPlaces(Point p) {
        LatticeAxes frame = new LatticeAxes(angle);
        Point base = frame.in(origin);
        Point turned = frame.in(p);
        return new Point((turned.x() - base.x()) / spacing, (turned.y() - base.y()) / spacing);
    }
}
