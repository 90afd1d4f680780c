package org.runbend.export.drawing;

/**
 * A corner of a path, mm. {@code bulge} shapes the way to the next corner: the tangent of a quarter of the arc's sweep,
 * positive anticlockwise, 0 for a straight line (0.414214 a quarter circle, 1 a half).
 */
public record Vertex(double x, double y, double bulge) {
    /** Refuses infinite values and NaN. */
    public Vertex {
        if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(bulge)) {
            throw new IllegalArgumentException("vertex (" + x + ", " + y + ", bulge " + bulge + ") must be finite");
        }
    }

    /** A corner with a straight line to the next one. */
    public static Vertex straight(Point p) {
        return new Vertex(p.x(), p.y(), 0);
    }

    /** The corner as a point. */
    public Point point() {
        return new Point(x, y);
    }
}
