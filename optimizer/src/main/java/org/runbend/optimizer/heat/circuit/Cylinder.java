package org.runbend.optimizer.heat.circuit;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A cylinder of hot water with a coil.
 *
 * @param litres of water
 * @param transfer of the coil, W/K
 * @param start temperature of the water, degrees C
 */
public record Cylinder(double litres, double transfer, double start) {
    /** Checks ranges. */
    public Cylinder {
        Within.range("water of the cylinder", litres, 0.1, 2000, "l");
        Within.range("transfer of the coil", transfer, 0.1, 1e5, "W/K");
        Within.range("water at the start", start, 0, 100, "degrees C");
    }
}
