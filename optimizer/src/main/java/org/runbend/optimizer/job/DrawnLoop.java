package org.runbend.optimizer.job;

import java.util.List;

/**
 * A loop that somebody drew, in order of flow: straight ways and arcs from point to point, mm.
 *
 * @param points none for no loop
 * @param bulges for each way from a point to the next the tangent of a quarter of its arc's angle, anticlockwise positive,
 *     0 for a straight way; empty for points of a job file, which are joined straight and told by their number
 */
public record DrawnLoop(List<Point> points, List<Double> bulges) {
    /** No loop: one is to be laid. */
    public static final DrawnLoop NONE = ofPoints(List.of());

    /** Copies the lists, and holds them against each other. */
    public DrawnLoop {
        points = List.copyOf(points);
        bulges = List.copyOf(bulges);
        if (!bulges.isEmpty() && bulges.size() != points.size() - 1) {
            throw new IllegalArgumentException(points.size() + " points and " + bulges.size() + " ways between them");
        }
    }

    /** The loop through points of a job file. */
    public static DrawnLoop ofPoints(List<Point> points) {
        return new DrawnLoop(points, List.of());
    }

    /** Whether there is none. */
    public boolean isEmpty() {
        return points.isEmpty();
    }

    /** Whether it comes from a drawing, so that a person knows its places and not its points' numbers. */
    public boolean isOfDrawing() {
        return !bulges.isEmpty();
    }

    /** Whether two straight ways meet in a corner, which pipe cannot follow. */
    public boolean hasCorners() {
        for (int i = 1; i + 1 < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            Point c = points.get(i + 1);
            double cross = (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x());
            if (bulge(i - 1) == 0 && bulge(i) == 0 && Math.abs(cross) > 0.01 * a.distance(b) * b.distance(c)) {
                return true;
            }
        }
        return false;
    }

    /** The bulge of the way from a point to the next. */
    public double bulge(int i) {
        return bulges.isEmpty() ? 0 : bulges.get(i);
    }
}
