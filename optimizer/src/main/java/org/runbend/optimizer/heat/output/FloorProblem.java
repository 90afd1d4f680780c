package org.runbend.optimizer.heat.output;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A floor of several kinds of zones.
 *
 * @param zones with some area
 * @param surface heat transfer to the room, W/(m2 K)
 * @param coolant mean temperature of the coolant, degrees C
 * @param room degrees C
 * @param outside degrees C
 */
public record FloorProblem(List<FloorZone> zones, double surface, double coolant, double room, double outside) {
    /** Checks ranges. */
    public FloorProblem {
        zones = List.copyOf(zones);
        Within.rule(
                zones.stream().mapToDouble(FloorZone::area).sum() > 0,
                "a floor of 0 m2 gives no heat: some area is needed");
        Within.range("heat transfer of the surface", surface, 0.1, 100, "W/(m2 K)");
        Within.range("mean temperature of the coolant", coolant, -80, 200, "degrees C");
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
    }
}
