package org.runbend.optimizer.heat.need;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Air of a room and metal under its floor.
 *
 * @param room degrees C
 * @param humidity relative humidity of the room's air, 0 to 1
 * @param outside degrees C
 * @param flux that goes down through the floor, W/m2
 * @param outer resistance from the metal to the air outside, m2 K/W
 */
public record DampProblem(double room, double humidity, double outside, double flux, double outer) {
    /** Checks ranges. */
    public DampProblem {
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("relative humidity", humidity, 0.01, 1, "");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        Within.range("flux down", flux, -1e4, 1e4, "W/m2");
        Within.range("resistance to the air outside", outer, 0, 50, "m2 K/W");
    }
}
