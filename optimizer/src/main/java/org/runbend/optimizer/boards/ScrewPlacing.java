package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.FixingPlan.Screw;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * Chooses the places of a cover's screws, and where nobody may screw.
 *
 * <p>Method: on each board a grid of even rows is moved place by place to the nearest spot that may be screwed; then whatever is
 * farther from a screw than the middle of four is given one more, the farthest place first. Not proved fewest.
 */
public final class ScrewPlacing {
    private static final int QUARTER = 16;

    /** What chords of round things and of bends may be out, mm: 45 (1 - cos(90 / 16 / 2 degrees)) = 0.06. */
    private static final double HAIR = 0.1;

    /** Places are looked at so far apart, mm; any place is within 0.71 of that of one. */
    private static final double GRID = 14;

    private static final double HALF_CELL = GRID * Math.sqrt(0.5);

    /** The outermost row lies so far inside what may be screwed, mm. */
    private static final double INSET = 5;

    /** Steps of the search for a spot near a place, mm. */
    private static final double STEP = 15;

    /** No screw at hand has the length. */
    public static final class NoScrew extends RuntimeException {
        private final double least;
        private final double most;

        NoScrew(double least, double most) {
            super("no screw of the length");
            this.least = least;
            this.most = most;
        }

        /** The shortest that would hold, mm. */
        public double least() {
            return least;
        }

        /** The longest that would stay in what holds it, mm. */
        public double most() {
            return most;
        }
    }

    private final FixingProblem problem;
    private final Geometry forbidden;
    private final Geometry lids;

    private ScrewPlacing(FixingProblem problem) {
        this.problem = problem;
        this.forbidden = forbidden();
        Geometry all = Region.FACTORY.createPolygon();
        for (Cutout c : problem.cutouts()) {
            if (c.filling() == Filling.LID) {
                all = all.union(Region.open(c));
            }
        }
        this.lids = all;
    }

    /** The plan. Throws {@link NoScrew} where none at hand has the length. */
    public static FixingPlan solve(FixingProblem problem, CoverFixing fixing) {
        ScrewPlacing placing = new ScrewPlacing(problem);
        List<List<Point>> map = placing.map();
        if (fixing != CoverFixing.SCREW) {
            return new FixingPlan(problem, fixing, OptionalDouble.empty(), List.of(), 0, map);
        }
        double length = length(problem.size());
        List<Screw> screws = new ArrayList<>();
        double farthest = 0;
        for (Part part : problem.cover()) {
            Polygon shape = polygon(part);
            if (!placing.lids.covers(shape)) {
                List<Coordinate> found = placing.screws(shape);
                farthest = Math.max(farthest, placing.farthest(shape, found));
                found.forEach(c -> screws.add(new Screw(part.label(), new Point(c.x, c.y))));
            }
        }
        return new FixingPlan(problem, fixing, OptionalDouble.of(length), screws, farthest, map);
    }

    /** The longest screw that stays in what holds it. */
    private static double length(FixingProblem.Size size) {
        double most = size.cover() + size.under() - FixingProblem.TIP;
        double least = size.cover() + FixingProblem.LEAST_HOLD;
        return size.screws().stream()
                .filter(s -> s <= most && s >= least)
                .max(Double::compare)
                .orElseThrow(() -> new NoScrew(least, most));
    }

    /** Pipe, slots, conduit, things below and openings, each with its distance. */
    private Geometry forbidden() {
        List<Geometry> all = new ArrayList<>();
        for (Breakdown loop : problem.loops()) {
            all.add(Region.line(loop.chords(2)).buffer(FixingProblem.FROM_PIPE + HAIR, QUARTER));
            for (Slot s : loop.slots()) {
                all.add(Region.line(List.of(s.from(), s.to()))
                        .buffer(s.width() / 2 + FixingProblem.FROM_THINGS + HAIR, QUARTER));
            }
        }
        for (List<Point> region : problem.below()) {
            all.add(Region.polygon(region).buffer(FixingProblem.FROM_THINGS + HAIR, QUARTER));
        }
        for (Cutout c : problem.cutouts()) {
            all.add(Region.polygon(c.edge()).buffer(c.gap() + FixingProblem.FROM_THINGS + HAIR, QUARTER));
        }
        if (problem.conduit().size() > 1) {
            all.add(Region.line(problem.conduit()).buffer(FixingProblem.FROM_CONDUIT + HAIR, QUARTER));
        }
        return Region.FACTORY
                .createGeometryCollection(all.toArray(Geometry[]::new))
                .buffer(0);
    }

    private List<List<Point>> map() {
        Geometry floor = Region.FACTORY.createPolygon();
        for (Part p : problem.cover()) {
            floor = floor.union(Region.polygon(p.edge()));
        }
        List<List<Point>> rings = new ArrayList<>();
        for (Polygon p : Region.polygons(forbidden.intersection(floor.getEnvelope()))) {
            rings.add(Region.corners(p.getExteriorRing()));
            for (int i = 0; i < p.getNumInteriorRing(); i++) {
                rings.add(Region.corners(p.getInteriorRingN(i)));
            }
        }
        return rings;
    }

    private static Polygon polygon(Part part) {
        Geometry shape = Region.polygon(part.edge());
        for (List<Point> o : part.openings()) {
            shape = shape.difference(Region.polygon(o));
        }
        for (Round r : part.rounds()) {
            shape = shape.difference(Region.disc(r, r.radius() + HAIR, QUARTER));
        }
        return Region.polygons(shape).get(0);
    }

