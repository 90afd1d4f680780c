package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Regions, lines and plate bodies of the floor, for the verifier alone. Sizes in mm. */
final class GroundShapes {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    // 64 chords a quarter: a circle of 200 mm is out by 200 (1 - cos(0.35 degrees) ) = 0.004 mm
    private static final int QUARTER = 64;

    private GroundShapes() {}

    static Polygon region(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            ring[i] = at(corners.get(i % corners.size()));
        }
        return FACTORY.createPolygon(ring);
    }

    /** A bare region grown by a distance. */
    static Geometry grown(Shape bare, double by) {
        if (bare instanceof Shape.Circle circle) {
            return FACTORY.createPoint(at(circle.centre())).buffer(circle.radius() + by, QUARTER);
        }
        if (bare instanceof Shape.Spot spot) {
            return FACTORY.createPoint(at(spot.at())).buffer(spot.radius() + by, QUARTER);
        }
        return region(((Shape.Polygon) bare).corners()).buffer(by, QUARTER);
    }

    /** Where the groove is deepened at a hole: a strip with round ends. */
    static Geometry slot(Slot slot) {
        return line(slot.from(), slot.to()).buffer(slot.width() / 2, QUARTER);
    }

    static LineString line(Point a, Point b) {
        return FACTORY.createLineString(new Coordinate[] {at(a), at(b)});
    }

    /** The rectangle of a width over the line from a to b. */
    static Polygon strip(Point a, Point b, double width) {
        double length = Math.sqrt(square(b.x() - a.x()) + square(b.y() - a.y()));
        double nx = -(b.y() - a.y()) / length * width / 2;
        double ny = (b.x() - a.x()) / length * width / 2;
        return region(List.of(
                new Point(a.x() + nx, a.y() + ny),
                new Point(b.x() + nx, b.y() + ny),
                new Point(b.x() - nx, b.y() - ny),
                new Point(a.x() - nx, a.y() - ny)));
    }

    /** The point of the line from a to b at a distance from a. */
    static Point along(Point a, Point b, double distance) {
        double length = Math.sqrt(square(b.x() - a.x()) + square(b.y() - a.y()));
        return new Point(a.x() + (b.x() - a.x()) * distance / length, a.y() + (b.y() - a.y()) * distance / length);
    }

    static Point middle(Point a, Point b) {
        return new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }

    private static double square(double d) {
        return d * d;
    }

    private static Coordinate at(Point p) {
        return new Coordinate(p.x(), p.y());
    }
}
