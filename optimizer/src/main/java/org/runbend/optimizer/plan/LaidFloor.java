package org.runbend.optimizer.plan;

import java.util.List;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.job.PlacePrice;

/**
 * The loops of a floor before anything is bought for them.
 *
 * @param place the lattice they lie on
 * @param price what they were laid by
 * @param loops in the order of their valve outlets
 * @param bare floor that stays bare
 * @param remarks what a person should know of the loops
 */
public record LaidFloor(
        KitPlan.LatticePlace place,
        PlacePrice price,
        List<KitPlan.LoopPlan> loops,
        List<BareFloor> bare,
        List<Remark> remarks) {
    /** Copies the lists. */
    public LaidFloor {
        loops = List.copyOf(loops);
        bare = List.copyOf(bare);
        remarks = List.copyOf(remarks);
    }
}
