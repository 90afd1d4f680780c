package org.runbend.optimizer.plan;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Labour;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * The work that a kit is: cutting its plates and mounting its coils, then fitting it, at the times of the catalog, or at
 * {@link Labour#USUAL} where it has none. Boards, what the floor needs beside the kit, and the heater are not counted.
 *
 * @param saw seconds to cut the plates and mount the coils
 * @param bends seconds for all quarter bends
 * @param groove seconds for all pipe on the floor, in its groove
 * @param plates seconds to lay all pieces of plate
 * @param usual whether these are times that nobody in the workshop gave
 */
public record KitWork(double saw, double bends, double groove, double plates, boolean usual) {
    private static final double MINUTE = 60;
    private static final double METRE = 1000;

    /** The work of a plan. */
    static KitWork of(Optional<Labour> given, List<KitPlan.LoopPlan> loops, PlatePlan plates, CoilPlan coils) {
        Labour labour = given.orElse(Labour.USUAL);
        int bends = loops.stream().mapToInt(l -> l.breakdown().quarterBends()).sum();
        double pipe = loops.stream().mapToDouble(KitPlan.LoopPlan::floorLength).sum();
        return new KitWork(
                SawWork.of(Optional.of(labour), plates, coils).seconds().orElseThrow(),
                labour.bend() * bends,
                labour.groove() * pipe / METRE,
                labour.plate() * plates.pieces().size(),
                given.isEmpty());
    }

    /** All of it, s. */
    public double seconds() {
        return saw + bends + groove + plates;
    }

    /** All of it in whole minutes. */
    public long minutes() {
        return Math.round(seconds() / MINUTE);
    }
}
