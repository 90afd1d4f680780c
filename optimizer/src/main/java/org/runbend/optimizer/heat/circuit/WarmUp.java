package org.runbend.optimizer.heat.circuit;

import java.util.List;

/**
 * How a floor warms, minute by minute.
 *
 * @param points the first at minute 0
 */
public record WarmUp(List<Point> points) {
    /**
     * A minute.
     *
     * @param minute from the start
     * @param surface of the floor over the plates, degrees C
     * @param sensor at the plates, degrees C
     * @param coolant degrees C
     */
    public record Point(int minute, double surface, double sensor, double coolant) {}

    /** Copies the list. */
    public WarmUp {
        points = List.copyOf(points);
    }
}
