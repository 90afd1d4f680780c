package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * Pipe as short chords, for the verifier alone. An arc is cut in steps of at most one degree, so a chord of a 75 mm arc
 * lies at most 75 (1 - cos 0.5 degrees) = 0.003 mm inside it, far below the tolerance of any rule.
 */
final class Chords {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double JOINT = 0.01;

    private Chords() {}

    /** One element as a line. */
    static LineString of(Element element) {
        return FACTORY.createLineString(corners(element).toArray(Coordinate[]::new));
    }

    /** A whole loop as one line; points nearer than 0.01 mm to the one before are the same joint. */
    static LineString of(Breakdown loop) {
        List<Coordinate> all = new ArrayList<>();
        for (Element element : loop.elements()) {
            for (Coordinate c : corners(element)) {
                if (all.isEmpty() || all.get(all.size() - 1).distance(c) > JOINT) {
                    all.add(c);
                }
            }
        }
        if (all.size() == 1) {
            all.add(all.get(0));
        }
        return FACTORY.createLineString(all.toArray(Coordinate[]::new));
    }

    /** A region of straight sides. */
    static Polygon region(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            ring[i] = coordinate(corners.get(i % corners.size()));
        }
        return FACTORY.createPolygon(ring);
    }

    /** A place. */
    static org.locationtech.jts.geom.Point spot(Point p) {
        return FACTORY.createPoint(coordinate(p));
    }

    private static Coordinate coordinate(Point p) {
        return new Coordinate(p.x(), p.y());
    }

    private static List<Coordinate> corners(Element element) {
        List<Coordinate> corners = new ArrayList<>();
        corners.add(coordinate(element.from()));
        if (element instanceof Element.Bend bend) {
            int steps = (int) Math.max(2, Math.ceil(Math.min(360, Math.abs(bend.turn()))));
            double start = Math.atan2(
                    bend.from().y() - bend.centre().y(),
                    bend.from().x() - bend.centre().x());
            for (int i = 1; i < steps; i++) {
                double angle = start + Math.toRadians(bend.turn()) * i / steps;
                corners.add(new Coordinate(
                        bend.centre().x() + bend.radius() * Math.cos(angle),
                        bend.centre().y() + bend.radius() * Math.sin(angle)));
            }
        }
        corners.add(coordinate(element.to()));
        return corners;
    }
}
