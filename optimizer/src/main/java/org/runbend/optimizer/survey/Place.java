package org.runbend.optimizer.survey;

/**
 * Where a corner stands, seen from above.
 *
 * @param x along the first side, mm
 * @param y to the left of the first side, mm
 */
public record Place(double x, double y) {
    /** Distance to another place, mm. The plain root is the same number on every machine. */
    double distance(Place o) {
        return Math.sqrt((x - o.x) * (x - o.x) + (y - o.y) * (y - o.y));
    }
}
