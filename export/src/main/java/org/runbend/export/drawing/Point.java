package org.runbend.export.drawing;

/** A point of the drawing, mm, y up. Both coordinates are finite. */
public record Point(double x, double y) {
    /** Refuses infinite coordinates and NaN. */
    public Point {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("point (" + x + ", " + y + ") must be finite");
        }
    }

    /** The point moved by (dx, dy) mm. */
    public Point plus(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }

    /** The point {@code distance} mm away in the direction {@code angle} (degrees, anticlockwise from +x). */
    public Point polar(double distance, double angle) {
        double radians = Math.toRadians(angle);
        return plus(distance * StrictMath.cos(radians), distance * StrictMath.sin(radians));
    }

    /** Distance to another point, mm. */
    public double distance(Point other) {
        return Math.sqrt((x - other.x) * (x - other.x) + (y - other.y) * (y - other.y));
    }

    /** Direction to another point, degrees in (-180, 180]. */
    public double angleTo(Point other) {
        return Math.toDegrees(StrictMath.atan2(other.y - y, other.x - x));
    }
}
