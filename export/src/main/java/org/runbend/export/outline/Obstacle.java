package org.runbend.export.outline;

import java.util.Optional;
import org.runbend.export.drawing.Point;

/**
 * What lies in the floor.
 *
 * @param name what a person calls it
 * @param kind kind of keep-out, as in a job file
 * @param centre of a circle or a point
 * @param radius of a circle, mm; 0 for a point
 * @param contour its edge, if it is no circle and no point
 * @param clearance proposed, mm
 * @param why what it was concluded from, one line
 */
public record Obstacle(
        String name,
        String kind,
        Point centre,
        double radius,
        Optional<Contour> contour,
        double clearance,
        String why) {
    Obstacle named(String other, String otherKind) {
        return new Obstacle(other, otherKind, centre, radius, contour, clearance, why);
    }
}
