package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Job;
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

    /** The holes of all loops of a job, flow before return. */
    public static List<PortHole> of(Job job, List<KitPlan.LoopPlan> loops) {
        boolean given = !job.floor().port().holes().isEmpty();
        List<PortHole> holes = new ArrayList<>();
        for (KitPlan.LoopPlan loop : loops) {
            Slot flow = loop.breakdown().slots().get(0);
            Slot back = loop.breakdown().slots().get(1);
            holes.add(new PortHole(loop.name(), Kind.FLOW, flow.from(), flow, given));
            holes.add(new PortHole(loop.name(), Kind.RETURN, back.from(), back, given));
        }
        return holes;
    }

    /** What a person calls it, such as A flow. */
    public String name() {
        return loop + " " + kind.name().toLowerCase(Locale.ROOT);
    }
}
