package org.runbend.optimizer.floor;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.StraightCost;

/**
 * Builds the lattice of one offset: nodes, links and corner arcs, each tested against edge and keep-outs.
 *
 * <p>Works in the lattice's own axes, see {@link LatticeAxes}.
 */
final class LatticeBuilder {
    /** A node this near to a hole given lies on it, mm; chosen, not measured. */
    private static final double ON_HOLE = 0.5;

    /** What is undone and fixed again with tools: bends stay a hand's width off it where a loop without them is as good. */
    private static final Set<KeepOut.Kind> TENDED =
            EnumSet.of(KeepOut.Kind.BOLT, KeepOut.Kind.ANCHOR, KeepOut.Kind.HATCH);

    /** A hand's width, mm: common practice. */
    private static final double HAND = 100;

    private final FloorProblem problem;
    private final LatticeAxes frame;
    private final FreeSpace space;
    private final FreeSpace off;
    private final List<Point> outline;
    private final List<double[][]> cold;
    private final SiteRules site;
    private final EntryRoom entryRoom;
    private final double lowX;
    private final double lowY;
    private final double highX;
    private final double highY;

    LatticeBuilder(FloorProblem problem) {
        this.problem = problem;
        this.frame = new LatticeAxes(problem.angle());
        this.outline = frame.in(problem.outline());
        this.space = new FreeSpace(
                outline,
                problem.edge(),
                EntryRoom.keepOuts(problem).map(frame::in).toList());
        this.off = new FreeSpace(
                outline,
                0,
                problem.keepOuts().stream()
                        .filter(k -> TENDED.contains(k.kind()))
                        .map(k -> new KeepOut(k.name(), k.kind(), k.bare(), HAND))
                        .map(frame::in)
                        .toList());
        this.site = new SiteRules(problem, frame);
        this.entryRoom = new EntryRoom(problem, frame);
        this.cold = problem.unheated().stream().map(this::ring).toList();
        this.lowX = outline.stream().mapToDouble(Point::x).min().orElseThrow();
        this.lowY = outline.stream().mapToDouble(Point::y).min().orElseThrow();
        this.highX = outline.stream().mapToDouble(Point::x).max().orElseThrow();
        this.highY = outline.stream().mapToDouble(Point::y).max().orElseThrow();
    }

    /** The lines that the loop must run along, in the lattice's axes. */
    ForcedRuns forcedRuns() {
        return new ForcedRuns(problem, frame);
    }

    private List<Point> holes() {
        return problem.entry().holes().stream()
                .flatMap(h -> Stream.of(h.flow(), h.back()))
                .map(frame::in)
                .toList();
    }

    /** Offsets at which a row passes through a hole given, then others. */
    List<Double> throughHoles(Function<Point, Double> coordinate, List<Double> others) {
        return Offsets.through(holes().stream().map(coordinate).toList(), problem.spacing(), others);
    }

    /** The offset at which every hole given is a node and the two of a loop are neighbours; empty if none is. */
    Optional<Point> offsetOnHoles() {
        List<Point> holes = holes();
        if (holes.isEmpty()) {
            return Optional.empty();
        }
        double p = problem.spacing();
        Point first = holes.get(0);
        for (int i = 0; i < holes.size(); i++) {
            Point h = holes.get(i);
            boolean onNode = isWhole((h.x() - first.x()) / p) && isWhole((h.y() - first.y()) / p);
            boolean beside = i % 2 == 0 || Math.abs(h.distance(holes.get(i - 1)) - p) < ON_HOLE;
            if (!onNode || !beside) {
                return Optional.empty();
            }
        }
        return Optional.of(
                new Point(first.x() - p * Math.floor(first.x() / p), first.y() - p * Math.floor(first.y() / p)));
    }

    private boolean isWhole(double steps) {
        return Math.abs(steps - Math.rint(steps)) * problem.spacing() < ON_HOLE;
    }

    private double[][] ring(Shape.Polygon polygon) {
        List<Point> corners = frame.in(polygon.corners());
        return new double[][] {
            corners.stream().mapToDouble(Point::x).toArray(),
            corners.stream().mapToDouble(Point::y).toArray()
        };
    }

    /** The outline in the lattice's axes. */
    List<Point> outline() {
        return outline;
    }

    /** Number of heated nodes at an offset, whether a loop can reach them or not. */
    int countHeated(Point offset) {
        int count = 0;
        Point base = base(offset);
        for (double y = base.y(); y <= highY; y += problem.spacing()) {
            for (double x = base.x(); x <= highX; x += problem.spacing()) {
                count += space.allowsPoint(x, y) && isHeated(x, y) ? 1 : 0;
            }
        }
        return count;
    }

