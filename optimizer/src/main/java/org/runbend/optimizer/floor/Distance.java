package org.runbend.optimizer.floor;

/**
 * Least distances between points, straight segments and circular arcs, in closed form, mm.
 *
 * <p>Arcs are given by centre, radius, start angle and signed sweep (radians, anticlockwise positive, at most a full
 * turn). Two curves that meet are at distance 0.
 */
final class Distance {
    private Distance() {}

    /** Point to segment. */
    static double pointSegment(double px, double py, double ax, double ay, double bx, double by) {
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / square;
        t = Math.max(0, Math.min(1, t));
        return Math.hypot(px - ax - t * dx, py - ay - t * dy);
    }

    /** Segment to segment. */
    static double segmentSegment(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        if (cross(ax, ay, bx, by, cx, cy, dx, dy)) {
            return 0;
        }
        return Math.min(
                Math.min(pointSegment(ax, ay, cx, cy, dx, dy), pointSegment(bx, by, cx, cy, dx, dy)),
                Math.min(pointSegment(cx, cy, ax, ay, bx, by), pointSegment(dx, dy, ax, ay, bx, by)));
    }

    private static boolean cross(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        double d1 = side(ax, ay, bx, by, cx, cy);
        double d2 = side(ax, ay, bx, by, dx, dy);
        double d3 = side(cx, cy, dx, dy, ax, ay);
        double d4 = side(cx, cy, dx, dy, bx, by);
        return d1 * d2 < 0 && d3 * d4 < 0;
    }

    private static double side(double ax, double ay, double bx, double by, double px, double py) {
        return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
    }

    /** Point to arc. */
    static double pointArc(double px, double py, Arc arc) {
        double reach = Math.hypot(px - arc.cx(), py - arc.cy());
        if (reach == 0 || arc.spans(Math.atan2(py - arc.cy(), px - arc.cx()))) {
            return Math.abs(reach - arc.radius());
        }
        return Math.min(Math.hypot(px - arc.startX(), py - arc.startY()), Math.hypot(px - arc.endX(), py - arc.endY()));
    }

    /** Segment to arc. */
    static double segmentArc(double ax, double ay, double bx, double by, Arc arc) {
        double least = Math.min(pointArc(ax, ay, arc), pointArc(bx, by, arc));
        least = Math.min(least, pointSegment(arc.startX(), arc.startY(), ax, ay, bx, by));
        least = Math.min(least, pointSegment(arc.endX(), arc.endY(), ax, ay, bx, by));
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        if (square == 0) {
            return least;
        }
        double t = ((arc.cx() - ax) * dx + (arc.cy() - ay) * dy) / square;
        double fx = ax + t * dx;
        double fy = ay + t * dy;
        double height = Math.hypot(fx - arc.cx(), fy - arc.cy());
        if (height >= arc.radius()) {
            boolean faces = t >= 0 && t <= 1 && arc.spans(Math.atan2(fy - arc.cy(), fx - arc.cx()));
            return faces ? Math.min(least, height - arc.radius()) : least;
        }
        double half = Math.sqrt((arc.radius() * arc.radius() - height * height) / square);
        return meets(ax, ay, dx, dy, t - half, arc) || meets(ax, ay, dx, dy, t + half, arc) ? 0 : least;
    }

    private static boolean meets(double ax, double ay, double dx, double dy, double t, Arc arc) {
        return t >= 0 && t <= 1 && arc.spans(Math.atan2(ay + t * dy - arc.cy(), ax + t * dx - arc.cx()));
    }

    /** An arc. */
    record Arc(double cx, double cy, double radius, double start, double sweep) {
        double startX() {
            return cx + radius * Math.cos(start);
        }

        double startY() {
            return cy + radius * Math.sin(start);
        }

        double endX() {
            return cx + radius * Math.cos(start + sweep);
        }

        double endY() {
            return cy + radius * Math.sin(start + sweep);
        }

        /** Whether the direction lies within the sweep. */
        boolean spans(double angle) {
            double turn = sweep >= 0 ? angle - start : start - angle;
            double full = 2 * Math.PI;
            turn = turn - full * Math.floor(turn / full);
            return turn <= Math.abs(sweep);
        }
    }
}
