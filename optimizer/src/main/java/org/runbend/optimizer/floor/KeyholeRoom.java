package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Keyhole;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/** Where on a lattice stiff pipe has room for a return bend: all three arcs of a keyhole keep off edge
 * and keep-outs, and no line that straight pipe must cover loses length to it. */
final class KeyholeRoom {
    private final FloorProblem problem;
    private final FreeSpace space;
    private final SiteRules site;
    private final ForcedRuns forced;

    KeyholeRoom(FloorProblem problem, FreeSpace space, SiteRules site, ForcedRuns forced) {
        this.problem = problem;
        this.space = space;
        this.site = site;
        this.forced = forced;
    }

    /** Allows the return bends that have room, both ways over each link. */
    void allow(LatticeGraph.Builder graph, LatticeGraph room, Point base) {
        if (!Keyhole.fitsBeside(problem.spacing(), problem.radius())) {
            return;
        }
        for (int node = 0; node < room.size(); node++) {
            for (Heading along : List.of(Heading.EAST, Heading.NORTH)) {
                for (Heading side : List.of(along.left(), along.right())) {
                    if (room.neighbour(node, along) >= 0 && hasRoom(at(room, node, base), along, side)) {
                        graph.allowReturn(node, along, side);
                    }
                }
            }
        }
    }

    private Point at(LatticeGraph room, int node, Point base) {
        return new Point(
                base.x() + room.column(node) * problem.spacing(), base.y() + room.row(node) * problem.spacing());
    }

    private boolean hasRoom(Point first, Heading along, Heading side) {
        Point second =
                new Point(first.x() + along.dx() * problem.spacing(), first.y() + along.dy() * problem.spacing());
        Point inward = new Point(side.dx(), side.dy());
        Keyhole keyhole = new Keyhole(first, second, inward, problem.radius());
        return forced.spares(keyhole) && keyhole.arcs().stream().allMatch(this::isFree);
    }

    private boolean isFree(Element.Bend bend) {
        double start = Math.atan2(
                bend.from().y() - bend.centre().y(),
                bend.from().x() - bend.centre().x());
        double sweep = Math.toRadians(bend.turn());
        return space.allowsArc(bend.centre().x(), bend.centre().y(), bend.radius(), start, sweep)
                && site.allowsArc(
                        new Distance.Arc(bend.centre().x(), bend.centre().y(), bend.radius(), start, sweep));
    }
}