    /** The lattice at an offset with the ports of its best block, if it has any. */
    Optional<Lattice> build(Point offset) {
        Point base = base(offset);
        LatticeGraph.Builder graph = LatticeGraph.builder();
        PlacePrice price = problem.leftOutPrice();
        graph.turnCost(price.turn()).straightCost(new StraightCost(price.pieceEnd(), price.pieceExtra()));
        int columns = (int) Math.floor((highX - base.x()) / problem.spacing() + 1e-9) + 1;
        int rows = (int) Math.floor((highY - base.y()) / problem.spacing() + 1e-9) + 1;
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                addNode(graph, base, column, row);
            }
        }
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                link(graph, base, column, row);
            }
        }
        LatticeGraph room = graph.build();
        keepSquare(graph, room, base);
        ForcedRuns forced = forcedRuns();
        if (problem.isStiff()) {
            new KeyholeRoom(problem, space, site, forced).allow(graph.stiff(), room, base);
        }
        if (!forced.force(graph, base)) {
            return Optional.empty();
        }
        PortSearch ports =
                new PortSearch(problem, frame.in(problem.port()), isInside(problem.port()), room, entryRoom, forced);
        LatticeGraph built = graph.build();
        Optional<PortSearch.Found> chosen = problem.entry().isSettledFirst()
                ? new EntrySearch(problem, frame, ports, entryRoom).choose(built, base)
                : ports.choose(built, base);
        return chosen.map(found -> new Lattice(
                frame.out(base),
                problem.angle(),
                problem.spacing(),
                problem.radius(),
                found.graph(),
                found.pairs(),
                found.reachable(),
                found.leads().stream().map(frame::out).toList()));
    }

    private Point base(Point offset) {
        double p = problem.spacing();
        return new Point(
                offset.x() + p * Math.floor((lowX - offset.x()) / p),
                offset.y() + p * Math.floor((lowY - offset.y()) / p));
    }

    private void addNode(LatticeGraph.Builder graph, Point base, int column, int row) {
        double x = base.x() + column * problem.spacing();
        double y = base.y() + row * problem.spacing();
        if (space.allowsPoint(x, y)) {
            int node = graph.addNode(
                    column, row, isHeated(x, y) ? problem.leftOutPrice().leftOut() : 0);
            if (!off.allowsPoint(x, y)) {
                graph.crowd(node);
            }
        }
    }

    private void link(LatticeGraph.Builder graph, Point base, int column, int row) {
        int node = graph.nodeAt(column, row);
        if (node < 0) {
            return;
        }
        double x = base.x() + column * problem.spacing();
        double y = base.y() + row * problem.spacing();
        for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
            int next = graph.nodeAt(column + h.dx(), row + h.dy());
            double nextX = x + h.dx() * problem.spacing();
            double nextY = y + h.dy() * problem.spacing();
            if (next >= 0 && space.allowsSegment(x, y, nextX, nextY)) {
                graph.link(node, next);
            }
        }
        for (Heading h : Heading.values()) {
            if (!allowsCorner(x, y, h)) {
                graph.forbidBend(node, h, h.left());
            }
        }
    }

    /** Takes away the links that supports do not allow; what is rim is seen without them. */
    private void keepSquare(LatticeGraph.Builder graph, LatticeGraph room, Point base) {
        for (int node = 0; node < room.size(); node++) {
            for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
                int next = room.neighbour(node, h);
                double x = base.x() + room.column(node) * problem.spacing();
                double y = base.y() + room.row(node) * problem.spacing();
                boolean allowed = next < 0
                        || site.allowsSegment(x, y, x + h.dx() * problem.spacing(), y + h.dy() * problem.spacing());
                if (!allowed) {
                    graph.unlink(node, next);
                }
            }
        }
    }

    /** The corner with legs h and h.left(): its arc runs from a point on one leg to a point on the other. */
    private boolean allowsCorner(double x, double y, Heading h) {
        double r = problem.radius();
        double cx = x + r * (h.dx() + h.left().dx());
        double cy = y + r * (h.dy() + h.left().dy());
        double start = Math.atan2(-h.left().dy(), -h.left().dx());
        return space.allowsArc(cx, cy, r, start, -Math.PI / 2)
                && site.allowsArc(new Distance.Arc(cx, cy, r, start, -Math.PI / 2));
    }

    private boolean isHeated(double x, double y) {
        return cold.stream().noneMatch(ring -> FreeSpace.inside(ring[0], ring[1], x, y));
    }

    /** Whether the port lies in the floor further from the outline than the pipe keeps from it. */
    private boolean isInside(Point port) {
        Point p = frame.in(port);
        return new FreeSpace(outline, problem.edge() + 1, List.of()).allowsPoint(p.x(), p.y());
    }
}
