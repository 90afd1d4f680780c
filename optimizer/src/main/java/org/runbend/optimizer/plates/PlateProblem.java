package org.runbend.optimizer.plates;

import java.util.List;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Job;

/**
 * Plates wanted for the loops of a floor.
 *
 * @param floor outline, keep-outs and unheated regions
 * @param wish products, clearances and coverage
 * @param shelf offcuts at hand
 * @param loops the loops
 */
public record PlateProblem(Job.FloorPlan floor, Job.PlateWish wish, Shelf shelf, List<Breakdown> loops) {
    /** Copies the list. */
    public PlateProblem {
        loops = List.copyOf(loops);
    }

    /** Where pipe turns into its holes. */
    public List<Slot> slots() {
        return loops.stream().flatMap(l -> l.slots().stream()).toList();
    }
}
