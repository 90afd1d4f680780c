package org.runbend.optimizer.heat.field;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A closed line round floor, or round a hole in it.
 *
 * @param corners three or more, in order round
 */
public record Ring(List<Corner> corners) {
    /** A corner, mm. */
    public record Corner(double x, double y) {}

    /** Checks the number of corners. */
    public Ring {
        corners = List.copyOf(corners);
        Within.rule(corners.size() >= 3, "a ring needs three corners or more, not %s", corners.size());
    }

    /** Whether a point lies inside (even-odd rule). */
    boolean contains(double x, double y) {
        boolean inside = false;
        Corner a = corners.get(corners.size() - 1);
        for (Corner b : corners) {
            if (a.y() > y != b.y() > y && x < a.x() + (y - a.y()) / (b.y() - a.y()) * (b.x() - a.x())) {
                inside = !inside;
            }
            a = b;
        }
        return inside;
    }
}
