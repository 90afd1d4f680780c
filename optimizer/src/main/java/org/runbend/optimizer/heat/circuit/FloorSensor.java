package org.runbend.optimizer.heat.circuit;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A sensor under a plate that opens and closes the floor's valve. It feels the plates, not the surface.
 *
 * @param setting degrees C at the sensor; 30 to 36 (common practice)
 * @param hysteresis between on and off, K; 2 to 3 (common practice)
 */
public record FloorSensor(double setting, double hysteresis) {
    /** Checks ranges. */
    public FloorSensor {
        Within.range("setting of the floor sensor", setting, 5, 60, "degrees C");
        Within.range("hysteresis of the floor sensor", hysteresis, 0.1, 20, "K");
    }
}
