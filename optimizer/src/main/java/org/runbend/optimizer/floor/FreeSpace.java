package org.runbend.optimizer.floor;

import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.floor.Distance.Arc;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Where the pipe's centreline may lie: inside the outline by {@code edge}, off each keep-out by its clearance.
 *
 * <p>All tests are closed formulas on lines and arcs; nothing is turned into chords. A distance that is short by up to
 * {@link #TOLERANCE} passes, so that an exact fit is not lost to rounding.
 */
public final class FreeSpace {
    /** Shortfall forgiven, mm: far under what anybody can rout, and what a floor turned and written to 1/1000 mm loses. */
    public static final double TOLERANCE = 0.005;

    /** Far more than rounding can lose when something is passed over as far off, mm. */
    private static final double SPARE = 0.05;

    /** Pipe does not run through what has no clearance: a line that cuts a region is at distance 0 from it, mm. */
    private static final double LEAST_CLEARANCE = 0.01;

    private final double[] outlineX;
    private final double[] outlineY;
    private final double edge;
    private final List<KeepOut> keepOuts;
    private final double[][] keepOutX;
    private final double[][] keepOutY;
    /** For each keep-out a disc that holds its bare region: x, y, radius. */
    private final double[][] discs;

    /**
     * Describes a floor.
     *
     * @param outline corners, mm
     * @param edge least distance of the centreline from the outline, mm
     * @param keepOuts what to keep off
     */
    public FreeSpace(List<Point> outline, double edge, List<KeepOut> keepOuts) {
        this.outlineX = outline.stream().mapToDouble(Point::x).toArray();
        this.outlineY = outline.stream().mapToDouble(Point::y).toArray();
        this.edge = edge;
        this.keepOuts = List.copyOf(keepOuts);
        this.keepOutX = new double[keepOuts.size()][];
        this.keepOutY = new double[keepOuts.size()][];
        this.discs = new double[keepOuts.size()][];
        for (int k = 0; k < keepOuts.size(); k++) {
            List<Point> corners = cornersOf(keepOuts.get(k).bare());
            keepOutX[k] = corners.stream().mapToDouble(Point::x).toArray();
            keepOutY[k] = corners.stream().mapToDouble(Point::y).toArray();
            discs[k] = disc(keepOutX[k], keepOutY[k], radiusOf(k));
        }
    }

    private static List<Point> cornersOf(Shape bare) {
        if (bare instanceof Shape.Polygon polygon) {
            return polygon.corners();
        }
        return List.of(bare instanceof Shape.Circle circle ? circle.centre() : ((Shape.Spot) bare).at());
    }

    private static double[] disc(double[] xs, double[] ys, double grown) {
        double x = Arrays.stream(xs).average().orElseThrow();
        double y = Arrays.stream(ys).average().orElseThrow();
        double radius = 0;
        for (int i = 0; i < xs.length; i++) {
            radius = Math.max(radius, Math.hypot(xs[i] - x, ys[i] - y));
        }
        return new double[] {x, y, radius + grown};
    }

    /** Whether a keep-out is so far from a disc round a piece of pipe that it need not be looked at. */
    private boolean isFar(int k, double x, double y, double radius) {
        double reach = discs[k][2] + radius + clearance(k) + SPARE;
        double dx = x - discs[k][0];
        double dy = y - discs[k][1];
        return dx * dx + dy * dy > reach * reach;
    }

    /** Whether the centreline may pass through the point. */
    public boolean allowsPoint(double x, double y) {
        return inside(outlineX, outlineY, x, y) && allowsSegment(x, y, x, y);
    }

    /** Whether the centreline may follow the straight segment; its ends must be allowed points. */
    public boolean allowsSegment(double ax, double ay, double bx, double by) {
        double half = (Math.abs(bx - ax) + Math.abs(by - ay)) / 2;
        if (toRing(outlineX, outlineY, edge, ax, ay, bx, by) < edge - TOLERANCE) {
            return false;
        }
        for (int k = 0; k < keepOuts.size(); k++) {
            if (!isFar(k, (ax + bx) / 2, (ay + by) / 2, half)
                    && keepOutDistance(k, ax, ay, bx, by) < clearance(k) - TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    /** Whether the centreline may follow the arc (radians, anticlockwise positive); its ends must be allowed points. */
    public boolean allowsArc(double cx, double cy, double radius, double start, double sweep) {
        Arc arc = new Arc(cx, cy, radius, start, sweep);
        if (toRing(outlineX, outlineY, edge, arc) < edge - TOLERANCE) {
            return false;
        }
        for (int k = 0; k < keepOuts.size(); k++) {
            if (isFar(k, cx, cy, radius)) {
                continue;
            }
            double distance = keepOuts.get(k).bare() instanceof Shape.Polygon
                    ? toRing(keepOutX[k], keepOutY[k], clearance(k), arc)
                    : Distance.pointArc(keepOutX[k][0], keepOutY[k][0], arc) - radiusOf(k);
            if (distance < clearance(k) - TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    private double keepOutDistance(int k, double ax, double ay, double bx, double by) {
        if (keepOuts.get(k).bare() instanceof Shape.Polygon) {
            return inside(keepOutX[k], keepOutY[k], ax, ay)
                    ? -1
                    : toRing(keepOutX[k], keepOutY[k], clearance(k), ax, ay, bx, by);
        }
        return Distance.pointSegment(keepOutX[k][0], keepOutY[k][0], ax, ay, bx, by) - radiusOf(k);
    }

    private double clearance(int k) {
        return Math.max(keepOuts.get(k).clearance(), LEAST_CLEARANCE);
    }

    private double radiusOf(int k) {
        Shape bare = keepOuts.get(k).bare();
        return bare instanceof Shape.Circle circle
                ? circle.radius()
                : bare instanceof Shape.Spot spot ? spot.radius() : 0;
    }

    /** Distance of a segment from a ring; sides that are certainly further off than asked are passed over. */
    private static double toRing(double[] xs, double[] ys, double asked, double ax, double ay, double bx, double by) {
        double least = Double.POSITIVE_INFINITY;
        boolean point = ax == bx && ay == by;
        double reach = asked + (Math.abs(bx - ax) + Math.abs(by - ay)) / 2 + SPARE;
        for (int i = 0, j = xs.length - 1; i < xs.length; j = i++) {
            if (isFar(xs[j], ys[j], xs[i], ys[i], (ax + bx) / 2, (ay + by) / 2, reach)) {
                continue;
            }
            double d = point
                    ? Distance.pointSegment(ax, ay, xs[j], ys[j], xs[i], ys[i])
                    : Distance.segmentSegment(ax, ay, bx, by, xs[j], ys[j], xs[i], ys[i]);
            least = Math.min(least, d);
        }
        return least;
    }

    private static double toRing(double[] xs, double[] ys, double asked, Arc arc) {
        double least = Double.POSITIVE_INFINITY;
        double middle = arc.start() + arc.sweep() / 2;
        double x = arc.cx() + arc.radius() * Math.cos(middle);
        double y = arc.cy() + arc.radius() * Math.sin(middle);
        double reach = asked + arc.radius() * Math.min(2, Math.abs(arc.sweep()) / 2) + SPARE;
        for (int i = 0, j = xs.length - 1; i < xs.length; j = i++) {
            if (!isFar(xs[j], ys[j], xs[i], ys[i], x, y, reach)) {
                least = Math.min(least, Distance.segmentArc(xs[j], ys[j], xs[i], ys[i], arc));
            }
        }
        return least;
    }

    /** Whether a segment is further from a point than the reach: without a root, as this is asked most of all. */
    private static boolean isFar(double ax, double ay, double bx, double by, double x, double y, double reach) {
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
        double c = Math.max(0, Math.min(1, t));
        double ex = x - ax - c * dx;
        double ey = y - ay - c * dy;
        return ex * ex + ey * ey > reach * reach;
    }

    /** Ray casting; a point on the ring may count either way, its distance of 0 decides. */
    static boolean inside(double[] xs, double[] ys, double x, double y) {
        boolean in = false;
        for (int i = 0, j = xs.length - 1; i < xs.length; j = i++) {
            if (ys[i] > y != ys[j] > y && x < (xs[j] - xs[i]) * (y - ys[i]) / (ys[j] - ys[i]) + xs[i]) {
                in = !in;
            }
        }
        return in;
    }
}
