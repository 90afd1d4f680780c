package org.runbend.optimizer.heat.need;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A room and its warm floor.
 *
 * @param loss how the space loses heat
 * @param room degrees C
 * @param outside design temperature outside, degrees C
 * @param floor what the floor gives the room, W; negative where it takes
 */
public record NeedProblem(SpaceLoss loss, double room, double outside, double floor) {
    /** Checks ranges. */
    public NeedProblem {
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        Within.range("heat of the floor", floor, -1e6, 1e6, "W");
    }
}
