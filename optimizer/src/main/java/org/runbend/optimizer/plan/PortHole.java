package org.runbend.optimizer.plan;

import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Point;

/**
 * Where the pipe of a loop goes through the floor or the wall.
 *
 * @param loop name of the loop
 * @param kind flow or return
 * @param at its middle, mm
 * @param slot where the groove is deepened for the turn
 * @param given whether the job gives the place; else it is proposed
 */
public record PortHole(String loop, Kind kind, Point at, Slot slot, boolean given) {
    /** Which end of the loop. */
    public enum Kind {
        /** Where the coolant comes in. */
        FLOW,
        /** Where it goes out. */
        RETURN
    }
}
