package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Text;

/** A convex area of a drawing, as its corners in order, and the box round it. */
record Area(List<Point> corners, Extent box) {
    static Area of(List<Point> corners) {
        return new Area(corners, Extent.around(corners));
    }

    static Area of(Extent e) {
        return of(List.of(
                new Point(e.minX(), e.minY()),
                new Point(e.maxX(), e.minY()),
                new Point(e.maxX(), e.maxY()),
                new Point(e.minX(), e.maxY())));
    }

    /** The letters of a text with air round them. */
    static Area of(Text text) {
        return of(text, Labels.AIR * text.height());
    }

    /** The letters of a text with so many mm round them, anticlockwise. */
    static Area of(Text text, double air) {
        double width = Text.roughWidth(text.string(), text.height());
        Point start = text.baselineStart(width).polar(-air, text.angle());
        Point low = start.polar(-air, text.angle() + 90);
        Point high = start.polar(text.height() + air, text.angle() + 90);
        double length = width + 2 * air;
        return of(List.of(low, low.polar(length, text.angle()), high.polar(length, text.angle()), high));
    }

    boolean meets(Area other) {
        boolean near = box.minX() < other.box.maxX()
                && other.box.minX() < box.maxX()
                && box.minY() < other.box.maxY()
                && other.box.minY() < box.maxY();
        return near && !apart(corners, other.corners) && !apart(other.corners, corners);
    }

    /** Whether a line along a side of the first parts both. */
    private static boolean apart(List<Point> a, List<Point> b) {
        for (int i = 0; i < a.size(); i++) {
            Point from = a.get(i);
            Point to = a.get((i + 1) % a.size());
            double nx = from.y() - to.y();
            double ny = to.x() - from.x();
            double[] first = range(a, nx, ny);
            double[] second = range(b, nx, ny);
            if (first[1] <= second[0] || second[1] <= first[0]) {
                return true;
            }
        }
        return false;
    }

    private static double[] range(List<Point> points, double nx, double ny) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Point p : points) {
            double v = nx * p.x() + ny * p.y();
            least = Math.min(least, v);
            most = Math.max(most, v);
        }
        return new double[] {least, most};
    }

    /** The part of a line that lies in an area that runs anticlockwise, as shares of its length; the first is over the second if none does. */
    double[] partOf(Segment line) {
        double from = 0;
        double to = 1;
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            double start = left(a, b, line.a());
            double end = left(a, b, line.b());
            if (start < 0 && end < 0) {
                return new double[] {1, 0};
            }
            if (start < 0) {
                from = Math.max(from, start / (start - end));
            } else if (end < 0) {
                to = Math.min(to, start / (start - end));
            }
        }
        return new double[] {from, to};
    }

    /** Over 0 where a point lies to the left of a line. */
    private static double left(Point a, Point b, Point p) {
        return (b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x());
    }
}
