package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * The lattice's own axes: the floor turned so that runs lie along x and y.
 *
 * @param degrees direction of the lattice's x axis on the floor, anticlockwise
 */
record LatticeAxes(double degrees) {
    /** A point of the floor in the lattice's axes. */
    Point in(Point p) {
        return turned(p, -degrees);
    }

    /** A point of the lattice's axes on the floor. */
    Point out(Point p) {
        return turned(p, degrees);
    }

    /** Points of the floor in the lattice's axes. */
    List<Point> in(List<Point> points) {
        return points.stream().map(this::in).toList();
    }

    /** The ways of a loop on the floor. */
    Lead.Pair out(Lead.Pair pair) {
        return new Lead.Pair(
                new Lead(pair.flow().corners().stream().map(this::out).toList()),
                new Lead(pair.back().corners().stream().map(this::out).toList()));
    }

    /** A keep-out in the lattice's axes. */
    KeepOut in(KeepOut k) {
        return new KeepOut(k.name(), k.kind(), in(k.bare()), k.clearance());
    }

    private Shape in(Shape s) {
        if (s instanceof Shape.Polygon polygon) {
            return new Shape.Polygon(in(polygon.corners()));
        }
        return s instanceof Shape.Circle circle
                ? new Shape.Circle(in(circle.centre()), circle.radius())
                : new Shape.Spot(in(((Shape.Spot) s).at()), ((Shape.Spot) s).radius());
    }

    private static Point turned(Point p, double degrees) {
        if (degrees == 0) {
            return p;
        }
        double a = Math.toRadians(degrees);
        return new Point(p.x() * Math.cos(a) - p.y() * Math.sin(a), p.x() * Math.sin(a) + p.y() * Math.cos(a));
    }
}
