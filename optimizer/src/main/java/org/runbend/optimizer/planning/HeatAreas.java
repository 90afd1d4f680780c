package org.runbend.optimizer.planning;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;

/**
 * How the floor divides into floor beside pipe and floor without, as heat sees it: keep-outs are no floor, unheated floor that pipe
 * crosses gets warm all the same.
 *
 * @param besidePipe within half a spacing of pipe, m2
 * @param bare heated floor farther away, m2
 * @param bareEdge border between both, m
 * @param unheated floor that needs no heat and gets none, m2
 * @param unheatedEdge its border with floor beside pipe, m
 */
record HeatAreas(double besidePipe, double bare, double bareEdge, double unheated, double unheatedEdge) {
    private static final int QUARTER = 16;

    static HeatAreas of(Job job, List<Breakdown> loops) {
        Geometry floor = FloorShapes.polygon(job.floor().outline());
        for (KeepOut k : job.floor().keepOuts()) {
            floor = OverlayNGRobust.overlay(floor, FloorShapes.bare(k.bare()), OverlayNG.DIFFERENCE);
        }
        Geometry near = null;
        for (Breakdown loop : loops) {
            Geometry strip =
                    FloorShapes.line(Centreline.of(loop)).buffer(job.layout().spacing() / 2, QUARTER);
            near = near == null ? strip : OverlayNGRobust.overlay(near, strip, OverlayNG.UNION);
        }
        Geometry warm = OverlayNGRobust.overlay(floor, near, OverlayNG.INTERSECTION);
        Geometry rest = OverlayNGRobust.overlay(floor, warm, OverlayNG.DIFFERENCE);
        Geometry bare = FloorShapes.lessUnheated(rest, job.floor());
        Geometry unheated = OverlayNGRobust.overlay(rest, bare, OverlayNG.DIFFERENCE);
        return new HeatAreas(
                warm.getArea() * 1e-6,
                bare.getArea() * 1e-6,
                border(bare, warm),
                unheated.getArea() * 1e-6,
                border(unheated, warm));
    }

    /** Common border of two areas that do not overlap, m. */
    private static double border(Geometry a, Geometry b) {
        if (a.isEmpty() || b.isEmpty()) {
            return 0;
        }
        double together = OverlayNGRobust.overlay(a, b, OverlayNG.UNION).getLength();
        return Math.max(0, (a.getLength() + b.getLength() - together) / 2) * 1e-3;
    }
}
