package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A temperature that rises straight with the supply, and its limit.
 *
 * @param name what it is
 * @param value at the supply looked at, degrees C
 * @param perKelvin what it rises by for each degree of the supply
 * @param limit degrees C
 */
public record SupplyLimit(String name, double value, double perKelvin, double limit) {
    /** Checks ranges. */
    public SupplyLimit {
        Within.range(name, value, -1e4, 1e4, "degrees C");
        Within.range("rise of " + name, perKelvin, 0, 100, "");
        Within.range("limit of " + name, limit, -1e3, 1e3, "degrees C");
    }
}
