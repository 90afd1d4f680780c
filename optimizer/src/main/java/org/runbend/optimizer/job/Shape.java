package org.runbend.optimizer.job;

import java.util.List;

/** The bare region of a keep-out, without clearance. Sizes in mm. */
public sealed interface Shape permits Shape.Circle, Shape.Polygon, Shape.Spot {
    /**
     * A round hole.
     *
     * @param centre its middle
     * @param radius mm
     */
    record Circle(Point centre, double radius) implements Shape {}

    /**
     * A region with straight sides.
     *
     * @param corners in order, not repeated at the end
     */
    record Polygon(List<Point> corners) implements Shape {
        /** Copies the corners. */
        public Polygon {
            corners = List.copyOf(corners);
        }
    }

    /**
     * A bolt or another thing of which only the middle was given: a disc of the size that such things have.
     *
     * @param at its middle
     * @param radius mm
     */
    record Spot(Point at, double radius) implements Shape {}
}
