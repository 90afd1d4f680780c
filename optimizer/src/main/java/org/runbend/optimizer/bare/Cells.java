package org.runbend.optimizer.bare;

import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Point;

/** The square of floor that belongs to each place of a lattice: as wide as the spacing, the place in its middle. */
final class Cells {
    private final Lattice lattice;

    Cells(Lattice lattice) {
        this.lattice = lattice;
    }

    /** The squares of some places as one region. */
    Geometry of(List<Integer> nodes) {
        return OverlayNGRobust.union(nodes.stream().map(this::square).toList());
    }

    private Geometry square(int node) {
        Point at = lattice.at(node);
        double half = lattice.spacing() / 2;
        double a = Math.toRadians(lattice.angle());
        double c = half * Math.cos(a);
        double s = half * Math.sin(a);
        return FloorShapes.polygon(List.of(
                new Point(at.x() - c + s, at.y() - s - c),
                new Point(at.x() + c + s, at.y() + s - c),
                new Point(at.x() + c - s, at.y() + s + c),
                new Point(at.x() - c - s, at.y() - s + c)));
    }

    /** The place next to the middle of some places. */
    Point middle(List<Integer> nodes) {
        List<Point> places = nodes.stream().map(lattice::at).toList();
        double x = places.stream().mapToDouble(Point::x).average().orElseThrow();
        double y = places.stream().mapToDouble(Point::y).average().orElseThrow();
        Point mean = new Point(x, y);
        return places.stream()
                .min(Comparator.comparingDouble((Point p) -> Math.rint(1000 * p.distance(mean))))
                .orElseThrow();
    }
}
