package org.runbend.export.drafting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;

class GrownContourTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    /** Steiner's formula for a convex shape: outline grows by 2 pi r: 2 (100 + 80) + 80 pi = 611.327. */
    @Test
    void squareWithRoundedCorners() {
        Path grown = GrownContour.of(points(0, 0, 0, 80, 100, 80, 100, 0), 40).orElseThrow();
        assertEquals(4, grown.parts().stream().filter(Arc.class::isInstance).count());
        double length = 0;
        for (Shape part : grown.parts()) {
            length += part instanceof Arc a ? a.length() : a(part);
        }
        assertEquals(360 + 80 * Math.PI, length, 1e-9);
    }

    /** An L-shaped corner stays sharp inside; a buffer of JTS is the second opinion (arcs cut to 2 degrees there and here). */
    @Test
    void innerCornersAgreeWithJts() {
        List<Point> ell = points(0, 0, 300, 0, 300, 100, 120, 140, 100, 300, 0, 300);
        Geometry grown = region(GrownContour.of(ell, 30).orElseThrow());
        Geometry wanted = ring(ell).buffer(30, 45);
        assertTrue(grown.isValid());
        assertTrue(
                grown.symDifference(wanted).getArea() < 1,
                () -> "" + grown.symDifference(wanted).getArea());
    }

    /** The slot is 40 wide: grown by 30 it closes, and the moved sides would cross. */
    @Test
    void closedSlotGivesNothing() {
        List<Point> slot = points(0, 0, 200, 0, 200, 200, 120, 200, 120, 60, 80, 60, 80, 200, 0, 200);
        assertTrue(GrownContour.of(slot, 30).isEmpty());
        assertTrue(GrownContour.of(slot, 15).isPresent());
    }

    private static double a(Shape part) {
        return part.extent().width() + part.extent().height();
    }

    private static Geometry region(Path path) {
        List<Point> points = new ArrayList<>();
        for (Shape part : path.parts()) {
            if (part instanceof Arc arc) {
                int steps = (int) Math.ceil(Math.abs(arc.sweep()) / 2);
                for (int i = 0; i < steps; i++) {
                    points.add(arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / steps));
                }
            } else {
                points.add(((org.runbend.export.drawing.Segment) part).a());
            }
        }
        return ring(points);
    }

    private static Geometry ring(List<Point> points) {
        List<Coordinate> ring = new ArrayList<>(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toList());
        ring.add(ring.get(0));
        return SHAPES.createPolygon(ring.toArray(new Coordinate[0]));
    }

    private static List<Point> points(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new Point(xy[i], xy[i + 1]));
        }
        return points;
    }
}
