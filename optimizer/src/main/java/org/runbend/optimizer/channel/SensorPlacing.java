package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Places a floor sensor and leads its conduit there without crossing pipe.
 *
 * <p>Method: the free floor is walked over on a grid from the port (Dijkstra), each step held against the free floor itself; the
 * best place that is reached by a way that the cable is long enough for is taken and the way to it drawn tight. A strip of free floor narrower than the grid may be
 * overlooked, so "no way" says what was found, not what is proved.
 */
public final class SensorPlacing {
    private static final int QUARTER = 16;

    /** What chords of arcs may be out, mm. */
    private static final double HAIR = 0.1;

    private static final double GRID = 25;

    /** How far from the port the conduit may begin, mm: within reach of a hand's breadth. */
    private static final double BEGIN = 300;

    private static final double STEP = 5;

    private final SensorProblem problem;
    private final PreparedGeometry free;

    private SensorPlacing(SensorProblem problem) {
        this.problem = problem;
        this.free = PreparedGeometryFactory.prepare(freeFloor(problem));
    }

    /** A node of the grid that starts at the port. */
    private record Node(int column, int row) {}

    /** The plan; without a sensor where no place under a plate is reached. */
    public static SensorPlan solve(SensorProblem problem) {
        return new SensorPlacing(problem).plan();
    }

    private SensorPlan plan() {
        List<Point> spots = new SensorSpots(problem)
                .best().stream().filter(p -> free.covers(FloorShapes.point(p))).toList();
        Optional<Point> wanted = spots.stream().findFirst();
        Optional<Point> begin = begin();
        if (begin.isEmpty()) {
            return new SensorPlan(problem, Optional.empty(), List.of(), wanted, Optional.empty());
        }
        Map<Node, Node> before = walk(begin.get());
        List<SensorPlan> reached = new ArrayList<>();
        for (Point spot : spots) {
            Optional<Node> last = join(before, begin.get(), spot);
            if (last.isPresent()) {
                List<Point> way = way(before, last.get(), begin.get());
                way.add(spot);
                reached.add(new SensorPlan(problem, Optional.of(spot), tight(way), wanted, Optional.of(spot)));
                if (!reached.get(reached.size() - 1).isCableShort()) {
                    return reached.get(reached.size() - 1);
                }
            }
        }
        if (!reached.isEmpty()) {
            return reached.get(0); // a longer cable is bought rather than a bad place taken
        }
        Optional<Point> nearest = wanted.flatMap(w -> before.keySet().stream()
                .map(n -> at(begin.get(), n))
                .min(Comparator.comparingDouble((Point p) -> p.distance(w))
                        .thenComparingDouble(Point::x)
                        .thenComparingDouble(Point::y)));
        return new SensorPlan(problem, Optional.empty(), List.of(), wanted, nearest);
    }

    /** Where a conduit's middle may lie. */
    private static Geometry freeFloor(SensorProblem problem) {
        double half = SensorProblem.CONDUIT / 2;
        double web = problem.size().web();
        Geometry floor = FloorShapes.polygon(problem.outline()).buffer(-half - web - HAIR, QUARTER);
        List<Geometry> taken = new ArrayList<>();
        for (Breakdown loop : problem.loops()) {
            taken.add(FloorShapes.line(loop.chords(2)).buffer(problem.size().fromPipe() + HAIR, QUARTER));
            for (Slot s : loop.slots()) {
                taken.add(
                        FloorShapes.line(List.of(s.from(), s.to())).buffer(s.width() / 2 + web + half + HAIR, QUARTER));
            }
        }
        for (KeepOut k : problem.keepOuts()) {
            taken.add(bare(k.bare(), half + SensorProblem.AIR + HAIR));
        }
        return floor.difference(floor.getFactory()
                .createGeometryCollection(taken.toArray(Geometry[]::new))
                .buffer(0));
    }

