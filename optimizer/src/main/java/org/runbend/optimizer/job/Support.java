package org.runbend.optimizer.job;

import java.util.List;

/**
 * A rib, batten or joist under the floor: no bend and no plate lies on it, and pipe crosses it straight and square or not
 * at all.
 *
 * @param name what a person calls it
 * @param from start of its middle line, mm
 * @param to end of its middle line, mm
 * @param width mm
 * @param cross whether pipe may cross it
 */
public record Support(String name, Point from, Point to, double width, Crossing cross) {
    /** Checks the sizes. */
    public Support {
        if (!(from.distance(to) > 0 && width > 0)) {
            throw new IllegalArgumentException("a support has a length and a width");
        }
    }

    /** Whether pipe may cross. */
    public enum Crossing {
        /** Straight and at right angles. */
        SQUARE,
        /** Not at all. */
        NEVER
    }

    /** Direction of the middle line, degrees from the x axis, 0 to under 180. */
    public double direction() {
        return PipeRule.direction(from, to);
    }

    /** The same support, so much wider, mm. */
    public Support widened(double by) {
        return new Support(name, from, to, width + by, cross);
    }

    /** What it covers: a rectangle over its middle line. */
    public Shape.Polygon region() {
        double length = from.distance(to);
        double nx = -(to.y() - from.y()) / length * width / 2;
        double ny = (to.x() - from.x()) / length * width / 2;
        return new Shape.Polygon(List.of(
                new Point(from.x() + nx, from.y() + ny),
                new Point(from.x() - nx, from.y() - ny),
                new Point(to.x() - nx, to.y() - ny),
                new Point(to.x() + nx, to.y() + ny)));
    }
}
