package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.PathBuilder;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * A polygon grown by a distance: every side moves out, outer corners become true arcs, inner ones stay sharp. Gives
 * nothing where the contour would run through itself, so that only clean contours are drawn.
 */
final class GrownContour {
    /** Parts that turn by less at their joint run on, degrees: ends of arcs are rounded to a thousandth of a millimetre. */
    private static final double TANGENT = 0.3;

    private final List<Point> corners;
    private final double by;

    private GrownContour(List<Point> corners, double by) {
        this.corners = corners;
        this.by = by;
    }

    static Optional<Path> of(List<Point> polygon, double by) {
        List<Point> anticlockwise = new ArrayList<>(polygon);
        if (area(polygon) < 0) {
            Collections.reverse(anticlockwise);
        }
        return by > 0
                ? bulging(anticlockwise, by).or(() -> new GrownContour(anticlockwise, by).grow())
                : Optional.empty();
    }

    /** The contour round a region with arcs that bulges everywhere: its arcs grow, its corners become arcs. */
    private static Optional<Path> bulging(List<Point> corners, double by) {
        Path region = TrueArcs.of(corners);
        List<Vertex> vertices = region.vertices();
        int n = vertices.size();
        if (vertices.stream().allMatch(v -> v.bulge() == 0) || vertices.stream().anyMatch(v -> v.bulge() < 0)) {
            return Optional.empty();
        }
        List<Vertex> grown = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double leaving = heading(region, i, true);
            double turn = normal(leaving - heading(region, (i + n - 1) % n, false));
            if (turn < -TANGENT) {
                return Optional.empty();
            }
            if (turn > TANGENT) {
                Point corner = vertices.get(i).point().polar(by, leaving - turn - 90);
                grown.add(new Vertex(corner.x(), corner.y(), StrictMath.tan(Math.toRadians(turn) / 4)));
            }
            Point start = vertices.get(i).point().polar(by, leaving - 90);
            grown.add(new Vertex(start.x(), start.y(), vertices.get(i).bulge()));
        }
        return Optional.of(new Path(grown, true));
    }

    /** Direction of part i at its start or its end, degrees: its chord's, less or more half its sweep. */
    private static double heading(Path path, int i, boolean atStart) {
        Vertex v = path.vertices().get(i);
        double half = Math.toDegrees(2 * StrictMath.atan(v.bulge()));
        return v.point().angleTo(path.end(i)) + (atStart ? -half : half);
    }

    private Optional<Path> grow() {
        int n = corners.size();
        List<Point> starts = new ArrayList<>();
        List<Point> ends = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            starts.add(cornerPoint(i, i));
            ends.add(cornerPoint(i, (i + 1) % n));
        }
        if (!isClean(starts, ends)) {
            return Optional.empty();
        }
        PathBuilder path = Path.from(starts.get(0)).lineTo(ends.get(0));
        for (int i = 1; i <= n; i++) {
            double turn = turn(i % n);
            if (turn > 0) {
                path.arcTo(starts.get(i % n), turn);
            }
            if (i < n) {
                path.lineTo(ends.get(i));
            }
        }
        return Optional.of(path.close());
    }

    /** Where the moved side i begins or ends, at a corner. */
    private Point cornerPoint(int side, int corner) {
        double turn = turn(corner);
        Point moved = corners.get(corner).polar(by, direction(side) - 90);
        if (turn >= 0) {
            return moved;
        }
        // At an inner corner the moved sides meet by x tan(turn / 2) before it.
        double back = by * StrictMath.tan(Math.toRadians(-turn) / 2);
        return moved.polar(side == corner ? back : -back, direction(side));
    }

    private boolean isClean(List<Point> starts, List<Point> ends) {
        for (int i = 0; i < starts.size(); i++) {
            Point a = starts.get(i);
            Point b = ends.get(i);
            double away = Math.abs(normal(a.angleTo(b) - direction(i)));
            if (a.distance(b) < 1e-6 || away > 90) {
                return false;
            }
            for (int j = i + 2; j < starts.size(); j++) {
                boolean neighbours = i == 0 && j == starts.size() - 1;
                if (!neighbours && cross(a, b, starts.get(j), ends.get(j))) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean cross(Point a, Point b, Point c, Point d) {
        return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
    }

    private static double side(Point a, Point b, Point p) {
        return Math.signum((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x()));
    }

    private double direction(int side) {
        return corners.get(side).angleTo(corners.get((side + 1) % corners.size()));
    }

    /** Degrees that the outline turns at a corner, anticlockwise positive. */
    private double turn(int corner) {
        int n = corners.size();
        return normal(direction(corner) - direction((corner + n - 1) % n));
    }

    private static double normal(double degrees) {
        double d = degrees % 360;
        if (d > 180) {
            return d - 360;
        }
        return d <= -180 ? d + 360 : d;
    }

    private static double area(List<Point> polygon) {
        double twice = 0;
        for (int i = 0; i < polygon.size(); i++) {
            Point a = polygon.get(i);
            Point b = polygon.get((i + 1) % polygon.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice / 2;
    }
}