    /** The free place nearest to the port, over nothing that must not be drilled into. */
    private Optional<Point> begin() {
        List<Geometry> below = problem.below().stream()
                .map(b -> FloorShapes.polygon(b).buffer(SensorProblem.CONDUIT / 2 + SensorProblem.AIR, QUARTER))
                .toList();
        Point best = null;
        int steps = (int) (BEGIN / STEP);
        for (int i = -steps; i <= steps; i++) {
            for (int k = -steps; k <= steps; k++) {
                Point p =
                        new Point(problem.port().x() + i * STEP, problem.port().y() + k * STEP);
                boolean nearer = p.distance(problem.port()) <= BEGIN
                        && (best == null || p.distance(problem.port()) < best.distance(problem.port()) - 1e-9);
                if (nearer
                        && free.covers(FloorShapes.point(p))
                        && below.stream().noneMatch(b -> b.intersects(FloorShapes.point(p)))) {
                    best = p;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** Each node that is reached, and the one before it on the shortest way. */
    private Map<Node, Node> walk(Point begin) {
        Envelope box = free.getGeometry().getEnvelopeInternal();
        Map<Node, Node> before = new HashMap<>();
        Map<Node, Double> ways = new HashMap<>();
        record Open(Node node, Node from, double way) {}
        PriorityQueue<Open> open = new PriorityQueue<>(Comparator.comparingDouble(Open::way)
                .thenComparingInt((Open o) -> o.node().column())
                .thenComparingInt(o -> o.node().row()));
        Node first = new Node(0, 0);
        open.add(new Open(first, first, 0));
        ways.put(first, 0.0);
        while (!open.isEmpty()) {
            Open o = open.poll();
            if (before.putIfAbsent(o.node(), o.from()) != null) {
                continue;
            }
            for (int[] d : new int[][] {{1, 0}, {0, 1}, {-1, 0}, {0, -1}}) {
                Node next = new Node(o.node().column() + d[0], o.node().row() + d[1]);
                Point p = at(begin, next);
                double way = o.way() + GRID;
                if (!before.containsKey(next)
                        && box.contains(p.x(), p.y())
                        && way < ways.getOrDefault(next, Double.POSITIVE_INFINITY)
                        && free.covers(FloorShapes.line(List.of(at(begin, o.node()), p)))) {
                    ways.put(next, way);
                    open.add(new Open(next, o.node(), way));
                }
            }
        }
        return before;
    }

    private static Point at(Point begin, Node n) {
        return new Point(begin.x() + n.column() * GRID, begin.y() + n.row() * GRID);
    }

    /** A node that was reached and sees a place, the nearest one. */
    private Optional<Node> join(Map<Node, Node> before, Point begin, Point spot) {
        int column = (int) Math.rint((spot.x() - begin.x()) / GRID);
        int row = (int) Math.rint((spot.y() - begin.y()) / GRID);
        List<Node> near = new ArrayList<>();
        for (int i = -2; i <= 2; i++) {
            for (int k = -2; k <= 2; k++) {
                near.add(new Node(column + i, row + k));
            }
        }
        near.sort(Comparator.comparingDouble((Node n) -> at(begin, n).distance(spot)));
        return near.stream()
                .filter(before::containsKey)
                .filter(n -> at(begin, n).distance(spot) < 1e-9
                        || free.covers(FloorShapes.line(List.of(at(begin, n), spot))))
                .findFirst();
    }

    private static List<Point> way(Map<Node, Node> before, Node last, Point begin) {
        List<Point> way = new ArrayList<>();
        Node n = last;
        while (!before.get(n).equals(n)) {
            way.add(at(begin, n));
            n = before.get(n);
        }
        way.add(at(begin, n));
        Collections.reverse(way);
        return way;
    }

    /** The way with corners left out wherever the next but one can be seen. */
    private List<Point> tight(List<Point> way) {
        List<Point> kept = new ArrayList<>();
        int i = 0;
        kept.add(way.get(0));
        while (i < way.size() - 1) {
            int k = way.size() - 1;
            while (k > i + 1 && !free.covers(FloorShapes.line(List.of(way.get(i), way.get(k))))) {
                k--;
            }
            if (way.get(i).distance(way.get(k)) > 1e-9) {
                kept.add(way.get(k));
            }
            i = k;
        }
        return kept;
    }

    private static Geometry bare(Shape shape, double by) {
        if (shape instanceof Shape.Polygon p) {
            return FloorShapes.polygon(p.corners()).buffer(by, QUARTER);
        }
        return shape instanceof Shape.Circle c
                ? FloorShapes.point(c.centre()).buffer(c.radius() + by, QUARTER)
                : FloorShapes.point(((Shape.Spot) shape).at()).buffer(((Shape.Spot) shape).radius() + by, QUARTER);
    }
}
