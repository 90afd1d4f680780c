package org.runbend.optimizer.floor;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Regions of the floor as polygons for area work; circles become 256 chords (0.008 % of the radius off at most). */
public final class FloorShapes {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private FloorShapes() {}

    /** The region inside the corners. */
    public static Polygon polygon(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return SHAPES.createPolygon(ring);
    }

    /** The straight line between two points. */
    public static Geometry line(Point a, Point b) {
        return SHAPES.createLineString(new Coordinate[] {new Coordinate(a.x(), a.y()), new Coordinate(b.x(), b.y())});
    }

    /** A point. */
    public static Geometry point(Point at) {
        return SHAPES.createPoint(new Coordinate(at.x(), at.y()));
    }

    /** The bare region of a keep-out. */
    public static Geometry bare(Shape shape) {
        if (shape instanceof Shape.Polygon polygon) {
            return polygon(polygon.corners());
        }
        Point at = shape instanceof Shape.Circle circle ? circle.centre() : ((Shape.Spot) shape).at();
        double radius = shape instanceof Shape.Circle circle ? circle.radius() : ((Shape.Spot) shape).radius();
        return SHAPES.createPoint(new Coordinate(at.x(), at.y())).buffer(radius, 64);
    }

    /** Area that wants heat: the floor less grown keep-outs and unheated regions, mm2. */
    public static double heatedArea(Job.FloorPlan floor) {
        return heated(floor).getArea();
    }

    /** What wants heat: the floor less grown keep-outs and unheated regions. */
    public static Geometry heated(Job.FloorPlan floor) {
        Geometry heated = polygon(floor.outline());
        for (KeepOut k : floor.keepOuts()) {
            heated = OverlayNGRobust.overlay(heated, bare(k.bare()).buffer(k.clearance(), 32), OverlayNG.DIFFERENCE);
        }
        return lessUnheated(heated, floor);
    }

    /** What lies on no unheated floor. */
    public static Geometry lessUnheated(Geometry shape, Job.FloorPlan floor) {
        Geometry left = shape;
        for (Job.Unheated u : floor.unheated()) {
            left = OverlayNGRobust.overlay(left, polygon(u.region().corners()), OverlayNG.DIFFERENCE);
        }
        return left;
    }

    /** The line through points in order, 2 or more. */
    public static Geometry line(List<Point> points) {
        return SHAPES.createLineString(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }
}
