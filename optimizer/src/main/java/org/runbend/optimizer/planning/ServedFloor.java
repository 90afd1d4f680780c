package org.runbend.optimizer.planning;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;

/**
 * How much of the heated floor loops serve: its area within half a spacing of pipe that lies on heated floor. Pipe on unheated
 * floor serves nothing, and floor between two pipes counts once, so it is never more than all of it.
 */
final class ServedFloor {
    private static final int QUARTER = 16;

    private ServedFloor() {}

    /** The share, 0 to 1. */
    static double share(Job job, List<Breakdown> loops) {
        Geometry heated = FloorShapes.heated(job.floor());
        if (heated.isEmpty()) {
            return 0;
        }
        Geometry served = null;
        for (Breakdown loop : loops) {
            Geometry pipe = FloorShapes.lessUnheated(FloorShapes.line(Centreline.of(loop)), job.floor());
            Geometry near = pipe.buffer(job.layout().spacing() / 2, QUARTER);
            served = served == null ? near : OverlayNGRobust.overlay(served, near, OverlayNG.UNION);
        }
        return served == null
                ? 0
                : Math.min(
                        1,
                        OverlayNGRobust.overlay(served, heated, OverlayNG.INTERSECTION)
                                        .getArea()
                                / heated.getArea());
    }
}
