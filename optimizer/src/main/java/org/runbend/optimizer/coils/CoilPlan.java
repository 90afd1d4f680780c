package org.runbend.optimizer.coils;

import java.util.List;
import java.util.Optional;

/**
 * Coils for all loops of a job. Lengths in mm, money in minor units of the catalog's currency.
 *
 * @param coils coils and how they are cut
 * @param cost of the coils bought
 * @param bound no plan costs less
 * @param proof how the bound was proved
 */
public record CoilPlan(List<CoilCut> coils, long cost, long bound, String proof) {
    /** Copies the list. */
    public CoilPlan {
        coils = List.copyOf(coils);
    }

    /**
     * A coil and how it is cut.
     *
     * @param product part number of the pipe
     * @param length of the coil, mm
     * @param cuts what is cut from it
     * @param left what is left, mm
     * @param id of the opened coil on the shelf that it is, if it is one
     */
    public record CoilCut(String product, double length, List<LoopCut> cuts, double left, Optional<String> id) {
        /** Copies the list. */
        public CoilCut {
            cuts = List.copyOf(cuts);
        }
    }

    /**
     * Pipe for one loop, never joined from two.
     *
     * @param loop name of the loop
     * @param length mm
     */
    public record LoopCut(String loop, double length) {}
}
