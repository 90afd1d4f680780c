package org.runbend.optimizer.heat.flow;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Equal bends of a loop.
 *
 * @param radius of the centreline, mm
 * @param angle degrees; a keyhole bend turns more than half round
 * @param count how many
 */
public record Bend(double radius, double angle, int count) {
    /** Checks ranges. */
    public Bend {
        Within.range("bend radius", radius, 1, 100_000, "mm");
        Within.range("bend angle", angle, 0.1, 360, "degrees");
        Within.range("number of bends", count, 0, 100_000, "");
    }

    /** Length of one along its centreline, mm. */
    public double length() {
        return Math.toRadians(angle) * radius;
    }
}
