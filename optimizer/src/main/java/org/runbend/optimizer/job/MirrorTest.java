package org.runbend.optimizer.job;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Whether a floor with all that is on it is its own mirror image, turned. An axis of such a floor passes through the
 * centroid of its corners and through a corner or the middle of a side.
 */
final class MirrorTest {
    private static final double SAME = 1;

    private final Job.FloorPlan floor;

    MirrorTest(Job.FloorPlan floor) {
        this.floor = floor;
    }

    boolean isSymmetric() {
        List<Point> corners = floor.outline();
        Point centre = new Point(
                corners.stream().mapToDouble(Point::x).average().orElse(0),
                corners.stream().mapToDouble(Point::y).average().orElse(0));
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
            if (isAxis(centre, a) || isAxis(centre, middle)) {
                return true;
            }
        }
        return false;
    }

    private boolean isAxis(Point p, Point q) {
        double length = p.distance(q);
        if (length < SAME) {
            return false;
        }
        double ux = (q.x() - p.x()) / length;
        double uy = (q.y() - p.y()) / length;
        UnaryOperator<Point> mirrored = o -> {
            double along = (o.x() - p.x()) * ux + (o.y() - p.y()) * uy;
            return new Point(2 * (p.x() + along * ux) - o.x(), 2 * (p.y() + along * uy) - o.y());
        };
        Point port = floor.port().at();
        return port.distance(mirrored.apply(port)) <= SAME
                && isOwnImage(floor.outline(), mirrored)
                && floor.keepOuts().stream()
                        .allMatch(k -> floor.keepOuts().stream().anyMatch(o -> isImage(k, o, mirrored)))
                && floor.unheated().stream().allMatch(u -> floor.unheated().stream()
                        .anyMatch(o ->
                                sameCorners(u.region().corners(), o.region().corners(), mirrored)));
    }

    private static boolean isOwnImage(List<Point> corners, UnaryOperator<Point> mirrored) {
        return sameCorners(corners, corners, mirrored);
    }

    private static boolean isImage(KeepOut a, KeepOut b, UnaryOperator<Point> mirrored) {
        if (Math.abs(a.clearance() - b.clearance()) > SAME) {
            return false;
        }
        if (a.bare() instanceof Shape.Circle c && b.bare() instanceof Shape.Circle d) {
            return Math.abs(c.radius() - d.radius()) <= SAME
                    && mirrored.apply(c.centre()).distance(d.centre()) <= SAME;
        }
        if (a.bare() instanceof Shape.Spot s && b.bare() instanceof Shape.Spot t) {
            return mirrored.apply(s.at()).distance(t.at()) <= SAME;
        }
        return a.bare() instanceof Shape.Polygon p
                && b.bare() instanceof Shape.Polygon q
                && sameCorners(p.corners(), q.corners(), mirrored);
    }

    private static boolean sameCorners(List<Point> a, List<Point> b, UnaryOperator<Point> mirrored) {
        return a.size() == b.size()
                && a.stream().map(mirrored).allMatch(p -> b.stream().anyMatch(q -> p.distance(q) <= SAME));
    }
}
