package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Floor without pipe beside warm floor.
 *
 * @param stack layers
 * @param pipe outer diameter of the pipe that the foam is made for, mm
 * @param width of the bare floor across its warm edge, mm
 * @param edge excess at the edge over the room, against the coolant's, 0 to 1; 0 where nothing warm is near
 */
public record SpillProblem(Stack stack, double pipe, double width, double edge) {
    /** Checks ranges. */
    public SpillProblem {
        Within.range("outer diameter of the pipe", pipe, 4, 63, "mm");
        Within.range("width of bare floor", width, 0.1, 100_000, "mm");
        Within.range("excess at the edge", edge, 0, 1, "");
    }
}
