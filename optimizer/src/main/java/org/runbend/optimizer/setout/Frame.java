package org.runbend.optimizer.setout;

import org.runbend.optimizer.job.Point;

/**
 * Axes on the floor: along the base line and along the square line, which is the base line turned by 90 degrees
 * anticlockwise, seen from above.
 *
 * @param origin where both lines cross, mm on the floor
 * @param angle of the base line, degrees anticlockwise from x
 */
public record Frame(Point origin, double angle) {
    /** Distances along both lines of a point of the floor, mm. */
    public Point from(Point floor) {
        double cos = StrictMath.cos(Math.toRadians(angle));
        double sin = StrictMath.sin(Math.toRadians(angle));
        double dx = floor.x() - origin.x();
        double dy = floor.y() - origin.y();
        return new Point(dx * cos + dy * sin, dy * cos - dx * sin);
    }

    /** The point of the floor at distances along both lines, mm. */
    public Point onFloor(double along, double across) {
        double cos = StrictMath.cos(Math.toRadians(angle));
        double sin = StrictMath.sin(Math.toRadians(angle));
        return new Point(origin.x() + along * cos - across * sin, origin.y() + along * sin + across * cos);
    }
}
