package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.job.Point;

/**
 * A curved side, turned into chords.
 *
 * @param centre its centre
 * @param radius mm
 * @param start angle of its beginning, radians
 * @param sweep angle that it turns through, anticlockwise positive, radians
 */
record Arc(Point centre, double radius, double start, double sweep) {
    /** How far a chord may lie off the arc, mm; a little is kept back for the rounding of the points. */
    private static final double SAGITTA = 0.5 - 1e-3;

    private static final double LEAST_RADIUS = 5;
    private static final double MOST_RADIUS = 100_000;
    private static final double THOUSANDTH = 1000;

    /** The arc from one point through another to a third; empty if they lie on a line, or so nearly that nobody means it. */
    static Optional<Arc> of(Point from, Point through, Point to) {
        double bx = through.x() - from.x();
        double by = through.y() - from.y();
        double cx = to.x() - from.x();
        double cy = to.y() - from.y();
        double cross = bx * cy - by * cx;
        double b = bx * bx + by * by;
        double c = cx * cx + cy * cy;
        Point centre =
                new Point(from.x() + (cy * b - by * c) / (2 * cross), from.y() + (bx * c - cx * b) / (2 * cross));
        double radius = Math.sqrt(
                (centre.x() - from.x()) * (centre.x() - from.x()) + (centre.y() - from.y()) * (centre.y() - from.y()));
        if (!(radius >= LEAST_RADIUS && radius <= MOST_RADIUS)) {
            return Optional.empty();
        }
        double start = StrictMath.atan2(from.y() - centre.y(), from.x() - centre.x());
        double end = StrictMath.atan2(to.y() - centre.y(), to.x() - centre.x());
        double sweep = cross > 0 ? positive(end - start) : -positive(start - end);
        return Optional.of(new Arc(centre, radius, start, sweep));
    }

    private static double positive(double angle) {
        return angle > 0 ? angle : angle + 2 * Math.PI;
    }

    /**
     * Ends of equal chords within half a millimetre of the arc, without its beginning, the last one exactly its end. The
     * sagitta of a chord over the angle w is r (1 - cos(w / 2)).
     */
    List<Point> chords(Point end) {
        double step = 2 * StrictMath.acos(1 - SAGITTA / radius);
        int count = (int) Math.max(1, Math.ceil(Math.abs(sweep) / step));
        List<Point> ends = new ArrayList<>();
        for (int i = 1; i < count; i++) {
            double angle = start + sweep * i / count;
            ends.add(new Point(
                    rounded(centre.x() + radius * StrictMath.cos(angle)),
                    rounded(centre.y() + radius * StrictMath.sin(angle))));
        }
        ends.add(end);
        return ends;
    }

    private static double rounded(double mm) {
        return Math.rint(mm * THOUSANDTH) / THOUSANDTH + 0.0;
    }
}
