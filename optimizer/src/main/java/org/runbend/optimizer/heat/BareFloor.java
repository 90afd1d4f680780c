package org.runbend.optimizer.heat;

import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Floor without pipe.
 *
 * @param kind bare or unheated
 * @param area m2
 * @param edge how much of its border lies beside warm floor, m
 */
public record BareFloor(FloorZone.Kind kind, double area, double edge) {
    /** Checks ranges. */
    public BareFloor {
        Within.range("area of " + kind.words(), area, 0, 1000, "m2");
        Within.range("border of " + kind.words(), edge, 0, 10_000, "m");
    }
}
