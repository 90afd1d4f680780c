package org.runbend.optimizer.breakdown;

import org.runbend.optimizer.job.Point;

/** A part of a loop, in order of flow. Sizes in mm, angles in degrees. */
public sealed interface Element permits Element.Run, Element.Bend {
    /** Where it starts. */
    Point from();

    /** Where it ends. */
    Point to();

    /** Length of the centreline, mm. */
    double length();

    /**
     * A straight stretch, as long as it goes.
     *
     * @param from start
     * @param to end
     */
    record Run(Point from, Point to) implements Element {
        @Override
        public double length() {
            return from.distance(to);
        }

        /** The point at a distance from the start, mm. */
        public Point along(double distance) {
            double t = distance / length();
            return new Point(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()));
        }
    }

    /**
     * An arc.
     *
     * @param from start
     * @param to end
     * @param centre its centre
     * @param radius mm
     * @param turn degrees, anticlockwise positive
     */
    record Bend(Point from, Point to, Point centre, double radius, double turn) implements Element {
        @Override
        public double length() {
            return radius * Math.toRadians(Math.abs(turn));
        }

        /** Number of quarter bends it makes, rounded. */
        public int quarters() {
            return (int) Math.round(Math.abs(turn) / 90);
        }
    }
}
