package org.runbend.optimizer.job;

/**
 * A point on the floor, seen from above.
 *
 * @param x to the right, mm
 * @param y up, mm
 */
public record Point(double x, double y) {
    /** Distance to another point, mm. */
    public double distance(Point o) {
        return Math.hypot(x - o.x, y - o.y);
    }
}
