package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * A routed part held against laid loops with plain geometry alone: its legs, and arcs at its corners as tight as the
 * tightest bend of the loops, on chords of two degrees. Sizes in mm.
 */
final class KeptTrack {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final int FINE = 16;
    private static final int CHORDS = 45;

    private final List<Point> points;

    KeptTrack(List<Point> points) {
        this.points = List.copyOf(points);
    }

    /** Length of the part that no pipe follows within a distance. */
    double bare(List<Breakdown> loops, double within) {
        double radius = loops.stream()
                .flatMap(l -> l.elements().stream())
                .filter(Element.Bend.class::isInstance)
                .mapToDouble(e -> ((Element.Bend) e).radius())
                .min()
                .orElse(0);
        Geometry left = track(radius);
        for (Breakdown loop : loops) {
            left = left.difference(Chords.of(loop).buffer(within, FINE, BufferParameters.CAP_SQUARE));
        }
        return left.getLength();
    }

    private Geometry track(double radius) {
        List<Coordinate> path = new ArrayList<>();
        path.add(at(points.get(0)));
        for (int i = 1; i + 1 < points.size(); i++) {
            addCorner(path, points.get(i - 1), points.get(i), points.get(i + 1), radius);
        }
        path.add(at(points.get(points.size() - 1)));
        return FACTORY.createLineString(path.toArray(Coordinate[]::new));
    }

    /** The arc that touches both legs of a right angle: its centre lies a radius along each leg from the corner. */
    private static void addCorner(List<Coordinate> path, Point a, Point b, Point c, double radius) {
        double px = (a.x() - b.x()) / a.distance(b);
        double py = (a.y() - b.y()) / a.distance(b);
        double nx = (c.x() - b.x()) / c.distance(b);
        double ny = (c.y() - b.y()) / c.distance(b);
        if (Math.abs(px * ny - py * nx) < 0.5) {
            path.add(at(b));
            return;
        }
        for (int i = 0; i <= CHORDS; i++) {
            double t = Math.PI / 2 * i / CHORDS;
            double back = radius * (1 - Math.sin(t));
            double on = radius * (1 - Math.cos(t));
            path.add(new Coordinate(b.x() + back * px + on * nx, b.y() + back * py + on * ny));
        }
    }

    private static Coordinate at(Point p) {
        return new Coordinate(p.x(), p.y());
    }
}
