package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.job.Point;

/** Where the boards of a layer lie: the outline less tolerance and gap, or more on scribed edges, less what goes through. */
final class Region {
    static final GeometryFactory FACTORY = new GeometryFactory();
    private static final int QUARTER = 32;
    private static final double PARALLEL = 1e-6;

    /** How far a chord lies inside its circle, in radii: 1 - cos(45 degrees / QUARTER). */
    private static final double CHORDED = 3.1e-4;

    private Region() {}

    /** The whole layer as if there were no joints. */
    static Geometry of(BoardsProblem problem, Layer layer) {
        Geometry region = inner(problem, layer);
        for (Cutout c : problem.cutouts()) {
            if (c.through().contains(layer.role())) {
                region = region.difference(open(c));
            }
        }
        return region;
    }

    /** A cutout grown by its gap. */
    static Geometry open(Cutout c) {
        return grown(c, c.gap());
    }

    /** What a layer has a part of its own in, each with air to its boards; chords of round ones take a hair more. */
    static List<Polygon> lids(BoardsProblem problem, Layer layer) {
        List<Polygon> lids = new ArrayList<>();
        for (Cutout c : problem.cutouts()) {
            if (c.filling() == BoardsProblem.Filling.LID && c.through().contains(layer.role())) {
                double hair =
                        c.round().isPresent() ? 2 * CHORDED * c.round().get().radius() : 0;
                Geometry lid = grown(c, -c.gap() - hair);
                for (Cutout other : problem.cutouts()) {
                    if (!other.equals(c) && other.through().contains(layer.role())) {
                        lid = lid.difference(open(other));
                    }
                }
                lids.addAll(polygons(lid));
            }
        }
        return lids;
    }

    private static Geometry grown(Cutout c, double by) {
        if (c.round().isPresent()) {
            return disc(c.round().get(), c.round().get().radius() + by, QUARTER);
        }
        BufferParameters square =
                new BufferParameters(QUARTER, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, 2);
        return BufferOp.bufferOp(polygon(c.edge()), by, square);
    }

    /** The outline with each edge moved inward by its own distance; corners are where moved edges meet. */
    private static Geometry inner(BoardsProblem problem, Layer layer) {
        List<Point> corners = new ArrayList<>(problem.outline());
        boolean clockwise = area(corners) < 0;
        int n = corners.size();
        double plain = layer.perimeterGap() + problem.making().tolerance();
        List<Point> moved = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int before = (i + n - 1) % n;
            moved.add(meet(
                    corners.get(before),
                    corners.get(i),
                    corners.get((i + 1) % n),
                    way(problem, before, plain, clockwise),
                    way(problem, i, plain, clockwise)));
        }
        Polygon polygon = polygon(moved);
        boolean scribed = !problem.making().scribe().isEmpty();
        return polygon.isValid() || scribed
                ? polygon.buffer(0)
                : polygon(corners).buffer(-plain, QUARTER);
    }

    /** How far an edge moves to its left. */
    private static double way(BoardsProblem problem, int edge, double plain, boolean clockwise) {
        Double more = problem.making().scribe().get(edge);
        double inward = more == null ? plain : -more;
        return clockwise ? -inward : inward;
    }

    /** Where the edges from a to b and from b to c meet when they are moved to their left. */
    private static Point meet(Point a, Point b, Point c, double first, double second) {
        double ux = (b.x() - a.x()) / a.distance(b);
        double uy = (b.y() - a.y()) / a.distance(b);
        double vx = (c.x() - b.x()) / b.distance(c);
        double vy = (c.y() - b.y()) / b.distance(c);
        double cross = ux * vy - uy * vx;
        double px = b.x() - first * uy;
        double py = b.y() + first * ux;
        if (Math.abs(cross) < PARALLEL) {
            return new Point(px, py);
        }
        double qx = b.x() - second * vy;
        double qy = b.y() + second * vx;
        double t = ((qx - px) * vy - (qy - py) * vx) / cross;
        return new Point(px + t * ux, py + t * uy);
    }

    private static double area(List<Point> ring) {
        double sum = 0;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            sum += a.x() * b.y() - a.y() * b.x();
        }
        return sum / 2;
    }

    /** The line through points in order. */
    static Geometry line(List<Point> points) {
        return FACTORY.createLineString(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }

    /** A disc round the middle of a round thing, so many chords to a quarter. */
    static Geometry disc(Round round, double radius, int quarter) {
        return FACTORY.createPoint(
                        new Coordinate(round.centre().x(), round.centre().y()))
                .buffer(radius, quarter);
    }

    static Polygon polygon(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return FACTORY.createPolygon(ring);
    }

    static Polygon box(double minX, double minY, double maxX, double maxY) {
        return polygon(
                List.of(new Point(minX, minY), new Point(maxX, minY), new Point(maxX, maxY), new Point(minX, maxY)));
    }

    /** The areas of a shape alone, without lines and points where two shapes only touch. */
    static Geometry areas(Geometry shape) {
        return FACTORY.createMultiPolygon(polygons(shape).toArray(new Polygon[0]));
    }

    /** The polygons of a shape, without crumbs. */
    static List<Polygon> polygons(Geometry shape) {
        List<Polygon> all = new ArrayList<>();
        for (int i = 0; i < shape.getNumGeometries(); i++) {
            if (shape.getGeometryN(i) instanceof Polygon p && p.getArea() > 1) {
                all.add(p);
            }
        }
        return all;
    }

    /** Corners of a ring, anticlockwise, the start not repeated. */
    static List<Point> corners(LinearRing ring) {
        List<Point> all = new ArrayList<>();
        Coordinate[] c = ring.getCoordinates();
        for (int i = 0; i < c.length - 1; i++) {
            all.add(new Point(c[i].x, c[i].y));
        }
        if (area(all) < 0) {
            java.util.Collections.reverse(all);
        }
        return all;
    }
}
