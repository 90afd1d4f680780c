package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Whether a floor with all that is on it is its own mirror image, turned. An axis of such a floor passes through the
 * centroid of its corners and through a corner or the middle of a side.
 */
final class MirrorTest {
    private static final double SAME = 1;

    /** A corner that lies this near to the line between its neighbours is none, mm; the chords of an arc lie farther off. */
    private static final double FLAT = 0.05;

    private final Job.FloorPlan floor;
    private final List<Point> corners;

    MirrorTest(Job.FloorPlan floor) {
        this.floor = floor;
        this.corners = corners(floor.outline());
    }

    boolean isSymmetric() {
        return axes().anyMatch(this::keepsThings);
    }

    /** Whether a mirror image of the floor has the same outline and the same marks, so that none of them tells the two apart. */
    boolean hidesFromMarks() {
        return axes().anyMatch(this::keepsMarks);
    }

    /** Mirrorings that leave the outline as it is. */
    private Stream<UnaryOperator<Point>> axes() {
        Point centre = new Point(
                corners.stream().mapToDouble(Point::x).average().orElse(0),
                corners.stream().mapToDouble(Point::y).average().orElse(0));
        List<UnaryOperator<Point>> axes = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            axis(centre, a).ifPresent(axes::add);
            axis(centre, new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2)).ifPresent(axes::add);
        }
        return axes.stream();
    }

    private Optional<UnaryOperator<Point>> axis(Point p, Point q) {
        double length = p.distance(q);
        if (length < SAME) {
            return Optional.empty();
        }
        double ux = (q.x() - p.x()) / length;
        double uy = (q.y() - p.y()) / length;
        UnaryOperator<Point> mirrored = o -> {
            double along = (o.x() - p.x()) * ux + (o.y() - p.y()) * uy;
            return new Point(2 * (p.x() + along * ux) - o.x(), 2 * (p.y() + along * uy) - o.y());
        };
        return isOwnImage(corners, mirrored) ? Optional.of(mirrored) : Optional.empty();
    }

    private boolean keepsMarks(UnaryOperator<Point> mirrored) {
        return floor.marks().stream().allMatch(m -> floor.marks().stream()
                .anyMatch(
                        o -> o.text().equals(m.text()) && mirrored.apply(m.at()).distance(o.at()) <= SAME));
    }

    private boolean keepsThings(UnaryOperator<Point> mirrored) {
        Point port = floor.port().at();
        return port.distance(mirrored.apply(port)) <= SAME
                && floor.keepOuts().stream()
                        .allMatch(k -> floor.keepOuts().stream().anyMatch(o -> isImage(k, o, mirrored)))
                && floor.unheated().stream().allMatch(u -> floor.unheated().stream()
                        .anyMatch(o ->
                                sameCorners(u.region().corners(), o.region().corners(), mirrored)));
    }

    /** Corners that are some: a point on a straight side changes no shape. */
    private static List<Point> corners(List<Point> outline) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get((i + outline.size() - 1) % outline.size());
            Point b = outline.get(i);
            Point c = outline.get((i + 1) % outline.size());
            double off = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
            if (Math.abs(off) > FLAT * a.distance(c)) {
                corners.add(b);
            }
        }
        return corners.size() < 3 ? outline : corners;
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
