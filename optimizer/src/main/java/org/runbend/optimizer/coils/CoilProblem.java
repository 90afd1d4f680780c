package org.runbend.optimizer.coils;

import java.util.List;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.shelf.Shelf;

/**
 * Pipe wanted for the loops of a job.
 *
 * @param pipe the product
 * @param shelf opened coils at hand
 * @param cuts one cut for each loop, mm
 */
public record CoilProblem(Pipe pipe, Shelf shelf, List<CoilPlan.LoopCut> cuts) {
    /** Copies the list. */
    public CoilProblem {
        cuts = List.copyOf(cuts);
    }
}
