package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * One side of a pipe, measured from its axis.
 *
 * @param plate how far the plate reaches, mm; no farther than the side itself
 * @param reach how far the floor belongs to this pipe: half way to the next one, or to the outline, mm
 */
public record Side(double plate, double reach) {
    /** Checks ranges. */
    public Side {
        Within.range("reach of a pipe's side", reach, 1, 5000, "mm");
        Within.range("plate beside the pipe", plate, 0, reach, "mm");
    }

    /** A side of a single-groove plate; what of the plate reaches over to the neighbour's floor is left out. */
    public static Side of(double plateWidth, double spacing) {
        return new Side(Math.min(plateWidth, spacing) / 2, spacing / 2);
    }
}
