package org.runbend.optimizer.floor;

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
    /** Shortfall forgiven, mm: far under what anybody can rout, far over the noise of doubles. */
    public static final double TOLERANCE = 1e-6;

    private final double[] outlineX;
    private final double[] outlineY;
    private final double edge;
    private final List<KeepOut> keepOuts;
    private final double[] clearance;
    private final double[][] keepOutX;
    private final double[][] keepOutY;

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
        this.clearance = keepOuts.stream().mapToDouble(FreeSpace::clearance).toArray();
        this.keepOutX = new double[keepOuts.size()][];
        this.keepOutY = new double[keepOuts.size()][];
        for (int k = 0; k < keepOuts.size(); k++) {
            List<Point> corners = cornersOf(keepOuts.get(k).bare());
            keepOutX[k] = corners.stream().mapToDouble(Point::x).toArray();
            keepOutY[k] = corners.stream().mapToDouble(Point::y).toArray();
        }
    }

    /** A line that crosses a polygon is at distance 0 from its ring, as is one that touches it; neither may pass. */
    private static double clearance(KeepOut keepOut) {
        return keepOut.bare() instanceof Shape.Polygon
                ? Math.max(keepOut.clearance(), 2 * TOLERANCE)
                : keepOut.clearance();
    }

    private static List<Point> cornersOf(Shape bare) {
        if (bare instanceof Shape.Polygon polygon) {
            return polygon.corners();
        }
        return List.of(bare instanceof Shape.Circle circle ? circle.centre() : ((Shape.Spot) bare).at());
    }

    /** Whether the centreline may pass through the point. */
    public boolean allowsPoint(double x, double y) {
        return inside(outlineX, outlineY, x, y) && allowsSegment(x, y, x, y);
    }

    /** Whether the centreline may follow the straight segment; its ends must be allowed points. */
    public boolean allowsSegment(double ax, double ay, double bx, double by) {
        if (edgeDistance(ax, ay, bx, by) < edge - TOLERANCE) {
            return false;
        }
        for (int k = 0; k < keepOuts.size(); k++) {
            if (keepOutDistance(k, ax, ay, bx, by) < clearance[k] - TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    /** Whether the centreline may follow the arc (radians, anticlockwise positive); its ends must be allowed points. */
    public boolean allowsArc(double cx, double cy, double radius, double start, double sweep) {
        Arc arc = new Arc(cx, cy, radius, start, sweep);
        if (toRing(outlineX, outlineY, arc) < edge - TOLERANCE) {
            return false;
        }
        for (int k = 0; k < keepOuts.size(); k++) {
            double distance = keepOuts.get(k).bare() instanceof Shape.Polygon
                    ? toRing(keepOutX[k], keepOutY[k], arc)
                    : Distance.pointArc(keepOutX[k][0], keepOutY[k][0], arc) - radiusOf(k);
            if (distance < clearance[k] - TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    private double edgeDistance(double ax, double ay, double bx, double by) {
        return toRing(outlineX, outlineY, ax, ay, bx, by);
    }

    private double keepOutDistance(int k, double ax, double ay, double bx, double by) {
        if (keepOuts.get(k).bare() instanceof Shape.Polygon) {
            return inside(keepOutX[k], keepOutY[k], ax, ay) ? -1 : toRing(keepOutX[k], keepOutY[k], ax, ay, bx, by);
        }
        return Distance.pointSegment(keepOutX[k][0], keepOutY[k][0], ax, ay, bx, by) - radiusOf(k);
    }

    private double radiusOf(int k) {
        return keepOuts.get(k).bare() instanceof Shape.Circle circle ? circle.radius() : 0;
    }

    private static double toRing(double[] xs, double[] ys, double ax, double ay, double bx, double by) {
        double least = Double.POSITIVE_INFINITY;
        boolean point = ax == bx && ay == by;
        for (int i = 0, j = xs.length - 1; i < xs.length; j = i++) {
            double d = point
                    ? Distance.pointSegment(ax, ay, xs[j], ys[j], xs[i], ys[i])
                    : Distance.segmentSegment(ax, ay, bx, by, xs[j], ys[j], xs[i], ys[i]);
            least = Math.min(least, d);
        }
        return least;
    }

    private static double toRing(double[] xs, double[] ys, Arc arc) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0, j = xs.length - 1; i < xs.length; j = i++) {
            least = Math.min(least, Distance.segmentArc(xs[j], ys[j], xs[i], ys[i], arc));
        }
        return least;
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
