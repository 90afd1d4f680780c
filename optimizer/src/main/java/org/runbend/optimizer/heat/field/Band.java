package org.runbend.optimizer.heat.field;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A straight strip of floor, or one chord of a bent one.
 *
 * @param x1 begin of its line, mm
 * @param y1 begin of its line, mm
 * @param x2 end of its line, mm
 * @param y2 end of its line, mm
 * @param left how far it reaches to the left of the line, mm
 * @param right how far it reaches to the right of the line, mm
 */
public record Band(double x1, double y1, double x2, double y2, double left, double right) {
    private static final double FAR = 1e6;

    /** Checks ranges. */
    public Band {
        for (double c : new double[] {x1, y1, x2, y2}) {
            Within.range("coordinate on the floor", c, -FAR, FAR, "mm");
        }
        Within.range("width to the left", left, 0, FAR, "mm");
        Within.range("width to the right", right, 0, FAR, "mm");
        Within.rule(left + right > 0, "a strip of floor needs some width");
    }

    /** Length of the line, mm. */
    public double length() {
        return Math.hypot(x2 - x1, y2 - y1);
    }
}
