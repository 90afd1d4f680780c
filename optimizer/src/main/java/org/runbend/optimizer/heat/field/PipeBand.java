package org.runbend.optimizer.heat.field;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A straight piece of pipe, or one chord of a bend.
 *
 * @param x1 begin, mm
 * @param y1 begin, mm
 * @param x2 end, mm
 * @param y2 end, mm
 * @param plated whether it lies in a plate
 * @param from temperature of the coolant at its begin, degrees C
 * @param to temperature at its end, degrees C
 */
public record PipeBand(double x1, double y1, double x2, double y2, boolean plated, double from, double to) {
    /** Checks temperatures. */
    public PipeBand {
        Within.range("temperature of the coolant", from, -80, 200, "degrees C");
        Within.range("temperature of the coolant", to, -80, 200, "degrees C");
    }

    /** The strip of floor over it, of a width in mm. */
    Band band(double width) {
        return new Band(x1, y1, x2, y2, width / 2, width / 2);
    }
}