    /** Where a board may be screwed. */
    private Geometry allowed(Polygon shape) {
        Geometry holds = Region.FACTORY.createPolygon();
        for (Part p : problem.base()) {
            holds = holds.union(polygon(p).buffer(-FixingProblem.FROM_BASE_EDGE - HAIR, QUARTER));
        }
        if (problem.base().isEmpty()) {
            for (Support s : problem.supports()) {
                if (s.width() > 2 * FixingProblem.FROM_BASE_EDGE) {
                    holds = holds.union(
                            Region.polygon(s.region().corners()).buffer(-FixingProblem.FROM_BASE_EDGE, QUARTER));
                }
            }
        }
        return shape.buffer(-FixingProblem.FROM_EDGE - HAIR, QUARTER)
                .intersection(holds)
                .difference(forbidden);
    }

    private List<Coordinate> screws(Polygon shape) {
        List<Coordinate> screws = new ArrayList<>();
        Geometry allowed = allowed(shape);
        if (allowed.isEmpty()) {
            return screws;
        }
        PreparedGeometry may = PreparedGeometryFactory.prepare(allowed);
        Envelope box = shape.getEnvelopeInternal();
        double inset = FixingProblem.FROM_EDGE + INSET;
        double apart = problem.size().apart();
        int columns = (int) Math.ceil(Math.max(0, box.getWidth() - 2 * inset) / apart) + 1;
        int rows = (int) Math.ceil(Math.max(0, box.getHeight() - 2 * inset) / apart) + 1;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                double x = at(box.getMinX() + inset, box.getMaxX() - inset, c, columns);
                double y = at(box.getMinY() + inset, box.getMaxY() - inset, r, rows);
                near(may, new Coordinate(x, y), apart / 3, screws).ifPresent(screws::add);
            }
        }
        fill(shape, may, screws);
        return screws;
    }

    private static double at(double from, double to, int i, int n) {
        return n == 1 ? (from + to) / 2 : from + (to - from) * i / (n - 1);
    }

    /** The nearest spot that may be screwed, off the screws there are; where it is taken, the next on a grid. */
    private static Optional<Coordinate> near(
            PreparedGeometry may, Coordinate place, double reach, List<Coordinate> screws) {
        Coordinate first = DistanceOp.nearestPoints(may.getGeometry(), Region.FACTORY.createPoint(place))[0];
        if (first.distance(place) > reach || isFree(first, screws)) {
            return first.distance(place) > reach ? Optional.empty() : Optional.of(first);
        }
        Coordinate best = null;
        int steps = (int) Math.floor(reach / STEP);
        for (int i = -steps; i <= steps; i++) {
            for (int k = -steps; k <= steps; k++) {
                Coordinate c = new Coordinate(place.x + i * STEP, place.y + k * STEP);
                boolean nearer =
                        c.distance(place) <= reach && (best == null || c.distance(place) < best.distance(place) - 1e-9);
                if (nearer && isFree(c, screws) && may.contains(Region.FACTORY.createPoint(c))) {
                    best = c;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static boolean isFree(Coordinate c, List<Coordinate> screws) {
        return screws.stream().allMatch(s -> s.distance(c) >= FixingProblem.LEAST_APART);
    }

    /** Gives a screw to the place that is farthest from one, while there is one too far and a spot near it. */
    private void fill(Polygon shape, PreparedGeometry may, List<Coordinate> screws) {
        double reach = problem.size().reach() - HALF_CELL;
        List<Coordinate> places = places(shape);
        double[] away = places.stream().mapToDouble(p -> away(p, screws)).toArray();
        while (true) {
            int worst = 0;
            for (int i = 1; i < away.length; i++) {
                worst = away[i] > away[worst] ? i : worst;
            }
            if (away.length == 0 || away[worst] <= reach) {
                return;
            }
            Optional<Coordinate> spot = near(may, places.get(worst), reach, screws);
            away[worst] = spot.isEmpty() ? 0 : away[worst];
            if (spot.isPresent()) {
                screws.add(spot.get());
                for (int i = 0; i < away.length; i++) {
                    away[i] = Math.min(away[i], places.get(i).distance(spot.get()));
                }
            }
        }
    }

    private static double away(Coordinate p, List<Coordinate> screws) {
        double least = Double.POSITIVE_INFINITY;
        for (Coordinate s : screws) {
            least = Math.min(least, s.distance(p));
        }
        return least;
    }

    /** A grid over a board, such that each place of it is within {@link #HALF_CELL} of one of these. */
    private static List<Coordinate> places(Polygon shape) {
        PreparedGeometry near = PreparedGeometryFactory.prepare(shape.buffer(HALF_CELL, QUARTER));
        Envelope box = shape.getEnvelopeInternal();
        List<Coordinate> all = new ArrayList<>();
        for (double x = box.getMinX(); x <= box.getMaxX() + GRID / 2; x += GRID) {
            for (double y = box.getMinY(); y <= box.getMaxY() + GRID / 2; y += GRID) {
                Coordinate c = new Coordinate(x, y);
                if (near.contains(Region.FACTORY.createPoint(c))) {
                    all.add(c);
                }
            }
        }
        return all;
    }

    private double farthest(Polygon shape, List<Coordinate> screws) {
        double most =
                places(shape).stream().mapToDouble(p -> away(p, screws)).max().orElse(0);
        Envelope box = shape.getEnvelopeInternal();
        // no screw at all: as far as the board is long
        return Double.isInfinite(most) ? Math.hypot(box.getWidth(), box.getHeight()) : most + HALF_CELL;
    }
}
